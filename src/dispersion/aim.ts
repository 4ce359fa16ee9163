import { type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { DEGREES } from '../units/unit.js';
import type { ShotColumns } from './cloud.js';

/** Declaration of an aim, + right. @internal */
export const aimField: QuantityField<'rad'> = /* @__PURE__ */ frozen(() =>
  quantity(DEGREES, -1, 1, 0.05, 'aim'),
);

/** The shots turned about the tee as they are, + right [rad]. @internal */
export function turned(columns: ShotColumns, aim: number): ShotColumns {
  const [c, s] = [Math.cos(aim), Math.sin(aim)];
  const { landingX, landingZ, restX, restZ } = columns;
  const along = (x: readonly number[], z: readonly number[]): number[] =>
    x.map((xi, i) => xi * c - (z[i] ?? 0) * s);
  const across = (x: readonly number[], z: readonly number[]): number[] =>
    x.map((xi, i) => xi * s + (z[i] ?? 0) * c);
  return {
    ...columns,
    landingX: along(landingX, landingZ),
    landingZ: across(landingX, landingZ),
    restX: along(restX, restZ),
    restZ: across(restX, restZ),
  };
}
