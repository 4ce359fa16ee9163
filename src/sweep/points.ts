import { refusal } from '../inputs/refuse.js';
import { checksumOf } from '../numerics/checksum.js';
import { latinHypercube } from '../numerics/latin-hypercube.js';
import { type PointSet, type SobolScramble, sobol } from '../numerics/sobol.js';
import { sobolIndicesDesign } from '../numerics/sobol-indices.js';
import type { GridFactor, RangeFactor } from './design.js';
import type { FactorName } from './factors.js';
import type { ReadDesign, ReadList } from './read-design.js';

/** How many rows of which factors a design has, and each row by its index. @internal */
export interface DesignPoints {
  readonly rows: number;
  readonly names: readonly FactorName[];
  readonly seed: number | undefined;
  /** The design as plain data for a file's metadata; a list is told by its size and a checksum. */
  readonly about: Readonly<Record<string, unknown>>;
  /** Writes rows `start` to `start + count − 1` into one column a factor. */
  readonly fill: (start: number, count: number, columns: readonly Float64Array[]) => void;
}

const MOST_ROWS = Number.MAX_SAFE_INTEGER;

/**
 * The points of a design.
 * @throws `FairflightError` for more factors or rows than the design can have
 * @internal
 */
export function designPoints(design: ReadDesign): DesignPoints {
  if (design.kind === 'list') return listPoints(design);
  const names = design.factors.map(({ name }) => name);
  switch (design.kind) {
    case 'grid':
      return gridPoints(names, design.factors);
    case 'latin-hypercube': {
      const points = latinHypercube(design.count, names.length, design.seed ?? 0);
      return rangePoints(names, design, design.count, design, points);
    }
    case 'sobol': {
      const { scramble = 'owen' } = design;
      const points = sobolOf(names.length, 1, scramble, design.seed ?? 0);
      return rangePoints(names, design, design.count, { ...design, scramble }, points);
    }
    case 'sobol-indices': {
      const points = sobolIndicesDesign(sobolOf(names.length, 2, 'owen', design.seed ?? 0));
      return rangePoints(names, design, design.base * (names.length + 2), design, points);
    }
  }
}

function sobolOf(factors: number, sets: number, scramble: SobolScramble, seed: number): PointSet {
  const most = 32 / sets;
  if (factors > most) {
    throw refusal(
      'design.factors',
      `design.factors must number at most ${most} for this design, got ${factors}`,
      { value: factors, range: [1, most], hint: 'use a Latin hypercube' },
      'outside-range',
    );
  }
  return sobol(factors * sets, { scramble, seed });
}

function rangePoints(
  names: readonly FactorName[],
  { factors, seed = 0 }: { readonly factors: readonly RangeFactor[]; readonly seed?: number },
  rows: number,
  about: object,
  points: PointSet,
): DesignPoints {
  const from = factors.map((factor): number => factor.from);
  const width = factors.map((factor, j) => factor.to - (from[j] as number));
  const at = new Float64Array(names.length);
  return {
    rows,
    names,
    seed,
    about: { ...about, seed },
    fill: (start, count, columns) => {
      for (let i = 0; i < count; i++) {
        points.point(start + i, at);
        for (let j = 0; j < names.length; j++) {
          (columns[j] as Float64Array)[i] = (from[j] as number) + (at[j] as number) * (width[j] as number);
        }
      }
    },
  };
}

function gridPoints(names: readonly FactorName[], factors: readonly GridFactor[]): DesignPoints {
  const levels = factors.map(levelsOf);
  const rows = levels.reduce((product, { count }) => product * count, 1);
  if (rows > MOST_ROWS) {
    throw refusal(
      'design.factors',
      `design.factors make ${rows.toPrecision(3)} rows; at most ${MOST_ROWS}`,
      { value: rows, range: [1, MOST_ROWS] },
      'outside-range',
    );
  }
  return {
    rows,
    names,
    seed: undefined,
    about: { kind: 'grid', factors },
    fill: (start, count, columns) => {
      let repeat = 1;
      for (let j = names.length - 1; j >= 0; j--) {
        const level = levels[j] as Levels;
        const column = columns[j] as Float64Array;
        for (let i = 0; i < count; i++) {
          column[i] = level.at(Math.floor((start + i) / repeat) % level.count);
        }
        repeat *= level.count;
      }
    },
  };
}

/** The values of a factor of a grid. */
interface Levels {
  readonly count: number;
  readonly at: (k: number) => number;
}

function levelsOf(factor: GridFactor): Levels {
  if ('values' in factor) {
    const { values } = factor;
    return { count: values.length, at: (k) => values[k] as number };
  }
  const { from, to, steps } = factor;
  return {
    count: steps,
    at: (k) => (k === steps - 1 ? to : from + (k / (steps - 1)) * (to - from)),
  };
}

function listPoints({ names, columns }: ReadList): DesignPoints {
  const rows = columns[0]?.length ?? 0;
  return {
    rows,
    names,
    seed: undefined,
    about: { kind: 'list', factors: names, rows, checksum: checksumOf(columns) },
    fill: (start, count, into) => {
      columns.forEach((column, j) => {
        (into[j] as Float64Array).set(column.subarray(start, start + count));
      });
    },
  };
}
