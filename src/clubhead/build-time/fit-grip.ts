import launches from '../../../tests/published/data/outside-launches.json' with { type: 'json' };
import practice from '../../../tests/published/data/outside-practice.json' with { type: 'json' };
import { balls } from '../../ball/index.js';
import type { TangentialRestitution } from '../../inputs/clubhead.js';
import { brent, levenbergMarquardt } from '../../numerics/index.js';
import { squareStrike } from '../../strike/impact.js';
import { createStriker } from '../../strike/striker.js';
import { degrees, metresPerSecond, mph, toRpm } from '../../units/index.js';
import { DRIVER_GRIP } from '../driver-grip.js';
import { clubheads } from '../presets.js';

/** A drive whose spin was measured or averaged. */
export interface GripRow {
  readonly id: string;
  readonly clubSpeed: number;
  readonly attackAngle: number;
  readonly launchAngle: number;
  /** Spin [rpm]. */
  readonly spin: number;
}

/** Slowest first. */
const IDS = [
  'group-spin',
  'tour women driver spin',
  'robot spin',
  'tour men driver spin',
  'ball test current spin',
  'ball test 2028 spin',
] as const;

interface OutsideRow {
  readonly id: string;
  readonly expected?: number;
  readonly given?: Readonly<Record<string, string>>;
  readonly assumed?: Readonly<Record<string, string>>;
}

/** The rows of the fit, as the outside figures hold them. */
export const gripRows: readonly GripRow[] = IDS.map((id) => {
  const rows: readonly OutsideRow[] = [...launches.rows, ...practice.rows] as readonly OutsideRow[];
  const row = rows.find((candidate) => candidate.id === id);
  if (row?.expected === undefined) throw new Error(`no spin of ${id}`);
  const read = (name: string): number => {
    const number = { ...row.assumed, ...row.given }[name]?.match(/^[−-]?[\d.]+/)?.[0];
    if (number === undefined) throw new Error(`no ${name} of ${id}`);
    return Number(number.replace('−', '-'));
  };
  return {
    id,
    clubSpeed: mph(read('clubSpeed')),
    attackAngle: degrees(read('attackAngle')),
    launchAngle: degrees(read('launchAngle')),
    spin: row.expected,
  };
});

/** Spin [rpm] of a centred strike with the loft that launches at the row's angle. */
export function spinBy(law: TangentialRestitution, row: GripRow): number {
  const { strike } = createStriker({
    clubhead: { ...clubheads.driver, tangentialRestitution: law },
    ball: balls.conforming,
  });
  const input = squareStrike(row.clubSpeed, row.attackAngle, 0);
  const struck = (loft: number) => {
    input.dynamicLoft = loft;
    const result = strike(input);
    if (typeof result === 'string') throw new Error(`${row.id}: ${result}`);
    return result;
  };
  const { x } = brent((loft) => struck(loft).launch.launchAngle - row.launchAngle, -0.1, 0.6);
  return toRpm(struck(x).launch.spinRate);
}

/** Computed over measured, natural logarithm: near enough the error as a share. */
export const missOf = (law: TangentialRestitution, row: GripRow): number =>
  Math.log(spinBy(law, row) / row.spin);

/** The law by speed with reference speed and slope fitted; level and reach are set. */
export function fitGrip(rows: readonly GripRow[] = gripRows): TangentialRestitution {
  const law = (x: readonly number[]): TangentialRestitution => ({
    ...DRIVER_GRIP,
    referenceSpeed: metresPerSecond(x[0] as number),
    slope: x[1] as number,
  });
  return law(levenbergMarquardt((x) => rows.map((row) => missOf(law(x), row)), [47, 0.015]).x);
}

/** A constant for all speeds, fitted the same way. */
export function fitConstant(rows: readonly GripRow[] = gripRows): TangentialRestitution {
  const law = (x: readonly number[]): TangentialRestitution => ({ kind: 'constant', value: x[0] as number });
  return law(levenbergMarquardt((x) => rows.map((row) => missOf(law(x), row)), [-0.2]).x);
}

/** What a law fitted to the other rows misses each row by. */
export const missesLeftOut = (
  refit: (rows: readonly GripRow[]) => TangentialRestitution,
): readonly number[] => gripRows.map((row) => missOf(refit(gripRows.filter((other) => other !== row)), row));
