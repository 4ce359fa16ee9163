import type { ShotColumn } from 'fairflight/schema';

/** What a column can be: the name a header would give it, and the units it may be written in. */
export interface ColumnMeaning {
  readonly field: NonNullable<ShotColumn['field']>;
  readonly name: string;
  readonly units: readonly string[];
}

const SPEEDS = ['mph', 'km/h', 'm/s'];
const LENGTHS = ['yd', 'm', 'ft'];
const ANGLES = ['deg', 'rad'];
const SPINS = ['rpm', 'rev/s', 'rad/s'];

/** All meanings, in the order of the walk of a shot. */
export const MEANINGS: readonly ColumnMeaning[] = [
  { field: 'clubSpeed', name: 'club speed', units: SPEEDS },
  { field: 'attackAngle', name: 'attack angle', units: ANGLES },
  { field: 'clubPath', name: 'club path', units: ANGLES },
  { field: 'faceAngle', name: 'face angle', units: ANGLES },
  { field: 'dynamicLoft', name: 'dynamic loft', units: ANGLES },
  { field: 'nominalLoft', name: 'loft', units: ANGLES },
  { field: 'ballSpeed', name: 'ball speed', units: SPEEDS },
  { field: 'smashFactor', name: 'smash factor', units: [] },
  { field: 'launchAngle', name: 'launch angle', units: ANGLES },
  { field: 'launchDirection', name: 'launch direction', units: ANGLES },
  { field: 'spinRate', name: 'spin', units: SPINS },
  { field: 'spinAxisTilt', name: 'spin axis', units: ANGLES },
  { field: 'backspin', name: 'backspin', units: SPINS },
  { field: 'sidespin', name: 'sidespin', units: SPINS },
  { field: 'carry', name: 'carry', units: LENGTHS },
  { field: 'total', name: 'total', units: LENGTHS },
  { field: 'apex', name: 'apex', units: LENGTHS },
  { field: 'descentAngle', name: 'descent angle', units: ANGLES },
  { field: 'side', name: 'side', units: LENGTHS },
  { field: 'curve', name: 'curve', units: LENGTHS },
  { field: 'hangTime', name: 'hang time', units: ['s'] },
  { field: 'label', name: 'band', units: [] },
  { field: 'session', name: 'session', units: [] },
  { field: 'date', name: 'date', units: [] },
  { field: 'club', name: 'club', units: [] },
  { field: 'hand', name: 'hand', units: [] },
];

/** What the reader takes for a column that is to be set aside. */
export const NOT_USED = 'not used';

/** The meaning of a field. */
export function meaningOf(field: ShotColumn['field']): ColumnMeaning | undefined {
  return MEANINGS.find((each) => each.field === field);
}

/** The meaning and the unit of what {@link headerFor} says; undefined for anything else. */
export function meaningSaid(
  said: string | undefined,
): { readonly meaning: ColumnMeaning; readonly unit: string } | undefined {
  for (const meaning of MEANINGS) {
    if (said === meaning.name) return { meaning, unit: '' };
    const unit = meaning.units.find((each) => said === headerFor(meaning, each));
    if (unit !== undefined) return { meaning, unit };
  }
  return undefined;
}

/** A meaning as a header would say it: `ball speed (mph)`. */
export function headerFor({ name, units }: ColumnMeaning, unit: string): string {
  return units.includes(unit) ? `${name} (${unit})` : name;
}
