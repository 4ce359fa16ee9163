import type { Field } from '../../../src/inputs/field.js';
import type { Stream } from '../../../src/numerics/index.js';
import { exampleOf, numbersAbout, WRONG } from '../declared.js';
import { type Change, copyOf, type Spot } from './mutate.js';

/** What the caller's own code throws in the middle of a call; a door lets it pass. */
export const ownError: Error = new Error('an error of the caller');

/**
 * Counts that a caller may make as large as the day is long. They are drawn up to twice the value in the table, and are
 * never left out, since their defaults are for people who wait.
 */
const COSTLY: readonly string[] = ['shots', 'resamples', 'pairs', 'columns', 'rows', 'count', 'base'];
/** Quantities that make a call dear when small, with the least that is drawn [SI]. */
const LEAST: Readonly<Record<string, number>> = { tolerance: 1e-6, spacing: 1 };

const NUMBERS: readonly number[] = [
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  -0,
  0,
  -1,
  0.5,
  1e308,
  -1e308,
  5e-324,
  2 ** 53,
];
const KEYS: readonly string[] = ['colour', '__proto__', 'constructor', 'toString', 'then', ''];

/** A proxy that throws the caller's own error at every look. */
function throwing(): object {
  const fail = (): never => {
    throw ownError;
  };
  return new Proxy({}, { get: fail, has: fail, ownKeys: fail, getOwnPropertyDescriptor: fail });
}

/** Something for a spot that now holds `now`: half the time what may be there, else what may not. */
export function mixedValue(spot: Spot, now: unknown, draw: Stream): Change | undefined {
  const change = draw.uniform() < 0.5 ? allowed(spot, now, draw) : undefined;
  return change ?? hostile(spot, now, draw);
}

const one = <T>(list: readonly T[], draw: Stream): T => list[draw.integer(list.length)] as T;
const to = (value: unknown, what = `= ${String(value).slice(0, 40)}`): Change => ({ what, value });
const nameOf = ({ keys }: Spot): string => String(keys.at(-1));

function allowed(spot: Spot, now: unknown, draw: Stream): Change | undefined {
  const { field } = spot;
  switch (field?.kind) {
    case 'quantity': {
      const min = Math.max(field.min, LEAST[nameOf(spot)] ?? field.min);
      const share = [0, 1][draw.integer(8)] ?? draw.uniform();
      return to(min * (1 - share) + field.max * share);
    }
    case 'count': {
      const most = COSTLY.includes(nameOf(spot)) ? 2 * Number(now ?? field.min) || field.min : field.max;
      return to(field.min + Math.floor(draw.uniform() * (Math.min(most, field.max) - field.min + 1)));
    }
    case 'choice':
      return to(one(field.names, draw));
    case 'flag':
      return to(draw.integer(2) === 0);
    case 'named':
      return to(one(Object.keys(field.presets), draw));
    case 'record':
    case 'variant':
      return holdsCostly(field) ? undefined : to(exampleOf(field), 'an example');
    default:
      return ofItsKind(now, draw);
  }
}

/** Another value of the same type, where none is declared. */
function ofItsKind(now: unknown, draw: Stream): Change | undefined {
  if (typeof now === 'number') return to(one([2 * draw.uniform() * now, -now, Math.round(now) + 1], draw));
  if (typeof now === 'string') return to(now.slice(0, draw.integer(now.length + 1)));
  if (!Array.isArray(now)) return undefined;
  const at = draw.integer(now.length + 1);
  const list = copyOf(now) as unknown[];
  if (draw.integer(2) === 0) list.splice(at, 1);
  else list.splice(at, 0, ...list.slice(0, 1));
  return to(list, `of ${list.length} entries`);
}

function hostile(spot: Spot, now: unknown, draw: Stream): Change | undefined {
  switch (draw.integer(8)) {
    case 0:
    case 1:
      return to(one(NUMBERS, draw));
    case 2: {
      const about = Object.entries(spot.field === undefined ? {} : numbersAbout(spot.field));
      const beyond = about.filter(([, { verdict }]) => verdict !== 'fine');
      return beyond.length === 0 ? undefined : to(one(beyond, draw)[1].value);
    }
    case 3:
      return {
        what: 'throws',
        get: () => {
          throw ownError;
        },
      };
    case 4: {
      let looks = 0;
      return draw.integer(2) === 0
        ? { what: 'is another at the second look', get: () => (looks++ === 0 ? now : Number.NaN) }
        : to(throwing(), 'a proxy that throws');
    }
    case 5:
      return guarded(spot) ? undefined : { what: 'left out', gone: true };
    case 6:
      return withUnknown(now, draw);
    default: {
      const [name, value] = one(Object.entries(WRONG), draw);
      // A text would name a file somewhere else.
      if (spot.path === 'path' && typeof value === 'string') return undefined;
      return name === 'empty object' && guarded(spot) ? undefined : to(value, `= ${name}`);
    }
  }
}

/** With a key that nobody knows; the list with a hole. */
function withUnknown(now: unknown, draw: Stream): Change | undefined {
  if (typeof now !== 'object' || now === null || ArrayBuffer.isView(now)) return undefined;
  const copy = copyOf(now) as object;
  if (Array.isArray(copy)) {
    delete copy[draw.integer(copy.length)];
    return to(copy, 'with a hole');
  }
  const key = one(KEYS, draw);
  if (
    !Reflect.defineProperty(copy, key, { value: 1, enumerable: true, configurable: true, writable: true })
  ) {
    return undefined;
  }
  return to(copy, `with a key ${JSON.stringify(key)}`);
}

/** True where leaving it out would ask for a costly default. */
function guarded(spot: Spot): boolean {
  return spot.field !== undefined && (COSTLY.includes(nameOf(spot)) || holdsCostly(spot.field));
}

function holdsCostly(field: Field): boolean {
  return field.kind === 'record' && Object.keys(field.fields).some((name) => COSTLY.includes(name));
}
