import type { CompiledLaw } from '../aerodynamics/compiled-law.js';
import { REFERENCE_HEIGHT, windFoot } from '../air/wind-ratio.js';
import type { FlightProblem } from '../flight/problem.js';
import { STANDARD_GRAVITY } from '../gravity.js';
import type { WindProfile } from '../inputs/wind.js';
import type { ResolvedScene } from '../scene/scene.js';
import { INPUTS, type InputKind, type InputName } from './wgsl/problem.js';

/** Where an input of a flight comes from. @internal */
export type Source =
  | { readonly kind: 'fixed'; readonly value: number }
  | {
      readonly kind: 'column';
      readonly numbers: Float32Array;
      /** Flights for which a number stays, before the next of the column comes. */
      readonly repeat?: number;
    }
  | { readonly kind: 'drawn'; readonly dimension: number; readonly from: number; readonly width: number };

/** Sources that differ from the scene's own numbers. @internal */
export type Sources = Partial<Readonly<Record<InputName, Source>>>;

/** Every input's source: what is not said is the scene's number, of a launch 0. @internal */
export function allSources(
  { air, model, windAlong, windAcross, elevation }: ResolvedScene,
  said: Sources,
): readonly Source[] {
  const own: Partial<Record<InputName, number>> = {
    airDensity: air.density,
    airViscosity: air.viscosity,
    windAlong,
    windAcross,
    elevation,
    dragScale: 1,
    liftScale: 1,
    spinDecay: model.spinDecay,
  };
  return INPUTS.map((name) => said[name] ?? { kind: 'fixed', value: own[name] ?? 0 });
}

/** @internal */
export function kindsOf(sources: readonly Source[]): readonly InputKind[] {
  return sources.map(({ kind }) => kind);
}

/** What differs from run to run of one kernel. @internal */
export interface Counts {
  readonly flights: number;
  readonly first?: number;
  readonly each?: number;
}

const VECTORS = 2 * INPUTS.length + 7;

/** Packs the `Scene` of problem.ts; the columns lie one after another, in the order of the sources. @internal */
export function packScene(
  problem: FlightProblem,
  { ball, model }: ResolvedScene,
  law: CompiledLaw | undefined,
  timeLimit: number,
  sources: readonly Source[],
  { flights, first = 0, each = 1 }: Counts,
): ArrayBuffer {
  const floats = new Float32Array(4 * VECTORS);
  const wholes = new Uint32Array(floats.buffer);
  let offset = 0;
  sources.forEach((source, k) => {
    const place = 4 * (INPUTS.length + k);
    if (source.kind === 'fixed') floats[4 * k] = source.value;
    else if (source.kind === 'column') {
      wholes.set([offset, source.repeat ?? 1, source.numbers.length], place);
      offset += source.numbers.length;
    } else {
      floats.set([source.from, source.width], 4 * k);
      wholes[place] = source.dimension;
    }
  });
  const at = (vector: number): number => 4 * (2 * INPUTS.length + vector);
  wholes.set([flights, first, each], at(0));
  floats.set([(Math.PI * ball.radius * ball.radius) / (2 * ball.mass), ball.radius], at(1));
  floats.set([problem.slopeX, problem.slopeZ, STANDARD_GRAVITY, timeLimit], at(2));
  const { reynolds, spinRatio } = model.validity;
  floats.set([reynolds.min, reynolds.max, spinRatio.min, spinRatio.max], at(3));
  if (law !== undefined) {
    floats.set([law.cellsPerSpinRatio, law.cellsPerReynolds], at(4));
    floats.set([law.spinCells.low, law.spinCells.high, law.reynoldsCells.low, law.reynoldsCells.high], at(5));
  }
  if (problem.profile !== undefined) floats.set(profileNumbers(problem.profile), at(6));
  return floats.buffer;
}

/** `scene.profile`, see wind.ts. */
function profileNumbers(profile: WindProfile): readonly number[] {
  if (profile.kind === 'uniform') return [];
  const reference = profile.referenceHeight ?? REFERENCE_HEIGHT;
  if (profile.kind === 'power')
    return [profile.exponent, 0, reference ** -profile.exponent, windFoot(profile)];
  const { roughness, displacement = 0 } = profile;
  return [roughness, displacement, 1 / Math.log((reference - displacement) / roughness), windFoot(profile)];
}

/** The tables of a law in single precision, in the order of law.ts; made once for each law. @internal */
export function tableOf(law: CompiledLaw): Float32Array {
  let table = tables.get(law);
  if (table === undefined) {
    table = Float32Array.from([...law.spinTable, ...law.reynoldsTable]);
    tables.set(law, table);
  }
  return table;
}

const tables = new WeakMap<CompiledLaw, Float32Array>();
