import { loadBatchKernel } from '../../../src/batch.js';
import type { Scene } from '../../../src/scene/index.js';
import {
  columnOf,
  type Design,
  type IndexDesign,
  type OutputName,
  type SweepOptions,
  sobolIndicesOf,
  sweep as sweepDesign,
} from '../../../src/sweep/index.js';
import { degrees, metresPerSecond, millimetres, mph, rpm } from '../../../src/units/index.js';
import { delivery, launch } from '../inputs.js';
import { type Numbers, pick, type Room } from '../room.js';

const kernel = await loadBatchKernel();
const speed = { name: 'delivery.clubSpeed', from: mph(70), to: mph(120) } as const;
const loft = { name: 'delivery.dynamicLoft', from: degrees(9), to: degrees(19) } as const;
const toe = { name: 'delivery.strikeOffset.toe', from: millimetres(-20), to: millimetres(20) } as const;
const ball = { name: 'launch.ballSpeed', from: mph(110), to: mph(170) } as const;
const spin = { name: 'launch.spinRate', from: rpm(1800), to: rpm(4500) } as const;
const headwind = { name: 'wind.along', from: metresPerSecond(-10), to: metresPerSecond(10) } as const;

const struck: SweepOptions = { from: delivery({ speed: 95, loft: 14, attack: 1 }) };
const launched: SweepOptions = { from: launch([150, 12, 2600]) };
const soft: Scene = { turf: 'soft' };

/** Rows of a sweep as `column.row`. */
const rows = (
  design: Design,
  options: SweepOptions,
  columns: readonly string[],
  of: readonly number[],
  scene: Scene = {},
): Numbers => {
  const result = sweepDesign(design, scene, options);
  return Object.fromEntries(
    columns.flatMap((column) =>
      of.map((row) => [`${column}.${row}`, columnOf(result, column)[row] as number]),
    ),
  );
};

const indexDesign: IndexDesign = {
  kind: 'sobol-indices',
  base: 128,
  seed: 2,
  factors: [ball, spin, headwind],
};
const indices = (output: OutputName): Numbers => {
  const result = sweepDesign(indexDesign, soft, { ...launched, outputs: [output] });
  return pick(
    sobolIndicesOf(indexDesign, columnOf(result, output)),
    'mean',
    'variance',
    'factors.0.firstOrder',
    'factors.0.total',
    'factors.1.total',
    'factors.2.firstOrder',
    'factors.2.totalInterval.high',
  );
};

/** Designs and columns. */
export const sweep: Room = {
  room: 'sweep',
  digits: 8,
  questions: {
    grid: () =>
      rows(
        {
          kind: 'grid',
          factors: [
            { ...speed, steps: 4 },
            { ...loft, steps: 3 },
          ],
        },
        struck,
        ['launch.spinRate', 'carry', 'total'],
        [0, 7],
      ),
    hypercube: () =>
      rows(
        { kind: 'latin-hypercube', count: 8, seed: 5, factors: [speed, loft, toe] },
        struck,
        ['delivery.clubSpeed', 'carry', 'side'],
        [2],
      ),
    sobol: () =>
      rows(
        { kind: 'sobol', count: 8, seed: 5, factors: [ball, spin, headwind] },
        launched,
        ['carry', 'total'],
        [1, 6],
        soft,
      ),
    'kernel-sobol': () =>
      rows(
        { kind: 'sobol', count: 8, factors: [ball, spin] },
        { ...launched, kernel },
        ['carry', 'flight.apex'],
        [3],
        soft,
      ),
    'indices-of-carry': () => indices('carry'),
    'indices-of-total': () => indices('total'),
  },
};
