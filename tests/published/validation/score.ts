import type { ComparedRow } from './row.js';

/** Subject of each quantity, in the order of the head table. */
const SUBJECTS: Readonly<Record<string, readonly string[]>> = {
  Carry: ['carry'],
  Total: ['total'],
  'Change of total': ['change of total', 'total per 10 mph'],
  Run: ['run', 'change of run'],
  Bounce: ['speed after the bounce', 'height of the first hop', 'least backspin kept'],
  'Constants of the bounce': ['tilt of the turf', 'restitution of the turf', 'friction of the turf'],
  Wind: ['wind, carry', 'wind, drift'],
  'Altitude and pressure': [
    'altitude, carry',
    'altitude, carry, yards',
    'altitude, total',
    'pressure, carry',
  ],
  'Temperature and humidity': ['temperature, carry', 'humidity, carry'],
  'Tour carry': ['carry, tour'],
  'Tour apex': ['apex, tour'],
  'Tour descent': ['descent, tour'],
  'Apex, descent and time of other flights': [
    'apex',
    'descent angle',
    'hang time',
    'landing speed',
    'landing spin',
  ],
  'Drag coefficient': ['drag coefficient'],
  'Lift coefficient': ['lift coefficient'],
  'Spin in flight': ['spin lost', 'spin lost per second'],
  'Ball speed from delivery': [
    'ball speed from delivery',
    'ball speed',
    'smash factor',
    'change of ball speed',
  ],
  'Spin from delivery': ['spin from delivery', 'spin'],
  'Share of the face, up': ['vertical share of the face'],
  'Share of the face, across': ['horizontal share of the face'],
  'Effects of the strike on launch': [
    'launch angle by strike height',
    'spin by strike height',
    'hook spin per mm of toe',
    'change of hook spin',
    'spin by height of the centre of gravity',
  ],
  'Friction of the face': ['friction of the face'],
  'Side of toe strikes': ['side'],
  'Best loft, launch and spin': [
    'driver loft',
    'change of driver loft',
    'dynamic loft',
    'optimum launch',
    'optimum spin',
  ],
};

/** Names of the subjects, in order. */
export const subjects: readonly string[] = Object.keys(SUBJECTS);

/** Throws for a quantity that belongs to no subject, so that no row is left out of the head table. */
export function subjectOf({ quantity }: ComparedRow): string {
  const found = subjects.find((subject) => SUBJECTS[subject]?.includes(quantity));
  if (found === undefined) throw new Error(`no subject for the quantity ${quantity}`);
  return found;
}

/** How far rows lie from the outside. */
export interface Score {
  readonly rows: number;
  /** Mean error by unit. */
  readonly means: ReadonlyMap<string, number>;
  /** Root mean square of error over tolerance. */
  readonly rms: number;
  readonly within: number;
}

type When = 'before' | 'now';

function errorOf(row: ComparedRow, when: When): number | undefined {
  return when === 'now' ? row.error : row.errorBefore;
}

/** The score of the rows that had a figure then. */
export function scoreOf(rows: readonly ComparedRow[], when: When): Score {
  const errors = new Map<string, number[]>();
  let [count, squares, within] = [0, 0, 0];
  for (const row of rows) {
    const error = errorOf(row, when);
    if (error === undefined) continue;
    errors.set(row.unit, [...(errors.get(row.unit) ?? []), error]);
    count++;
    squares += (error / row.tolerance) ** 2;
    if (Math.abs(error) <= row.tolerance) within++;
  }
  const means = [...errors].map(
    ([unit, all]) => [unit, all.reduce((sum, e) => sum + e, 0) / all.length] as const,
  );
  return { rows: count, means: new Map(means), rms: Math.sqrt(squares / count), within };
}

/** Rows that count: neither doubtful nor set aside. */
export function counted(rows: readonly ComparedRow[]): ComparedRow[] {
  return rows.filter(({ doubtful, setAside }) => doubtful === undefined && setAside === undefined);
}

/** Rows whose error has grown by more than a tenth of the tolerance. */
export function hasWorsened(row: ComparedRow): boolean {
  if (row.errorBefore === undefined) return false;
  return Math.abs(row.error) - Math.abs(row.errorBefore) > 0.1 * row.tolerance;
}

/** Rows that were within their tolerance and are outside now, or the other way round. */
export function changedSides(row: ComparedRow): boolean {
  return row.errorBefore !== undefined && row.within !== Math.abs(row.errorBefore) <= row.tolerance;
}
