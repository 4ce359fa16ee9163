import { describe, expect, it } from 'vitest';
import type { Field } from '../../src/inputs/field.js';
import { measuredShotFields } from '../../src/inputs/measured-shot.js';
import { columnBounds } from '../../src/schema/column-bounds.js';
import { aliases, type NumberName } from '../../src/schema/column-names.js';
import { columnNames, numberColumns, readHeading } from '../../src/schema/columns.js';
import { readShots } from '../../src/schema/index.js';
import { symbolOf } from '../../src/schema/unit-names.js';

const quantities = Object.entries(measuredShotFields as Readonly<Record<string, Field>>).flatMap(
  ([name, field]) => (field.kind === 'quantity' ? [[name as NumberName, field] as const] : []),
);
const numbers = [...quantities.map(([name]) => name), ...(['smashFactor', 'backspin', 'sidespin'] as const)];

describe('the columns of a table', () => {
  it.each(quantities)('are read under the label of %s, in the unit that people say', (name, field) => {
    const heading = readHeading(`${field.label.toUpperCase()} (${field.said.symbol})`);
    expect(heading).toEqual({ kind: 'number', field: name, unit: field.said });
  });

  it.each(numbers)('bound %s no wider than its declaration', (name) => {
    const { possible, usual } = numberColumns[name];
    const declared = quantities.find(([known]) => known === name)?.[1];
    if (declared !== undefined) {
      expect(possible.min).toBeGreaterThanOrEqual(declared.min);
      expect(possible.max).toBeLessThanOrEqual(declared.max);
    }
    expect(usual.min).toBeGreaterThanOrEqual(possible.min);
    expect(usual.max).toBeLessThanOrEqual(possible.max);
    expect(usual.min).toBeLessThan(usual.max);
  });

  it('bound a column as the quantity is declared where no bounds are written', () => {
    const { said, min, max } = measuredShotFields.carry;
    expect(numberColumns.carry.possible).toMatchObject({ said, min, label: 'carry' });
    expect(numberColumns.carry.possible.max).toBeLessThan(max);
    expect(Object.keys(columnBounds).every((name) => numbers.includes(name as NumberName))).toBe(true);
  });

  it('have no name twice', () => {
    const names = Object.values(aliases).flat();
    // Four columns of text and one of the hand.
    expect(columnNames.size).toBe(numbers.length + 5 + names.length);
    expect(symbolOf(numberColumns.smashFactor.possible.said)).toBe('1');
  });
});

describe('a reading worked out from others', () => {
  it('is held to the bounds of its own column', () => {
    const spun =
      'ball speed (mph),launch (deg),backspin (rpm),sidespin (rpm)\n142,12,2400,700\n142,12,15000,15000\n';
    const fast =
      'club speed (mph),smash factor,launch (deg),spin (rpm)\n100,1.48,12,2600\n165,1.55,12,2600\n';
    const tables = [spun, fast].map((text) => readShots(text));
    // Club speed, attack angle or loft are missing, so a shot is worthless without what is worked out.
    for (const { shots } of tables) expect(shots).toHaveLength(1);
    expect(tables.map(({ rejected }) => rejected[0])).toMatchObject([
      {
        line: 3,
        column: 'backspin (rpm)',
        reason: 'impossible-value',
        message:
          'spin is worked out from backspin and sidespin: 21210 rpm is impossible: it must be between 0 and 16000 rpm',
      },
      {
        line: 3,
        column: 'smash factor',
        reason: 'impossible-value',
        message:
          'ball speed is worked out from club speed and smash factor: 255.8 mph is impossible: it must be between 5 and 245 mph',
      },
    ]);
  });
});
