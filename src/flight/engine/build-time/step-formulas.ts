import { dormandPrince853 as tableau } from '../../../numerics/tableaux/dormand-prince-853.js';
import type { Expression, Formula, Stage } from './expression.js';

/** Stages of the method. */
export const STAGES: number = tableau.b.length;
/** Numbers of the stages after the first. */
export const LATER_STAGES: readonly number[] = Array.from({ length: STAGES - 1 }, (_, i) => i + 1);

const VELOCITIES = ['a', 'b', 'c', 'w'] as const;

const named = (name: string, value: Expression): Formula => ({ name, value });

/** Sum of weight times stage values, zero weights left out. */
function weighted(weights: readonly number[], name: (stage: number) => string): Expression {
  const terms = weights.flatMap((weight, j): Expression[] => (weight === 0 ? [] : [['*', weight, name(j)]]));
  return terms.reduce((sum, term) => ['+', sum, term]);
}

/**
 * Derivatives of the reduced state at a stage: air velocity (a, b, c) on axes whose third is the spin axis, and
 * w, r ω in cells of the table. `drag` and `decay` carry a minus sign. Same equations as equationsOfMotion, without the
 * turning of axes that those carry.
 */
function derivatives(i: Stage, height: Expression): Formula[] {
  const tag = i === 0 ? '' : i === 'E' ? 'n' : String(i);
  const [a, b, c, w] = [`ua${i}`, `ub${i}`, `uc${i}`, `w${tag}`];
  const v = (name: string, value: Expression): Formula => named(`${name}${i}`, value);
  return [
    { windAt: i, velocity: [`a${tag}`, `b${tag}`, `c${tag}`], height },
    v('mm', ['+', ['*', a, a], ['*', b, b]]),
    v('uu', ['+', `mm${i}`, ['*', c, c]]),
    v('m', ['sqrt', `mm${i}`]),
    v('u', ['sqrt', `uu${i}`]),
    // One division, started together with the roots: r = 1/(m² U²), so 1/m = m r U² and 1/U² = r m².
    v('r', ['/', 1, ['*', `mm${i}`, `uu${i}`]]),
    // Cell coordinate of S: w is kept in cells of the table times m/s.
    v('x', ['*', ['*', ['*', w, `mm${i}`], ['spinEntering', `m${i}`, `u${i}`]], `r${i}`]),
    v('du', ['*', 'drag', `u${i}`]),
    v('lu', ['*', ['*', 'lift', ['*', `uu${i}`, `uu${i}`]], ['*', `r${i}`, `m${i}`]]),
    { lookUp: i },
    v('D', ['*', `du${i}`, `cd${i}`]),
    v('L', ['*', `lu${i}`, `cl${i}`]),
    v('ka', ['-', ['*', `D${i}`, a], ['*', `L${i}`, b]]),
    v('kb', ['+', ['*', `L${i}`, a], ['-', ['*', `D${i}`, b], 'gravity2']]),
    v('kc', ['-', ['*', `D${i}`, c], 'gravity3']),
    v('kw', ['*', ['*', 'decay', `u${i}`], w]),
  ];
}

/** The first stage: derivatives at the node. */
export function firstStage(): Formula[] {
  return derivatives(0, 'height');
}

/** Derivative at the end of a step, which is the first stage of the next. */
export function endStage(): Formula[] {
  return derivatives('E', 'heightN');
}

/** Stage `i` of a step of size `span`, after the first. */
export function laterStage(i: number): Formula[] {
  const weights = tableau.a[i] ?? [];
  const earlier = weights.slice(0, -1);
  const newest = weights.at(-1) ?? 0;
  const stages = VELOCITIES.map((name) => {
    // The newest derivative enters last and through one product, since everything waits for it.
    const known: Expression = earlier.some((weight) => weight !== 0)
      ? ['+', name, ['*', 'span', weighted(earlier, (j) => `k${name}${j}`)]]
      : name;
    return named(`${name}${i}`, ['+', known, ['*', `hw${i}`, `k${name}${i - 1}`]]);
  });
  const height: Expression = [
    '+',
    'height',
    ['*', 'span', weighted(weights, (j) => (j === 0 ? 'climb' : `out[${j}]!`))],
  ];
  const rates = VELOCITIES.map((name) => `k${name}${i}`);
  return [named(`hw${i}`, ['*', 'span', newest]), ...stages, ...derivatives(i, height), { paced: i, rates }];
}

/** Velocity and spin at the end of a step of size `span`; `sa`, `sb`, `sc` and `sw` are their mean rates over the step. */
export function velocityEnd(): Formula[] {
  return VELOCITIES.flatMap((name) => [
    named(
      `s${name}`,
      weighted(tableau.b, (j) => `k${name}${j}`),
    ),
    named(`${name}n`, ['+', name, ['*', 'span', `s${name}`]]),
  ]);
}

/** Displacement at the end of a step of size `span`. */
export function displacementEnd(): Formula[] {
  return (['a', 'b', 'c'] as const).map((name) => {
    const mean = weighted(tableau.b, (j) => (j === 0 ? name : `${name}${j}`));
    return named(`${name.toUpperCase()}n`, ['+', name.toUpperCase(), ['*', 'span', mean]]);
  });
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
export function errorNorms(): Formula[] {
  const fifth = (name: string): Expression => weighted(tableau.e5, (j) => `k${name}${j}`);
  // The embedded solution of third order takes three stages, its error estimate eight.
  const third = (name: string): Expression => [
    '-',
    `s${name}`,
    weighted(tableau.third, (j) => `k${name}${j}`),
  ];
  const norm = (order: 'fifth' | 'third', estimate: (name: string) => Expression): Formula[] => {
    const square = (name: string): Expression => ['*', `${order}_${name}`, `${order}_${name}`];
    return [
      ...['a', 'b', 'c'].map((name) => named(`${order}_${name}`, ['*', 'perTolerance', estimate(name)])),
      named(order, ['+', ['+', square('a'), square('b')], square('c')]),
    ];
  };
  // The tiny number keeps a step without any error from dividing by none.
  const combined: Expression = ['+', ['*', 3, ['+', 'fifth', ['*', 0.01, 'third']]], 1e-300];
  // Now and then the fifth-order estimate passes through zero inside the drag crisis; the third-order one then speaks.
  const least: Expression = [
    '/',
    ['*', ['*', 'span', 'span'], 'third'],
    ['*', LEAST_ERROR_SPEED, 'perTolerance'],
  ];
  return [
    ...norm('fifth', fifth),
    ...norm('third', third),
    named('error', ['max', ['/', ['*', 'span', 'fifth'], ['sqrt', combined]], least]),
    named('wanted', ['/', SAFETY, ['sqrt', ['sqrt', ['sqrt', ['+', 'error', 1e-12]]]]]),
  ];
}
