import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

describe('the ball or the reading', () => {
  const command = ['--import', 'tsx', 'examples/doubt.ts'];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: root, encoding: 'utf8' });
  const rows = [...stdout.matchAll(/^ (\w[^±\n]*[^\s±].*?) {2,}([\d.]+) +([\d.]+)$/gmu)].map(
    ([, label = '', carry, total]) => ({ label, carry: Number(carry), total: Number(total) }),
  );
  const share = (of: 'carry' | 'total', group: string): number =>
    rows.filter(({ label }) => label.startsWith(group)).reduce((sum, row) => sum + row[of], 0);

  it('prints what share of carry and total hangs on what', () => {
    expect([status, stderr, rows.length]).toEqual([0, '', 9]);
    for (const of of ['carry', 'total'] as const) {
      // Total indices hold what is shared by several as often, so that they add up to 1 or a little more.
      expect(share(of, '')).toBeGreaterThan(0.95);
      expect(share(of, '')).toBeLessThan(1.2);
      for (const group of ['ball model', 'reading', 'air']) expect(share(of, group)).toBeGreaterThan(0);
    }
  });

  it('hangs no carry on the turf, and much of the total', () => {
    expect(share('carry', 'turf')).toBe(0);
    expect(share('total', 'turf')).toBeGreaterThan(0.5);
  });
});
