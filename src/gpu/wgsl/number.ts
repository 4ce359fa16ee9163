/** A number as WGSL takes it for a float. @internal */
export function float(value: number): string {
  const text = String(value);
  return /[.e]/.test(text) ? text : `${text}.0`;
}

/** A sum of weights times names, zero weights left out; a vector of 0 where none is left. @internal */
export function weighted(weights: readonly number[], name: (j: number) => string): string {
  const terms = weights.flatMap((weight, j) => (weight === 0 ? [] : [`${float(weight)} * ${name(j)}`]));
  return terms.length === 0 ? 'vec3f()' : terms.join(' + ');
}
