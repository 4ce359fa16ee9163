/** What the makers of the invented data share: a ball of its own, noise, and the way a device prints numbers. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { ModelChoice } from 'fairflight';
import { scaledModel } from 'fairflight/models';
import { randomStream } from '../lib/random.js';

/** Drag 2 % above the library's ball, so that model and "measurement" do not agree by construction. */
export const draggier: ModelChoice = scaledModel('fitted-modern', { drag: 1.02 });

/** Normal deviates of a given spread, Box and Muller 1958. */
export function normalNoise(seed: number): (spread: number) => number {
  const uniform = randomStream(seed);
  return (spread) => spread * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** A number as a device prints it, without minus zero. */
export function written(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** Writes one file of invented shots beside this script. */
export function writeInvented(
  name: string,
  comments: readonly string[],
  header: string,
  rows: readonly string[],
): void {
  const path = fileURLToPath(new URL(name, import.meta.url));
  writeFileSync(path, `${[...comments.map((each) => `# ${each}`), header, ...rows].join('\n')}\n`);
  process.stdout.write(`${rows.length} invented shots written to ${path}\n`);
}
