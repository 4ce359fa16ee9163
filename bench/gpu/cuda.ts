import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { resolveScene } from '../../src/scene/scene.js';
import { drawLaunches } from './draws.js';
import { judgeOf } from './errors.js';
import { READ } from './on-card.js';

/** The hand-written kernel as it was compiled, its time and how far its carries are from the judge's. */
export interface CudaTime {
  readonly options: string;
  readonly seconds: number;
  readonly worstCarry: number;
}

/** Groups and options that the hand-written kernel is tried with; the best counts. */
const TRIED: readonly (readonly string[])[] = [
  ...[64, 128, 256].map((block) => ['--use_fast_math', `-DBLOCK=${block}`]),
  ['-DBLOCK=64'],
];

/** Times the hand-written kernel on the same launches; none where there is no compiler for it. */
export function cudaTimes(source: string, flights: number, repeats: number): readonly CudaTime[] {
  const folder = mkdtempSync(join(tmpdir(), 'flight-cuda-'));
  try {
    const launches = drawLaunches(flights);
    const columns = READ.map((name) => Float32Array.from(launches[name] ?? []));
    const read = join(folder, 'launches.f32');
    writeFileSync(read, Buffer.concat(columns.map(({ buffer }) => Buffer.from(buffer))));
    const { air, ball, model } = resolveScene({});
    const constants = [
      air.density,
      air.viscosity,
      (Math.PI * ball.radius ** 2) / (2 * ball.mass),
      ball.radius,
      model.spinDecay,
    ].map(String);
    const checked = Math.min(flights, 20_000);
    const judge = judgeOf(
      Object.fromEntries(
        READ.map((name) => [name, (launches[name] as Float64Array).subarray(0, checked)]),
      ) as never,
      {},
      {},
    );
    return TRIED.map((options) => {
      const program = join(folder, 'flight');
      const written = join(folder, 'results.f32');
      execFileSync('nvcc', ['-O3', '-arch=native', ...options, '-o', program, source]);
      const seconds = Number(
        execFileSync(program, [read, written, String(flights), String(repeats), ...constants], {
          encoding: 'utf8',
        }),
      );
      const bytes = readFileSync(written);
      const carry = new Float32Array(bytes.buffer, bytes.byteOffset, flights);
      let worstCarry = 0;
      for (let i = 0; i < checked; i++) {
        worstCarry = Math.max(
          worstCarry,
          Math.abs((carry[i] as number) - Math.hypot(judge.x[i] as number, judge.z[i] as number)),
        );
      }
      return { options: options.join(' '), seconds, worstCarry: 1000 * worstCarry };
    });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
