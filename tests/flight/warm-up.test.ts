import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { Session } from 'node:inspector/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import ts from 'typescript';
import { expect, it } from 'vitest';
import { warmUp } from '../../src/flight/engine/warm-up.js';

it('the warm-up takes every branch of the kernel but those that hand a flight over', async () => {
  // The kernel as plain JavaScript in a file of its own, whose places the engine's coverage counts refer to.
  const { outputText } = ts.transpileModule(readFileSync('src/flight/engine/kernel.generated.ts', 'utf8'), {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.CommonJS },
  });
  const folder = mkdtempSync(join(tmpdir(), 'fairflight-kernel-'));
  const file = join(folder, 'kernel.cjs');
  writeFileSync(file, outputText);
  const session = new Session();
  session.connect();
  try {
    await session.post('Profiler.enable');
    await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
    const { flyKernel } = createRequire(import.meta.url)(file);
    warmUp(flyKernel);
    const { result } = await session.post('Profiler.takePreciseCoverage');
    const covered = result
      .find(({ url }) => url.endsWith('kernel.cjs'))
      ?.functions.find(({ functionName }) => functionName === 'flyKernel');
    const missed = (covered?.ranges ?? [])
      .filter(({ count }) => count === 0)
      .map(({ startOffset, endOffset }) => outputText.slice(startOffset, endOffset).trim());
    expect(covered?.ranges[0]?.count).toBeGreaterThan(1);
    expect(missed.filter((code) => !code.startsWith('return OUTSIDE'))).toEqual([]);
  } finally {
    session.disconnect();
    rmSync(folder, { recursive: true });
  }
});
