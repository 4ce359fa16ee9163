import type { Flight } from '../flight/flight.js';
import { settingsOf } from '../flight/fly.js';
import type { LaunchArrays } from '../flight/fly-many.js';
import { type FlightColumns, flightEndings, flyColumns } from '../flight/fly-many.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import type { Design } from '../sweep/design.js';
import { requireNotAborted } from '../sweep/sweep.js';
import type { Card } from './card.js';
import { type Drawing, readDrawing } from './drawing.js';
import { type Flights, prepareFlights } from './flown.js';
import { GROUP } from './kernel-text.js';
import { packScene } from './scene-numbers.js';
import { readSummaryOptions, type SummaryAsked, type SummaryOptions } from './summary-options.js';
import {
  cellOffsets,
  HISTOGRAMS,
  LEFT_COUNT,
  LEFT_ROOM,
  LEFT_ROWS,
  MOMENTS,
  summaryText,
  TIME_LIMIT_COUNT,
} from './summary-text.js';
import { pointsText, pointWords } from './wgsl/points.js';

/** What the flights that landed give for one quantity, in SI units. */
export interface QuantitySummary {
  /** Mean. */
  readonly mean: number;
  /** Standard deviation of the flights, with one fewer than their number. */
  readonly deviation: number;
  /** Least value. */
  readonly least: number;
  /** Greatest value. */
  readonly greatest: number;
  /** Flights below the histogram's range, in each of its bins, and above it; where one was asked for. */
  readonly counts?: { readonly below: number; readonly bins: Float64Array; readonly above: number };
}

/** Many flights in a few numbers. */
export interface FlightSummary {
  /** Flights flown. */
  readonly flights: number;
  /** How many ended in each way. */
  readonly ended: Readonly<Record<Flight['ended'], number>>;
  /** Flights that the processor flew, see {@link GpuFlights}. */
  readonly onProcessor: number;
  /** What was asked for; NaN where nothing landed. */
  readonly quantities: Readonly<Record<string, QuantitySummary>>;
}

/** Groups of one run, each with a part of its own, and the most flights of an invocation. */
const MOST_GROUPS = 16384;
const MOST_EACH = 64;
/** Points flown first, to know the middle of each quantity: sums of single precision are taken from there. */
const PILOTS = 64;

/** Summarises a design on a card; see {@link Gpu.summarise}. @internal */
export async function summariseOn(
  card: Card,
  design: Design,
  scene: Scene = {},
  options: SummaryOptions = {},
): Promise<FlightSummary> {
  const asked = readSummaryOptions(options);
  const drawing = readDrawing(design, asked);
  const resolved = resolveScene(scene);
  const flights = prepareFlights(resolved, asked.timeLimit, drawing.sources);
  const sums = startSums(asked, await pilot(flights, drawing));
  const kernel = kernelOf(flights, drawing, asked, sums);
  for (let row = 0; row < drawing.rows; ) {
    requireNotAborted(asked.signal);
    const count = Math.min(drawing.rows - row, GROUP * MOST_GROUPS * MOST_EACH);
    await addRows(card, flights, drawing, kernel, asked, sums, row, count);
    row += count;
    asked.onProgress?.({ done: row, total: drawing.rows });
  }
  return finish(sums, asked, drawing.rows);
}

/** Sums so far, of a quantity from its pivot. */
interface Sum {
  readonly pivot: number;
  first: number;
  second: number;
  least: number;
  greatest: number;
  readonly cells: Float64Array;
}

interface Sums {
  readonly of: readonly Sum[];
  readonly ended: number[];
  onProcessor: number;
}

/** The middle of each quantity among the first points. */
async function pilot(flights: Flights, drawing: Drawing): Promise<FlightColumns> {
  const rows = Array.from({ length: Math.min(PILOTS, drawing.rows) }, (_, i) => i);
  return flyRows(flights, drawing, rows);
}

function flyRows({ scene, timeLimit }: Flights, drawing: Drawing, rows: readonly number[]): FlightColumns {
  const { launches, conditions } = drawing.columns(rows);
  return flyColumns(scene, launches as LaunchArrays, conditions, settingsOf({ timeLimit }));
}

function startSums({ quantities, histograms }: SummaryAsked, flown: FlightColumns): Sums {
  const landed = [...flown.ended.keys()].filter((i) => flightEndings[flown.ended[i] as number] === 'landed');
  return {
    of: quantities.map((name) => ({
      pivot: Math.fround(
        landed.reduce((sum, i) => sum + (flown[name][i] as number), 0) / (landed.length || 1),
      ),
      first: 0,
      second: 0,
      least: Number.POSITIVE_INFINITY,
      greatest: Number.NEGATIVE_INFINITY,
      cells: new Float64Array(cellsOf(histograms[name]?.bins)),
    })),
    ended: flightEndings.map(() => 0),
    onProcessor: 0,
  };
}

/** Cells of a histogram, one below and one above included. */
function cellsOf(bins: number | undefined): number {
  return bins === undefined ? 0 : bins + 2;
}

interface Kernel {
  readonly text: string;
  readonly numbers: Uint32Array;
  readonly cells: readonly number[];
}

function kernelOf(
  { text }: Flights,
  { dimensions, seed, scramble }: Drawing,
  { quantities, histograms }: SummaryAsked,
  sums: Sums,
): Kernel {
  const words = pointWords(dimensions, seed);
  const numbers = new Uint32Array(words.length + 3 * quantities.length);
  numbers.set(words);
  const floats = new Float32Array(numbers.buffer);
  quantities.forEach((name, k) => {
    const { from = 0, to = 1, bins = 1 } = histograms[name] ?? {};
    floats.set([sums.of[k]?.pivot ?? 0, from, bins / (to - from)], words.length + 3 * k);
  });
  const cells = sums.of.map((sum) => sum.cells.length);
  return {
    text: summaryText(`${pointsText(scramble)}\n${text}`, { quantities, cells, floatsAt: words.length }),
    numbers,
    cells,
  };
}

/** Adds rows to the sums; halves them where the card leaves more than there is room to name. */
async function addRows(
  card: Card,
  flights: Flights,
  drawing: Drawing,
  kernel: Kernel,
  asked: SummaryAsked,
  sums: Sums,
  first: number,
  count: number,
): Promise<void> {
  const each = Math.min(MOST_EACH, Math.ceil(count / (GROUP * MOST_GROUPS)));
  const groups = Math.ceil(count / (GROUP * each));
  const offsets = cellOffsets(kernel.cells);
  const width = MOMENTS * asked.quantities.length + 1;
  const partsAt = HISTOGRAMS + (offsets.at(-1) ?? 0);
  const left = await card.run(
    {
      kernel: kernel.text,
      scene: packScene(flights.problem, flights.scene, flights.law, flights.timeLimit, flights.sources, {
        flights: count,
        first,
        each,
      }),
      inputs: [],
      tables: [...flights.tables, { binding: 4, numbers: kernel.numbers }],
      bytes: 4 * (partsAt + width * groups),
      cleared: true,
      groups,
    },
    (results) => {
      const wholes = new Uint32Array(results);
      const floats = new Float32Array(results);
      const leftCount = wholes[LEFT_COUNT] as number;
      if (leftCount > LEFT_ROOM) return undefined;
      (sums.ended[1] as number) += wholes[TIME_LIMIT_COUNT] as number;
      for (let group = 0; group < groups; group++) {
        const at = partsAt + width * group;
        (sums.ended[0] as number) += wholes[at] as number;
        sums.of.forEach((sum, k) => {
          const own = at + 1 + MOMENTS * k;
          sum.first += floats[own] as number;
          sum.second += floats[own + 1] as number;
          sum.least = Math.min(sum.least, floats[own + 2] as number);
          sum.greatest = Math.max(sum.greatest, floats[own + 3] as number);
        });
      }
      sums.of.forEach(({ cells }, k) => {
        for (let cell = 0; cell < cells.length; cell++) {
          (cells[cell] as number) += wholes[HISTOGRAMS + (offsets[k] ?? 0) + cell] as number;
        }
      });
      return [...wholes.subarray(LEFT_ROWS, LEFT_ROWS + leftCount)];
    },
  );
  if (left === undefined) {
    const half = Math.ceil(count / 2);
    await addRows(card, flights, drawing, kernel, asked, sums, first, half);
    await addRows(card, flights, drawing, kernel, asked, sums, first + half, count - half);
  } else if (left.length > 0) {
    addFlown(flyRows(flights, drawing, left), asked, sums);
  }
}

/** Adds flights of the processor. */
function addFlown(flown: FlightColumns, { quantities, histograms }: SummaryAsked, sums: Sums): void {
  const count = flown.ended.length;
  sums.onProcessor += count;
  for (let i = 0; i < count; i++) {
    const ending = flown.ended[i] as number;
    (sums.ended[ending] as number)++;
    if (flightEndings[ending] !== 'landed') continue;
    sums.of.forEach((sum, k) => {
      const name = quantities[k] ?? 'carry';
      const value = flown[name][i] as number;
      sum.first += value - sum.pivot;
      sum.second += (value - sum.pivot) ** 2;
      sum.least = Math.min(sum.least, value);
      sum.greatest = Math.max(sum.greatest, value);
      const histogram = histograms[name];
      if (histogram === undefined) return;
      const { from, to, bins } = histogram;
      const cell = Math.min(Math.max(Math.floor(((value - from) * bins) / (to - from)), -1), bins) + 1;
      (sum.cells[cell] as number)++;
    });
  }
}

function finish(sums: Sums, { quantities }: SummaryAsked, flights: number): FlightSummary {
  const landed = sums.ended[0] as number;
  return {
    flights,
    ended: Object.fromEntries(
      flightEndings.map((name, k) => [name, sums.ended[k] as number]),
    ) as FlightSummary['ended'],
    onProcessor: sums.onProcessor,
    quantities: Object.fromEntries(
      sums.of.map(({ pivot, first, second, least, greatest, cells }, k) => [
        quantities[k],
        {
          mean: pivot + first / landed,
          deviation: Math.sqrt((second - (first * first) / landed) / (landed - 1)),
          least: landed > 0 ? least : Number.NaN,
          greatest: landed > 0 ? greatest : Number.NaN,
          ...(cells.length > 0 && {
            counts: { below: cells[0] as number, bins: cells.slice(1, -1), above: cells.at(-1) as number },
          }),
        },
      ]),
    ),
  };
}
