import {
  REYNOLDS_CELLS,
  REYNOLDS_IN_BOTH,
  REYNOLDS_NOWHERE,
  REYNOLDS_NUMBERS,
  SPIN_CELLS,
  SPIN_NUMBERS,
} from '../../../aerodynamics/compiled-law.js';
import { kernelConstants } from '../kernel-constants.js';
import type { Expression, Formula, Stage } from './expression.js';

const CONSTANTS = kernelConstants();

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
  return formulas.flatMap((formula) =>
    'name' in formula
      ? [`const ${named(formula.name)} = ${written(formula.value, named)};`]
      : lookUp(formula.lookUp, named),
  );
}

function written(expression: Expression, named: (name: string) => string): string {
  if (typeof expression === 'string') return named(expression);
  if (typeof expression === 'number') {
    const index = CONSTANTS.indexOf(expression);
    return index < 0 ? String(expression) : `K${index}`;
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
