import { readScattered } from '../../src/dispersion/scattered.js';
import { type Field, type Fields, optional } from '../../src/inputs/field.js';
import { measuredShotFields } from '../../src/inputs/measured-shot.js';
import { sceneFields } from '../../src/scene/scene.js';
import { readTracks, trackFields } from '../../src/shot/read-track.js';
import { shotOptionFields } from '../../src/shot/shot-options.js';
import { readStart } from '../../src/shot/start.js';
import type { Argument } from './declared.js';
import * as valid from './valid.js';

/** A public function under test. */
export interface Door {
  /** Entry and name, as `session.calibrate`; in brackets what tells two rows of one function apart. */
  readonly name: string;
  /** Calls it and uses up what it gives. */
  readonly call: (...args: readonly unknown[]) => unknown;
  readonly args: readonly Argument[];
  /** Takes long: it is called with every tenth only of the values that are fine. */
  readonly slow?: true;
}

/** A row of the table. */
export function door(name: string, call: unknown, ...args: readonly Argument[]): Door {
  return { name, call: call as Door['call'], args };
}

/** A row of a function that takes long. */
export function slow(name: string, call: unknown, ...args: readonly Argument[]): Door {
  return { ...door(name, call, ...args), slow: true };
}

function recordOf(fields: unknown, label = 'record'): Field {
  return { kind: 'record', fields: fields as Fields, label };
}

/** An argument that is a record. */
export function record(root: string, fields: unknown, value: unknown): Argument {
  return { root, field: recordOf(fields), valid: value };
}

/** A record that may be left out. */
export function options(fields: unknown, value: unknown, root = 'options'): Argument {
  return { root, field: optional(recordOf(fields)), valid: value };
}

/** An argument of a field's own. */
export function one(root: string, field: unknown, value: unknown): Argument {
  return { root, field: field as Field, valid: value };
}

/** An argument of which nothing is declared: whatever is wrong with it, the error must be a typed one. */
export function open(root: string, value: unknown): Argument {
  return one(root, { kind: 'custom', read: (given: unknown) => given, label: root }, value);
}

/** A question whose parts are named without the question, as `hole.length`. */
export function apart(root: string, parts: Readonly<Record<string, unknown>>, value: unknown): Argument {
  return { root, field: recordOf(parts), valid: value, apart: true };
}

/** A shot that starts at the club or at the ball. */
export function start(root: 'delivery' | 'launch', fields: unknown, value: unknown): Argument {
  return { ...record(root, fields, value), read: readStart };
}

/** A flight, or a shot with its run: what is declared of it are the tracks. */
export function tracked(root: 'flight' | 'shot', value: unknown): Argument {
  const part: Field = recordOf({ track: columns('track', trackFields, {}).field });
  const field = root === 'flight' ? part : recordOf({ flight: part, run: optional(part) });
  return { root, field, valid: value, read: readTracks, lax: true };
}

/** A question about scattered shots. */
export function scattered(
  parts: Readonly<Record<string, unknown>>,
  value: unknown,
  more: Readonly<Record<string, unknown>> = {},
): Argument {
  return {
    ...apart('subject', { ...parts, ...more }, value),
    read: (given) => readScattered(given, more as never),
  };
}

export function scene(value: unknown = valid.scene): Argument {
  return options(sceneFields, value, 'scene');
}

export const shotOptions = (): Argument => options(shotOptionFields, valid.shotOptions);

/** A list of one kind of record. */
export function list(root: string, fields: unknown, value: readonly unknown[], least = 0): Argument {
  const field: Field = { kind: 'list', of: recordOf(fields), least, most: 1_000_000, label: root };
  return { root, field, valid: value };
}

export const shots = (least = 0): Argument => list('shots', measuredShotFields, valid.shots, least);

/** Columns: every field of the record a list of numbers. */
export function columns(root: string, fields: unknown, value: unknown): Argument {
  const lists = Object.entries(fields as Fields).map(([name, field]): [string, Field] => {
    const { optional: left, ...of } = field;
    const column: Field = { kind: 'list', of: of as Field, least: 0, most: 1e9, label: name };
    return [name, left === true ? optional(column) : column];
  });
  return record(root, Object.fromEntries(lists), value);
}
