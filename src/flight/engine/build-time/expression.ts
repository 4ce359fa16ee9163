/** What arithmetic a step is made of; each target language writes these in its own words. */
export type Operator = '+' | '-' | '*' | '/' | 'sqrt' | 'min' | 'max' | 'spinEntering';

/** Arithmetic on the numbers of a step: a name, a constant, or an operation on others. */
export type Expression = string | number | readonly [Operator, ...Expression[]];

/** The stage at a node is 0, the one at the end of a step `E`: it is the first of the next. */
export type Stage = number | 'E';

/**
 * A name given to a value; or a look-up of the compiled law for a stage, which takes the cell coordinate `x` of S and
 * the air speed `u` there, and leaves the cell coordinate `z` of Re and the coefficients `cl` and `cd`; or where wind
 * changes with height, see {@link WindAt} and {@link Paced}.
 */
export type Formula = UniformFormula | WindAt | Paced;

/** A formula that holds in uniform wind. */
export type UniformFormula =
  | { readonly name: string; readonly value: Expression }
  | { readonly lookUp: Stage };

/**
 * The air velocity `ua`, `ub`, `uc` of a stage from its velocity, on the axes of the kernel. In uniform wind the axes move
 * with the wind, and the two are the same. Else the wind is taken at the stage's `height`; and a stage after the first
 * leaves velocity times the pace of its step there, and in `out` the climb that has.
 */
export interface WindAt {
  readonly windAt: Stage;
  readonly velocity: readonly [string, string, string];
  readonly height: Expression;
}

/** Rates of a stage, which become rates times the pace of its step there. */
export interface Paced {
  readonly paced: number;
  readonly rates: readonly string[];
}

/** Names a formula gives to what it finds, in that order. */
export function namesGiven(formula: Formula): readonly string[] {
  if ('name' in formula) return [formula.name];
  if ('paced' in formula) return [];
  if ('windAt' in formula) return ['ua', 'ub', 'uc'].map((name) => `${name}${formula.windAt}`);
  return ['z', 'cl', 'cd'].map((name) => `${name}${formula.lookUp}`);
}

/** Names a formula reads. */
export function namesRead(formula: Formula): readonly string[] {
  if ('name' in formula) return namesIn(formula.value);
  if ('paced' in formula) return formula.rates;
  if ('windAt' in formula) return [...formula.velocity, ...namesIn(formula.height)];
  return [`x${formula.lookUp}`, `u${formula.lookUp}`, 'cellsPerSpeed'];
}

function namesIn(expression: Expression): readonly string[] {
  if (typeof expression === 'number') return [];
  if (typeof expression === 'string') return [expression];
  const [operator, ...operands] = expression;
  return [...operands.flatMap(namesIn), ...(operator === 'spinEntering' ? ['across'] : [])];
}

/** The same formulas in uniform wind alone, where air velocity is the velocity and every stage has the pace of the clock. */
export function inUniformWind(formula: Formula): readonly UniformFormula[] {
  if ('paced' in formula) return [];
  if (!('windAt' in formula)) return [formula];
  return formula.velocity.map((value, n) => ({ name: `u${'abc'.charAt(n)}${formula.windAt}`, value }));
}
