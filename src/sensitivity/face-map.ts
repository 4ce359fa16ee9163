import { type Delivery, deliveryFields, strikeOffsetFields } from '../inputs/delivery.js';
import { count, type Declared, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type Launch, launchFields } from '../inputs/launch.js';
import { allows, readOptions, readRecord } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { type ResolvedScene, resolveScene, type Scene } from '../scene/scene.js';
import type { Shot, ShotOptions } from '../shot/index.js';
import { createPlayer } from '../shot/player.js';
import { type ShotSettings, shotOptionFields, shotSettings } from '../shot/shot-options.js';
import { createWalk } from '../shot/walk.js';
import { numbersOf } from '../strike/delivery.js';
import { createStriker } from '../strike/striker.js';
import { type Angle, type AngularSpeed, type Length, type Speed, si } from '../units/index.js';

/** Options of {@link faceMap}: points of the face looked at, clubhead, tolerance and time limit. */
export interface FaceMapOptions extends ShotOptions {
  /** Largest distance toward toe and heel [m], 0.001 to 0.06; default 25 mm. */
  readonly toe?: Length;
  /** Largest distance up and down [m], 0.001 to 0.04; default 15 mm. */
  readonly high?: Length;
  /** Points across, odd so that the centre is one of them, 3 to 201; default 21. */
  readonly columns?: number;
  /** Points up, odd, 3 to 201; default 13. */
  readonly rows?: number;
}

/** Declaration of {@link FaceMapOptions}. @internal */
export const faceMapOptionFields: Declared<FaceMapOptions> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  toe: optional({ ...strikeOffsetFields.toe, min: 0.001, label: 'reach toward toe and heel' }),
  high: optional({ ...strikeOffsetFields.high, min: 0.001, label: 'reach up and down' }),
  columns: optional(count(3, 201, 21, 'points across')),
  rows: optional(count(3, 201, 13, 'points up')),
}));

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
  /** Total [m]; the run in it is good to ±25 %. */
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
 * Plays one delivery at many points of the face without the records of `playShot`; inputs are taken as read.
 * @throws `FairflightError` when called, where the ball does not land
 * @internal
 */
export function facePlayer(
  delivery: Delivery,
  scene: ResolvedScene,
  settings: ShotSettings,
): (toe: number, high: number) => FacePoint {
  const input = { ...numbersOf(delivery) };
  const striker = createStriker({ clubhead: settings.clubhead, ball: scene.ball });
  const walk = createWalk(scene, settings);
  return (toe, high) => {
    input.toe = toe;
    input.high = high;
    const struck = striker.strike(input);
    const result =
      typeof struck !== 'string' && isFlown(struck.launch) ? walk.play(struck.launch, true) : undefined;
    if (typeof struck === 'string' || result?.landed !== true) {
      throw refusal(
        'delivery',
        `struck ${(toe * 1000).toFixed(0)} mm toward the toe and ${(high * 1000).toFixed(0)} mm high the ball does not land, or leaves faster than is computed`,
        {
          value: [toe, high],
          hint: 'map a smaller part of the face, or check loft, attack angle and ground',
        },
        'outside-range',
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
 * @param scene - Air, wind, ground, turf, ball and coefficient model.
 * @param options - Points looked at, clubhead, tolerance and time limit.
 * @throws `FairflightError` naming the field; `outside-range` when the ball does not land from some point.
 */
export function faceMap(delivery: Delivery, scene: Scene = {}, options: FaceMapOptions = {}): FaceMap {
  const { strikeOffset: _, ...centred } = readRecord(deliveryFields, delivery, 'delivery');
  const resolved = resolveScene(scene);
  const {
    toe: toeReach = 0.025,
    high: highReach = 0.015,
    columns = 21,
    rows = 13,
    ...rest
  } = readOptions(faceMapOptionFields, options);
  const settings = shotSettings(rest);
  const toe = spaced(toeReach, requireOdd('options.columns', columns));
  const high = spaced(highReach, requireOdd('options.rows', rows));
  const play = facePlayer(centred, resolved, settings);
  const points = high.flatMap((h) => toe.map((t) => play(t, h)));
  const column = <Q extends number>(name: keyof FacePoint): readonly Q[] =>
    points.map((point) => point[name] as Q);
  let best = 0;
  points.forEach((point, index) => {
    if (point.carry > (points[best]?.carry ?? 0)) best = index;
  });
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
    centre: createPlayer(resolved, settings).fromDelivery(centred),
    longest: {
      toe: toe[best % toe.length] ?? si<Length>(0),
      high: high[Math.floor(best / toe.length)] ?? si<Length>(0),
      carry: si(points[best]?.carry ?? 0),
    },
  };
}

function isFlown({ ballSpeed, spinRate }: Launch): boolean {
  return allows(launchFields.ballSpeed, ballSpeed) && allows(launchFields.spinRate, spinRate);
}

function spaced(reach: number, count: number): readonly Length[] {
  return Array.from({ length: count }, (_, i) => si<Length>(reach * ((2 * i) / (count - 1) - 1)));
}

function requireOdd(field: string, value: number): number {
  if (value % 2 === 1) return value;
  throw refusal(
    field,
    `${field} must be an odd number, so that the face centre is a point of the map, got ${value}`,
    { value },
  );
}
