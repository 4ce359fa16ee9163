import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isFairflightError } from '../../../src/errors.js';
import { inspectSweepFile, type SweepFormat } from '../../../src/node/index.js';
import { type Stream, stream } from '../../../src/numerics/stream.js';
import { breakable } from '../faulty-disk.js';
import { formats, leftovers } from '../leftovers.js';
import { damage } from './damage.js';
import type { Order, Outcome } from './order.js';
import { bundleChild, obey } from './processes.js';

/** What a try does to a file. */
export const KINDS = ['kill', 'disk', 'unfinished damaged', 'finished damaged', 'two writers'] as const;
export type Kind = (typeof KINDS)[number];

/** What a try came to. */
export interface Verdict {
  readonly kind: Kind;
  /** Processes that were killed, or ended in a typed error. */
  readonly killed: number;
  readonly refused: number;
  /** What must not be; empty when all is well. */
  readonly wrong: readonly string[];
}

/** A folder to try in, the program to kill, and what its files must be. */
export interface Bench {
  readonly folder: string;
  readonly child: string;
  readonly whole: Readonly<Record<SweepFormat, readonly Buffer[]>>;
  /** How long one file takes [ms]. */
  readonly took: number;
}

const SEEDS = [1, 2] as const;

/** Writes every file once in peace. */
export async function openBench(folder: string): Promise<Bench> {
  const child = await bundleChild(folder);
  let took = 0;
  const whole = {} as Record<SweepFormat, Buffer[]>;
  for (const format of formats) {
    whole[format] = [];
    for (const seed of SEEDS) {
      const path = join(folder, `whole-${seed}.${format}`);
      const outcome = await obey(child, { path, seed, how: {} });
      if (outcome.kind !== 'done') throw new Error(`not even in peace: ${JSON.stringify(outcome)}`);
      took = outcome.took;
      whole[format].push(readFileSync(path));
    }
  }
  return { folder, child, whole, took };
}

/** The try number `number` of a seed: the same each time, but for the moment at which the system kills. */
export async function attempt(bench: Bench, seed: number, number: number): Promise<Verdict> {
  const random = stream(seed, number);
  const kind = KINDS[number % KINDS.length] as Kind;
  const format = formats[random.integer(formats.length)] as SweepFormat;
  const folder = join(bench.folder, `try-${number}`);
  mkdirSync(folder);
  const scene = new Try(bench, join(folder, `x.${format}`), format, random);
  await scene[kind]();
  if (scene.wrong.length === 0) rmSync(folder, { recursive: true });
  const count = (of: Outcome['kind']): number => scene.outcomes.filter((each) => each.kind === of).length;
  return { kind, killed: count('killed'), refused: count('refused'), wrong: scene.wrong };
}

/** One try at one path. */
class Try {
  readonly outcomes: Outcome[] = [];
  readonly wrong: string[] = [];

  constructor(
    readonly bench: Bench,
    readonly path: string,
    readonly format: SweepFormat,
    readonly random: Stream,
  ) {}

  async kill(): Promise<void> {
    const kills = 1 + this.random.integer(3);
    for (let i = 0; i < kills; i++) await this.run({ resume: i > 0 }, 1, this.moment());
    await this.end();
  }

  async disk(): Promise<void> {
    const { steps, codes } = breakable;
    const [step, most] = steps[this.random.integer(steps.length)] as (typeof steps)[number];
    const code = codes[this.random.integer(codes.length)] as string;
    const fault = { step, calls: this.random.integer(most), code };
    const outcome = await this.run({}, 1, undefined, fault);
    this.require(outcome.kind === 'refused' && outcome.code === 'system', 'a broken disk was not told');
    await this.end();
  }

  async 'unfinished damaged'(): Promise<void> {
    await this.run({}, 1, this.moment());
    for (const left of leftovers(this.path)) {
      for (const name of [['rows'], ['journal'], ['rows', 'journal']][this.random.integer(3)] as string[]) {
        damage(join(left, name), this.random);
      }
    }
    await this.end();
  }

  async 'finished damaged'(): Promise<void> {
    writeFileSync(this.path, this.bench.whole[this.format][0] as Buffer);
    if (damage(this.path, this.random) && existsSync(this.path)) {
      const state = await inspectSweepFile(this.path).then(
        (found) => found.state,
        (error: unknown) => (isFairflightError(error) ? 'refused' : String(error)),
      );
      this.require(['cut-short', 'damaged', 'refused'].includes(state), `a damaged file is called ${state}`);
      const outcome = await this.run({ resume: true }, 1);
      this.require(outcome.kind === 'refused', 'a damaged file was gone on with');
    }
    await this.end();
  }

  async 'two writers'(): Promise<void> {
    const hows = [{}, { resume: true }, { overwrite: true }, { resume: true, overwrite: true }];
    const how = (): Order['how'] => hows[this.random.integer(hows.length)] as Order['how'];
    // One in three begins where a crash left something.
    if (this.random.integer(3) === 0) await this.run({}, 1 + this.random.integer(2), this.moment());
    const both = await Promise.all(
      SEEDS.map(async (_, i) => {
        await new Promise((resume) => setTimeout(resume, i * this.random.integer(2) * this.moment()));
        const killAfter = this.random.integer(4) === 0 ? this.moment() : undefined;
        return this.run(how(), 1 + this.random.integer(2), killAfter);
      }),
    );
    if (existsSync(this.path)) {
      const bytes = readFileSync(this.path);
      this.require(
        this.bench.whole[this.format].some((whole) => whole.equals(bytes)),
        'the file is neither of the two studies',
      );
    } else {
      this.require(!both.some(({ kind }) => kind === 'done'), 'the file of a writer that was done is gone');
    }
    await this.end(true);
  }

  /** Runs a process; nothing but its own file may lie under the path when it is done. */
  private async run(
    how: Order['how'],
    seed: number,
    killAfter?: number,
    fault?: Order['fault'],
  ): Promise<Outcome> {
    const order: Order = { path: this.path, seed, how, ...(fault !== undefined && { fault }) };
    const outcome = await obey(this.bench.child, order, killAfter);
    this.outcomes.push(outcome);
    this.require(outcome.kind !== 'untyped', `untyped: ${JSON.stringify(outcome)}`);
    return outcome;
  }

  /** In the end the same call brings the file to its end, the same bytes as in peace, and nothing beside it. */
  private async end(overwrite = false): Promise<void> {
    let outcome = await this.run({ resume: true, overwrite }, 1);
    // What was refused in words is begun anew.
    if (outcome.kind === 'refused') outcome = await this.run({ overwrite: true }, 1);
    this.require(outcome.kind === 'done', `not done in the end: ${JSON.stringify(outcome)}`);
    if (outcome.kind !== 'done') return;
    this.require(
      readFileSync(this.path).equals(this.bench.whole[this.format][0] as Buffer),
      'other bytes than in peace',
    );
    this.require(leftovers(this.path).length === 0, 'something is left beside the file');
  }

  private moment(): number {
    return 1.1 * this.bench.took * this.random.uniform();
  }

  private require(holds: boolean, otherwise: string): void {
    if (!holds) this.wrong.push(`${this.path}: ${otherwise}`);
  }
}
