import { type Dialect, endStage, errorNorms, laterStages, STAGES, stepEnd } from './kernel-source.js';

/**
 * The same step for two flights in one register (WebAssembly f64x2), written as AssemblyScript.
 * Cells are found by adding 1.5 · 2^52 to x − 1/2, which leaves the whole part of x in the low bits of the sum.
 */
const simd: Dialect = {
  constant: (value) => `f64x2.splat(${value})`,
  add: (a, b) => `f64x2.add(${a}, ${b})`,
  sub: (a, b) => `f64x2.sub(${a}, ${b})`,
  mul: (a, b) => `f64x2.mul(${a}, ${b})`,
  div: (a, b) => `f64x2.div(${a}, ${b})`,
  sqrt: (a) => `f64x2.sqrt(${a})`,
  max: (a, b) => `f64x2.pmax(${a}, ${b})`,
  spinEntering: (a, b) => `v128.bitselect(${a}, ${b}, across)`,
  let: (name, value) => `const ${name} = ${value};`,
  law: (i) => {
    const cell = (name: string, from: string): string[] => [
      `low_${name} = f64x2.pmin(low_${name}, ${from});`,
      `high_${name} = f64x2.pmax(high_${name}, ${from});`,
      `const ${name}v${i} = f64x2.add(f64x2.sub(${from}, f64x2.splat(0.5)), f64x2.splat(6755399441055744));`,
      `const ${name}t${i} = f64x2.sub(${from}, f64x2.sub(${name}v${i}, f64x2.splat(6755399441055744)));`,
      `const ${name}q${i} = f64x2.mul(${name}t${i}, ${name}t${i});`,
    ];
    const address = (name: string, lane: number, mask: number, shift: number): string =>
      `const ${name}${lane}_${i} = (<usize>i64x2.extract_lane(${name}v${i}, ${lane}) & ${mask}) << ${shift};`;
    const pairs = (name: string, table: string, count: number): string[] =>
      Array.from({ length: count }, (_, k) => [
        `const ${name}p${k}_${i} = v128.load(${name}0_${i}, ${table} + ${16 * k}), ${name}r${k}_${i} = v128.load(${name}1_${i}, ${table} + ${16 * k});`,
        `const ${name}e${2 * k}_${i} = i64x2.shuffle(${name}p${k}_${i}, ${name}r${k}_${i}, 0, 2), ${name}e${2 * k + 1}_${i} = i64x2.shuffle(${name}p${k}_${i}, ${name}r${k}_${i}, 1, 3);`,
      ]).flat();
    const line = (name: string, k: number): string =>
      `f64x2.add(${name}e${k}_${i}, f64x2.mul(${name}t${i}, ${name}e${k + 1}_${i}))`;
    return [
      `const z${i} = f64x2.mul(u${i}, rInv);`,
      ...cell('x', `x${i}`),
      ...cell('z', `z${i}`),
      address('x', 0, 2047, 6),
      address('x', 1, 2047, 6),
      address('z', 0, 1023, 5),
      address('z', 1, 1023, 5),
      ...pairs('x', 'SPIN_TABLE', 4),
      ...pairs('z', 'REYNOLDS_TABLE', 2),
      `const cl${i} = f64x2.add(${line('x', 0)}, f64x2.mul(xq${i}, ${line('x', 2)}));`,
      `const cd${i} = f64x2.add(f64x2.add(${line('x', 4)}, f64x2.add(${line('z', 0)}, f64x2.mul(zq${i}, ${line('z', 2)}))), f64x2.mul(xq${i}, ${line('x', 6)}));`,
    ];
  },
};

/** What the step reads of a lane, and what it writes. Order of the lane record in src/wasm/batch.ts. */
export const LANE_INPUTS = [
  'a',
  'b',
  'c',
  'w',
  'A',
  'B',
  'C',
  'h',
  'ka0',
  'kb0',
  'kc0',
  'kw0',
  'g2',
  'g3',
  'drag',
  'lift',
  'decay',
  'rInv',
] as const;
/** What the step writes of a lane: end state, derivative there, error and factor, and the range of cells asked for. */
export const LANE_OUTPUTS = [
  'an',
  'bn',
  'cn',
  'wn',
  'An',
  'Bn',
  'Cn',
  'kan',
  'kbn',
  'kcn',
  'kwn',
  'error',
  'wanted',
  'low_x',
  'high_x',
  'low_z',
  'high_z',
] as const;

/** The whole text of the AssemblyScript step. Two registers side by side were a quarter slower: most went to and from the stack. */
export function simdText(): string {
  const body = [...laterStages(simd), ...stepEnd(simd), ...errorNorms(simd), ...endStage(simd)];
  const lines = LANE_INPUTS.map((name, i) => `const ${name} = v128.load(LANES, ${16 * i});`);
  for (const name of ['x', 'z']) {
    lines.push(`let low_${name} = f64x2.splat(1e300), high_${name} = f64x2.splat(-1e300);`);
  }
  // Constants come from memory, declared once before their first use: as immediates each would cost four instructions.
  const constants = new Map<string, number>();
  const named = (line: string): string =>
    line.replace(/f64x2\.splat\(([-\d.e]+)\)/g, (_, value: string) => {
      if (!constants.has(value)) {
        lines.push(`const K${constants.size} = v128.load64_splat(CONSTANTS, ${8 * constants.size});`);
        constants.set(value, constants.size);
      }
      return `K${constants.get(value)}`;
    });
  for (const line of body) lines.push(named(line));
  const ends: Record<string, string> = { kan: 'kaE', kbn: 'kbE', kcn: 'kcE', kwn: 'kwE' };
  LANE_OUTPUTS.forEach((name, i) => {
    lines.push(`v128.store(LANES, ${ends[name] ?? name}, ${16 * (LANE_INPUTS.length + i)});`);
  });
  return `// Written by simd-source.ts (npm run generate); edit that, not this.
// biome-ignore-all lint: generated
// biome-ignore-all format: generated
import { LANES, REYNOLDS_TABLE, SPIN_TABLE } from './layout';

const CONSTANTS = memory.data<f64>([${[...constants.keys()].join(', ')}]);

/** One attempt of a step, ${STAGES} evaluations of the force law, for two flights at once. */
export function step(acrossOnly: bool, perTol: f64): void {
  const across = i64x2.splat(acrossOnly ? -1 : 0), perTolerance = f64x2.splat(perTol);
${lines.map((line) => `  ${line}`).join('\n')}
}
`;
}
