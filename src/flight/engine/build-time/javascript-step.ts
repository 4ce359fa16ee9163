import { REYNOLDS_CELLS, SPIN_CELLS } from '../../../aerodynamics/compiled-law.js';
import { kernelConstants } from '../kernel-constants.js';
import type { Expression, Formula, Stage } from './expression.js';

const CONSTANTS = kernelConstants();

/** Writes formulas as plain JavaScript; the law's tables are `st` and `rt`, the constants of the method K0, K1 …. */
export function javascriptLines(formulas: readonly Formula[]): string[] {
  return formulas.flatMap((formula) =>
    'name' in formula ? [`const ${formula.name} = ${written(formula.value)};`] : lookUp(formula.lookUp),
  );
}

function written(expression: Expression): string {
  if (typeof expression === 'string') return expression;
  if (typeof expression === 'number') {
    const index = CONSTANTS.indexOf(expression);
    return index < 0 ? String(expression) : `K${index}`;
  }
  const [operator, ...operands] = expression;
  const [a = '', b = ''] = operands.map(written);
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

function lookUp(i: Stage): string[] {
  return [
    `const z${i} = u${i} * cellsPerSpeed;`,
    `if (!(x${i} >= sLow && x${i} < sHigh && z${i} >= rLow && z${i} < rHigh)) return OUTSIDE;`,
    `const xi${i} = x${i} & ${SPIN_CELLS - 1}, zi${i} = z${i} & ${REYNOLDS_CELLS - 1}, xt${i} = x${i} - xi${i}, zt${i} = z${i} - zi${i}, xk${i} = xi${i} << 3, zk${i} = zi${i} << 2;`,
    `const xq${i} = xt${i} * xt${i}, zq${i} = zt${i} * zt${i};`,
    `const cl${i} = (st[xk${i}]! + xt${i} * st[xk${i} + 1]!) + xq${i} * (st[xk${i} + 2]! + xt${i} * st[xk${i} + 3]!);`,
    `const cd${i} = (st[xk${i} + 4]! + xt${i} * st[xk${i} + 5]! + (rt[zk${i}]! + zt${i} * rt[zk${i} + 1]! + zq${i} * (rt[zk${i} + 2]! + zt${i} * rt[zk${i} + 3]!))) + xq${i} * (st[xk${i} + 6]! + xt${i} * st[xk${i} + 7]!);`,
  ];
}
