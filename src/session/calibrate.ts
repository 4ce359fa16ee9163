import { type ModelChoice, scaledModel } from '../aerodynamics/index.js';
import { modelAsData } from '../aerodynamics/resolve.js';
import { resolveModel } from '../aerodynamics/resolve-model.js';
import { gripLevel, withGripLevel } from '../clubhead/grip-level.js';
import type { Clubhead } from '../inputs/clubhead.js';
import { type MeasuredShot, readMeasuredShots } from '../inputs/measured-shot.js';
import { type ResolvedScene, resolveScene, type Scene } from '../scene/scene.js';
import type { FactorName } from '../sweep/index.js';
import { type Block, flightBlock, strikeBlock } from './calibrate-blocks.js';
import { limitsOf } from './calibrate-limits.js';
import { partTargets } from './calibrate-needs.js';
import type { CalibratedValue, Calibration, CalibrationTarget } from './calibration.js';
import {
  type CalibrationOptions,
  type CalibrationSettings,
  resolveCalibration,
  targetFields,
} from './calibration-options.js';
import type { FitParameter } from './mixture-fit.js';

/**
 * Fits the models to a user's own ball, head and range: restitution and tangential restitution to measured delivery and
 * launch, drag and lift scale to measured launch and flight. Every value has a prior and bounds; one shot in ten may be
 * grossly misread without harm; standard errors hold also when the reading errors were stated wrongly, and count what
 * an unmeasured attack angle or loft leaves open. The residuals are of shots the fit did not see (five folds).
 *
 * A fit absorbs whatever the models leave out. Read `limits`: it says what else would look the same.
 *
 * @param shots - At least five usable ones for each value: club speed, ball speed and launch angle for restitution, spin
 *   too for the tangential one; ball speed, launch angle, spin and carry, apex or descent angle for drag and lift.
 * @param scene - Where they were hit: air, wind, ball and coefficient model; each has a default.
 * @param options - What to fit, clubhead, hand, reading errors and priors; each has a default.
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field; `invalid-input` when nothing asked
 *   for can be fitted.
 */
export function calibrate(
  shots: readonly MeasuredShot[],
  scene: Scene = {},
  options: CalibrationOptions = {},
): Calibration {
  const measured = readMeasuredShots(shots);
  const settings = resolveCalibration(options, measured);
  const here = resolveScene(scene);
  const model = modelAsData(scene.aerodynamics) ?? resolveModel(scene.aerodynamics);
  const { targets, notFitted } = partTargets(measured, settings.what);
  const blocks = blocksOf(measured, targets, here, settings);
  const { clubhead } = settings;
  const estimate = estimatesOf(blocks);
  const { covariance } = estimate;
  const values = targets.map((target) => calibratedValue(target, estimate, settings));
  const correlation = targets.map((a) =>
    targets.map((b) => covariance(a, b) / Math.sqrt(covariance(a, a) * covariance(b, b))),
  );
  return {
    values,
    notFitted,
    correlation,
    factors: blocks.map(({ parameters, fit }) => ({
      names: parameters.map(({ name }) => factorOf(name as CalibrationTarget, clubhead)),
      mean: parameters.map((_, k) => fit.x[k] as number),
      covariance: fit.covariance,
    })),
    clubhead: withStrike(settings, estimate),
    aerodynamics: withScale(model, estimate),
    residuals: blocks.flatMap((block) => block.residuals),
    misreads: blocks.flatMap((block) => block.misreads),
    leftOut: blocks.flatMap((block) => block.leftOut),
    limits: limitsOf(
      values,
      correlation,
      clubhead,
      blocks.map(({ stage, fit, misreads, assumed }) => ({
        name: stage,
        assumed,
        used: fit.misread.length,
        misread: misreads.length,
      })),
    ),
  };
}

/** Strike and flight, as far as they are to be fitted. */
function blocksOf(
  shots: readonly MeasuredShot[],
  targets: readonly CalibrationTarget[],
  scene: ResolvedScene,
  { clubhead, hand, readingErrors, flightErrors, priors, learn, flight }: CalibrationSettings,
): readonly Block[] {
  const asked = (...names: readonly CalibrationTarget[]): readonly FitParameter[] =>
    names
      .filter((name) => targets.includes(name))
      .map((name) => ({
        name,
        start: priors[name].mean,
        priorSd: priors[name].standardDeviation,
        lower: targetFields[name].min,
        upper: targetFields[name].max,
      }));
  const ofStrike = asked('restitution', 'tangentialRestitution');
  const ofFlight = asked('dragScale', 'liftScale');
  const anyone = { toe: priors.toe, high: priors.high };
  const setting = { head: clubhead, scene, hand, errors: readingErrors, anyone, usual: {} };
  return [
    ...(ofStrike.length > 0 ? [strikeBlock(shots, ofStrike, setting, priors, learn)] : []),
    ...(ofFlight.length > 0
      ? [flightBlock(shots, ofFlight, scene, flight, readingErrors, flightErrors)]
      : []),
  ];
}

/** The number of each law of grip that a calibration fits. */
const GRIP_LEVEL = { constant: 'value', oblique: 'limit', 'by-speed': 'atReference' } as const;

/** The factor of a sweep that stands for a target. */
function factorOf(target: CalibrationTarget, { tangentialRestitution }: Clubhead): FactorName {
  switch (target) {
    case 'restitution':
      return 'clubhead.restitution.atReference';
    case 'tangentialRestitution':
      return `clubhead.tangentialRestitution.${GRIP_LEVEL[tangentialRestitution.kind]}`;
    default:
      return `aerodynamics.${target}`;
  }
}

/** The fitted numbers of all blocks by name; those of two blocks are independent. */
interface Estimates {
  /** Undefined where it was not fitted. */
  readonly value: (target: CalibrationTarget) => number | undefined;
  readonly atBound: (target: CalibrationTarget) => boolean;
  readonly covariance: (a: CalibrationTarget, b: CalibrationTarget) => number;
}

function estimatesOf(blocks: readonly Block[]): Estimates {
  const places = new Map(
    blocks.flatMap(({ parameters, fit }) =>
      parameters.map(({ name }, index) => [name, { fit, index }] as const),
    ),
  );
  const covariance = (a: CalibrationTarget, b: CalibrationTarget): number => {
    const [first, second] = [places.get(a), places.get(b)];
    if (first === undefined || second === undefined || first.fit !== second.fit) return 0;
    return first.fit.covariance[first.index]?.[second.index] ?? 0;
  };
  return {
    value: (target) => {
      const place = places.get(target);
      return place?.fit.x[place.index];
    },
    atBound: (target) => {
      const place = places.get(target);
      return place?.fit.atBound[place.index] ?? false;
    },
    covariance,
  };
}

function calibratedValue(
  target: CalibrationTarget,
  estimate: Estimates,
  { clubhead, priors }: CalibrationSettings,
): CalibratedValue {
  const before = {
    restitution: clubhead.restitution.atReference,
    tangentialRestitution: gripLevel(clubhead.tangentialRestitution),
    dragScale: 1,
    liftScale: 1,
  };
  const standardError = Math.sqrt(estimate.covariance(target, target));
  return {
    target,
    before: before[target],
    value: estimate.value(target) ?? priors[target].mean,
    standardError,
    atBound: estimate.atBound(target),
    mostlyPrior: standardError > 0.75 * priors[target].standardDeviation,
  };
}

/** The head with what was fitted of it, and what the fit took for given; the head itself where nothing was fitted. */
function withStrike({ clubhead: head, priors }: CalibrationSettings, { value }: Estimates): Clubhead {
  const fitted = { restitution: value('restitution'), grip: value('tangentialRestitution') };
  if (fitted.restitution === undefined && fitted.grip === undefined) return head;
  const { restitution = priors.restitution.mean, grip = priors.tangentialRestitution.mean } = fitted;
  const shift = restitution - head.restitution.atReference;
  return {
    ...head,
    name: `${head.name}, calibrated`,
    restitution: { ...head.restitution, atReference: restitution, atEdge: head.restitution.atEdge + shift },
    tangentialRestitution: withGripLevel(head.tangentialRestitution, grip),
  };
}

/** The coefficient model with what was fitted of it; the model itself where nothing was. */
function withScale(model: ModelChoice, { value }: Estimates): ModelChoice {
  const [drag, lift] = [value('dragScale'), value('liftScale')];
  if (drag === undefined && lift === undefined) return model;
  return scaledModel(model, { drag: drag ?? 1, lift: lift ?? 1 });
}
