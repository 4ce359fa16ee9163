import { refusal } from '../inputs/refuse.js';
import {
  DEGREES,
  FEET,
  KPH,
  METRES,
  METRES_PER_SECOND,
  MPH,
  PERCENT,
  RADIANS,
  RADIANS_PER_SECOND,
  RATIO,
  REVOLUTIONS_PER_SECOND,
  RPM,
  SECONDS,
  type Unit,
  YARDS,
} from '../units/unit.js';
import type { NumberName } from './column-names.js';
import { numberColumns } from './columns.js';
import type { Evidence, Units, Weigh, Written } from './unit-evidence.js';

/** Columns that are written in one unit as a rule. */
export type UnitGroup = 'speed' | 'distance' | 'height' | 'angle' | 'spin';
/** A unit for each group. */
type GroupUnits = Readonly<Record<UnitGroup, Unit>>;

/** Units a group is tried in, the likeliest first. */
export const GROUP_UNITS: Readonly<Record<UnitGroup, readonly Unit[]>> = {
  speed: [MPH, KPH, METRES_PER_SECOND],
  distance: [YARDS, METRES, FEET],
  height: [FEET, METRES, YARDS],
  angle: [DEGREES, RADIANS],
  spin: [RPM, REVOLUTIONS_PER_SECOND, RADIANS_PER_SECOND],
};
const GROUPS = Object.keys(GROUP_UNITS) as UnitGroup[];

/** Units that are used together. */
const SYSTEMS: readonly GroupUnits[] = [
  { speed: MPH, distance: YARDS, height: FEET, angle: DEGREES, spin: RPM },
  { speed: MPH, distance: YARDS, height: YARDS, angle: DEGREES, spin: RPM },
  { speed: KPH, distance: METRES, height: METRES, angle: DEGREES, spin: RPM },
  { speed: METRES_PER_SECOND, distance: METRES, height: METRES, angle: DEGREES, spin: RPM },
];

/** Groups that nearly every file has in one unit. */
const PLAIN: readonly UnitGroup[] = ['angle', 'spin'];

/** Worse than this the shots contradict the units. */
const FITS = 9;
/** The next best must be worse by this: the chance of the one against the other is e^(9/2), about 90 to 1. */
const CLEAR = 9;
/** A smash factor of more is a percentage. */
const MOST_RATIO = 10;

/** The group of a column; undefined for times and ratios, which are never in doubt. */
export function groupOf(field: NumberName): UnitGroup | undefined {
  if (field === 'apex') return 'height';
  const { si } = numberColumns[field].possible;
  if (si === 'm/s') return 'speed';
  if (si === 'm') return 'distance';
  if (si === 'rad') return 'angle';
  return si === 'rad/s' ? 'spin' : undefined;
}

/** Units of all columns, and in words how they were found where that was not said. */
export interface UnitsFound {
  readonly units: Units;
  readonly notes: readonly string[];
}

/**
 * Finds the units of columns that name none, from the shots themselves: units that are used together are tried first,
 * mixtures where none of those fits. What is taken stands clear of the next.
 * @param stated - units that header, cells or the caller give
 * @param fields - columns of numbers
 * @throws FairflightError `invalid-input` when the shots leave it open
 */
export function findUnits(
  fields: readonly NumberName[],
  stated: Units,
  asked: Readonly<Partial<Record<UnitGroup, Unit>>>,
  shots: readonly Written[],
  weigh: Weigh,
): UnitsFound {
  const units: Partial<Record<NumberName, Unit>> = { ...stated };
  for (const field of fields) {
    const unit = units[field] ?? plainUnit(field, shots) ?? asked[groupOf(field) as UnitGroup];
    if (unit !== undefined) units[field] = unit;
  }
  const open = fields.filter((field) => units[field] === undefined);
  const groups = GROUPS.filter((group) => open.some((field) => groupOf(field) === group));
  if (groups.length === 0) return { units, notes: [] };
  // A column beside others of its kind is in their unit.
  const known: Partial<Record<UnitGroup, Unit>> = {};
  for (const field of fields) {
    const group = groupOf(field);
    const unit = units[field];
    if (group !== undefined && unit !== undefined) known[group] ??= unit;
  }
  const guesses = hypotheses(groups, known).map((guess) => {
    const all = { ...units };
    for (const field of open) {
      const unit = guess.units[groupOf(field) as UnitGroup];
      if (unit !== undefined) all[field] = unit;
    }
    return { ...guess, all, ...weigh(shots, all) };
  });
  const sorted = [...guesses].sort((a, b) => a.misfit - b.misfit);
  for (const odd of [...new Set(guesses.map((guess) => guess.odd))].sort()) {
    const rivals = sorted.filter((guess) => guess.odd <= odd);
    const chosen = choose(rivals);
    if (chosen === undefined) continue;
    const others = rivals.length > 1 ? rivals : sorted;
    return { units: chosen.all, notes: [foundNote(open, chosen, others, known)] };
  }
  throw openUnits(open, groups, sorted);
}

interface Guess {
  readonly units: Readonly<Partial<Record<UnitGroup, Unit>>>;
  /** Groups in another unit than in the system of units that is nearest: 0 where they are used together. */
  readonly odd: number;
}

type Weighed = Guess & Evidence & { readonly all: Units };

/** Every choice of units for the open groups; a group of which a unit is known has that. */
function hypotheses(
  groups: readonly UnitGroup[],
  known: Readonly<Partial<Record<UnitGroup, Unit>>>,
): readonly Guess[] {
  const choices = groups.reduce<Readonly<Partial<Record<UnitGroup, Unit>>>[]>(
    (all, group) =>
      all.flatMap((units) =>
        (known[group] === undefined ? GROUP_UNITS[group] : [known[group]]).map((unit) => ({
          ...units,
          [group]: unit,
        })),
      ),
    [{}],
  );
  return choices.map((units) => {
    const together = { ...known, ...units };
    const odd = SYSTEMS.map(
      (system) =>
        GROUPS.filter((group) => together[group] !== undefined && together[group] !== system[group]).length,
    );
    return { units, odd: Math.min(...odd) };
  });
}

/** The best of sorted guesses, when it fits and stands clear of the next. */
function choose(sorted: readonly Weighed[]): Weighed | undefined {
  const [best, next] = sorted;
  if (best === undefined || best.misfit > FITS) return undefined;
  // A guess alone needs something that speaks for it, unless nothing else could be meant.
  if (next === undefined) return best;
  return next.misfit - best.misfit >= CLEAR ? best : undefined;
}

/** Times are in seconds; a ratio of more than 10 is a percentage. */
function plainUnit(field: NumberName, shots: readonly Written[]): Unit | undefined {
  const { si } = numberColumns[field].possible;
  if (si === 's') return SECONDS;
  if (si !== '') return undefined;
  const values = shots.flatMap((shot) => shot[field] ?? []);
  return values.length > 0 && values.every((value) => value > MOST_RATIO) ? PERCENT : RATIO;
}

/** `mph, yd and ft`; degrees and rpm go without saying. */
function unitsText(units: Readonly<Partial<Record<UnitGroup, Unit>>>): string {
  const said = GROUPS.filter((group) => units[group] !== SYSTEMS[0]?.[group] || !PLAIN.includes(group));
  const names = [
    ...new Set((said.length > 0 ? said : GROUPS).flatMap((group) => units[group]?.symbol ?? [])),
  ];
  const last = names.pop() ?? '';
  return names.length === 0 ? last : `${names.join(', ')} and ${last}`;
}

function missText({ carryMiss, units, all }: Weighed): string | undefined {
  if (carryMiss === undefined) return undefined;
  const unit = units.distance ?? all.carry ?? METRES;
  return `${(carryMiss / unit.size).toFixed(0)} ${unit.symbol}`;
}

function foundNote(
  open: readonly NumberName[],
  chosen: Weighed,
  sorted: readonly Weighed[],
  known: Readonly<Partial<Record<UnitGroup, Unit>>>,
): string {
  const read = `${labels(open)}: the header gives no unit, read as ${unitsText(chosen.units)}`;
  const next = sorted.find(
    ({ misfit, units }) =>
      Number.isFinite(misfit) &&
      (units.speed !== chosen.units.speed || units.distance !== chosen.units.distance),
  );
  const [miss, other] = [missText(chosen), next === undefined ? undefined : missText(next)];
  if (miss === undefined) {
    const like = GROUPS.every((group) => chosen.units[group] === undefined || known[group] !== undefined);
    return `${read}, ${like ? 'like the other columns of its kind' : 'which suits the shots'}`;
  }
  const against =
    next === undefined || other === undefined
      ? ''
      : `; as ${unitsText(next.units)} it would miss by ${other}`;
  return `${read}: carry agrees with the flight of the shots within ${miss}${against}`;
}

function labels(fields: readonly NumberName[]): string {
  return fields.map((field) => numberColumns[field].possible.label).join(', ');
}

/** What is open, in a line, and what settles it, in the hint. */
function openUnits(
  open: readonly NumberName[],
  groups: readonly UnitGroup[],
  sorted: readonly Weighed[],
): Error {
  const fit = sorted.filter(({ misfit }) => misfit <= FITS).slice(0, 3);
  const could =
    fit.length > 0
      ? `they could be ${fit.map(({ units }) => unitsText(units)).join(', or ')}`
      : 'no units known here make the shots agree with each other';
  return refusal(
    'csvText',
    `the header gives no unit for ${labels(open)}, and the shots do not settle it: ${could}`,
    {
      hint: `say it in the header, like "${labels(open.slice(0, 1))} (${sorted[0]?.units[groups[0] as UnitGroup]?.symbol ?? ''})", or by the option units: ${groups
        .map((group) => `${group} (${GROUP_UNITS[group].map(({ symbol }) => symbol).join(', ')})`)
        .join(', ')}`,
    },
  );
}
