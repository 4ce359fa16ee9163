import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

it('the engines keep no garbage in their steps: under one array of the seven states a stage', () => {
  // Seven doubles in each of 13 stages. What is left is numbers that the JavaScript engine boxes on its own account.
  const arrays = 13 * 7 * 8;
  const probe = fileURLToPath(new URL('allocation-probe.ts', import.meta.url));
  // On a busy machine a compiler on another thread would come too late, and unoptimised code boxes every number.
  const node = ['--expose-gc', '--min-semi-space-size=256', '--max-semi-space-size=256'];
  node.push('--no-concurrent-recompilation', '--import', 'tsx');
  const { stdout, stderr } = spawnSync(process.execPath, [...node, probe], { encoding: 'utf8' });
  expect(stderr).toBe('');
  const { steps, bytesPerStep } = JSON.parse(stdout);
  expect(steps).toBeGreaterThan(5);
  for (const [engine, bytes] of Object.entries(bytesPerStep)) {
    // A collection in between would show as much less than nothing.
    expect(bytes, engine).toBeGreaterThan(-8);
    expect(bytes, engine).toBeLessThan(arrays);
  }
  // The compiled kernel takes not even one number a step.
  expect(bytesPerStep.compiled).toBeLessThan(8);
}, 60_000);
