import { airAt, airAtAltitude, defaultAir } from '../../air/index.js';
import { requireSoundProfile } from '../../air/sound-wind.js';
import { type FairflightError, isFairflightError } from '../../errors.js';
import type { Air } from '../../inputs/air.js';
import { refusal } from '../../inputs/refuse.js';
import type { WindProfile } from '../../inputs/wind.js';
import { type ReadScene, type ResolvedScene, withDefaults } from '../../scene/scene.js';
import { si } from '../../units/index.js';
import type { FactorName } from '../factors.js';
import { anyVaries, type Input, type Inputs, valueAt, withInputs } from '../inputs.js';

/** The scene of each row. @internal */
export interface SceneRows {
  /** True when every row has the same scene. */
  readonly constant: boolean;
  /** True when at most air, wind speed and elevation change from row to row: what a batch of flights takes as columns. */
  readonly batch: boolean;
  /** Scene of row i of a chunk; undefined where the row's figures cannot go together. */
  readonly at: (columns: readonly Float64Array[], i: number) => ResolvedScene | undefined;
}

type Reader<T> = {
  readonly varies: boolean;
  readonly at: (columns: readonly Float64Array[], i: number) => T;
};

/**
 * How each row's scene is made from that of the sweep and the factors of air, wind, ground and ball.
 * @throws `FairflightError` `invalid-input` for factors that contradict each other or the scene
 * @internal
 */
export function sceneRows(inputs: Inputs, scene: ReadScene): SceneRows {
  const base = withDefaults(scene);
  const { elevation, slope, crossSlope } = base;
  const readers = {
    air: airReader(inputs, scene.air),
    wind: windReader(inputs, scene),
    ground: recordReader(inputs.group('ground'), { elevation, slope, crossSlope }),
    ball: recordReader(inputs.group('ball'), base.ball),
  };
  const make = (columns: readonly Float64Array[], i: number): ResolvedScene | undefined => {
    const wind = readers.wind.at(columns, i);
    if (wind === undefined) return undefined;
    const air = readers.air.at(columns, i);
    return { ...base, air, ...wind, ...readers.ground.at(columns, i), ball: readers.ball.at(columns, i) };
  };
  const varying = (group: string): readonly Input[] =>
    inputs.group(group).filter((input) => input.column >= 0);
  const batch =
    varying('ball').length === 0 &&
    !varying('wind').some(({ name }) => name.startsWith('wind.profile.')) &&
    !varying('ground').some(({ name }) => name !== 'ground.elevation');
  if (Object.values(readers).some((reader) => reader.varies))
    return { constant: false, batch, at: kept(make) };
  const only = make([], 0);
  return { constant: true, batch, at: () => only };
}

/** Remembers the scenes of the chunk at hand, which every stage of the walk asks for. */
function kept(make: SceneRows['at']): SceneRows['at'] {
  let chunk: readonly Float64Array[] | undefined;
  let scenes: (ResolvedScene | undefined)[] = [];
  return (columns, i) => {
    if (columns !== chunk) {
      chunk = columns;
      scenes = [];
    }
    scenes[i] ??= make(columns, i);
    return scenes[i];
  };
}

function recordReader<T extends object>(inputs: readonly Input[], base: T): Reader<T> {
  if (!anyVaries(inputs)) {
    const only = withInputs(base, inputs, [], 0);
    return { varies: false, at: () => only };
  }
  return { varies: true, at: (columns, i) => withInputs(base, inputs, columns, i) };
}

function airReader(inputs: Inputs, base: Air | undefined): Reader<Air> {
  const given = inputs.group('air');
  const direct = given.find(({ name }) => name === 'air.density' || name === 'air.viscosity');
  const weather = given.find((input) => input.name !== 'air.density' && input.name !== 'air.viscosity');
  if (weather === undefined) return recordReader(given, base ?? defaultAir);
  if (direct !== undefined) throw contradiction(weather, direct);
  if (base !== undefined) throw contradiction(weather, 'scene.air');
  const altitude = inputs.find('air.altitude');
  const pressure = inputs.find('air.pressure');
  if (altitude !== undefined && pressure !== undefined) throw contradiction(altitude, pressure);
  const at = (columns: readonly Float64Array[], i: number): Air =>
    altitude !== undefined
      ? airAtAltitude(withInputs({ altitude: si(0) }, given, columns, i))
      : airAt(withInputs({}, given, columns, i));
  if (anyVaries(given)) return { varies: true, at };
  const only = at([], 0);
  return { varies: false, at: () => only };
}

type RowWind = Pick<ResolvedScene, 'windAlong' | 'windAcross' | 'profile'>;

function windReader(inputs: Inputs, scene: ReadScene): Reader<RowWind | undefined> {
  const polar = pair(inputs, 'wind.speed', 'wind.from');
  const along = inputs.find('wind.along');
  const across = inputs.find('wind.across');
  if (polar !== undefined) {
    const other = along ?? across;
    if (other !== undefined) throw contradiction(polar[0], other);
    // A scene's wind may lend its profile, but not a second speed.
    if ((scene.wind?.along ?? 0) !== 0 || (scene.wind?.across ?? 0) !== 0) {
      throw contradiction(polar[0], 'scene.wind');
    }
  }
  const shape = inputs.group('wind').filter(({ name }) => name.startsWith('wind.profile.'));
  const baseProfile = profileBase(inputs, scene.wind?.profile);
  const profileAt = (columns: readonly Float64Array[], i: number): WindProfile | undefined =>
    baseProfile === undefined ? undefined : withInputs({ profile: baseProfile }, shape, columns, i).profile;
  const make = (columns: readonly Float64Array[], i: number): RowWind => {
    const profile = profileAt(columns, i);
    if (polar === undefined) {
      return {
        windAlong: along === undefined ? (scene.wind?.along ?? 0) : valueAt(along, columns, i),
        windAcross: across === undefined ? (scene.wind?.across ?? 0) : valueAt(across, columns, i),
        profile,
      };
    }
    const speed = valueAt(polar[0], columns, i);
    const from = valueAt(polar[1], columns, i);
    // Adding 0 turns −0 into 0.
    return { windAlong: 0 - speed * Math.cos(from), windAcross: 0 - speed * Math.sin(from), profile };
  };
  const all = inputs.group('wind');
  if (anyVaries(all)) {
    // Whether a profile makes a wind can differ from row to row.
    const sound = (columns: readonly Float64Array[], i: number): RowWind | undefined => {
      const wind = make(columns, i);
      return faultOf(wind) === undefined ? wind : undefined;
    };
    return { varies: true, at: baseProfile === undefined ? make : sound };
  }
  const only = make([], 0);
  const fault = faultOf(only);
  if (fault !== undefined)
    throw refusal((shape[0] ?? all[0])?.path ?? 'scene.wind', fault.message, {}, fault.code);
  return { varies: false, at: () => only };
}

/** What keeps a wind from being computed. */
function faultOf({ windAlong, windAcross, profile }: RowWind): FairflightError | undefined {
  if (profile === undefined) return undefined;
  try {
    requireSoundProfile({ along: si(windAlong), across: si(windAcross), profile }, 'wind');
    return undefined;
  } catch (error) {
    if (isFairflightError(error)) return error;
    throw error;
  }
}

/** The profile that the profile factors change: the scene's, or the kind that the factors speak of. */
function profileBase(inputs: Inputs, base: WindProfile | undefined): WindProfile | undefined {
  const roughness = inputs.find('wind.profile.roughness');
  const displacement = inputs.find('wind.profile.displacement');
  const exponent = inputs.find('wind.profile.exponent');
  const height = inputs.find('wind.profile.referenceHeight');
  const log = roughness ?? displacement;
  if (log !== undefined && exponent !== undefined) throw contradiction(log, exponent);
  const asked = log === undefined ? exponent && 'power' : 'log';
  const kind = base?.kind ?? asked;
  const shape = log ?? exponent;
  if (shape !== undefined && kind !== asked) throw contradiction(shape, 'scene.wind');
  if (height !== undefined && (kind === undefined || kind === 'uniform')) {
    throw missing(height, 'wind.profile.roughness or wind.profile.exponent');
  }
  if (base === undefined && displacement !== undefined && roughness === undefined) {
    throw missing(displacement, 'wind.profile.roughness');
  }
  if (base !== undefined) return base;
  if (kind === 'log') return { kind: 'log', roughness: si(Number.NaN) };
  return kind === 'power' ? { kind: 'power', exponent: Number.NaN } : undefined;
}

function pair(inputs: Inputs, first: FactorName, second: FactorName): readonly [Input, Input] | undefined {
  const a = inputs.find(first);
  const b = inputs.find(second);
  if (a !== undefined && b !== undefined) return [a, b];
  if (a !== undefined) throw missing(a, second);
  if (b !== undefined) throw missing(b, first);
  return undefined;
}

function contradiction({ name, path }: Input, other: Input | string): FairflightError {
  const text = typeof other === 'string' ? other : other.name;
  return refusal(path, `${name} and ${text} contradict each other: give one of them`);
}

function missing({ name, path }: Input, needs: string): FairflightError {
  return refusal(path, `${name} needs ${needs} beside it`);
}
