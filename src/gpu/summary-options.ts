import { settingsOf } from '../flight/fly.js';
import { choice, count, type Declared, type ListField, optional, quantity, record } from '../inputs/field.js';
import { flightOptionFields } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { type SweepBase, type SweepSetup, sweepBaseFields, sweepSetup } from '../sweep/setup.js';
import { type ChunkControl, chunkControlFields } from '../sweep/sweep.js';
import { RATIO } from '../units/unit.js';

/** What {@link Gpu.summarise} can sum up: columns of `FlightColumns`. */
export type SummaryQuantity =
  | 'carry'
  | 'side'
  | 'curve'
  | 'apex'
  | 'apexAt'
  | 'hangTime'
  | 'descentAngle'
  | 'landingSpin';

const QUANTITY_NAMES: readonly SummaryQuantity[] = [
  'carry',
  'side',
  'curve',
  'apex',
  'apexAt',
  'hangTime',
  'descentAngle',
  'landingSpin',
];

/** A histogram in even bins from one value to another, in the quantity's SI unit. */
export interface HistogramAsked {
  /** Lower end of the first bin. */
  readonly from: number;
  /** Upper end of the last. */
  readonly to: number;
  /** Bins, 1 to 1,000. */
  readonly bins: number;
}

/** Options of {@link Gpu.summarise}. */
export interface SummaryOptions
  extends Pick<SweepBase, 'from' | 'fixed' | 'timeLimit'>,
    Pick<ChunkControl, 'signal' | 'onProgress'> {
  /** What to sum up; default carry, side, apex, hang time and descent angle. */
  readonly quantities?: readonly SummaryQuantity[];
  /** Quantities of which a histogram is wanted. */
  readonly histograms?: { readonly [Name in SummaryQuantity]?: HistogramAsked };
}

/** The same as read. @internal */
export interface SummaryAsked extends Pick<ChunkControl, 'signal' | 'onProgress'> {
  readonly setup: SweepSetup;
  readonly timeLimit: number;
  readonly quantities: readonly SummaryQuantity[];
  readonly histograms: { readonly [Name in SummaryQuantity]?: HistogramAsked };
}

/** No quantity of a flight lies further from 0, in its SI unit. */
const FURTHEST = 1e5;

const histogramFields: Declared<HistogramAsked> = /* @__PURE__ */ frozen(() => ({
  from: quantity(RATIO, -FURTHEST, FURTHEST, 150, 'lower end'),
  to: quantity(RATIO, -FURTHEST, FURTHEST, 250, 'upper end'),
  bins: count(1, 1000, 50, 'bins'),
}));

const optionFields: Declared<SummaryOptions> = /* @__PURE__ */ frozen(() => {
  const quantities: ListField = {
    kind: 'list',
    of: choice(QUANTITY_NAMES, 'quantity'),
    least: 1,
    most: QUANTITY_NAMES.length,
    label: 'quantities',
  };
  const histogram = record(histogramFields, 'histogram');
  return {
    from: sweepBaseFields.from,
    fixed: sweepBaseFields.fixed,
    timeLimit: flightOptionFields.timeLimit,
    signal: chunkControlFields.signal,
    onProgress: chunkControlFields.onProgress,
    quantities: optional(quantities),
    histograms: optional(
      record(Object.fromEntries(QUANTITY_NAMES.map((name) => [name, optional(histogram)])), 'histograms'),
    ),
  } as Declared<SummaryOptions>;
});

/** @throws FairflightError @internal */
export function readSummaryOptions(options: SummaryOptions): SummaryAsked {
  const read = readOptions(optionFields, options);
  const { quantities = ['carry', 'side', 'apex', 'hangTime', 'descentAngle'], histograms = {} } = read;
  const { signal, onProgress, from, fixed, timeLimit } = read;
  for (const [name, { from: low, to: high }] of Object.entries(histograms)) {
    const path = `options.histograms.${name}`;
    if (!(high > low)) throw refusal(`${path}.to`, `${path}.to must be above its from`, { value: high });
    if (!quantities.includes(name as SummaryQuantity))
      throw refusal(path, `${name} is not among options.quantities`, { value: name });
  }
  const setup = sweepSetup({ ...(from && { from }), ...(fixed && { fixed }) });
  return {
    setup,
    timeLimit: settingsOf(timeLimit === undefined ? {} : { timeLimit }).timeLimit,
    quantities: [...new Set(quantities)],
    histograms,
    ...(signal && { signal }),
    ...(onProgress && { onProgress }),
  };
}
