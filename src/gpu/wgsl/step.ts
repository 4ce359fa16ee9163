import { tsitouras54 } from '../../numerics/tableaux/tsitouras-54.js';
import { float, weighted } from './number.js';

const { a, b, e } = tsitouras54;

/** Σ weights[j] a[j][l] for each l: what velocities within a step add to a displacement. */
function twice(weights: readonly number[]): number[] {
  return weights.map((_, l) => weights.reduce((sum, weight, j) => sum + weight * (a[j]?.[l] ?? 0), 0));
}

/**
 * One step of length `h` from state `s`, rates `k1` and height `height`: leaves `sn`, `kn`, the displacement made `moved`
 * and the error of the velocity `missed` [m/s]. Velocities of the stages are summed by their rates, so that they need
 * not be kept; where wind changes with height so are the heights.
 * @internal
 */
export function stepText(sheared: boolean): string {
  const height = (i: number, node: number, weights: readonly number[]): string =>
    sheared
      ? `let height${i} = height + h * (${float(node)} * climb + h * dot(normal, ${weighted(twice(weights), (l) => `k${l + 1}.xyz`)}));`
      : `let height${i} = 0.0;`;
  const stages = a.slice(1).map((row, i) => {
    const stage = i + 2;
    const node = row.reduce((sum, weight) => sum + weight, 0);
    return `${height(stage, node, row)}
let k${stage} = ratesAt(s + h * (${weighted(row, (j) => `k${j + 1}`)}), height${stage});`;
  });
  return `
${stages.join('\n')}
let sn = s + h * (${weighted(b, (j) => `k${j + 1}`)});
let moved = h * (s.xyz + h * (${weighted(twice(b), (l) => `k${l + 1}.xyz`)}));
let newHeight = height + dot(normal, moved) + normalWind * h;
let kn = ratesAt(sn, newHeight);
let missed = h * length(${weighted(e, (j) => (j === 6 ? 'kn.xyz' : `k${j + 1}.xyz`))});
`;
}
