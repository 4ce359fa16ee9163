/** One method at one setting, as every program of the benchmark prints it. */
export interface Row {
  readonly method: string;
  /** Tolerance or step, as text. */
  readonly setting: string;
  /** How many of the reference flights it flew. */
  readonly flights: number;
  /** Processor time a flight [µs]: median over the rounds. */
  readonly microseconds: number;
  /** The same in the slowest turn of the program. */
  readonly slowest: number;
  /** Distance of the landing point from the answer [m]. */
  readonly medianError: number;
  readonly worstError: number;
  /** Largest error of the apex [m] and of the flight time [s]. */
  readonly apexError: number;
  readonly timeError: number;
  /** Evaluations of the force law a flight; not a number where the program does not count them. */
  readonly forceCalls: number;
}

/** Heading of the lines that {@link parseRows} reads. */
export const ROW_HEADING =
  'method,setting,flights,us_per_flight,median_error_m,worst_error_m,apex_error_m,time_error_s,force_calls';

/** Reads what a program of the benchmark printed. */
export function parseRows(text: string): Row[] {
  const [heading, ...lines] = text.trim().split('\n');
  if (heading !== ROW_HEADING) throw new Error(`not a table of the benchmark: ${heading}`);
  return lines.map((line) => {
    const [method = '', setting = '', ...figures] = line.split(',');
    const [flights, microseconds, medianError, worstError, apexError, timeError, forceCalls] = figures.map(
      Number,
    ) as [number, number, number, number, number, number, number];
    return {
      method,
      setting,
      flights,
      microseconds,
      slowest: microseconds,
      medianError,
      worstError,
      apexError,
      timeError,
      forceCalls,
    };
  });
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  const at = (i: number): number => sorted[i] as number;
  return sorted.length % 2 === 1 ? at(middle - 0.5) : (at(middle - 1) + at(middle)) / 2;
}

/** Merges the rows of several passes: the time is the median over the passes, the rest is the same in each. */
export function mergeRows(rows: readonly Row[]): Row[] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = `${row.method},${row.setting}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()].map((group) => ({
    ...(group[0] as Row),
    microseconds: median(group.map((row) => row.microseconds)),
    slowest: Math.max(...group.map((row) => row.microseconds)),
  }));
}

/**
 * Least time a flight at which a method keeps its worst landing error to `error` [µs]: of a setting that does, or
 * between two settings on a straight line of the logarithms. Undefined where no setting does.
 */
export function costAt(rows: readonly Row[], method: string, error: number): number | undefined {
  const points = rows.filter((row) => row.method === method).sort((a, b) => a.worstError - b.worstError);
  const costs = points.flatMap((point, i) => {
    const { worstError, microseconds } = point;
    if (worstError <= error) return [microseconds];
    const finer = points[i - 1];
    if (finer === undefined || finer.worstError > error || finer.microseconds <= microseconds) return [];
    const share = Math.log(error / finer.worstError) / Math.log(worstError / finer.worstError);
    return [finer.microseconds * (microseconds / finer.microseconds) ** share];
  });
  return costs.length > 0 ? Math.min(...costs) : undefined;
}
