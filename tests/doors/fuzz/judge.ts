import { rowStatuses, type SweepRows } from '../../../src/sweep/index.js';

/** Everything that can be reached in a value, in order, so that two lists can be held against each other. */
export function tracesOf(value: unknown): readonly unknown[] {
  const traces: unknown[] = [];
  const seen = new Set<unknown>();
  const walk = (part: unknown): void => {
    traces.push(part);
    if (typeof part !== 'object' || part === null || seen.has(part)) return;
    seen.add(part);
    if (ArrayBuffer.isView(part)) {
      traces.push(...(part as Float64Array));
      return;
    }
    try {
      for (const key of Reflect.ownKeys(part)) {
        const { get, value: held } = Object.getOwnPropertyDescriptor(part, key) ?? {};
        traces.push(key, get);
        walk(held);
      }
    } catch {
      // A proxy that throws at every look has nothing to compare.
    }
  };
  walk(value);
  return traces;
}

/** True where two lists of traces are the same. */
export function alike(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((trace, i) => Object.is(trace, b[i]));
}

/** The path of the first number in a result that is none, or infinite; nothing where all are numbers. */
export function notANumber(value: unknown, path = 'result'): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${path} = ${value}`;
  if (typeof value !== 'object' || value === null) return undefined;
  if (isSweepRows(value)) return notANumberInRows(value, path);
  if (ArrayBuffer.isView(value)) {
    const i = (value as Float64Array).findIndex((x) => !Number.isFinite(x));
    return i < 0 ? undefined : `${path}[${i}] = ${(value as Float64Array)[i]}`;
  }
  for (const [key, part] of Object.entries(value)) {
    const found = notANumber(part, `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

function isSweepRows(value: object): value is SweepRows {
  return 'about' in value && 'values' in value && 'status' in value;
}

/**
 * Rows whose outputs could not be computed say so in their status and hold NaN; none is infinite. An input stays what the
 * caller's list says, and where that is no number the status is outside-range.
 */
function notANumberInRows({ about, values, status }: SweepRows, path: string): string | undefined {
  for (const [j, { name, role }] of about.columns.entries()) {
    for (const [i, x] of (values[j] ?? []).entries()) {
      if (Number.isFinite(x)) continue;
      const how = rowStatuses[status[i] as number];
      const failed = how === 'outside-range' || how === 'no-strike' || how === 'not-converged';
      const noRun = name.startsWith('run.') && how !== 'landed' && how !== 'still-rolling';
      const meant = role === 'input' ? how === 'outside-range' : Number.isNaN(x) && (failed || noRun);
      if (!meant) return `${path} ${name}[${i}] = ${x}, ${how}`;
    }
  }
  return undefined;
}
