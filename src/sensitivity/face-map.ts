import { balls } from '../ball/index.js';
import { checkClubhead } from '../clubhead/check.js';
import { clubheads } from '../clubhead/index.js';
import { FairflightError, requireRecord, requireWithin } from '../errors.js';
import { MAX_BALL_SPEED, MAX_SPIN_RATE } from '../flight/index.js';
import type { Launch } from '../scene/index.js';
import { playShot, type Shot, type ShotSetup } from '../shot/index.js';
import { createWalk } from '../shot/walk.js';
import { checkDelivery } from '../strike/delivery.js';
import type { Delivery } from '../strike/index.js';
import { createStriker } from '../strike/striker.js';
import { type Angle, type AngularSpeed, type Length, type Speed, si } from '../units/index.js';

/** Points of the face that {@link faceMap} looks at. */
export interface FaceGrid {
  /** Largest distance toward toe and heel [m], up to 0.06; default 25 mm. */
  readonly toe?: Length;
  /** Largest distance up and down [m], up to 0.04; default 15 mm. */
  readonly high?: Length;
  /** Points across, odd so that the centre is one of them, 3 to 201; default 21. */
  readonly columns?: number;
  /** Points up, odd, 3 to 201; default 13. */
  readonly rows?: number;
}

/**
 * What a delivery gives at every point of the face. Arrays run row by row from the lowest, heel to toe:
 * entry `row * toe.length + column`.
 */
export interface FaceMap {
  /** Offsets of the columns [m], heel to toe. */
  readonly toe: readonly Length[];
  /** Offsets of the rows [m], low to high. */
  readonly high: readonly Length[];
  /** Ball speed [m/s]. */
  readonly ballSpeed: readonly Speed[];
  /** Launch angle [rad]. */
  readonly launchAngle: readonly Angle[];
  /** Launch direction [rad], + right. */
  readonly launchDirection: readonly Angle[];
  /** Backspin [rad/s]. */
  readonly backspin: readonly AngularSpeed[];
  /** Sidespin [rad/s], + curves right. */
  readonly sidespin: readonly AngularSpeed[];
  /** Carry [m]. */
  readonly carry: readonly Length[];
  /** Total [m]; the run in it is good to ±30 % at best. */
  readonly total: readonly Length[];
  /** Sideways position at rest [m], + right. */
  readonly side: readonly Length[];
  /** The shot struck at the face centre. */
  readonly centre: Shot;
  /** Where on the grid the carry is longest, and how long. */
  readonly longest: { readonly toe: Length; readonly high: Length; readonly carry: Length };
}

/** One point of a delivery on the face, as plain numbers. @internal */
export interface FacePoint {
  readonly ballSpeed: number;
  readonly launchAngle: number;
  readonly launchDirection: number;
  readonly backspin: number;
  readonly sidespin: number;
  readonly carry: number;
  readonly total: number;
  readonly side: number;
}

/**
 * Plays one delivery at many points of the face without the records of `playShot`.
 * @throws {@link FairflightError} for bad input; when called, where the ball does not land
 * @internal
 */
export function facePlayer(delivery: Delivery, setup: ShotSetup): (toe: number, high: number) => FacePoint {
  requireRecord('setup', setup, ['clubhead', 'scene', 'flight']);
  const input = { ...checkDelivery(delivery) };
  const head = setup.clubhead ?? clubheads.driver;
  checkClubhead(head);
  const striker = createStriker({ clubhead: head, ball: setup.scene?.ball ?? balls.conforming });
  const walk = createWalk(setup.scene, setup.flight);
  return (toe, high) => {
    input.toe = toe;
    input.high = high;
    const struck = striker.strike(input);
    const result =
      typeof struck !== 'string' && isFlown(struck.launch) ? walk.play(struck.launch, true) : undefined;
    if (typeof struck === 'string' || result?.landed !== true) {
      throw new FairflightError(
        'outside-range',
        `struck ${(toe * 1000).toFixed(0)} mm toward the toe and ${(high * 1000).toFixed(0)} mm high the ball does not land, or leaves faster than is computed`,
        {
          field: 'delivery',
          value: [toe, high],
          hint: 'map a smaller part of the face, or check loft, attack angle and ground',
        },
      );
    }
    return {
      ballSpeed: struck.launch.ballSpeed,
      launchAngle: struck.launch.launchAngle,
      launchDirection: struck.launch.launchDirection,
      backspin: struck.backspin,
      sidespin: struck.sidespin,
      carry: result.carry,
      total: result.total,
      side: result.side,
    };
  };
}

/**
 * Carry, side, ball speed and spin over the face for one delivery. The delivery's own strike offset plays no part.
 *
 * The face away from its centre rests on a restitution map that is bounded by the rules but has never been published
 * for modern heads; see the head's `source`.
 * @param delivery - How the head comes to the ball.
 * @param setup - Clubhead, scene, integration options.
 * @param grid - Points looked at.
 * @throws {@link FairflightError} naming the field; `outside-range` when the ball does not land from some point.
 */
export function faceMap(delivery: Delivery, setup: ShotSetup = {}, grid: FaceGrid = {}): FaceMap {
  requireRecord('grid', grid, ['toe', 'high', 'columns', 'rows']);
  const toeReach = requireWithin('grid.toe', grid.toe ?? 0.025, 0.001, 0.06, 'm', 'use millimetres(25)');
  const highReach = requireWithin('grid.high', grid.high ?? 0.015, 0.001, 0.04, 'm', 'use millimetres(15)');
  const toe = spaced(toeReach, requireOdd('grid.columns', grid.columns ?? 21));
  const high = spaced(highReach, requireOdd('grid.rows', grid.rows ?? 13));
  const play = facePlayer(delivery, setup);
  const points = high.flatMap((h) => toe.map((t) => play(t, h)));
  const column = <Q extends number>(name: keyof FacePoint): readonly Q[] =>
    points.map((point) => point[name] as Q);
  let best = 0;
  points.forEach((point, index) => {
    if (point.carry > (points[best]?.carry ?? 0)) best = index;
  });
  const { strikeOffset: _, ...centred } = delivery;
  return {
    toe,
    high,
    ballSpeed: column('ballSpeed'),
    launchAngle: column('launchAngle'),
    launchDirection: column('launchDirection'),
    backspin: column('backspin'),
    sidespin: column('sidespin'),
    carry: column('carry'),
    total: column('total'),
    side: column('side'),
    centre: playShot(centred, setup),
    longest: {
      toe: toe[best % toe.length] ?? si<Length>(0),
      high: high[Math.floor(best / toe.length)] ?? si<Length>(0),
      carry: si(points[best]?.carry ?? 0),
    },
  };
}

function isFlown({ ballSpeed, spinRate }: Launch): boolean {
  return ballSpeed >= 1 && ballSpeed <= MAX_BALL_SPEED && spinRate <= MAX_SPIN_RATE;
}

function spaced(reach: number, count: number): readonly Length[] {
  return Array.from({ length: count }, (_, i) => si<Length>(reach * ((2 * i) / (count - 1) - 1)));
}

function requireOdd(field: string, value: number): number {
  const hint = 'an odd whole number, so that the face centre is a point of the grid';
  requireWithin(field, value, 3, 201, '', hint);
  if (value % 2 === 1) return value;
  throw new FairflightError('invalid-input', `${field} must be ${hint}, got ${value}`, {
    field,
    value,
    hint,
  });
}
