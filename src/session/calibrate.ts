import { defaultAerodynamics, scaledModel } from '../aerodynamics/index.js';
import { modelAsData } from '../aerodynamics/resolve.js';
import { checkClubhead } from '../clubhead/check.js';
import { type Clubhead, clubheads } from '../clubhead/index.js';
import { FairflightError, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import type { Prior } from '../strike/index.js';
import { checkMeasurement, resolveReadingErrors } from '../strike/measurement.js';
import { si } from '../units/index.js';
import { type Block, flightBlock, strikeBlock } from './calibrate-blocks.js';
import { defaultFlightReadingErrors, type FlightReadingErrors } from './calibrate-flight.js';
import { limitsOf } from './calibrate-limits.js';
import { partTargets } from './calibrate-needs.js';
import type { CalibratedValue, Calibration, CalibrationOptions, CalibrationTarget } from './calibration.js';
import type { MeasuredShot } from './measured-shot.js';
import type { FitParameter } from './mixture-fit.js';

const TARGETS: readonly CalibrationTarget[] = [
  'restitution',
  'tangentialRestitution',
  'dragScale',
  'liftScale',
];

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
 * @param what - What to fit. What these shots cannot be asked is listed in `notFitted`, and stays as it was.
 * @throws {@link FairflightError} `invalid-input` or `outside-range` naming the field; `invalid-input` when nothing asked
 *   for can be fitted.
 */
export function calibrate(
  shots: readonly MeasuredShot[],
  what: readonly CalibrationTarget[],
  options: CalibrationOptions = {},
): Calibration {
  if (!isList(shots)) {
    throw new FairflightError('invalid-input', 'shots must be a list of measured shots', {
      field: 'shots',
      value: shots,
    });
  }
  if (!isList(what) || what.length === 0) {
    throw new FairflightError('invalid-input', `what must list one or more of ${TARGETS.join(', ')}`, {
      field: 'what',
      value: what,
    });
  }
  what.forEach((target, i) => {
    requireOneOf(`what[${i}]`, target, TARGETS);
  });
  if (new Set(what).size < what.length) {
    throw new FairflightError('invalid-input', 'what must not list a target twice', {
      field: 'what',
      value: what,
    });
  }
  shots.forEach((shot, i) => {
    checkMeasurement(shot, `shots[${i}]`);
    for (const [reading, most, unit] of [
      ['carry', 600, 'm'],
      ['apex', 200, 'm'],
      ['descentAngle', Math.PI / 2, 'rad'],
    ] as const) {
      const value = shot[reading];
      if (value !== undefined) requireWithin(`shots[${i}].${reading}`, value, 0, most, unit);
    }
  });
  requireRecord('options', options, ['clubhead', 'scene', 'hand', 'readingErrors', 'flightErrors', 'priors']);
  const clubhead = options.clubhead ?? clubheads.driver;
  checkClubhead(clubhead);
  const scene = options.scene ?? {};
  const ball = scene.aerodynamics ?? defaultAerodynamics;
  const hand = requireOneOf('options.hand', options.hand ?? 'right', ['right', 'left'] as const);
  const errors = resolveReadingErrors(options.readingErrors ?? {}, 'options.readingErrors');
  const flightErrors = resolveFlightErrors(options.flightErrors ?? {});
  const priors = resolvePriors(options.priors ?? {}, clubhead);
  const parameter = (name: CalibrationTarget): FitParameter => ({
    name,
    start: priors[name].mean,
    priorSd: priors[name].standardDeviation,
    lower: BOUNDS[name][0],
    upper: BOUNDS[name][1],
  });
  const { targets, notFitted } = partTargets(shots, what);
  const asked = (names: readonly CalibrationTarget[]): FitParameter[] =>
    names.filter((name) => targets.includes(name)).map(parameter);

  const strikeTargets = asked(['restitution', 'tangentialRestitution']);
  const flightTargets = asked(['dragScale', 'liftScale']);
  const setting = {
    head: clubhead,
    scene,
    hand,
    errors,
    anyone: { toe: priors.toe, high: priors.high },
    usual: {},
  };
  const learn = options.priors?.toe === undefined && options.priors?.high === undefined;
  const blocks: Block[] = [
    ...(strikeTargets.length > 0 ? [strikeBlock(shots, strikeTargets, setting, priors, learn)] : []),
    ...(flightTargets.length > 0 ? [flightBlock(shots, flightTargets, scene, errors, flightErrors)] : []),
  ];

  const found = new Map<CalibrationTarget, { readonly block: Block; readonly index: number }>();
  for (const block of blocks) {
    block.parameters.forEach(({ name }, index) => {
      found.set(name as CalibrationTarget, { block, index });
    });
  }
  const value = (target: CalibrationTarget): number => {
    const at = found.get(target);
    return at?.block.fit.x[at.index] ?? priors[target].mean;
  };
  const covariance = (a: CalibrationTarget, b: CalibrationTarget): number => {
    const [first, second] = [found.get(a), found.get(b)];
    if (first === undefined || second === undefined || first.block !== second.block) return 0;
    return first.block.fit.covariance[first.index]?.[second.index] ?? 0;
  };
  const before = {
    restitution: clubhead.restitution.atReference,
    tangentialRestitution: gripOf(clubhead),
    dragScale: 1,
    liftScale: 1,
  };
  const values = targets.map((target): CalibratedValue => {
    const standardError = Math.sqrt(covariance(target, target));
    const at = found.get(target);
    return {
      target,
      before: before[target],
      value: value(target),
      standardError,
      atBound: at?.block.fit.atBound[at.index] ?? false,
      mostlyPrior: standardError > 0.75 * priors[target].standardDeviation,
    };
  });
  const correlation = targets.map((a) =>
    targets.map((b) => covariance(a, b) / Math.sqrt(covariance(a, a) * covariance(b, b))),
  );
  return {
    values,
    notFitted,
    correlation,
    clubhead:
      strikeTargets.length > 0
        ? withStrike(clubhead, value('restitution'), value('tangentialRestitution'))
        : clubhead,
    aerodynamics:
      flightTargets.length > 0
        ? scaledModel(ball, { drag: value('dragScale'), lift: value('liftScale') })
        : (modelAsData(ball) ?? ball),
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

function isList(value: readonly unknown[]): boolean {
  return Array.isArray(value);
}

/** Bounds of the estimates: what heads and balls in use can be. */
const BOUNDS: Readonly<Record<CalibrationTarget, readonly [number, number]>> = {
  restitution: [0.6, 0.9],
  tangentialRestitution: [-0.7, 0.7],
  dragScale: [0.6, 1.6],
  liftScale: [0.4, 2],
};

function gripOf({ tangentialRestitution: grip }: Clubhead): number {
  return grip.kind === 'constant' ? grip.value : grip.limit;
}

function withStrike(head: Clubhead, restitution: number, grip: number): Clubhead {
  const shift = restitution - head.restitution.atReference;
  if (shift === 0 && grip === gripOf(head)) return head;
  const law = head.tangentialRestitution;
  return {
    ...head,
    name: `${head.name}, calibrated`,
    restitution: { ...head.restitution, atReference: restitution, atEdge: head.restitution.atEdge + shift },
    tangentialRestitution: law.kind === 'constant' ? { ...law, value: grip } : { ...law, limit: grip },
  };
}

function resolvePriors(
  given: Partial<Record<string, Prior>>,
  head: Clubhead,
): Record<CalibrationTarget | 'toe' | 'high', Prior> {
  requireRecord('options.priors', given, [...TARGETS, 'toe', 'high']);
  for (const [name, prior] of Object.entries(given)) {
    const field = `options.priors.${name}`;
    requireRecord(field, prior as Prior, ['mean', 'standardDeviation']);
    const [low, high] = BOUNDS[name as CalibrationTarget] ?? [-0.06, 0.06];
    requireWithin(`${field}.mean`, prior?.mean, low, high, '');
    requireWithin(`${field}.standardDeviation`, prior?.standardDeviation, 1e-6, 10, '');
  }
  return {
    restitution: { mean: head.restitution.atReference, standardDeviation: 0.02 },
    tangentialRestitution: { mean: gripOf(head), standardDeviation: 0.1 },
    dragScale: { mean: 1, standardDeviation: 0.1 },
    liftScale: { mean: 1, standardDeviation: 0.15 },
    toe: { mean: 0, standardDeviation: 0.015 },
    high: { mean: 0, standardDeviation: 0.01 },
    ...given,
  };
}

function resolveFlightErrors(given: Partial<FlightReadingErrors>): FlightReadingErrors {
  requireRecord('options.flightErrors', given, ['carry', 'apex', 'descentAngle']);
  const errors = { ...defaultFlightReadingErrors, ...given };
  requireWithin('options.flightErrors.carry', errors.carry, 1e-5, 0.5, '', 'a share: 0.015 for 1.5 %');
  requireWithin('options.flightErrors.apex', errors.apex, 1e-5, 0.5, '', 'a share: 0.03 for 3 %');
  requireWithin('options.flightErrors.descentAngle', errors.descentAngle, 1e-5, 0.5, 'rad', 'use degrees(1)');
  return { ...errors, descentAngle: si(errors.descentAngle) };
}
