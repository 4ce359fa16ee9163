import type { FlightSettings } from '../flight/fly.js';
import type { Launch } from '../inputs/launch.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import type { NormalPrior } from '../inputs/prior.js';
import type { FlightReadingErrors, ReadingErrors } from '../inputs/readings.js';
import { FLIGHT_READINGS } from '../inputs/readings.js';
import { median } from '../numerics/index.js';
import type { ResolvedScene } from '../scene/scene.js';
import { defaultPriors } from '../strike/locate-model.js';
import { learntPattern, locateAll, type Setting, widerPattern } from './calibrate-face.js';
import { type FlightShot, type Flown, flightShots, scaledFlights } from './calibrate-flight.js';
import { lackingFor } from './calibrate-needs.js';
import { strikeShot } from './calibrate-strike.js';
import type { CalibrationMisread, CalibrationResidual, CalibrationTarget } from './calibration.js';
import { launchIn } from './launch-of.js';
import { type FitParameter, fitMixture, type MixtureFit } from './mixture-fit.js';

/** One stage of a calibration: its parameters are fitted together, apart from those of the other stage. @internal */
export interface Block {
  readonly stage: Stage;
  readonly parameters: readonly FitParameter[];
  readonly fit: MixtureFit;
  readonly residuals: readonly CalibrationResidual[];
  readonly misreads: readonly CalibrationMisread[];
  readonly leftOut: readonly { readonly shot: number; readonly stage: Stage; readonly reason: string }[];
  /** Readings taken to be usual where they were not measured, and in how many shots. */
  readonly assumed: readonly {
    readonly reading: AssumedReading;
    readonly shots: number;
    readonly sd: number;
  }[];
}

type Stage = 'strike' | 'flight';
/** One number a quantity; undefined where it was not measured. */
type Predicted = readonly (number | undefined)[];
const STRIKE_READINGS = ['ballSpeed', 'launchAngle', 'spinRate'] as const;
const FOLDS = 5;
/** Step of the linearisation of flights in drag and lift scale. */
const SCALE_STEP = 0.02;

/** Parameter values by name, with what is not fitted at its usual value. */
function reader(parameters: readonly FitParameter[], usual: Readonly<Record<string, number>>) {
  return (x: readonly number[], name: string): number => {
    const index = parameters.findIndex((parameter) => parameter.name === name);
    return index < 0 ? (usual[name] as number) : (x[index] as number);
  };
}

/** Fits restitution and tangential restitution. @internal */
export function strikeBlock(
  shots: readonly MeasuredShot[],
  parameters: readonly FitParameter[],
  setting: Setting,
  priors: Readonly<Record<'restitution' | 'tangentialRestitution', NormalPrior>>,
  learn: boolean,
): Block {
  const { used, leftOut } = sorted(shots, 'strike', parameters);
  const chosen = used.map((i) => shots[i] as MeasuredShot);
  const { anyone } = setting;
  const located = locateAll(chosen, setting);
  const prior = { pattern: learn ? learntPattern(located, anyone) : anyone, wild: anyone };
  const read = reader(parameters, {
    restitution: priors.restitution.mean,
    tangentialRestitution: priors.tangentialRestitution.mean,
  });
  const pair = (x: readonly number[]): [number, number] => [
    read(x, 'restitution'),
    read(x, 'tangentialRestitution'),
  ];
  const fitWith = (usual: Setting['usual'], strikes = prior) => {
    const models = chosen.map((shot, i) => strikeShot(shot, located[i], strikes, { ...setting, usual }));
    const fit = fitMixture((around) => {
      const near = models.map((model) => model.near(...pair(around)));
      return (x) => near.map((likelihood) => likelihood(...pair(x)));
    }, parameters);
    return { models, fit };
  };
  const { models, fit: asAssumed } = fitWith({});
  const assumed = assumedIn(chosen, setting);
  const wider = { ...prior, pattern: widerPattern(prior.pattern, located) };
  const fit = withDoubt(asAssumed, [
    ...(learn ? [fitWith({}, wider).fit.x] : []),
    ...assumed.map(
      ({ reading, mean, sd }) => fitWith({ [reading]: { mean: mean + sd, standardDeviation: sd } }).fit.x,
    ),
  ]);
  const start = parameters.map((parameter) => parameter.start);
  return {
    parameters,
    fit,
    leftOut,
    assumed,
    stage: 'strike',
    misreads: misreadsOf(fit, used, 'strike'),
    residuals: residualsOf(
      STRIKE_READINGS,
      chosen,
      fit,
      (index) => models[index]?.predicted(...pair(start), STRIKE_READINGS),
      (index, x) => models[index]?.predicted(...pair(x), STRIKE_READINGS),
    ),
  };
}

/** Fits drag and lift scale. @internal */
export function flightBlock(
  shots: readonly MeasuredShot[],
  parameters: readonly FitParameter[],
  scene: ResolvedScene,
  settings: FlightSettings,
  errors: ReadingErrors,
  flightErrors: FlightReadingErrors,
): Block {
  const { used, leftOut } = sorted(shots, 'flight', parameters);
  const chosen = used.map((i) => shots[i] as MeasuredShot);
  const launches = chosen.map(launchIn).filter((launch): launch is Launch => !('missing' in launch));
  const flyScaled = scaledFlights(scene, settings);
  const read = reader(parameters, { dragScale: 1, liftScale: 1 });
  const flown = (x: readonly number[]) => flyScaled(read(x, 'dragScale'), read(x, 'liftScale'))(launches);
  const models = flightShots(chosen, launches, flyScaled(1, 1), errors, flightErrors);
  const fit = fitMixture((around) => {
    const flights = linearised(flown, around);
    return (x) => flights(x).map((flight, i) => (models[i] as FlightShot).likelihood(flight));
  }, parameters);
  const start = flown(parameters.map((parameter) => parameter.start));
  const folds = Array.from({ length: FOLDS }, (_, fold) => flown(fit.without((i) => i % FOLDS === fold)));
  return {
    parameters,
    fit,
    leftOut,
    assumed: [],
    stage: 'flight',
    misreads: misreadsOf(fit, used, 'flight'),
    residuals: residualsOf(
      FLIGHT_READINGS,
      chosen,
      fit,
      (index) => start[index],
      (index) => folds[index % FOLDS]?.[index],
    ),
  };
}

/** The same flights as linear functions of the parameters near a point. */
function linearised(
  fly: (x: readonly number[]) => readonly Flown[],
  around: readonly number[],
): (x: readonly number[]) => readonly Flown[] {
  const centre = fly(around);
  /** By parameter: flights with that one a step on. */
  const shifted = around.map((_, p) => fly(around.map((value, i) => (i === p ? value + SCALE_STEP : value))));
  return (x) =>
    centre.map((flight, i): Flown => {
      const moved = (reading: 0 | 1 | 2): number => {
        const slopes = shifted.map(
          (flights) => ((flights[i] as Flown)[reading] - flight[reading]) / SCALE_STEP,
        );
        return slopes.reduce(
          (sum, slope, p) => sum + slope * ((x[p] as number) - (around[p] as number)),
          flight[reading],
        );
      };
      return [moved(0), moved(1), moved(2)];
    });
}

/** Readings of the delivery that a player has habits in: an assumption about them is off in all shots alike. */
const HABITS = ['attackAngle', 'dynamicLoft'] as const;
type AssumedReading = (typeof HABITS)[number];

function assumedIn(shots: readonly MeasuredShot[], { head, scene }: Setting) {
  const priors = defaultPriors(head, scene.ball, {});
  return HABITS.flatMap((reading) => {
    const without = shots.filter((shot) => shot[reading] === undefined).length;
    const { mean, standardDeviation: sd } = priors[reading];
    return without === 0 ? [] : [{ reading, shots: without, mean, sd }];
  });
}

/** A fit whose covariance counts what assumptions, each off by a standard deviation in all shots alike, do to it. */
function withDoubt(fit: MixtureFit, shifted: readonly (readonly number[])[]): MixtureFit {
  const moves = shifted.map((x) => x.map((value, i) => value - (fit.x[i] as number)));
  return {
    ...fit,
    covariance: fit.covariance.map((row, i) =>
      row.map((value, j) =>
        moves.reduce((sum, move) => sum + (move[i] as number) * (move[j] as number), value),
      ),
    ),
  };
}

function sorted(
  shots: readonly MeasuredShot[],
  stage: Stage,
  parameters: readonly FitParameter[],
): { readonly used: readonly number[]; readonly leftOut: Block['leftOut'] } {
  const targets = parameters.map(({ name }) => name as CalibrationTarget);
  const lacking = shots.map((shot) => lackingFor(targets, shot));
  return {
    used: shots.map((_, i) => i).filter((i) => lacking[i]?.length === 0),
    leftOut: shots.flatMap((_, shot) => {
      const names = lacking[shot] ?? [];
      return names.length === 0 ? [] : [{ shot, stage, reason: `no ${names.join(', no ')}` }];
    }),
  };
}

function misreadsOf(fit: MixtureFit, used: readonly number[], stage: Stage): CalibrationMisread[] {
  return fit.misread.flatMap((probability, i) =>
    probability > 0.5 ? [{ shot: used[i] as number, stage, probability }] : [],
  );
}

/** Residuals of each quantity, each shot predicted by the fit without its fold. */
function residualsOf<Q extends CalibrationResidual['quantity']>(
  quantities: readonly Q[],
  shots: readonly MeasuredShot[],
  fit: MixtureFit,
  before: (index: number) => Predicted | undefined,
  after: (index: number, x: readonly number[]) => Predicted | undefined,
): CalibrationResidual[] {
  const folds = Array.from({ length: FOLDS }, (_, fold) => fit.without((i) => i % FOLDS === fold));
  const pairs = shots.map((_, i) => ({ old: before(i), now: after(i, folds[i % FOLDS] ?? fit.x) }));
  return quantities.flatMap((quantity, k) => {
    const rows = shots.flatMap((shot, i) => {
      const measured = shot[quantity];
      const old = pairs[i]?.old?.[k];
      const now = pairs[i]?.now?.[k];
      if (measured === undefined || old === undefined || now === undefined) return [];
      return [{ old: measured - old, now: measured - now }];
    });
    if (rows.length === 0) return [];
    return [
      {
        quantity,
        count: rows.length,
        biasBefore: median(rows.map(({ old }) => old)),
        biasAfter: median(rows.map(({ now }) => now)),
        typicalBefore: median(rows.map(({ old }) => Math.abs(old))),
        typicalAfter: median(rows.map(({ now }) => Math.abs(now))),
      },
    ];
  });
}
