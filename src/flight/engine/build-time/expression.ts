/** What arithmetic a step is made of; each target language writes these in its own words. */
export type Operator = '+' | '-' | '*' | '/' | 'sqrt' | 'min' | 'max' | 'spinEntering';

/** Arithmetic on the numbers of a step: a name, a constant, or an operation on others. */
export type Expression = string | number | readonly [Operator, ...Expression[]];

/** The stage at a node is 0, the one at the end of a step `E`: it is the first of the next. */
export type Stage = number | 'E';

/**
 * A name given to a value; or a look-up of the compiled law for a stage, which takes the cell coordinate `x` of S and
 * the air speed `u` there, and leaves the cell coordinate `z` of Re and the coefficients `cl` and `cd`.
 */
export type Formula = { readonly name: string; readonly value: Expression } | { readonly lookUp: Stage };

/** Names a formula gives to what it finds, in that order. */
export function namesGiven(formula: Formula): readonly string[] {
  if ('name' in formula) return [formula.name];
  return ['z', 'cl', 'cd'].map((name) => `${name}${formula.lookUp}`);
}

/** Names a formula reads. */
export function namesRead(formula: Formula): readonly string[] {
  if ('name' in formula) return namesIn(formula.value);
  return [`x${formula.lookUp}`, `u${formula.lookUp}`, 'cellsPerSpeed'];
}

function namesIn(expression: Expression): readonly string[] {
  if (typeof expression === 'number') return [];
  if (typeof expression === 'string') return [expression];
  const [operator, ...operands] = expression;
  return [...operands.flatMap(namesIn), ...(operator === 'spinEntering' ? ['across'] : [])];
}
