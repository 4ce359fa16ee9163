import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Sensitivities } from 'fairflight';
import { toYards } from 'fairflight/units';
import { afterAll, describe, expect, it } from 'vitest';
import { written } from './run.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'worth-'));
afterAll(() => rmSync(scratch, { recursive: true }));

function worth(...args: readonly string[]): { status: number | null; stdout: string; stderr: string } {
  const command = ['--import', 'tsx', 'examples/worth.ts', '--out', scratch, '--full', '--replace', ...args];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: root, encoding: 'utf8' });
  return { status, stdout, stderr };
}

describe('what is it worth', () => {
  it('prints the table of a delivery and writes the page', () => {
    const { status, stdout, stderr } = worth('--club-speed', '105mph', '--dynamic-loft', '13.5deg');
    expect([status, stderr]).toEqual([0, '']);
    for (const label of ['+1 mph club speed', '5 mm toward the toe', '+1000 ft', 'headwind']) {
      expect(stdout).toContain(label);
    }
    expect(stdout).toMatch(/stop at pain/);
    const html = written({ out: scratch }, 'html');
    expect(html).not.toMatch(/https?:\/\/(?!www\.w3\.org)|src=|NaN|undefined/);
  });

  it('starts from a launch, another club or hand, in metres', () => {
    const printed = worth('--ball-speed', '150mph', '--launch', '12deg', '--spin', '2700rpm', '--json');
    const { base, rows } = JSON.parse(printed.stdout) as Sensitivities;
    expect(rows[0]?.change).toBe('ballSpeed');
    // About 2 yd of carry a mph of ball speed (common practice, no source).
    expect(toYards(rows[0]?.slope.carry ?? base.carry)).toBeGreaterThan(1.5);
    expect(toYards(rows[0]?.slope.carry ?? base.carry)).toBeLessThan(2.7);
    const iron = ['--club', 'midIron', '--hand', 'left', '--attack', '-4deg', '--dynamic-loft', '23deg'];
    expect(worth(...iron, '--units', 'metric').stdout).toMatch(/generic mid iron, left-handed/);
  });

  it.each([
    [['--club', 'spoon'], /--club must be one of/],
    [['--spin', '2600rpm'], /--spin goes with --ball-speed/],
    [['--ball-speed', '150mph', '--attack', '1deg'], /--attack does not go with/],
    [['--ball-speed', '150mph', '--spin', '43hz'], /--spin must be in rpm/],
    [['file.csv'], /no file is read/],
    [['--club-speed', '400mph'], /clubSpeed must be between/],
  ])('refuses %j', (args, message) => {
    const { status, stderr } = worth(...args);
    expect(status).toBe(2);
    expect(stderr).toMatch(message);
  });
});
