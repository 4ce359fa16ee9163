import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'esbuild';
import type { Order, Outcome } from './order.js';

/** One file with the library and all it needs, so that a process starts quickly. */
export async function bundleChild(folder: string): Promise<string> {
  const outfile = join(folder, 'child.mjs');
  await build({
    entryPoints: [join(import.meta.dirname, 'child.ts')],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
  });
  return outfile;
}

/** Longest that a process may take: beyond that it hangs [ms]. */
const PATIENCE = 120_000;

/**
 * Runs a process.
 * @param killAfter - kills it so long after it has begun to write [ms]
 */
export function obey(
  child: string,
  order: Order,
  killAfter?: number,
): Promise<Outcome & { readonly took: number }> {
  return new Promise((resolve) => {
    const process = spawn(globalThis.process.execPath, [child, JSON.stringify(order)]);
    const hanging = setTimeout(() => process.kill('SIGKILL'), PATIENCE);
    let said = '';
    let wailed = '';
    let begun = 0;
    let killed = false;
    process.stdout.on('data', (bytes: Buffer) => {
      said += bytes.toString();
      if (begun > 0) return;
      begun = performance.now();
      if (killAfter === undefined) return;
      setTimeout(() => {
        killed = process.kill('SIGKILL');
      }, killAfter);
    });
    process.stderr.on('data', (bytes: Buffer) => {
      wailed += bytes.toString();
    });
    process.on('close', (code, signal) => {
      clearTimeout(hanging);
      const took = performance.now() - begun;
      const [, last] = said.split('\n');
      if (code === 0 && last !== undefined && last !== '')
        resolve({ ...(JSON.parse(last) as Outcome), took });
      else if (killed && signal === 'SIGKILL') resolve({ kind: 'killed', took });
      else resolve({ kind: 'untyped', message: wailed || `ended with ${code ?? signal}`, took });
    });
  });
}
