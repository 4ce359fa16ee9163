import type { MeasuredShot } from '../session/index.js';
import { degrees, feet, mph, rpm, seconds, yards } from '../units/index.js';
import { type Dimension, findUnit, type UnitName, unitSymbols } from './unit-names.js';

/** Fields of a shot that hold a quantity. */
export type QuantityField = Exclude<keyof MeasuredShot, TextField | 'line'>;
/** Fields of a shot that hold text. */
export type TextField = 'label' | 'session' | 'date' | 'club';
/** Columns that are not a field of their own but lead to one. */
export type HelperField = 'smashFactor' | 'backspin' | 'sidespin';

/** What a column of numbers may be called and hold. */
export interface NumberColumn {
  readonly names: readonly string[];
  readonly dimension: Dimension;
  /** Unit proposed in messages. */
  readonly unit: string;
  /** What can happen at all [SI]. */
  readonly possible: readonly [minimum: number, maximum: number];
  /** What usually happens in a full swing [SI]; only used to guess which unit was meant. */
  readonly usual: readonly [minimum: number, maximum: number];
}

/** The column names understood, in plain words. `possible` marks readings no shot has; it is no judgement of a shot. */
export const NUMBER_COLUMNS: Readonly<Record<QuantityField | HelperField, NumberColumn>> = {
  clubSpeed: {
    names: ['club speed', 'clubhead speed', 'club head speed', 'head speed', 'swing speed'],
    dimension: 'speed',
    unit: 'mph',
    possible: [mph(10), mph(170)],
    usual: [mph(55), mph(145)],
  },
  attackAngle: {
    names: ['attack angle', 'angle of attack', 'attack'],
    dimension: 'angle',
    unit: 'deg',
    possible: [degrees(-30), degrees(30)],
    usual: [degrees(-10), degrees(10)],
  },
  clubPath: {
    names: ['club path', 'path'],
    dimension: 'angle',
    unit: 'deg',
    possible: [degrees(-45), degrees(45)],
    usual: [degrees(-12), degrees(12)],
  },
  faceAngle: {
    names: ['face angle', 'face'],
    dimension: 'angle',
    unit: 'deg',
    possible: [degrees(-60), degrees(60)],
    usual: [degrees(-12), degrees(12)],
  },
  dynamicLoft: {
    names: ['dynamic loft', 'delivered loft'],
    dimension: 'angle',
    unit: 'deg',
    possible: [degrees(-10), degrees(80)],
    usual: [degrees(5), degrees(55)],
  },
  nominalLoft: {
    names: ['loft', 'nominal loft', 'static loft', 'club loft', 'design loft'],
    dimension: 'angle',
    unit: 'deg',
    possible: [degrees(3), degrees(75)],
    usual: [degrees(6), degrees(64)],
  },
  ballSpeed: {
    names: ['ball speed'],
    dimension: 'speed',
    unit: 'mph',
    possible: [mph(5), mph(245)],
    usual: [mph(70), mph(215)],
  },
  launchAngle: {
    names: ['launch angle', 'launch', 'vertical launch', 'vertical launch angle'],
    dimension: 'angle',
    unit: 'deg',
    possible: [degrees(-30), degrees(80)],
    usual: [degrees(4), degrees(50)],
  },
  launchDirection: {
    names: ['launch direction', 'start direction', 'horizontal launch', 'horizontal launch angle'],
    dimension: 'angle',
    unit: 'deg',
    possible: [degrees(-60), degrees(60)],
    usual: [degrees(-15), degrees(15)],
  },
  spinRate: {
    names: ['spin', 'spin rate', 'total spin'],
    dimension: 'angular speed',
    unit: 'rpm',
    possible: [0, rpm(16000)],
    usual: [rpm(1200), rpm(12000)],
  },
  spinAxisTilt: {
    names: ['spin axis', 'spin axis tilt', 'axis tilt'],
    dimension: 'angle',
    unit: 'deg',
    possible: [degrees(-180), degrees(180)],
    usual: [degrees(-35), degrees(35)],
  },
  carry: {
    names: ['carry', 'carry distance'],
    dimension: 'length',
    unit: 'yd',
    possible: [0, yards(500)],
    usual: [yards(60), yards(360)],
  },
  total: {
    names: ['total', 'total distance'],
    dimension: 'length',
    unit: 'yd',
    possible: [0, yards(600)],
    usual: [yards(60), yards(400)],
  },
  apex: {
    names: ['apex', 'apex height', 'peak height', 'height'],
    dimension: 'length',
    unit: 'ft',
    possible: [0, feet(650)],
    usual: [feet(20), feet(160)],
  },
  descentAngle: {
    names: ['descent angle', 'descent', 'landing angle', 'angle of descent'],
    dimension: 'angle',
    unit: 'deg',
    possible: [0, degrees(90)],
    usual: [degrees(10), degrees(60)],
  },
  side: {
    names: ['side', 'offline', 'carry side', 'side at landing'],
    dimension: 'length',
    unit: 'yd',
    possible: [yards(-250), yards(250)],
    usual: [yards(-60), yards(60)],
  },
  curve: {
    names: ['curve', 'curvature'],
    dimension: 'length',
    unit: 'yd',
    possible: [yards(-250), yards(250)],
    usual: [yards(-60), yards(60)],
  },
  hangTime: {
    names: ['hang time', 'flight time', 'time in the air'],
    dimension: 'time',
    unit: 's',
    possible: [seconds(0.05), seconds(15)],
    usual: [seconds(2), seconds(9)],
  },
  smashFactor: {
    names: ['smash factor', 'smash'],
    dimension: 'ratio',
    unit: '',
    possible: [0.5, 1.63],
    usual: [1, 1.56],
  },
  backspin: {
    names: ['backspin', 'back spin'],
    dimension: 'angular speed',
    unit: 'rpm',
    possible: [rpm(-16000), rpm(16000)],
    usual: [rpm(1200), rpm(12000)],
  },
  sidespin: {
    names: ['sidespin', 'side spin'],
    dimension: 'angular speed',
    unit: 'rpm',
    possible: [rpm(-16000), rpm(16000)],
    usual: [rpm(-2500), rpm(2500)],
  },
};

const TEXT_COLUMNS: Readonly<Record<TextField, readonly string[]>> = {
  label: ['label', 'band', 'speed band', 'group'],
  session: ['session'],
  date: ['date', 'day'],
  club: ['club'],
};

/** What one header cell turned out to be. */
export type Heading =
  | { readonly kind: 'number'; readonly field: QuantityField | HelperField; readonly unit: UnitName }
  | { readonly kind: 'text'; readonly field: TextField }
  | { readonly kind: 'unknown' }
  | {
      readonly kind: 'refused';
      readonly reason: 'unknown-unit' | 'unclear-header';
      readonly message: string;
    };

/** Reads one header cell, for example `club speed (mph)`. Case, underscores, hyphens and extra blanks do not matter. */
export function readHeading(text: string): Heading {
  const match = /^(.*?)\s*(?:\(([^()]*)\)|\[([^[\]]*)\])?\s*$/su.exec(text.trim());
  const name = (match?.[1] ?? '')
    .toLowerCase()
    .replace(/[\s_-]+/gu, ' ')
    .trim();
  const unitText = (match?.[2] ?? match?.[3] ?? '').trim();
  for (const [field, names] of Object.entries(TEXT_COLUMNS)) {
    if (names.includes(name)) return { kind: 'text', field: field as TextField };
  }
  for (const [field, column] of Object.entries(NUMBER_COLUMNS)) {
    if (!column.names.includes(name)) continue;
    const unit = findUnit(column.dimension, column.dimension === 'ratio' && unitText === '' ? '1' : unitText);
    if (unit !== undefined) {
      return { kind: 'number', field: field as QuantityField | HelperField, unit };
    }
    const wish = `write for example "${name} (${column.unit})"; units known here: ${unitSymbols(column.dimension)}`;
    const message =
      unitText === ''
        ? `the header does not say the unit; ${wish}`
        : `${JSON.stringify(unitText)} is not a unit of ${column.dimension} known here; ${wish}`;
    return { kind: 'refused', reason: 'unknown-unit', message };
  }
  return { kind: 'unknown' };
}
