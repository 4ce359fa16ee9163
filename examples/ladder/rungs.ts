import { deviation, mean } from 'd3-array';
import {
  bestLoft,
  type Clubhead,
  isFairflightError,
  type Launch,
  type LoftOptimum,
  type MaximisedDistance,
  type PlayerHand,
  playShot,
  type Scene,
  type Shot,
  strike,
} from 'fairflight';
import {
  type BandSummary,
  inferDynamicLoft,
  launchOf,
  type MeasuredShot,
  type SampleEstimate,
  type SampleEstimates,
  type SessionSummary,
} from 'fairflight/session';
import { type Angle, degrees, type Length, type Speed, si } from 'fairflight/units';

/** Head, place and settings of the ladder. */
export interface LadderSetup {
  readonly clubhead: Clubhead;
  readonly scene: Scene;
  readonly hand: PlayerHand;
  readonly maximise: MaximisedDistance;
  /** Outliers count in the means too. */
  readonly keepOutliers: boolean;
}

/** What a driver adds to its nominal loft where neither launch nor dynamic loft was measured: an assumption. */
export const ASSUMED_ADDED_LOFT: Angle = degrees(3);

/** A shot of the file, and the model's flight of its launch. */
export interface FlownShot {
  readonly index: number;
  readonly measured: MeasuredShot;
  readonly launch: Launch;
  readonly model: Shot;
  /** True when the launch was measured; else it comes from the strike model. */
  readonly launchMeasured: boolean;
  readonly outlier: boolean;
}

/** Model beside measurement over the shots of a band that have both, SI. */
export interface Disagreement {
  readonly count: number;
  /** Mean as measured. */
  readonly measured: number;
  /** Mean of model less measured. */
  readonly mean: number;
  /** Spread of that difference from shot to shot; absent for a single shot. */
  readonly sd?: number;
}

/** Apexes and descents that keep the distance within 1 % of the best this head can give at this speed. */
export interface FlightWindow {
  readonly apex: readonly [low: Length, high: Length];
  readonly descent: readonly [low: Angle, high: Angle];
  /** At an edge: the mean lies outside, but its 95 % interval reaches in. */
  readonly verdict: 'inside' | 'at the low edge' | 'at the high edge' | 'too low' | 'too high';
}

/** What the best loft would do for a band. */
export interface LoftAnswer {
  readonly optimum: LoftOptimum;
  readonly delivered: Angle;
  readonly nominalNow: Angle;
  readonly nominalBest: Angle;
  /** Carry the best loft gives over the model's flight of the launch as measured, and its two parts. */
  readonly carryLeft: { readonly all: Length; readonly loft: Length; readonly strike: Length };
  readonly totalLeft: Length;
  readonly window: FlightWindow | undefined;
  readonly verdict: 'fits' | 'too little loft' | 'too much loft';
}

/** One step of the ladder. */
export interface Rung {
  readonly name: string;
  readonly shots: readonly FlownShot[];
  readonly used: number;
  readonly estimates: SampleEstimates;
  readonly clubSpeed: Speed | undefined;
  readonly attackAngle: Angle | undefined;
  /** Mean launch of the band and the model's shot from it. */
  readonly launch: Launch;
  readonly model: Shot;
  readonly disagreement: {
    readonly carry?: Disagreement;
    readonly apex?: Disagreement;
    readonly descentAngle?: Disagreement;
  };
  readonly loft: LoftAnswer | undefined;
  /** Why there is no advice on loft; empty when there is. */
  readonly loftProblem: string;
}

/** Works out one band. */
export function rungOf(
  band: BandSummary,
  name: string,
  summary: SessionSummary,
  shots: readonly MeasuredShot[],
  setup: LadderSetup,
): Rung {
  const outliers = new Set(
    summary.oddShots.flatMap(({ shot, verdict }) => (verdict === 'outlier' ? [shot] : [])),
  );
  const flown = band.shots.map((index): FlownShot => {
    const measured = shots[index] as MeasuredShot;
    const launch = launchFrom(measured, setup);
    const model = playShot(launch, setup.scene);
    const launchMeasured = measured.launchAngle !== undefined && measured.spinRate !== undefined;
    return { index, measured, launch, model, launchMeasured, outlier: outliers.has(index) };
  });
  const used = setup.keepOutliers ? flown : flown.filter(({ outlier }) => !outlier);
  const estimates = setup.keepOutliers ? band.quantities : (band.withoutOutliers ?? band.quantities);
  const launch = meanLaunch(used.map((shot) => shot.launch));
  const model = playShot(launch, setup.scene);
  const clubSpeed = estimates.clubSpeed?.mean;
  const attackAngle = estimates.attackAngle?.mean;
  return {
    name,
    shots: flown,
    used: used.length,
    estimates,
    clubSpeed,
    attackAngle,
    launch,
    model,
    disagreement: disagreementOf(used),
    ...loftOrProblem(clubSpeed, attackAngle, estimates, model, setup),
  };
}

/** How the ball left: as measured, or through the strike model when only the club was measured. */
function launchFrom(shot: MeasuredShot, { clubhead }: LadderSetup): Launch {
  const launch = launchOf(shot);
  if (!('missing' in launch)) return launch;
  // The reader lets a shot through only with a launch or with these three.
  const { clubSpeed = si<Speed>(0), attackAngle = si<Angle>(0), dynamicLoft, nominalLoft } = shot;
  const loft = dynamicLoft ?? si<Angle>((nominalLoft ?? clubhead.staticLoft) + ASSUMED_ADDED_LOFT);
  return strike({ clubSpeed, attackAngle, dynamicLoft: loft }, { clubhead }).launch;
}

/** Mean of launches; spin is averaged by its parts, since a tilt to the left does not undo one to the right. */
function meanLaunch(launches: readonly Launch[]): Launch {
  const average = (value: (launch: Launch) => number): number => mean(launches, value) ?? Number.NaN;
  const backspin = average(({ spinRate, spinAxisTilt = 0 }) => spinRate * Math.cos(spinAxisTilt));
  const sidespin = average(({ spinRate, spinAxisTilt = 0 }) => spinRate * Math.sin(spinAxisTilt));
  return {
    ballSpeed: si(average((launch) => launch.ballSpeed)),
    launchAngle: si(average((launch) => launch.launchAngle)),
    launchDirection: si(average((launch) => launch.launchDirection ?? 0)),
    spinRate: si(Math.hypot(backspin, sidespin)),
    spinAxisTilt: si(Math.atan2(sidespin, backspin)),
  };
}

function disagreementOf(shots: readonly FlownShot[]): Rung['disagreement'] {
  const between = (name: 'carry' | 'apex' | 'descentAngle'): Disagreement | undefined => {
    const pairs = shots.flatMap(({ measured, model, launchMeasured }) => {
      const value = measured[name];
      return value === undefined || !launchMeasured ? [] : [{ value, gap: model.flight[name] - value }];
    });
    const count = pairs.length;
    if (count === 0) return undefined;
    const sd = deviation(pairs, ({ gap }) => gap);
    return {
      count,
      measured: mean(pairs, ({ value }) => value) ?? Number.NaN,
      mean: mean(pairs, ({ gap }) => gap) ?? Number.NaN,
      ...(sd !== undefined && { sd }),
    };
  };
  const carry = between('carry');
  const apex = between('apex');
  const descentAngle = between('descentAngle');
  return { ...(carry && { carry }), ...(apex && { apex }), ...(descentAngle && { descentAngle }) };
}

function loftOrProblem(
  clubSpeed: Speed | undefined,
  attackAngle: Angle | undefined,
  estimates: SampleEstimates,
  model: Shot,
  setup: LadderSetup,
): Pick<Rung, 'loft' | 'loftProblem'> {
  if (clubSpeed === undefined) return { loft: undefined, loftProblem: 'club speed was not measured' };
  try {
    return { loft: loftAnswer(clubSpeed, attackAngle, estimates, model, setup), loftProblem: '' };
  } catch (error) {
    // A launch no loft explains, or a speed outside the strike model: the band is shown without advice.
    if (!isFairflightError(error)) throw error;
    return { loft: undefined, loftProblem: error.message };
  }
}

function loftAnswer(
  clubSpeed: Speed,
  attackAngle: Angle | undefined,
  estimates: SampleEstimates,
  model: Shot,
  { clubhead, scene, maximise }: LadderSetup,
): LoftAnswer {
  const swing = { clubSpeed, attackAngle: attackAngle ?? si<Angle>(0) };
  const launchAngle = estimates.launchAngle?.mean ?? model.launch.launchAngle;
  const delivered =
    estimates.dynamicLoft?.mean ??
    inferDynamicLoft({ ...swing, launchAngle }, { clubhead, ...(scene.ball && { ball: scene.ball }) })
      .dynamicLoft;
  const optimum = bestLoft({ ...swing, deliveredLoft: delivered }, scene, { clubhead, maximise });
  const shotAt = (dynamicLoft: Angle): Shot => playShot({ ...swing, dynamicLoft }, scene, { clubhead });
  const centred = shotAt(delivered);
  const { low, high } = optimum.window.dynamicLoft;
  const verdict = low !== undefined && delivered < low ? 'too little loft' : 'fits';
  return {
    optimum,
    delivered,
    nominalNow: clubhead.staticLoft,
    nominalBest: optimum.advice?.nominalLoft ?? clubhead.staticLoft,
    carryLeft: {
      all: si(optimum.shot.carry - model.carry),
      loft: si(optimum.shot.carry - centred.carry),
      strike: si(centred.carry - model.carry),
    },
    totalLeft: si(optimum.shot.total - model.total),
    window: low === undefined || high === undefined ? undefined : windowOf(low, high),
    verdict: high !== undefined && delivered > high ? 'too much loft' : verdict,
  };

  function windowOf(from: Angle, to: Angle): FlightWindow {
    const [flat, steep] = [shotAt(from).flight, shotAt(to).flight];
    const apex = spanOf(estimates.apex, model.flight.apex);
    const descent = spanOf(estimates.descentAngle, model.flight.descentAngle);
    const outside = (means: boolean, intervals: boolean, side: 'low' | 'high') =>
      intervals ? (`too ${side}` as const) : means ? (`at the ${side} edge` as const) : undefined;
    const low = outside(
      apex.mean < flat.apex || descent.mean < flat.descentAngle,
      apex.high < flat.apex || descent.high < flat.descentAngle,
      'low',
    );
    const high = outside(
      apex.mean > steep.apex || descent.mean > steep.descentAngle,
      apex.low > steep.apex || descent.low > steep.descentAngle,
      'high',
    );
    return {
      apex: [flat.apex, steep.apex],
      descent: [flat.descentAngle, steep.descentAngle],
      verdict: low ?? high ?? 'inside',
    };
  }
}

/** Mean and interval of what was measured, or the model's value where nothing was. */
function spanOf(
  estimate: SampleEstimate | undefined,
  model: number,
): { mean: number; low: number; high: number } {
  if (estimate === undefined) return { mean: model, low: model, high: model };
  const { mean, interval = { low: mean, high: mean } } = estimate;
  return { mean, low: interval.low, high: interval.high };
}
