import { type AirState, airStateFields } from '../inputs/air.js';
import { type Delivery, deliveryFields } from '../inputs/delivery.js';
import { type Declared, optional, partial, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type Launch, readLaunch } from '../inputs/launch.js';
import { readOptions, readRecord } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { type ResolvedScene, resolveScene, type Scene } from '../scene/scene.js';
import type { Shot, ShotOptions } from '../shot/index.js';
import { createPlayer } from '../shot/player.js';
import { type ShotSettings, shotOptionFields, shotSettings } from '../shot/shot-options.js';
import { readStart, type Start } from '../shot/start.js';
import { requireFlyable } from '../shot/struck-launch.js';
import { createWalk, type Walk } from '../shot/walk.js';
import { numbersOf } from '../strike/delivery.js';
import { spinShare } from '../strike/spin-share.js';
import { createStriker } from '../strike/striker.js';
import {
  type Angle,
  type AngularSpeed,
  degrees,
  feet,
  type Length,
  metresPerSecond,
  millimetres,
  mph,
  rpm,
  type Speed,
  si,
} from '../units/index.js';
import { changedAir } from './weather.js';

/** What a shot comes to, or by how much it changes. */
export interface ShotOutcome {
  /** Ball speed [m/s]. */
  readonly ballSpeed: Speed;
  /** Launch angle [rad]. */
  readonly launchAngle: Angle;
  /** Launch direction [rad], + right. */
  readonly launchDirection: Angle;
  /** Spin rate [rad/s]. */
  readonly spinRate: AngularSpeed;
  /** Carry [m]. */
  readonly carry: Length;
  /** Total [m]; the run in it is good to ±25 %. */
  readonly total: Length;
  /** Sideways position at rest [m], + right. */
  readonly side: Length;
  /** Apex [m]. */
  readonly apex: Length;
  /** Descent angle [rad]. */
  readonly descentAngle: Angle;
}

/** What is changed in a row of {@link Sensitivities}. */
export type SensitivityChange =
  | 'clubSpeed'
  | 'attackAngle'
  | 'attackWithLoft'
  | 'clubPath'
  | 'faceAngle'
  | 'dynamicLoft'
  | 'toe'
  | 'high'
  | 'ballSpeed'
  | 'launchAngle'
  | 'launchDirection'
  | 'spinRate'
  | 'spinAxisTilt'
  | 'temperature'
  | 'altitude'
  | 'headwind';

/** The same should the strike spin one standard error less or more than the model has it (`strike.spinBand`). */
export interface BySpin {
  /** With less spin. */
  readonly less: ShotOutcome;
  /** With more. */
  readonly more: ShotOutcome;
}

/** One change and what it is worth. */
export interface Sensitivity {
  /** What is changed. */
  readonly change: SensitivityChange;
  /** The step in words, for example `+1 mph club speed`. */
  readonly label: string;
  /** Size of the step, SI. */
  readonly step: number;
  /** Difference that the whole step makes. */
  readonly difference: ShotOutcome;
  /** Difference that the opposite step makes: a curved effect has not just its sign turned. */
  readonly opposite: ShotOutcome;
  /**
   * Derivative times the step: what a very small change is worth, scaled up. Central differences with one Richardson
   * extrapolation, good to four digits or more; of `total` and `side` only where the count of bounces does not change.
   */
  readonly slope: ShotOutcome;
  /** {@link Sensitivity.difference} as far as the spin of the strike is known; absent when the shot starts from a launch. */
  readonly bySpin?: BySpin;
}

/** What {@link sensitivities} returns. */
export interface Sensitivities {
  /** The shot that everything is compared with. */
  readonly shot: Shot;
  /** What it comes to. */
  readonly base: ShotOutcome;
  /** {@link Sensitivities.base} as far as the spin of the strike is known; absent when the shot starts from a launch. */
  readonly bySpin?: BySpin;
  /** One row a change. */
  readonly rows: readonly Sensitivity[];
}

/** Options of {@link sensitivities}. */
export interface SensitivityOptions extends ShotOptions {
  /**
   * Weather from which the scene's air was made, so that warmer and higher air start from it; default 20 °C,
   * 1013.25 hPa, 50 %.
   */
  readonly weather?: Partial<AirState>;
}

/** Declaration of {@link SensitivityOptions}. @internal */
export const sensitivityOptionFields: Declared<SensitivityOptions> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  weather: optional(record(partial(airStateFields), 'weather')),
}));

type Units = Readonly<Record<SensitivityChange, number>>;
type StepTable = readonly (readonly [change: SensitivityChange, step: number, label: string])[];

const AROUND: StepTable = /* @__PURE__ */ frozen(() => [
  ['temperature', 10, '+10 °C'],
  ['altitude', feet(1000), '+1000 ft of altitude'],
  ['headwind', metresPerSecond(5), '5 m/s more headwind'],
]);
const CLUB: StepTable = /* @__PURE__ */ frozen(() => [
  ['clubSpeed', mph(1), '+1 mph club speed'],
  ['attackAngle', degrees(1), '+1° attack, same dynamic loft'],
  ['attackWithLoft', degrees(1), '+1° attack, loft goes with it'],
  ['dynamicLoft', degrees(1), '+1° dynamic loft'],
  ['faceAngle', degrees(1), 'face 1° more to the right'],
  ['clubPath', degrees(1), 'path 1° more to the right'],
  ['toe', millimetres(5), '5 mm toward the toe'],
  ['high', millimetres(5), '5 mm higher on the face'],
  ['spinRate', rpm(100), '+100 rpm'],
]);
const BALL: StepTable = /* @__PURE__ */ frozen(() => [
  ['ballSpeed', mph(1), '+1 mph ball speed'],
  ['launchAngle', degrees(1), '+1° launch angle'],
  ['launchDirection', degrees(1), 'starts 1° more to the right'],
  ['spinRate', rpm(100), '+100 rpm'],
  ['spinAxisTilt', degrees(1), 'spin axis tilts 1° more to the right'],
]);
const NONE = /* @__PURE__ */ frozen(
  () => Object.fromEntries([...AROUND, ...CLUB, ...BALL].map(([change]) => [change, 0])) as Units,
);
/**
 * Bound on the integration error [m]: the finest that the compiled kernel flies by the default model. Errors of
 * neighbouring flights are nearly the same, so that differences keep more digits than this.
 */
const TOLERANCE = 2e-6;
/** Part of a step used for derivatives, beside the whole step, which is played anyway. */
const PART = 1 / 16;

/**
 * What one more mph, degree, 100 rpm, 5 mm off centre, 10 °C, 1000 ft or 5 m/s of wind is worth for this shot, all
 * else held. Each row gives the effect of the step itself, of the opposite step, and the slope.
 *
 * The temperature row is the air alone: the ball keeps the temperature it has, if any. A shot that starts from a delivery
 * rests on a predicted spin: `bySpin` gives shot and rows with as much less and more of it as is uncertain.
 *
 * @param from - The delivery or the launch to start from.
 * @param scene - Air, wind, ground, turf, ball and coefficient model.
 * @param options - Clubhead, weather, time limit; the tolerance is finer than a default one and not used for the rows.
 * @throws `FairflightError` as {@link playShot}; `outside-range` when a shot of the table does not land.
 */
export function sensitivities(
  from: Delivery | Launch,
  scene: Scene = {},
  options: SensitivityOptions = {},
): Sensitivities {
  const { weather = {}, ...given } = readOptions(sensitivityOptionFields, options);
  const settings = shotSettings(given);
  const around = resolveScene(scene);
  const start = readStart(from);
  const shot = createPlayer(around, settings).play(start);
  const fine = { ...settings, tolerance: TOLERANCE };
  // One walk a scene: only a change of air or wind needs another.
  const walks = new Map<string, Walk>();
  const walkIn = (change: Units): Walk => {
    const key = String(AROUND.map(([name]) => change[name]));
    const walk = walks.get(key) ?? createWalk(changedScene(around, weather, change), fine);
    walks.set(key, walk);
    return walk;
  };
  const struck = strikerFor(around, settings);
  const play = (change: Units, spin = 1): ShotOutcome =>
    outcomeOf(changedStart(start, change, struck, spin), walkIn(change));
  const at = (change: SensitivityChange, value: number, spin?: number): ShotOutcome =>
    play({ ...NONE, [change]: value }, spin);
  const base = play(NONE);
  const share = spinShare(settings.clubhead);
  const bySpin =
    start.delivery === undefined ? undefined : { less: play(NONE, 1 - share), more: play(NONE, 1 + share) };
  const table = start.delivery === undefined ? BALL : CLUB;
  const rows = [...table, ...AROUND].map(([change, step, label]): Sensitivity => {
    const [more, less] = [at(change, step), at(change, -step)];
    const near = combined(at(change, PART * step), at(change, -PART * step), minus);
    const far = combined(more, less, minus);
    return {
      change,
      label,
      step,
      difference: combined(more, base, minus),
      opposite: combined(less, base, minus),
      // Central differences, extrapolated: what is left goes with the square of both steps.
      slope: combined(near, far, (a, b) => (a / PART - PART ** 2 * b) / (2 * (1 - PART ** 2))),
      ...(bySpin && {
        bySpin: {
          less: combined(at(change, step, 1 - share), bySpin.less, minus),
          more: combined(at(change, step, 1 + share), bySpin.more, minus),
        },
      }),
    };
  });
  return { shot, base, ...(bySpin && { bySpin }), rows };
}

/** Strikes deliveries already read. */
function strikerFor(scene: ResolvedScene, settings: ShotSettings): (delivery: Delivery) => Launch {
  const striker = createStriker({ clubhead: settings.clubhead, ball: scene.ball });
  const player = createPlayer(scene, settings);
  return (delivery) => {
    const struck = striker.strike(numbersOf(delivery));
    // What can't be struck the player refuses in words.
    return typeof struck === 'string' ? player.strike(delivery).launch : struck.launch;
  };
}

/** The launch of a changed start; read again, since a step may lead out of the range. */
function changedStart(
  { delivery, launch }: Start,
  change: Units,
  struck: (delivery: Delivery) => Launch,
  spin: number,
): Launch {
  if (delivery === undefined) return readLaunch(changedLaunch(launch, change));
  const changed = readRecord(deliveryFields, changedDelivery(delivery, change), 'delivery');
  const modelled = struck(changed);
  const spun = { ...modelled, spinRate: si<AngularSpeed>(spin * modelled.spinRate) };
  return requireFlyable(changedLaunch(spun, change), changed.clubSpeed);
}

function changedDelivery(d: Delivery, c: Units): Delivery {
  const plus = <Q extends number>(value: Q | undefined, change: number): Q => ((value ?? 0) + change) as Q;
  return {
    ...d,
    clubSpeed: plus(d.clubSpeed, c.clubSpeed),
    attackAngle: plus(d.attackAngle, c.attackAngle + c.attackWithLoft),
    dynamicLoft: plus(d.dynamicLoft, c.dynamicLoft + c.attackWithLoft),
    clubPath: plus(d.clubPath, c.clubPath),
    faceAngle: plus(d.faceAngle, c.faceAngle),
    strikeOffset: {
      toe: plus(d.strikeOffset?.toe, c.toe),
      high: plus(d.strikeOffset?.high, c.high),
    },
  };
}

function changedLaunch(launch: Launch, c: Units): Launch {
  return {
    ...launch,
    ballSpeed: si(launch.ballSpeed + c.ballSpeed),
    launchAngle: si(launch.launchAngle + c.launchAngle),
    launchDirection: si((launch.launchDirection ?? 0) + c.launchDirection),
    spinRate: si(launch.spinRate + c.spinRate),
    spinAxisTilt: si((launch.spinAxisTilt ?? 0) + c.spinAxisTilt),
  };
}

function changedScene(scene: ResolvedScene, weather: Partial<AirState>, c: Units): ResolvedScene {
  return {
    ...scene,
    air: changedAir(scene.air, weather, c.temperature, c.altitude),
    windAlong: scene.windAlong - c.headwind,
  };
}

function outcomeOf(launch: Launch, walk: Walk): ShotOutcome {
  const { landed, carry, total, side, apex, descentAngle } = walk.play(launch, true);
  if (!landed) {
    throw refusal(
      'from',
      'a shot that does not land has no sensitivities',
      { hint: 'check the elevation of the ground and the time limit' },
      'outside-range',
    );
  }
  const { ballSpeed, launchAngle, launchDirection = si<Angle>(0), spinRate } = launch;
  return {
    ballSpeed,
    launchAngle,
    launchDirection,
    spinRate,
    carry: si(carry),
    total: si(total),
    side: si(side),
    apex: si(apex),
    descentAngle: si(descentAngle),
  };
}

const minus = (a: number, b: number): number => a - b;

function combined(a: ShotOutcome, b: ShotOutcome, by: (a: number, b: number) => number): ShotOutcome {
  const names = Object.keys(a) as (keyof ShotOutcome)[];
  return Object.fromEntries(names.map((name) => [name, by(a[name], b[name])])) as unknown as ShotOutcome;
}
