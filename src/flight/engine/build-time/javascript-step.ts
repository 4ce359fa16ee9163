import {
  REYNOLDS_CELLS,
  REYNOLDS_IN_BOTH,
  REYNOLDS_NOWHERE,
  REYNOLDS_NUMBERS,
  SPIN_CELLS,
  SPIN_NUMBERS,
} from '../../../aerodynamics/compiled-law.js';
import { dormandPrince853 } from '../../../numerics/tableaux/dormand-prince-853.js';
import { kernelWeights } from '../kernel-constants.js';
import {
  HIGHEST_ABOVE,
  LEAST_ABOVE,
  WIND_CELLS,
  WIND_HEAD_NUMBERS,
  WIND_NUMBERS,
  WIND_SHIFT,
} from '../shear.js';
import type { Expression, Formula, Paced, Stage, WindAt } from './expression.js';

const WEIGHTS = kernelWeights();
/** Those that stand in more than three products: worth a name. */
const NAMED = new Set([...dormandPrince853.a.flatMap((row) => row.slice(0, -1)), ...dormandPrince853.b]);

/** Gives the weights that bear a name, K and their place in `k`. */
export function namedWeights(): string[] {
  return WEIGHTS.flatMap((weight, i) => (NAMED.has(weight) ? [`const K${i} = k[${i}]!;`] : []));
}

/** Writes formulas as plain JavaScript; the law's tables are `st` and `rt`, the constants of the method K0, K1 …. */
export function javascriptLines(formulas: readonly Formula[]): string[] {
  return linesOf(formulas, new Set());
}

/**
 * Writes formulas as a block that leaves `kept` behind. Inside they bear names of the block's own: blocks alike then
 * come out of a minifier in the same words, and a packed file holds them once.
 */
export function javascriptBlock(formulas: readonly Formula[], kept: readonly string[]): string[] {
  return [
    `let ${kept.map((name) => `${name}: number`).join(', ')};`,
    '{',
    ...linesOf(formulas, new Set(kept)),
    ...kept.map((name) => `${name} = ${inBlock(name)};`),
    '}',
  ];
}

function inBlock(name: string): string {
  return `${name}_`;
}

function linesOf(formulas: readonly Formula[], renamed: ReadonlySet<string>): string[] {
  const named = (name: string): string => (renamed.has(name) ? inBlock(name) : name);
  const paced = new Set(
    formulas.flatMap((formula) => {
      if ('paced' in formula) return formula.rates;
      return 'windAt' in formula ? formula.velocity : [];
    }),
  );
  return formulas.flatMap((formula) => {
    if ('windAt' in formula) return windAt(formula, named);
    if ('paced' in formula) return pace(formula, named);
    if ('lookUp' in formula) return lookUp(formula.lookUp, named);
    const { name, value } = formula;
    return [`${paced.has(name) ? 'let' : 'const'} ${named(name)} = ${written(value, named)};`];
  });
}

/** A wind that changes with height, see `../shear.ts`: the cubic of a cell above the kink, a line below it. */
function windRatio(i: Stage): string[] {
  const [above, cell, t] = [`above${i}`, `cell${i}`, `t${i}`];
  const at = (n: number): string => `wt[${cell} + ${WIND_HEAD_NUMBERS + n}]!`;
  return [
    `let ratio${i} = lowSlope * y${i};`,
    'if (aloft) {',
    `  const ${above} = y${i} - displaced;`,
    `  if (!(${above} > ${LEAST_ABOVE} && ${above} < ${HIGHEST_ABOVE})) return OUTSIDE;`,
    `  above32[0] = ${above};`,
    `  const ${cell} = (bits[0]! >> ${WIND_SHIFT} & ${WIND_CELLS - 1}) * ${WIND_NUMBERS}, ${t} = ${above} - ${at(0)};`,
    `  ratio${i} = (${at(1)} + ${t} * ${at(2)}) + ${t} * ${t} * (${at(3)} + ${t} * ${at(4)});`,
    '}',
  ];
}

function windAt({ windAt: i, velocity, height }: WindAt, named: (name: string) => string): string[] {
  const [a, b, c] = velocity.map(named);
  const scaled = i === 0 ? [] : [a, b, c].map((name) => `${name} *= g${i};`);
  return [
    `let ua${i} = ${a}, ub${i} = ${b}, uc${i} = ${c}${i === 0 ? '' : `, g${i} = 1`};`,
    'if (sheared) {',
    `  const y${i} = ${written(height, named)};`,
    ...windRatio(i),
    `  ua${i} -= wind1 * ratio${i}; ub${i} -= wind2 * ratio${i}; uc${i} -= wind3 * ratio${i};`,
    ...(i === 0
      ? []
      : [
          `  g${i} = 1 + grade * k[${WEIGHTS.length + Number(i)}]!; ${scaled.join(' ')}`,
          `  out[${i}] = normal1 * ${a} + normal2 * ${b} + normal3 * ${c};`,
        ]),
    '}',
  ];
}

function pace({ paced, rates }: Paced, named: (name: string) => string): string[] {
  return [`if (sheared) { ${rates.map((rate) => `${named(rate)} *= g${paced};`).join(' ')} }`];
}

function written(expression: Expression, named: (name: string) => string): string {
  if (typeof expression === 'string') return named(expression);
  if (typeof expression === 'number') {
    const index = WEIGHTS.indexOf(expression);
    return index < 0 ? String(expression) : NAMED.has(expression) ? `K${index}` : `k[${index}]!`;
  }
  const [operator, ...operands] = expression;
  const [a = '', b = ''] = operands.map((operand) => written(operand, named));
  switch (operator) {
    case 'sqrt':
      return `Math.sqrt(${a})`;
    case 'min':
    case 'max':
      return `Math.${operator}(${a}, ${b})`;
    case 'spinEntering':
      // One of the factors is 1, the other 0. A choice here would cost two more roots: V8 takes them once for each branch.
      return `(across * ${a} + total * ${b})`;
    default:
      return `(${a} ${operator} ${b})`;
  }
}

function lookUp(i: Stage, named: (name: string) => string): string[] {
  const [x, u] = [named(`x${i}`), named(`u${i}`)];
  /** The cubic whose four numbers stand at every other place of a cell from `offset` on. */
  const cubic = (name: 'x' | 'z', offset: number): string => {
    const [table, t] = [name === 'x' ? 'st' : 'rt', `${name}t${i}`];
    const at = (k: number): string => `${table}[${name}k${i} + ${offset + 2 * k}]!`;
    return `((${at(0)} + ${t} * ${at(1)}) + ${name}q${i} * (${at(2)} + ${t} * ${at(3)}))`;
  };
  return [
    `const z${i} = ${u} * cellsPerSpeed;`,
    `if (!(${x} >= sLow && ${x} < sHigh && z${i} >= rLow && z${i} < rHigh)) return OUTSIDE;`,
    `const xi${i} = ${x} & ${SPIN_CELLS - 1}, xt${i} = ${x} - xi${i}, xk${i} = xi${i} << ${Math.log2(SPIN_NUMBERS)}, xq${i} = xt${i} * xt${i};`,
    `let cl${i} = ${cubic('x', 0)}, cd${i} = ${cubic('x', 1)};`,
    `if (form !== ${REYNOLDS_NOWHERE}) {`,
    `  const zi${i} = z${i} & ${REYNOLDS_CELLS - 1}, zt${i} = z${i} - zi${i}, zk${i} = zi${i} << ${Math.log2(REYNOLDS_NUMBERS)}, zq${i} = zt${i} * zt${i};`,
    `  if (form === ${REYNOLDS_IN_BOTH}) { cl${i} += ${cubic('z', 0)} * ${cubic('x', 8)}; cd${i} += ${cubic('z', 1)} * ${cubic('x', 9)}; }`,
    `  else cd${i} += ${cubic('z', 1)};`,
    `}`,
  ];
}
