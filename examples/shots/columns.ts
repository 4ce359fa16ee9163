import { toDegrees, toFeet, toMetres, toMillimetres, toRadians, toYards } from 'fairflight/units';
import type { Computed } from './model.js';

/** A column that is added: its name says that the model computed it, what it is, and its unit, as in files of sweeps. */
export interface AddedColumn {
  readonly name: string;
  readonly of: (found: Computed) => number | undefined;
}

/** Systems of units that the added columns can be in. */
export const UNITS = ['si', 'imperial', 'metric'] as const;

type Reader = (si: never) => number;
/** Name of the unit and the way to it for distances, heights, angles, and places on the face. */
type System = readonly (readonly [string, Reader])[];

const SYSTEMS: Readonly<Record<(typeof UNITS)[number], System>> = {
  si: [
    ['m', toMetres],
    ['m', toMetres],
    ['rad', toRadians],
    ['m', toMetres],
  ],
  imperial: [
    ['yd', toYards],
    ['ft', toFeet],
    ['deg', toDegrees],
    ['mm', toMillimetres],
  ],
  metric: [
    ['m', toMetres],
    ['m', toMetres],
    ['deg', toDegrees],
    ['mm', toMillimetres],
  ],
};

/** Figures that are written: millimetres of a carry. */
const FIGURES = 6;

/** The columns that are added, in their order. */
export function addedColumns(units: (typeof UNITS)[number]): readonly AddedColumn[] {
  const [distance, height, angle, onFace] = SYSTEMS[units];
  const column = (
    name: string,
    field: Exclude<keyof Computed, 'why'>,
    [unit, read] = ['', Number] as readonly [string, Reader],
  ): AddedColumn => ({
    name: `model_${name}_${unit}`,
    of: (found) => {
      const value = found[field];
      return value === undefined ? undefined : Number(read(value as never).toPrecision(FIGURES));
    },
  });
  return [
    column('carry', 'carry', distance),
    column('apex', 'apex', height),
    column('descent_angle', 'descentAngle', angle),
    column('total', 'total', distance),
    column('strike_toe', 'strikeToe', onFace),
    column('strike_high', 'strikeHigh', onFace),
  ];
}
