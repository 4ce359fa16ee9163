import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { written } from './run.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'sweep-'));
afterAll(() => rmSync(scratch, { recursive: true }));

/** Runs the sweep as a user does. */
function run(...args: readonly string[]): { status: number | null; stdout: string; stderr: string } {
  const command = ['--import', 'tsx', 'examples/sweep.ts', '--out', scratch, ...args];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: root, encoding: 'utf8' });
  return { status, stdout, stderr };
}

interface Json {
  readonly indices: {
    readonly factors: readonly {
      readonly names: readonly string[];
      readonly firstOrder: number;
      readonly total: number;
    }[];
    readonly mean: number;
  };
  readonly about: { readonly rows: number };
}

describe('the sweep of drives', () => {
  it('flies, writes, reads back and says what carry depends on', () => {
    const { status, stdout, stderr } = run('--count', '4096');
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/4\s096 flights in/);
    expect(readdirSync(scratch).sort()).toEqual([
      'sweep-4096-seed-1.html',
      'sweep-4096-seed-1.json',
      'sweep-4096-seed-1.parquet',
    ]);
    const { indices, about } = JSON.parse(written({ out: scratch }, 'json')) as Json;
    expect(about.rows).toBe(4096);
    const total = Object.fromEntries(indices.factors.map((each) => [each.names[0], each.total]));
    // Carry depends most on speed over so wide a range of it (common practice, no source).
    expect(indices.factors.every((each) => each.total <= (total['delivery.clubSpeed'] ?? 0))).toBe(true);
    // Every total index holds the first-order one, and all first-order ones together are at most the whole.
    for (const each of indices.factors) expect(each.total).toBeGreaterThan(each.firstOrder - 0.05);
    expect(indices.factors.reduce((sum, { firstOrder }) => sum + firstOrder, 0)).toBeLessThan(1.1);
    const html = written({ out: scratch }, 'html');
    expect(html).not.toMatch(/https?:|src=|NaN|undefined/);
  });

  it('does not fly again what is there', () => {
    const { status, stdout } = run('--count', '4096', '--units', 'metric');
    expect(status).toBe(0);
    expect(stdout).toMatch(/0 flights \(4\s096 were there\)/);
    expect(JSON.parse(run('--count', '4096', '--json').stdout)).toHaveProperty('indices.mean');
  });

  it('says the same from a file of CSV, which needs nothing installed', () => {
    const from = (format: string): unknown =>
      (JSON.parse(run('--count', '2048', '--format', format, '--json').stdout) as Json).indices;
    expect(from('csv')).toEqual(from('parquet'));
  });

  it('says in one line that its folder cannot be made', () => {
    const { status, stdout, stderr } = run('--out', join(root, 'package.json', 'out'));
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^sweep: cannot write to .*\n$/);
  });

  it.each([
    ['--count', '3'],
    ['--count', 'many'],
    ['--seed', '0.5'],
    ['--units', 'furlongs'],
    ['--speed', '9'],
    ['shots.csv'],
  ])('refuses %s %s in one line', (...args) => {
    const { status, stdout, stderr } = run(...args);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });
});
