import { frozen } from '../inputs/frozen.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import type { Angle, AngularSpeed, Duration, Length, Speed } from '../units/index.js';
import { toDegrees, toMph, toRpm, toYards } from '../units/index.js';

/** The numbers a measured shot can have, with their units; the last three are worked out from others. */
export interface ShotQuantities {
  /** Speed of the clubhead [m/s]. */
  readonly clubSpeed: Speed;
  /** Speed of the ball [m/s]. */
  readonly ballSpeed: Speed;
  /** Vertical direction of head travel [rad]. */
  readonly attackAngle: Angle;
  /** Horizontal direction of head travel [rad]. */
  readonly clubPath: Angle;
  /** Horizontal direction of the face [rad]. */
  readonly faceAngle: Angle;
  /** Vertical direction of the face [rad]. */
  readonly dynamicLoft: Angle;
  /** Vertical launch angle [rad]. */
  readonly launchAngle: Angle;
  /** Horizontal launch direction [rad]. */
  readonly launchDirection: Angle;
  /** Spin rate [rad/s]. */
  readonly spinRate: AngularSpeed;
  /** Tilt of the spin axis [rad]. */
  readonly spinAxisTilt: Angle;
  /** Carry [m]. */
  readonly carry: Length;
  /** Total distance [m]. */
  readonly total: Length;
  /** Greatest height [m]. */
  readonly apex: Length;
  /** Steepness at landing [rad]. */
  readonly descentAngle: Angle;
  /** Sideways position [m]. */
  readonly side: Length;
  /** Sideways distance from the launch line [m]. */
  readonly curve: Length;
  /** Time in the air [s]. */
  readonly hangTime: Duration;
  /** Ball speed over club speed. */
  readonly smashFactor: number;
  /** Total less carry [m]. */
  readonly run: Length;
  /** Face angle less club path [rad]. */
  readonly faceToPath: Angle;
}

/** Name of a quantity of a shot. */
export type QuantityName = keyof ShotQuantities;

interface QuantityWords {
  readonly label: string;
  readonly unit: string;
  readonly digits: number;
  readonly toUnit: (si: number) => number;
}

function speed(label: string): QuantityWords {
  return { label, unit: ' mph', digits: 1, toUnit: toMph as (si: number) => number };
}

function angle(label: string): QuantityWords {
  return { label, unit: '°', digits: 1, toUnit: toDegrees as (si: number) => number };
}

function length(label: string): QuantityWords {
  return { label, unit: ' yd', digits: 1, toUnit: toYards as (si: number) => number };
}

/** How each quantity is named and shown to people. @internal */
export const QUANTITY_WORDS: { readonly [K in QuantityName]: QuantityWords } = /* @__PURE__ */ frozen(() => ({
  clubSpeed: speed('club speed'),
  ballSpeed: speed('ball speed'),
  attackAngle: angle('attack angle'),
  clubPath: angle('club path'),
  faceAngle: angle('face angle'),
  dynamicLoft: angle('dynamic loft'),
  launchAngle: angle('launch angle'),
  launchDirection: angle('launch direction'),
  spinRate: { label: 'spin rate', unit: ' rpm', digits: 0, toUnit: toRpm as (si: number) => number },
  spinAxisTilt: angle('spin axis tilt'),
  carry: length('carry'),
  total: length('total distance'),
  apex: length('apex'),
  descentAngle: angle('descent angle'),
  side: length('side'),
  curve: length('curve'),
  hangTime: { label: 'hang time', unit: ' s', digits: 2, toUnit: (si) => si },
  smashFactor: { label: 'smash factor', unit: '', digits: 2, toUnit: (si) => si },
  run: length('run'),
  faceToPath: angle('face to path'),
}));

/** All quantity names. @internal */
export const QUANTITY_NAMES: readonly QuantityName[] = /* @__PURE__ */ frozen(
  () => Object.keys(QUANTITY_WORDS) as QuantityName[],
);

/** The value of a quantity of a shot in SI; undefined where it was not measured and can't be worked out. @internal */
export function quantityOf(shot: MeasuredShot, name: QuantityName): number | undefined {
  switch (name) {
    case 'smashFactor':
      return shot.ballSpeed !== undefined && shot.clubSpeed !== undefined && shot.clubSpeed > 0
        ? shot.ballSpeed / shot.clubSpeed
        : undefined;
    case 'run':
      return shot.total !== undefined && shot.carry !== undefined ? shot.total - shot.carry : undefined;
    case 'faceToPath':
      return shot.faceAngle !== undefined && shot.clubPath !== undefined
        ? shot.faceAngle - shot.clubPath
        : undefined;
    default:
      return shot[name];
  }
}

/** A value with its unit, for example `165.0 yd`. @internal */
export function inWords(name: QuantityName, si: number): string {
  const { unit, digits, toUnit } = QUANTITY_WORDS[name];
  return `${toUnit(si).toFixed(digits)}${unit}`;
}
