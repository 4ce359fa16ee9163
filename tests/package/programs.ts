import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';

/** The programs of the installed package, each run in an empty folder, as by somebody who has nothing else of it. */

/** What a terminal obeys, and what turns the direction of writing; line breaks are no harm. */
const OBEYED = /[^\P{Cc}\n]|\p{Cf}/u;
/** Lines of one screen. */
const SCREEN = 31;

interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Shots of one iron, their launch as it was measured; `rows` are put below them. */
function csv(header: string, ...rows: readonly string[]): string {
  return [header, ...rows].join('\n');
}

const HEADER = 'shot,ball speed (mph),launch angle (deg),spin (rpm),remark';
const SHOTS = ['a,137.2,13.3,2507,', 'b,136.8,13.8,2493,', 'c,137.7,14.4,2745,'] as const;
const ADDED =
  'model_carry_m,model_apex_m,model_descent_angle_rad,model_total_m,model_strike_toe_m,model_strike_high_m';

const rows = (text: string): readonly string[] => text.trimEnd().split('\n');

export function describePrograms(installed: () => string): void {
  describe('its programs', () => {
    let folder = '';
    const inEmptyFolder = (): void => {
      folder = mkdtempSync(join(installed(), 'work-'));
    };
    beforeAll(inEmptyFolder);

    /** Runs a program; its output may go into a command of the shell. */
    function fairflight(args: readonly string[], input = '', into?: string): Ran {
      const bin = join(installed(), 'node_modules/fairflight/dist/bin/fairflight.js');
      const [command = '', ...rest] =
        into === undefined
          ? [process.execPath, bin, ...args]
          : ['sh', '-c', `"$0" "$@" | ${into}`, process.execPath, bin, ...args];
      const options = { cwd: folder, encoding: 'utf8', input, timeout: 120_000 } as const;
      const { status, stdout, stderr } = spawnSync(command, rest, options);
      return { status, stdout, stderr };
    }
    const file = (name: string, text: string): string => {
      writeFileSync(join(folder, name), text);
      return name;
    };

    it('run by npx, which lists them and refuses a name it does not know in a sentence', () => {
      const npx = (...args: string[]): Ran =>
        spawnSync('npx', ['--no', '--offline', 'fairflight', ...args], {
          cwd: installed(),
          encoding: 'utf8',
        });
      const help = npx('--help');
      expect(help.status).toBe(0);
      for (const name of [
        'ladder',
        'tradeoff',
        'log',
        'face',
        'places',
        'worth',
        'doubt',
        'sweep',
        'shots',
      ]) {
        expect(help.stdout).toMatch(new RegExp(`^ {2}${name} +\\S`, 'm'));
      }
      const unknown = npx('lader');
      expect([unknown.status, unknown.stdout]).toEqual([2, '']);
      expect(unknown.stderr).toBe(
        'fairflight: there is no program "lader"; npx fairflight --help lists them\n',
      );
    });

    it.each([
      ['ladder', [], /^ladder-imo-feldspar-2026-03-11\.(html|json)$/],
      ['tradeoff', ['--shots', '128'], /^tradeoff-imo-feldspar-2026-03-11\.(html|json)$/],
      ['log', [], /^log-juno-tallowby-2026-04-02\.(html|json)$/],
      ['face', [], /^face-tamsin-quillfeather-20\d\d-\d\d-\d\d\.(html|json)$/],
      ['places', [], /^places-perrin-vantongue-20\d\d-\d\d-\d\d\.(html|json)$/],
      ['worth', [], /^worth-20\d\d-\d\d-\d\d\.(html|json)$/],
      ['doubt', ['--out', '.'], /^doubt-imo-feldspar-2026-03-11\.json$/],
      ['sweep', ['--count', '2048', '--format', 'csv'], /^sweep-2048-seed-1\.(csv|html|json)$/],
    ] as const)('%s: without a file, on one screen, named after player and date', (name, args, written) => {
      inEmptyFolder();
      const { status, stdout, stderr } = fairflight([name, ...args]);
      expect([status, stderr]).toEqual([0, '']);
      if (name !== 'worth' && name !== 'sweep') expect(stdout).toMatch(/^INVENTED DATA/);
      expect(stdout.split('\n').length).toBeLessThanOrEqual(SCREEN);
      const files = readdirSync(folder);
      expect(files.length).toBeGreaterThan(0);
      for (const each of files) {
        expect(each).toMatch(written);
        if (name !== 'doubt') expect(stdout).toContain(each);
      }
    });

    it('say what a sweep in Parquet needs, and leave no file', () => {
      inEmptyFolder();
      const { status, stdout, stderr } = fairflight(['sweep', '--count', '2048']);
      expect([status, stdout]).toEqual([2, '']);
      expect(stderr).toMatch(/^sweep: .*npm install hyparquet-writer.*\n$/);
      expect(readdirSync(folder)).toEqual([]);
    });

    it('number what they write, and write over a file only when told', () => {
      inEmptyFolder();
      const shots = file(
        'mine.csv',
        csv(`player,date,${HEADER}`, ...SHOTS.map((row) => `Ada Zoë,2026-05-06,${row}`)),
      );
      expect(fairflight(['places', shots]).status).toBe(0);
      const page = join(folder, 'places-ada-zoe-2026-05-06.html');
      writeFileSync(page, 'older');
      expect(fairflight(['places', shots, '--full']).stdout).toMatch(/-06-2\.html, .*-06-2\.json\n$/);
      expect(readFileSync(page, 'utf8')).toBe('older');
      expect(fairflight(['places', shots, '--replace', '--out', '.']).status).toBe(0);
      expect(readFileSync(page, 'utf8')).toMatch(/^<!doctype html>/);
      expect(existsSync(join(folder, 'places-ada-zoe-2026-05-06-3.html'))).toBe(false);
    });

    it('keep what a file holds from the terminal and out of the names of files', () => {
      inEmptyFolder();
      const hostile = '<script>alert(1)</script>\u001b[2J\u009b31m\u202e../../x';
      const shots = file(
        'mine.csv',
        csv(
          `# \u001b]0;x\u0007 ${hostile}`,
          `club,player,${HEADER}`,
          ...SHOTS.map((row) => `${hostile},${hostile},${row}`),
        ),
      );
      for (const args of [
        ['places', shots],
        ['places', shots, '--full'],
        ['places', shots, '--json'],
        ['log', hostile],
      ]) {
        const { stdout, stderr } = fairflight(args);
        expect(stdout + stderr).not.toBe('');
        expect(stdout + stderr).not.toMatch(OBEYED);
      }
      const files = readdirSync(folder);
      expect(files).toHaveLength(1 + 3 * 2);
      for (const each of files) {
        expect(each).toMatch(/^[\p{L}\p{N}.-]+$/u);
        if (each.endsWith('.html')) expect(readFileSync(join(folder, each), 'utf8')).not.toMatch(/<script/i);
      }
    });

    it('say in a line, with exit code 2, what they cannot read or write', () => {
      inEmptyFolder();
      mkdirSync(join(folder, 'sub'));
      for (const args of [
        ['ladder', 'nowhere.csv'],
        ['log', 'sub'],
        ['worth', '--out', join(file('taken', ''), 'out')],
        ['shots', 'nowhere.csv'],
        ['shots', 'sub'],
        ['shots', '--to', 'xls'],
        ['face', '--no-such-option'],
      ]) {
        const { status, stdout, stderr } = fairflight(args);
        expect([status, stdout]).toEqual([2, '']);
        expect(stderr.trim().split('\n')).toHaveLength(1);
      }
    });

    it('licences of what is bundled travel with it', () => {
      const licences = readFileSync(
        join(installed(), 'node_modules/fairflight/dist/bin/LICENSES.txt'),
        'utf8',
      );
      for (const name of ['cli-table3', 'd3-array', 'd3-dsv', 'hyparquet']) {
        expect(licences).toMatch(new RegExp(`^${name} \\d[\\s\\S]*?(MIT|ISC|Permission)`, 'm'));
      }
    });

    describeShots(fairflight);
  });
}

/** The program that adds columns to a stream. */
function describeShots(fairflight: (args: readonly string[], input?: string, into?: string) => Ran): void {
  describe('shots', () => {
    it('adds columns to CSV, row by row, and says which rows cannot be flown', () => {
      const input = csv(
        HEADER,
        SHOTS[0],
        'x,,13,2500,"no ""speed"", then',
        'rest"',
        SHOTS[1],
        'Average,136,13.8,2500,',
      );
      const { status, stdout, stderr } = fairflight(['shots', '-'], input);
      expect(status).toBe(1);
      const [header, first, second, third, fourth, ...more] = rows(stdout);
      expect(header).toBe(`${HEADER},${ADDED}`);
      // The flight of this launch carries about 213 yd as invented in the bundled bag, measured with noise.
      expect(Number(first?.split(',')[5])).toBeGreaterThan(190);
      expect(Number(first?.split(',')[5])).toBeLessThan(200);
      expect([second, third]).toEqual(['x,,13,2500,"no ""speed"", then', 'rest",,,,,,']);
      expect(fourth).toMatch(/^b,136\.8,13\.8,2493,,1\d\d\.\d+,/);
      expect(more).toEqual(['Average,136,13.8,2500,,,,,,,']);
      expect(rows(stderr)).toHaveLength(2);
      expect(stderr).toMatch(/^shots: line 3: .*ball speed/m);
      expect(stderr).toMatch(/^shots: line 6: .*sums up/m);
    });

    it('keeps separator and decimal mark, and finds units in the first rows for all', () => {
      // Only the first rows have the carry from which the unit of speed is found.
      const many = Array.from({ length: 600 }, (_, i) =>
        `${i};${61 + (i % 7) / 10};13.3;2507;${i < 250 ? 195.5 : ''}`.replaceAll('.', ','),
      );
      const { status, stdout, stderr } = fairflight(
        ['shots', '-', '--units', 'imperial'],
        csv('Nr;Ball Speed;Launch Angle;Spin;Carry', ...many),
      );
      expect([status, stderr]).toEqual([0, expect.stringMatching(/read as m\/s/)]);
      const [header, ...out] = rows(stdout);
      expect(header).toMatch(/;Carry;model_carry_yd;/);
      expect(out).toHaveLength(600);
      for (const [i, row] of out.entries()) {
        expect(row.startsWith(`${many[i]};`)).toBe(true);
        expect(row.slice(many[i]?.length)).toMatch(/^;2\d\d(,\d+)?;/);
      }
    });

    it('reads and writes JSON Lines, and turns one into the other', () => {
      const shot = { 'ball speed (mph)': 137.2, launch_angle_deg: 13.3, spin_rpm: 2507, tags: ['x'] };
      const lines = `${JSON.stringify(shot)}\nno JSON\n\n${JSON.stringify({ ...shot, spin_rpm: null, late: 1 })}\n`;
      const json = fairflight(['shots', '-'], lines);
      expect(json.status).toBe(1);
      const [first, second] = rows(json.stdout).map((line) => JSON.parse(line) as Record<string, unknown>);
      expect(first).toMatchObject({ ...shot, model_strike_toe_m: null });
      expect(first?.['model_carry_m']).toBeGreaterThan(190);
      expect(second).toMatchObject({ late: 1, model_carry_m: null });
      expect(json.stderr).toMatch(/line 2: this is no JSON$/m);
      expect(json.stderr).toMatch(/line 4: .*spin/m);
      const back = fairflight(['shots', '-', '--to', 'jsonl'], csv(HEADER, SHOTS[0]));
      expect(JSON.parse(back.stdout)).toMatchObject({
        shot: 'a',
        'spin (rpm)': 2507,
        model_carry_m: first?.['model_carry_m'],
      });
      expect(rows(fairflight(['shots', '-', '--to', 'csv'], `${JSON.stringify(shot)}\n`).stdout)[1]).toMatch(
        /^137\.2,13\.3,2507,"\[""x""\]",19\d/,
      );
    });

    it('ends quietly when whoever reads has seen enough', () => {
      const rows = Array.from({ length: 3000 }, (_, i) => `${i},137.2,13.3,2507,${'x'.repeat(40)}`);
      const { stdout, stderr } = fairflight(['shots', '-'], csv(HEADER, ...rows), 'head -1');
      expect([stdout, stderr]).toEqual([`${HEADER},${ADDED}\n`, '']);
    });

    it('passes no control character on, keeps formulas as text, and refuses its own columns', () => {
      const hostile = '=cmd()\u001b[2J\u009b';
      const { status, stdout, stderr } = fairflight(
        ['shots', '-'],
        csv(HEADER, `${SHOTS[0]}${hostile}`, 'b,x\u001b[31m,1,2,'),
      );
      expect(status).toBe(1);
      expect(stdout).toContain(',=cmd() [2J ,');
      expect(stdout + stderr).not.toMatch(OBEYED);
      const again = fairflight(['shots', '-'], csv(`${HEADER},model_carry_m`, `${SHOTS[0]},1`));
      expect([again.status, again.stdout]).toEqual([2, '']);
      expect(again.stderr).toMatch(/has a column "model_carry_m" already/);
    });
  });
}
