import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** How a run of an example ended. */
export interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
  readonly out: string;
}

/** An example to be run as its users run it, each time with a folder of its own for the output. */
export function example(name: string): {
  readonly run: (...args: readonly string[]) => Ran;
  readonly csv: (text: string) => string;
} {
  const scratch = mkdtempSync(join(tmpdir(), `${name}-`));
  afterAll(() => rmSync(scratch, { recursive: true }));
  let count = 0;
  return {
    run: (...args) => {
      count += 1;
      const out = join(scratch, `out-${count}`);
      const command = ['--import', 'tsx', `examples/${name}.ts`, ...args, '--full', '--out', out];
      const { status, stdout, stderr } = spawnSync(process.execPath, command, {
        cwd: root,
        encoding: 'utf8',
      });
      return { status, stdout, stderr, out };
    },
    csv: (text) => {
      count += 1;
      const path = join(scratch, `input-${count}.csv`);
      writeFileSync(path, text);
      return path;
    },
  };
}

/** The one file with this ending that the run wrote. */
export function written({ out }: Pick<Ran, 'out'>, ending: 'html' | 'json'): string {
  const names = readdirSync(out).filter((name) => name.endsWith(`.${ending}`));
  expect(names).toHaveLength(1);
  return readFileSync(join(out, names[0] ?? ''), 'utf8');
}

type Path = readonly (string | number)[];

/** The value at a path of the JSON; fails when there is none. */
export function at(json: unknown, ...path: Path): unknown {
  const value = path.reduce<unknown>(
    (kept, key) =>
      typeof kept === 'object' && kept !== null ? (kept as Record<string | number, unknown>)[key] : undefined,
    json,
  );
  if (value === undefined) throw new Error(`the JSON has no ${path.join(' / ')}`);
  return value;
}

/** The number at a path of the JSON. */
export function num(json: unknown, ...path: Path): number {
  const value = at(json, ...path);
  if (typeof value === 'number') return value;
  throw new Error(`${path.join(' / ')} is ${JSON.stringify(value)}, not a number`);
}

/** Text as one line, however the terminal broke it. */
export function joined(text: string): string {
  return text.replaceAll(/\s+/g, ' ');
}

/** A page must hold all it shows, and show only what is known. */
export function expectSelfContained(html: string, figures: number): void {
  expect(html).not.toMatch(/https?:/i);
  expect(html).not.toMatch(/<(script|link|img|iframe|object|embed|base)\b/i);
  expect(html).not.toMatch(/@import|url\((?!#)|\b(src|href|srcset)=/i);
  expect(html.match(/<figure>/g)).toHaveLength(figures);
  expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/);
}
