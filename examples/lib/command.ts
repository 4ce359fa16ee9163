import { parseArgs } from 'node:util';
import { isFairflightError } from 'fairflight';
import { PROGRAMS, type ProgramName } from './programs.js';
import { remark, say } from './terminal.js';
import { UsageError } from './usage-error.js';

export { UsageError };

/** How a program ends. */
export const EXIT = {
  /** Everything was used. */
  done: 0,
  /** Done, but rows or columns of the input were left out; the summary says which. */
  partial: 1,
  /** Nothing could be done: bad usage, an unreadable file, no usable shot. */
  refused: 2,
  /** A fault of the program itself. */
  fault: 70,
} as const;

/** One option of the command line. */
export interface Option {
  readonly type: 'string' | 'boolean';
  /** What stands for the value in the help text. */
  readonly value?: string;
  readonly help: string;
  /** May be given several times. */
  readonly many?: true;
}

/** A program as a command. */
export interface Command<Name extends string> {
  readonly name: ProgramName;
  /** Usage without the program name, for example `[file.csv] [options]`. */
  readonly usage: string;
  readonly options: Readonly<Record<Name, Option>>;
  /** Text below the options. */
  readonly more?: string;
}

/** What the user typed. */
export interface Given<Name extends string> {
  readonly files: readonly string[];
  readonly text: (name: Name) => string | undefined;
  /** All values of an option that may be given several times. */
  readonly texts: (name: Name) => readonly string[];
  readonly flag: (name: Name) => boolean;
}

/** Runs a program: reads the command line, prints help, turns errors into one line and an exit code. */
export async function runCommand<Name extends string>(
  command: Command<Name>,
  main: (given: Given<Name>) => number | Promise<number>,
  args: readonly string[] = process.argv.slice(2),
): Promise<void> {
  try {
    const given = readArguments(command, args);
    process.exitCode = given === 'help' ? EXIT.done : await main(given);
  } catch (error) {
    const known = error instanceof UsageError || isFairflightError(error);
    remark(`${command.name}: ${known ? error.message : faultText(error)}\n`);
    process.exitCode = known ? EXIT.refused : EXIT.fault;
  }
}

function readArguments<Name extends string>(
  command: Command<Name>,
  args: readonly string[],
): Given<Name> | 'help' {
  const options: Record<string, { type: 'string' | 'boolean'; multiple?: boolean }> = {
    help: { type: 'boolean' },
  };
  for (const [name, { type, many = false }] of Object.entries<Option>(command.options)) {
    options[name] = { type, multiple: many };
  }
  let parsed: ReturnType<typeof parseArgs>;
  try {
    parsed = parseArgs({ args: protectSigns(args), options, allowPositionals: true });
  } catch (error) {
    throw new UsageError(
      `${error instanceof Error ? error.message : String(error)} (--help lists the options)`,
    );
  }
  const values = parsed.values as Readonly<Record<string, string | string[] | boolean | undefined>>;
  const isOn = (name: string): boolean => values[name] === true;
  if (isOn('help')) {
    say(helpText(command));
    return 'help';
  }
  return {
    files: parsed.positionals,
    text: (name) => {
      const value = values[name];
      return typeof value === 'string' ? value : undefined;
    },
    texts: (name) => {
      const value = values[name];
      return Array.isArray(value) ? value : [];
    },
    flag: isOn,
  };
}

/** `--attack -1.5deg` reads as two options to parseArgs; join a signed number to the option before it. */
function protectSigns(args: readonly string[]): string[] {
  const out: string[] = [];
  for (const arg of args) {
    const last = out.at(-1);
    const joins = /^-\d/.test(arg) && last !== undefined && /^--[a-z-]+$/.test(last);
    if (joins) out[out.length - 1] = `${last}=${arg}`;
    else out.push(arg);
  }
  return out;
}

function helpText<Name extends string>(command: Command<Name>): string {
  const rows = [
    ...Object.entries<Option>(command.options).map(([name, { value, help }]) => [
      `--${name}${value === undefined ? '' : ` ${value}`}`,
      help,
    ]),
    ['--help', 'print this text'],
  ] as const;
  const width = Math.max(...rows.map(([left = '']) => left.length));
  const list = rows.map(([left = '', right = '']) => `  ${left.padEnd(width)}  ${right}`);
  const codes = [
    '  0  done, everything in the input was used',
    '  1  done, but rows or columns of the input were left out (the summary says which and why)',
    '  2  nothing was done: bad usage, an unreadable file, or no usable shot',
  ];
  return [
    `${command.name}: ${PROGRAMS[command.name]}`,
    '',
    `Usage: npx fairflight ${command.name} ${command.usage}`,
    `In a clone of the sources: npm run ${command.name} -- ${command.usage}`,
    '',
    'Options:',
    ...list,
    '',
    'Exit codes:',
    ...codes,
    ...(command.more === undefined ? [] : ['', command.more]),
    '',
  ].join('\n');
}

function faultText(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}

/** One of a few names. @throws UsageError for any other text */
export function oneOf<Name extends string>(option: string, text: string, names: readonly Name[]): Name {
  const found = names.find((name) => name === text);
  if (found !== undefined) return found;
  throw new UsageError(`--${option} must be ${names.join(' or ')}, got ${JSON.stringify(text)}`);
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'you are not allowed to',
  EPERM: 'you are not allowed to',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of the path is a file',
  EEXIST: 'a file of that name is in the way',
  EROFS: 'the disk can only be read',
  ENOSPC: 'the disk is full',
  ENAMETOOLONG: 'the name is too long',
  EMFILE: 'too many files are open',
};

/** Why the system refused a file, in words. */
export function whyNot(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return REASONS[code] ?? 'the system refused it';
}
