import { conformingBall } from '../ball/index.js';
import { checkClubhead } from '../clubhead/check.js';
import { clubheads } from '../clubhead/index.js';
import { FairflightError, requireOneOf, requireWithin } from '../errors.js';
import type { Launch } from '../scene/index.js';
import { createWalk, type Walk, type WalkResult } from '../shot/walk.js';
import { squareStrike } from '../strike/impact.js';
import { createStriker } from '../strike/striker.js';
import { degrees, si } from '../units/index.js';
import type { OptimumSetup } from './optimum.js';
import type { Trial } from './search.js';

/** Limits of the inputs a search may ask for, those of the strike and the flight [SI]. @internal */
export const LIMITS: Readonly<
  Record<
    'clubSpeed' | 'ballSpeed' | 'attackAngle' | 'dynamicLoft' | 'launchAngle' | 'spinRate',
    readonly [number, number]
  >
> = {
  clubSpeed: [1, 90],
  ballSpeed: [1, 110],
  attackAngle: [-0.6, 0.6],
  dynamicLoft: [-0.1, 1.4],
  launchAngle: [-Math.PI / 2, Math.PI / 2],
  spinRate: [0, 2100],
};

const ANGLE_HINT = 'angles are in radians: use degrees(12)';

/** Checks an input against {@link LIMITS}. @throws FairflightError @internal */
export function requireLimit(name: keyof typeof LIMITS, value: unknown, field: string = name): number {
  const [low, high] = LIMITS[name];
  const angle = name.endsWith('Angle') || name.endsWith('Loft');
  const unit = angle ? 'rad' : name === 'spinRate' ? 'rad/s' : 'm/s';
  const hint = angle ? ANGLE_HINT : name === 'spinRate' ? 'use rpm(2600)' : 'if that was mph, use mph(100)';
  return requireWithin(field, value, low, high, unit, hint);
}

/** Checks both ends of a range and their order. @throws FairflightError @internal */
export function requireBetween(
  name: keyof typeof LIMITS,
  range: { readonly min: number; readonly max: number },
): readonly [number, number] {
  if (typeof range !== 'object' || range === null) {
    throw new FairflightError('invalid-input', `${name} must be a range with min and max`, {
      field: name,
      value: range,
    });
  }
  const min = requireLimit(name, range.min, `${name}.min`);
  const max = requireLimit(name, range.max, `${name}.max`);
  if (min > max) {
    throw new FairflightError('invalid-input', `${name}.min must not exceed ${name}.max`, {
      field: name,
      value: range,
    });
  }
  return [min, max];
}

/** A level, square, centred strike and the walk that follows, as plain numbers. @internal */
export interface Deliverer {
  /** The launch of a delivery; undefined where no strike can be computed. Overwritten by the next. */
  readonly strike: (clubSpeed: number, attack: number, loft: number) => Launch | undefined;
  /** Distance of a launch: −Infinity where the ball does not land or the launch is outside what is computed. */
  readonly distance: (launch: Launch | undefined) => number;
  /** Distance and margin to the least descent. */
  readonly trial: (launch: Launch | undefined) => Trial;
}

/** Resolved parts of an {@link OptimumSetup}. @internal */
export interface Search {
  readonly deliverer: Deliverer;
  readonly lofts: readonly [number, number];
  readonly minimumDescent: number | undefined;
}

const LOFTS = { min: degrees(2), max: degrees(60) };
const DESCENT_FOR_TOTAL = degrees(30);

/** Checks the common part of a question. @throws FairflightError @internal */
export function prepare(setup: OptimumSetup): Search {
  const maximise = requireOneOf('maximise', setup.maximise, ['carry', 'total']);
  const lofts = requireBetween('dynamicLoft', setup.dynamicLoft ?? LOFTS);
  const asked = setup.minimumDescentAngle;
  if (asked !== undefined) {
    requireWithin('minimumDescentAngle', asked, -Math.PI / 2, 1.4, 'rad', ANGLE_HINT);
  }
  const minimumDescent = asked ?? (maximise === 'total' ? DESCENT_FOR_TOTAL : undefined);
  return { deliverer: createDeliverer(setup, maximise === 'total', minimumDescent), lofts, minimumDescent };
}

function createDeliverer(
  setup: Pick<OptimumSetup, 'clubhead' | 'scene' | 'flight'>,
  withRun: boolean,
  minimumDescent: number | undefined,
): Deliverer {
  const head = setup.clubhead ?? clubheads.driver;
  checkClubhead(head);
  const walk: Walk = createWalk(setup.scene, setup.flight);
  const striker = createStriker({ clubhead: head, ball: setup.scene?.ball ?? conformingBall });
  const input = squareStrike(0, 0, 0);
  const play = (from: Launch | undefined): WalkResult | undefined => {
    if (from === undefined || !isComputed(from)) return undefined;
    const result = walk.play(from, withRun);
    return result.landed ? result : undefined;
  };
  const far = (result: WalkResult | undefined): number =>
    result === undefined ? Number.NEGATIVE_INFINITY : withRun ? result.total : result.carry;
  return {
    strike: (clubSpeed, attack, loft) => {
      input.clubSpeed = clubSpeed;
      input.attackAngle = attack;
      input.dynamicLoft = loft;
      const struck = striker.strike(input);
      return typeof struck === 'string' ? undefined : struck.launch;
    },
    distance: (from) => far(play(from)),
    trial: (from) => {
      const result = play(from);
      const value = far(result);
      if (result === undefined) return { value, margin: Number.NEGATIVE_INFINITY };
      if (minimumDescent === undefined) return { value, margin: Number.POSITIVE_INFINITY };
      return { value, margin: result.descentAngle - minimumDescent };
    },
  };
}

function isComputed(launch: Launch): boolean {
  const [slow, fast] = LIMITS.ballSpeed;
  return launch.ballSpeed >= slow && launch.ballSpeed <= fast && launch.spinRate <= LIMITS.spinRate[1];
}

/** A launch from plain numbers. @internal */
export function plainLaunch(ballSpeed: number, launchAngle: number, spinRate: number): Launch {
  return { ballSpeed: si(ballSpeed), launchAngle: si(launchAngle), spinRate: si(spinRate) };
}
