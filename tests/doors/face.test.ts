import { expect, it } from 'vitest';
import { entries } from './doors.js';

/** More than a reader of the root's page takes in. */
const MOST_VALUES = 90;

it('the root has no more values than can be taken in', () => {
  expect(Object.keys(entries['root'] ?? {}).length).toBeLessThanOrEqual(MOST_VALUES);
});

it('no value has two homes, but for units and what a question is asked about', () => {
  const { root = {}, units = {}, ...others } = entries;
  const homes = new Map<string, string[]>();
  for (const [entry, face] of Object.entries(others)) {
    for (const name of Object.keys(face)) homes.set(name, [...(homes.get(name) ?? []), entry]);
  }
  for (const name of Object.keys(root)) {
    if (!(name in units)) homes.set(name, [...(homes.get(name) ?? []), 'root']);
  }
  const twice = [...homes].filter(([, each]) => each.length > 1).map(([name]) => name);
  expect(twice).toEqual(['aerodynamicModels']);
});
