import { dormandPrince853 as tableau } from '../../../numerics/tableaux/dormand-prince-853.js';
import { kernelConstants, thirdOrderWeights } from '../kernel-layout.js';

/** How one target language writes arithmetic on the flights of a register. */
export interface Dialect {
  readonly constant: (value: number) => string;
  readonly add: (a: string, b: string) => string;
  readonly sub: (a: string, b: string) => string;
  readonly mul: (a: string, b: string) => string;
  readonly div: (a: string, b: string) => string;
  readonly sqrt: (a: string) => string;
  readonly max: (a: string, b: string) => string;
  /** `a` when only the spin across the air enters S, else `b`. */
  readonly spinEntering: (a: string, b: string) => string;
  /** Declares a name for a value. */
  readonly let: (name: string, value: string) => string;
  /**
   * Lines that look up the compiled law for stage `i`, given the cell coordinate `x_i` of S and the air speed `u_i`,
   * and leave the coefficients `cd_i` and `cl_i`.
   */
  readonly law: (i: number | 'E') => readonly string[];
}

const CONSTANTS = kernelConstants();

/** Plain JavaScript numbers; the law's tables are `st` and `rt`. */
export const javascript: Dialect = {
  constant: (value) => {
    const index = CONSTANTS.indexOf(value);
    return index < 0 ? String(value) : `K${index}`;
  },
  add: (a, b) => `(${a} + ${b})`,
  sub: (a, b) => `(${a} - ${b})`,
  mul: (a, b) => `(${a} * ${b})`,
  div: (a, b) => `${a} / (${b})`,
  sqrt: (a) => `Math.sqrt(${a})`,
  max: (a, b) => `Math.max(${a}, ${b})`,
  // One of the factors is 1, the other 0. A choice here would cost two more roots: V8 takes them once for each branch.
  spinEntering: (a, b) => `(across * ${a} + total * ${b})`,
  let: (name, value) => `const ${name} = ${value};`,
  law: (i) => [
    `const z${i} = u${i} * rInv;`,
    `if (!(x${i} >= sLow && x${i} < sHigh && z${i} >= rLow && z${i} < rHigh)) return OUTSIDE;`,
    `const xi${i} = x${i} & 2047, zi${i} = z${i} & 1023, xt${i} = x${i} - xi${i}, zt${i} = z${i} - zi${i}, xk${i} = xi${i} << 3, zk${i} = zi${i} << 2;`,
    `const xq${i} = xt${i} * xt${i}, zq${i} = zt${i} * zt${i};`,
    `const cl${i} = (st[xk${i}]! + xt${i} * st[xk${i} + 1]!) + xq${i} * (st[xk${i} + 2]! + xt${i} * st[xk${i} + 3]!);`,
    `const cd${i} = (st[xk${i} + 4]! + xt${i} * st[xk${i} + 5]! + (rt[zk${i}]! + zt${i} * rt[zk${i} + 1]! + zq${i} * (rt[zk${i} + 2]! + zt${i} * rt[zk${i} + 3]!))) + xq${i} * (st[xk${i} + 6]! + xt${i} * st[xk${i} + 7]!);`,
  ],
};

/** Stages of the method. */
export const STAGES: number = tableau.b.length;
const VELOCITIES = ['a', 'b', 'c', 'w'] as const;

/** Sum of weight times stage values, zero weights left out. */
function weighted(d: Dialect, weights: readonly number[], name: (stage: number) => string): string {
  const terms = weights.flatMap((weight, j) => (weight === 0 ? [] : [d.mul(d.constant(weight), name(j))]));
  return terms.reduce((sum, term) => d.add(sum, term));
}

/**
 * Derivatives of the reduced state at stage `i`: air velocity (a, b, c) on axes whose third is the spin axis, and
 * w, r ω in cells of the table. `drag` and `decay` carry a minus sign. Same equations as equationsOfMotion, without the turning of axes and the wind that those carry.
 */
function derivatives(d: Dialect, i: number | 'E'): string[] {
  const tag = i === 0 ? '' : i === 'E' ? 'n' : String(i);
  const [a, b, c, w] = VELOCITIES.map((name) => `${name}${tag}`);
  const v = (name: string, value: string): string => d.let(`${name}${i}`, value);
  return [
    v('mm', d.add(d.mul(`${a}`, `${a}`), d.mul(`${b}`, `${b}`))),
    v('uu', d.add(`mm${i}`, d.mul(`${c}`, `${c}`))),
    v('m', d.sqrt(`mm${i}`)),
    v('u', d.sqrt(`uu${i}`)),
    // One division, started together with the roots: r = 1/(m² U²), so 1/m = m r U² and 1/U² = r m².
    v('r', d.div(d.constant(1), d.mul(`mm${i}`, `uu${i}`))),
    // Cell coordinate of S: w is kept in cells of the table times m/s.
    v('x', d.mul(d.mul(d.mul(`${w}`, `mm${i}`), d.spinEntering(`m${i}`, `u${i}`)), `r${i}`)),
    v('du', d.mul('drag', `u${i}`)),
    v('lu', d.mul(d.mul('lift', d.mul(`uu${i}`, `uu${i}`)), d.mul(`r${i}`, `m${i}`))),
    ...d.law(i),
    v('D', d.mul(`du${i}`, `cd${i}`)),
    v('L', d.mul(`lu${i}`, `cl${i}`)),
    v('ka', d.sub(d.mul(`D${i}`, `${a}`), d.mul(`L${i}`, `${b}`))),
    v('kb', d.add(d.mul(`L${i}`, `${a}`), d.sub(d.mul(`D${i}`, `${b}`), 'g2'))),
    v('kc', d.sub(d.mul(`D${i}`, `${c}`), 'g3')),
    v('kw', d.mul(d.mul('decay', `u${i}`), `${w}`)),
  ];
}

/** First stage: the derivative at the node itself. */
export function firstStage(d: Dialect): string[] {
  return derivatives(d, 0);
}

/** Derivative at the end of a step, which is the first stage of the next. */
export function endStage(d: Dialect): string[] {
  return derivatives(d, 'E');
}

/** Stage `i` of a step of size `h`, after the first. */
export function laterStage(d: Dialect, i: number): string[] {
  const weights = tableau.a[i] ?? [];
  const earlier = weights.slice(0, -1);
  const newest = weights.at(-1) ?? 0;
  const lines = [d.let(`hw${i}`, d.mul('h', d.constant(newest)))];
  for (const name of VELOCITIES) {
    // The newest derivative enters last and through one product, since everything waits for it.
    const known = earlier.some((weight) => weight !== 0)
      ? d.add(name, d.mul('h', group(weighted(d, earlier, (j) => `k${name}${j}`))))
      : name;
    lines.push(d.let(`${name}${i}`, d.add(known, d.mul(`hw${i}`, `k${name}${i - 1}`))));
  }
  return [...lines, ...derivatives(d, i)];
}

/** Numbers of the stages after the first. */
export const LATER_STAGES: readonly number[] = Array.from({ length: STAGES - 1 }, (_, i) => i + 1);

/** Velocity and spin at the end of a step of size `h`; `sa`, `sb`, `sc` and `sw` are their mean rates over the step. */
export function velocityEnd(d: Dialect): string[] {
  return VELOCITIES.flatMap((name) => [
    d.let(
      `s${name}`,
      weighted(d, tableau.b, (j) => `k${name}${j}`),
    ),
    d.let(`${name}n`, d.add(name, d.mul('h', `s${name}`))),
  ]);
}

/** Displacement at the end of a step of size `h`. */
export function displacementEnd(d: Dialect): string[] {
  return ['a', 'b', 'c'].map((name) =>
    d.let(
      `${name.toUpperCase()}n`,
      d.add(
        name.toUpperCase(),
        d.mul('h', group(weighted(d, tableau.b, (j) => (j === 0 ? name : `${name}${j}`)))),
      ),
    ),
  );
}

/** Share of the step size the error estimate would allow that is used. */
const SAFETY = 0.9;
/**
 * Speed [m/s] over which the square of the third-order estimate is taken for the least error: a term of the order of
 * the error itself. Calibrated in tests/flight/agreement.test.ts.
 */
const LEAST_ERROR_SPEED = 20;

/**
 * The combined error estimate of the velocities in units of the tolerance (Hairer, Norsett & Wanner 1993, section
 * II.10) and the factor it asks of the next step: safety over its eighth root, by three square roots.
 */
export function errorNorms(d: Dialect): string[] {
  const lines: string[] = [];
  for (const [id, estimate] of [
    ['f', (name: string) => group(weighted(d, tableau.e5, (j) => `k${name}${j}`))],
    // The embedded solution of third order takes three stages, its error estimate eight.
    [
      't',
      (name: string) => d.sub(`s${name}`, group(weighted(d, thirdOrderWeights(), (j) => `k${name}${j}`))),
    ],
  ] as const) {
    for (const name of ['a', 'b', 'c']) {
      lines.push(d.let(`${id}${name}`, d.mul('perTolerance', estimate(name))));
    }
    const square = (name: string): string => d.mul(`${id}${name}`, `${id}${name}`);
    lines.push(d.let(id === 'f' ? 'e5' : 'e3', d.add(d.add(square('a'), square('b')), square('c'))));
  }
  const c = d.constant;
  const combined = d.add(d.mul(c(3), d.add('e5', d.mul(c(0.01), 'e3'))), c(1e-300));
  // Now and then the fifth-order estimate passes through zero inside the drag crisis; the third-order one then speaks.
  const least = d.div(d.mul(d.mul('h', 'h'), 'e3'), d.mul(c(LEAST_ERROR_SPEED), 'perTolerance'));
  lines.push(d.let('error', d.max(d.div(d.mul('h', 'e5'), d.sqrt(combined)), least)));
  lines.push(d.let('wanted', d.div(c(SAFETY), d.sqrt(d.sqrt(d.sqrt(d.add('error', c(1e-12))))))));
  return lines;
}

function group(expression: string): string {
  return expression.startsWith('(') || /^[a-z0-9_.]+\(/i.test(expression) ? expression : `(${expression})`;
}
