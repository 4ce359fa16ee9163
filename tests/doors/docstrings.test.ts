import { expect, it } from 'vitest';
import { type DeclaredField, declarations } from '../../docs/write/declarations.js';
import { saidRange } from '../../docs/write/ranges.js';
import type { CountField, Field, QuantityField } from '../../src/inputs/field.js';

// A warning is a result; its bounds keep its numbers finite, and no more.
const all = (await declarations()).filter(({ name }) => name !== 'ModelWarning');
const declared = new Set(all.map(({ name }) => name));

/** The records whose numbers have comments elsewhere: of a declared type, or fields with comments of their own. */
function isToldElsewhere(type: string, field: DeclaredField, own: readonly DeclaredField[]): boolean {
  return (
    (type.match(/\w+/g) ?? []).some((word) => declared.has(word) || word === 'NormalPrior') ||
    own.some(({ name }) => name.startsWith(`${field.name}.`))
  );
}

/** The numbers that a field's own comment must speak of. */
function numbersIn(field: Field): readonly (QuantityField | CountField)[] {
  switch (field.kind) {
    case 'quantity':
    case 'count':
      return [field];
    case 'record':
      return Object.values(field.fields).flatMap(numbersIn);
    case 'list':
      return numbersIn(field.of);
    default:
      return [];
  }
}

/** What a comment does not say. */
function lacks(declaredField: DeclaredField, own: readonly DeclaredField[]): readonly string[] {
  const { field, comment, type } = declaredField;
  if (field.kind !== 'quantity' && isToldElsewhere(type, declaredField, own)) return [];
  return numbersIn(field).flatMap((number) => {
    const range = saidRange(number);
    const unit = number.kind === 'quantity' ? number.si.replace('m2', 'm²').replace('m3', 'm³') : '';
    return [
      ...(comment.includes(range) ? [] : [range]),
      ...(unit === '' || comment.includes(`[${unit}]`) ? [] : [`[${unit}]`]),
    ];
  });
}

it('the comment of every field states unit and range as its declaration does', () => {
  const lacking = all.flatMap(({ name, own }) =>
    own.flatMap((field) => {
      const missing = [...new Set(lacks(field, own))];
      return missing.length === 0
        ? []
        : [`${name}.${field.name} must say ${missing.join(' and ')}: ${field.comment}`];
    }),
  );
  expect(lacking).toEqual([]);
});
