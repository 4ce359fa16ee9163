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
 * How each row's scene is made from the setup's and the factors of air, wind, ground and ball.
 * @throws {@link FairflightError} `invalid-input` for factors that contradict each other or the setup's scene
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
  if (only === undefined) throw windContradiction();
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

const WEATHER = ['air.temperature', 'air.pressure', 'air.relativeHumidity', 'air.altitude'] as const;
const DIRECT = ['air.density', 'air.viscosity'] as const;

function airReader(inputs: Inputs, base: Air | undefined): Reader<Air> {
  const weather = WEATHER.filter((name) => inputs.find(name) !== undefined);
  const direct = DIRECT.filter((name) => inputs.find(name) !== undefined);
  if (weather.length > 0 && direct.length > 0) throw contradiction(weather[0], direct[0]);
  if (weather.length === 0) return recordReader(inputs.group('air'), base ?? defaultAir);
  if (base !== undefined) throw contradiction(weather[0], 'scene.air');
  if (inputs.find('air.altitude') && inputs.find('air.pressure')) {
    throw contradiction('air.altitude', 'air.pressure');
  }
  const given = inputs.group('air');
  const high = inputs.find('air.altitude') !== undefined;
  const at = (columns: readonly Float64Array[], i: number): Air =>
    high
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
    const other = along?.name ?? across?.name;
    if (other !== undefined) throw contradiction('wind.speed', other);
    // A scene's wind may lend its profile, but not a second speed.
    if ((scene.wind?.along ?? 0) !== 0 || (scene.wind?.across ?? 0) !== 0) {
      throw contradiction('wind.speed', 'scene.wind');
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
  // Whether a profile's lengths go together can differ from row to row.
  const checked = (columns: readonly Float64Array[], i: number): RowWind | undefined => {
    const wind = make(columns, i);
    if (wind.profile === undefined) return wind;
    try {
      const { windAlong, windAcross, profile } = wind;
      requireSoundProfile({ along: si(windAlong), across: si(windAcross), profile }, 'wind');
      return wind;
    } catch (error) {
      if (isFairflightError(error)) return undefined;
      throw error;
    }
  };
  const all = inputs.group('wind');
  if (anyVaries(all))
    return { varies: true, at: anyVaries(shape) || baseProfile !== undefined ? checked : make };
  const only = checked([], 0);
  return { varies: false, at: () => only };
}

/** The profile that the profile factors change: the scene's, or the kind that the factors speak of. */
function profileBase(inputs: Inputs, base: WindProfile | undefined): WindProfile | undefined {
  const has = (name: FactorName): boolean => inputs.find(name) !== undefined;
  const log = has('wind.profile.roughness') || has('wind.profile.displacement');
  const power = has('wind.profile.exponent');
  if (log && power) throw contradiction('wind.profile.roughness', 'wind.profile.exponent');
  const kind = base?.kind ?? (log ? 'log' : power ? 'power' : undefined);
  const wrong = (log && kind !== 'log') || (power && kind !== 'power');
  if (wrong) throw contradiction(log ? 'wind.profile.roughness' : 'wind.profile.exponent', 'scene.wind');
  if (has('wind.profile.referenceHeight') && (kind === undefined || kind === 'uniform')) {
    throw missing('wind.profile.referenceHeight', 'wind.profile.roughness or wind.profile.exponent');
  }
  if (kind === 'log' && base === undefined && !has('wind.profile.roughness')) {
    throw missing('wind.profile.displacement', 'wind.profile.roughness');
  }
  if (base !== undefined) return base;
  if (kind === 'log') return { kind: 'log', roughness: si(Number.NaN) };
  return kind === 'power' ? { kind: 'power', exponent: Number.NaN } : undefined;
}

function pair(inputs: Inputs, first: FactorName, second: FactorName): readonly [Input, Input] | undefined {
  const a = inputs.find(first);
  const b = inputs.find(second);
  if (a === undefined && b === undefined) return undefined;
  if (a === undefined) throw missing(second, first);
  if (b === undefined) throw missing(first, second);
  return [a, b];
}

function contradiction(one: string | undefined, other: string | undefined): FairflightError {
  return refusal(one ?? '', `${one} and ${other} contradict each other: give one of them`);
}

function missing(has: string, needs: string): FairflightError {
  return refusal(has, `${has} needs ${needs} beside it`);
}

function windContradiction(): FairflightError {
  return refusal(
    'wind.profile.referenceHeight',
    'wind.profile.referenceHeight must lie above displacement + roughness',
    {},
    'outside-range',
  );
}
