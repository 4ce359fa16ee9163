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
  type ChangeRanking,
  inferDynamicLoft,
  launchOf,
  type MeasuredShot,
  type RankedChange,
  type SampleEstimates,
  type SessionSummary,
} from 'fairflight/session';
import { type Angle, degrees, type Length, type Speed, si } from 'fairflight/units';
import { adviceOn } from '../lib/advice.js';

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
}

/** The best loft for a band, and the one to try. */
export interface LoftAnswer {
  readonly optimum: LoftOptimum;
  readonly delivered: Angle;
  readonly nominalNow: Angle;
  /** The one now, unless a change is advised. */
  readonly nominalAdvised: Angle;
  readonly window: FlightWindow | undefined;
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
  /** Why there is no best loft; empty when there is. */
  readonly loftProblem: string;
  /** What could be changed; absent where no strike explains the shots. */
  readonly advice: ChangeRanking | undefined;
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
  const advice = adviceOn(
    used.map(({ measured }) => measured),
    setup.scene,
    { clubhead: setup.clubhead, maximise: setup.maximise },
  );
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
    ...loftOrProblem(clubSpeed, attackAngle, estimates, model, advice, setup),
    advice,
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
  advice: ChangeRanking | undefined,
  setup: LadderSetup,
): Pick<Rung, 'loft' | 'loftProblem'> {
  const unknown = clubSpeed === undefined ? 'club speed' : 'attack angle';
  if (clubSpeed === undefined || attackAngle === undefined) {
    return { loft: undefined, loftProblem: `${unknown} was not measured` };
  }
  try {
    return { loft: loftAnswer({ clubSpeed, attackAngle }, estimates, model, advice, setup), loftProblem: '' };
  } catch (error) {
    // A launch no loft explains, or a speed outside the strike model: the band is shown without a best loft.
    if (!isFairflightError(error)) throw error;
    return { loft: undefined, loftProblem: error.message };
  }
}

function loftAnswer(
  swing: { readonly clubSpeed: Speed; readonly attackAngle: Angle },
  estimates: SampleEstimates,
  model: Shot,
  advice: ChangeRanking | undefined,
  { clubhead, scene, maximise }: LadderSetup,
): LoftAnswer {
  const launchAngle = estimates.launchAngle?.mean ?? model.launch.launchAngle;
  const delivered = inferDynamicLoft(
    { ...swing, launchAngle },
    { clubhead, ...(scene.ball && { ball: scene.ball }) },
  ).dynamicLoft;
  const optimum = bestLoft(swing, scene, { clubhead, maximise });
  const flightAt = (dynamicLoft: Angle): Shot['flight'] =>
    playShot({ ...swing, dynamicLoft }, scene, { clubhead }).flight;
  const { low, high } = optimum.window.dynamicLoft;
  const windowOf = (from: Angle, to: Angle): FlightWindow => {
    const [flat, steep] = [flightAt(from), flightAt(to)];
    return { apex: [flat.apex, steep.apex], descent: [flat.descentAngle, steep.descentAngle] };
  };
  const change = loftChange(advice);
  const step = change?.verdict === 'advised' ? change.step : 0;
  return {
    optimum,
    delivered,
    nominalNow: clubhead.staticLoft,
    nominalAdvised: si(clubhead.staticLoft + step),
    window: low === undefined || high === undefined ? undefined : windowOf(low, high),
  };
}

/** The change of loft that was judged; absent where the loft is at its best as it is. */
export function loftChange(advice: ChangeRanking | undefined): RankedChange | undefined {
  return advice?.changes.find(({ change }) => change === 'loft');
}
