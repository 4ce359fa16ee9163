import { refusal } from '../inputs/refuse.js';
import { checksumOf } from '../numerics/checksum.js';
import { latinHypercube } from '../numerics/latin-hypercube.js';
import { type PointSet, type SobolScramble, sobol } from '../numerics/sobol.js';
import { sobolIndicesDesign } from '../numerics/sobol-indices.js';
import type { GridFactor } from './design.js';
import type { FactorName } from './factors.js';
import { type Draw, drawOf } from './random-factors.js';
import type { ReadDesign, ReadList } from './read-design.js';

/** How many rows of which factors a design has, and each row by its index. @internal */
export interface DesignPoints {
  readonly rows: number;
  readonly names: readonly FactorName[];
  /** Columns whose values may lie outside the ranges of their factors. */
  readonly open: readonly number[];
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
  if (design.kind === 'grid') {
    return gridPoints(
      design.factors.map(({ name }) => name),
      design.factors,
    );
  }
  const draws = design.factors.map(drawOf);
  const sizes = draws.map(({ names }) => names.length);
  const dimensions = sizes.reduce((sum, size) => sum + size, 0);
  const { seed = 0 } = design;
  switch (design.kind) {
    case 'latin-hypercube':
      return randomPoints(
        draws,
        design.count,
        { ...design, seed },
        latinHypercube(design.count, dimensions, seed),
      );
    case 'sobol': {
      const { scramble = 'owen' } = design;
      const points = sobolOf(dimensions, 1, scramble, seed);
      return randomPoints(draws, design.count, { ...design, scramble, seed }, points);
    }
    case 'sobol-indices': {
      const points = sobolIndicesDesign(sobolOf(dimensions, 2, 'owen', seed), sizes);
      return randomPoints(draws, design.base * (draws.length + 2), { ...design, seed }, points);
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

function randomPoints(
  draws: readonly Draw[],
  rows: number,
  about: Readonly<Record<string, unknown>> & { readonly seed: number },
  points: PointSet,
): DesignPoints {
  const names = draws.flatMap((draw) => draw.names);
  const open = draws.flatMap((draw) => draw.names.map(() => draw.open));
  const at = new Float64Array(names.length);
  return {
    rows,
    names,
    open: names.flatMap((_, j) => (open[j] === true ? [j] : [])),
    seed: about.seed,
    about,
    fill: (start, count, columns) => {
      for (let i = 0; i < count; i++) {
        points.point(start + i, at);
        let column = 0;
        for (const draw of draws) {
          draw.write(at, column, columns, i);
          column += draw.names.length;
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
    open: [],
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
    open: names.map((_, j) => j),
    seed: undefined,
    about: { kind: 'list', factors: names, rows, checksum: checksumOf(columns) },
    fill: (start, count, into) => {
      columns.forEach((column, j) => {
        (into[j] as Float64Array).set(column.subarray(start, start + count));
      });
    },
  };
}
