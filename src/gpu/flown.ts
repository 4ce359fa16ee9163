import { type CompiledLaw, compiledLaw } from '../aerodynamics/compiled-law.js';
import { OUTSIDE } from '../flight/engine/step-decisions.js';
import { settingsOf } from '../flight/fly.js';
import {
  type ConditionArrays,
  type FlightColumns,
  flyColumns,
  type LaunchArrays,
} from '../flight/fly-many.js';
import { type FlightProblem, sceneProblem } from '../flight/problem.js';
import { refusal } from '../inputs/refuse.js';
import type { ResolvedScene } from '../scene/scene.js';
import type { Card, CardTable } from './card.js';
import { columnsText, flightsText, GROUP, isWrittenOut, type Quantity } from './kernel-text.js';
import { allSources, kindsOf, packScene, type Source, type Sources, tableOf } from './scene-numbers.js';

/** What all runs of one question share. @internal */
export interface Flights {
  readonly scene: ResolvedScene;
  readonly problem: FlightProblem;
  readonly law: CompiledLaw | undefined;
  readonly timeLimit: number;
  readonly sources: readonly Source[];
  /** The text of the kernel up to its entry. */
  readonly text: string;
  /** The table of the law, where it is read from one. */
  readonly tables: readonly CardTable[];
}

/**
 * Prepares flights through a scene for a card.
 * @throws FairflightError `unsupported` for a coefficient model that is too rough for a table
 * @internal
 */
export function prepareFlights(scene: ResolvedScene, timeLimit: number, said: Sources): Flights {
  const problem = sceneProblem(scene);
  // A calm scene drops its profile, which a wind from elsewhere needs.
  if (said.windAlong !== undefined || said.windAcross !== undefined) problem.profile = scene.profile;
  const law = isWrittenOut(problem) ? undefined : compiledLaw(problem.model);
  if (law === undefined && !isWrittenOut(problem)) {
    throw refusal(
      'scene.aerodynamics',
      `the coefficient model ${problem.model.id} cannot be put into a table, which a graphics card flies by`,
      { value: problem.model.id, hint: 'flyMany flies it on the processor' },
      'unsupported',
    );
  }
  const sources = allSources(scene, said);
  const text = flightsText(problem, law, kindsOf(sources));
  const tables: readonly CardTable[] = law === undefined ? [] : [{ binding: 3, numbers: tableOf(law) }];
  return { scene, problem, law, timeLimit, sources, text, tables };
}

/** Most flights of one run: more gain nothing. */
const MOST_FLIGHTS = 2 ** 20;

/** Most flights of one run with so many columns in or out. @internal */
export function mostFlights(card: Card, columns: number): number {
  return Math.min(MOST_FLIGHTS, Math.floor(card.room / (4 * columns)));
}

/** Flies the flights of one run; `read` is given a column for each quantity, which is gone when it returns. @internal */
export function flyRun(
  card: Card,
  { scene, problem, law, timeLimit, sources, text, tables }: Flights,
  quantities: readonly Quantity[],
  flights: number,
  read: (columnOf: (name: Quantity) => Float32Array, flags: Uint32Array) => void,
): Promise<void> {
  const at = (name: Quantity): number => 4 * flights * quantities.indexOf(name);
  return card.run(
    {
      kernel: columnsText(text, quantities),
      scene: packScene(problem, scene, law, timeLimit, sources, { flights }),
      inputs: sources.flatMap((source) => (source.kind === 'column' ? [source.numbers] : [])),
      tables,
      bytes: 4 * quantities.length * flights,
      groups: Math.ceil(flights / GROUP),
    },
    (results) =>
      read(
        (name) => new Float32Array(results, at(name), flights),
        new Uint32Array(results, at('flags'), flights),
      ),
  );
}

/** Notes how flights ended, by their flags, and which the card left to the processor. @internal */
export function noteEndings(
  flags: Uint32Array,
  start: number,
  out: Pick<FlightColumns, 'ended' | 'outsideData'>,
  left: number[],
): void {
  for (let i = 0; i < flags.length; i++) {
    const bits = flags[i] as number;
    out.ended[start + i] = bits & 3;
    out.outsideData[start + i] = bits >> 2;
    if ((bits & 3) === OUTSIDE) left.push(start + i);
  }
}

/** Flies on the processor what the card left, into its rows. @internal */
export function flyLeft(
  { scene, timeLimit }: Pick<Flights, 'scene' | 'timeLimit'>,
  rows: readonly number[],
  launches: LaunchArrays,
  conditions: ConditionArrays,
  out: Partial<FlightColumns>,
): void {
  if (rows.length === 0) return;
  const flown = flyColumns(scene, launches, conditions, settingsOf({ timeLimit }));
  for (const name of Object.keys(out) as (keyof FlightColumns)[]) {
    rows.forEach((row, i) => {
      (out[name] as Float64Array)[row] = flown[name][i] as number;
    });
  }
}
