import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

it('a strike keeps no garbage: less than one number', () => {
  const probe = fileURLToPath(new URL('allocation-probe.ts', import.meta.url));
  const node = ['--expose-gc', '--min-semi-space-size=256', '--max-semi-space-size=256', '--import', 'tsx'];
  const { stdout, stderr } = spawnSync(process.execPath, [...node, probe], { encoding: 'utf8' });
  expect(stderr).toBe('');
  for (const [law, bytes] of Object.entries(JSON.parse(stdout))) {
    // A collection in between would show as much less than nothing.
    expect(bytes, law).toBeGreaterThan(-8);
    expect(bytes, law).toBeLessThan(8);
  }
}, 60_000);
