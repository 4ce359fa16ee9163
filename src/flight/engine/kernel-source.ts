import { dormandPrince853 as tableau } from '../../numerics/tableaux/dormand-prince-853.js';

/** How one target language writes arithmetic on the flights of a register. */
export interface Dialect {
  readonly constant: (value: number) => string;
  readonly add: (a: string, b: string) => string;
  readonly sub: (a: string, b: string) => string;
  readonly mul: (a: string, b: string) => string;
  readonly div: (a: string, b: string) => string;
  readonly sqrt: (a: string) => string;
  /** Declares a name for a value. */
  readonly let: (name: string, value: string) => string;
  /**
   * Lines that look up the compiled law for stage `i`, given `s_i` and `u_i`, and leave `cd_i` and `cl_i`:
   * already multiplied by nothing, plain coefficients.
   */
  readonly law: (i: number) => readonly string[];
}

/** Plain JavaScript numbers; the law's tables are `st` and `rt`. */
export const javascript: Dialect = {
  constant: (value) => (value < 0 ? `(${value})` : String(value)),
  add: (a, b) => `(${a} + ${b})`,
  sub: (a, b) => `(${a} - ${b})`,
  mul: (a, b) => `${a} * ${b}`,
  div: (a, b) => `${a} / ${b}`,
  sqrt: (a) => `Math.sqrt(${a})`,
  let: (name, value) => `const ${name} = ${value};`,
  law: (i) => [
    `const x${i} = s${i} * sInv, z${i} = u${i} * rInv;`,
    `if (!(x${i} >= sLow && x${i} < sHigh && z${i} >= rLow && z${i} < rHigh)) return OUTSIDE;`,
    `const xi${i} = x${i} | 0, zi${i} = z${i} | 0, xt${i} = x${i} - xi${i}, zt${i} = z${i} - zi${i}, xk${i} = xi${i} << 3, zk${i} = zi${i} << 2;`,
    `const cl${i} = st[xk${i}] + xt${i} * (st[xk${i} + 1] + xt${i} * (st[xk${i} + 2] + xt${i} * st[xk${i} + 3]));`,
    `const cd${i} = st[xk${i} + 4] + xt${i} * (st[xk${i} + 5] + xt${i} * (st[xk${i} + 6] + xt${i} * st[xk${i} + 7])) + (rt[zk${i}] + zt${i} * (rt[zk${i} + 1] + zt${i} * (rt[zk${i} + 2] + zt${i} * rt[zk${i} + 3])));`,
  ],
};

const STAGES = tableau.b.length;
const VELOCITIES = ['a', 'b', 'c', 'w'] as const;

/** Sum of weight times stage values, zero weights left out. */
function weighted(d: Dialect, weights: readonly number[], name: (stage: number) => string): string {
  const terms = weights.flatMap((weight, j) => (weight === 0 ? [] : [d.mul(d.constant(weight), name(j))]));
  return terms.reduce((sum, term) => d.add(sum, term));
}

/**
 * Derivatives of the reduced state at stage `i`: air velocity (a, b, c) on axes whose third is the spin axis, and
 * w = r ω. Same equations as equationsOfMotion, without the turning of axes and the wind that those carry.
 */
function derivatives(d: Dialect, i: number): string[] {
  const [a, b, c, w] = i === 0 ? VELOCITIES : VELOCITIES.map((name) => `${name}${i}`);
  const v = (name: string, value: string): string => d.let(`${name}${i}`, value);
  return [
    v('mm', d.add(d.add(d.mul(`${a}`, `${a}`), d.mul(`${b}`, `${b}`)), d.constant(1e-30))),
    v('uu', d.add(`mm${i}`, d.mul(`${c}`, `${c}`))),
    v('m', d.sqrt(`mm${i}`)),
    v('u', d.sqrt(`uu${i}`)),
    v('q', d.div(d.constant(1), d.mul(`uu${i}`, `m${i}`))),
    v(
      's',
      d.mul(
        d.mul(d.mul(`${w}`, `q${i}`), `m${i}`),
        d.add(d.mul('acrossPart', `m${i}`), d.mul('totalPart', `u${i}`)),
      ),
    ),
    ...d.law(i),
    v('D', d.mul(d.mul('drag', `cd${i}`), `u${i}`)),
    v('L', d.mul(d.mul(d.mul('lift', `cl${i}`), `uu${i}`), d.mul(`q${i}`, `uu${i}`))),
    v('ka', d.sub(d.constant(0), d.add(d.mul(`D${i}`, `${a}`), d.mul(`L${i}`, `${b}`)))),
    v('kb', d.sub(d.sub(d.mul(`L${i}`, `${a}`), d.mul(`D${i}`, `${b}`)), 'g2')),
    v('kc', d.sub(d.sub(d.constant(0), d.mul(`D${i}`, `${c}`)), 'g3')),
    v('kw', d.mul(d.mul(d.sub(d.constant(0), 'decay'), `u${i}`), `${w}`)),
  ];
}

/** First stage: the derivative at the node itself. */
export function firstStage(d: Dialect): string[] {
  return derivatives(d, 0);
}

/** Stages 2 to 12 of a step of size `h`. */
export function laterStages(d: Dialect): string[] {
  const lines: string[] = [];
  for (let i = 1; i < STAGES; i++) {
    for (const name of VELOCITIES) {
      lines.push(
        d.let(
          `${name}${i}`,
          d.add(
            name,
            d
              .mul(
                'h',
                weighted(d, tableau.a[i] ?? [], (j) => `k${name}${j}`),
              )
              .replace(/^h \* (.*)$/, 'h * ($1)'),
          ),
        ),
      );
    }
    lines.push(...derivatives(d, i));
  }
  return lines;
}
