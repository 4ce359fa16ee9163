import {
  REYNOLDS_CELLS,
  REYNOLDS_IN_BOTH,
  REYNOLDS_NOWHERE,
  SPIN_CELLS,
} from '../../aerodynamics/compiled-law.js';
import { fittedModernConstants } from '../../aerodynamics/fitted-modern.js';
import { float } from './number.js';

/** Beyond this exp leaves single precision, and the share of a low-Re effect is nothing long before. */
const MOST_EXPONENT = 80;

/**
 * The default law written out, as `fittedLift` and `fittedDrag` state it: CL and CD at Re and S. On a card four exponentials
 * cost less than a table. @internal
 */
export function fittedLawText(): string {
  const c = fittedModernConstants;
  const share = (centre: number, width: number, halfAt: number): string =>
    `1.0 / ((1.0 + exp(min((re - ${float(centre)}) * ${float(1 / width)}, ${float(MOST_EXPONENT)}))) * (1.0 + sixth * ${float(halfAt ** -6)}))`;
  return `
fn law(re: f32, s: f32) -> vec2f {
  let square = s * s;
  let sixth = square * square * square;
  let whole = ${float(c.liftOnset)} * (1.0 - exp(s * ${float(-1 / c.liftOnsetScale)})) + ${float(c.liftRise)} * (1.0 - exp(s * ${float(-1 / c.liftScale)}));
  let loss = ${share(c.lossCentre, c.lossWidth, c.lossSpinRatio)};
  let crisis = ${share(c.crisisCentre, c.crisisWidth, c.crisisSpinRatio)};
  return vec2f(
    whole * (1.0 - loss),
    ${float(c.dragFloor)} + ${float(c.dragRise)} * square / (square + ${float(c.dragScale ** 2)}) + ${float(c.crisisStep)} * crisis);
}`;
}

/**
 * Any compiled law from its table, in which lift and drag stand side by side. What leaves the usable cells is marked: the
 * flight is then one for the processor. @internal
 */
export function tableLawText(reynoldsForm: number): string {
  const cubic = (k: string, t: string): string =>
    `table[${k}].xy + ${t} * table[${k}].zw + ${t} * ${t} * (table[${k} + 1u].xy + ${t} * table[${k} + 1u].zw)`;
  const both = reynoldsForm === REYNOLDS_IN_BOTH;
  return `
@group(0) @binding(3) var<storage, read> table: array<vec4f>;

fn law(re: f32, s: f32) -> vec2f {
  let x = s * scene.cells.x;
  let z = re * scene.cells.y;
  // Without a branch: a driver that compiles each would take minutes.
  outside |= !((x >= scene.usable.x) & (x < scene.usable.y) & (z >= scene.usable.z) & (z < scene.usable.w));
  let xi = u32(clamp(x, 0.0, ${float(SPIN_CELLS - 1)}));
  let xt = x - f32(xi);
  let k = 4u * xi;
  var coefficients = ${cubic('k', 'xt')};
  ${
    reynoldsForm === REYNOLDS_NOWHERE
      ? ''
      : `let zi = u32(clamp(z, 0.0, ${float(REYNOLDS_CELLS - 1)}));
  let zt = z - f32(zi);
  let j = ${4 * SPIN_CELLS}u + 2u * zi;
  let byReynolds = ${cubic('j', 'zt')};
  coefficients += byReynolds${both ? ` * (${cubic('(k + 2u)', 'xt')})` : ''};`
  }
  return coefficients;
}`;
}
