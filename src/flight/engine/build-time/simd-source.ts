import {
  type Dialect,
  displacementEnd,
  endStage,
  errorNorms,
  LATER_STAGES,
  laterStage,
  STAGES,
  velocityEnd,
} from './kernel-source.js';

/**
 * The same step for two flights in one register (WebAssembly f64x2), written as AssemblyScript.
 * Cells are found by adding 1.5 · 2^52 to x − 1/2, which leaves the whole part of x in the low bits of the sum. At a whole
 * x that may be the cell before, at its end, where the two cubics agree to within the error of the tables.
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

/** Lane variables of the control flow the step reads. */
const LANE_INPUTS = [
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
  'across',
  'perTolerance',
] as const;
/** What the step writes of a lane: end state, derivative there, error and factor, range of cells asked for, cells at the end. */
const LANE_OUTPUTS = [
  'an',
  'bn',
  'cn',
  'wn',
  'An',
  'Bn',
  'Cn',
  'kaE',
  'kbE',
  'kcE',
  'kwE',
  'error',
  'wanted',
  'low_x',
  'high_x',
  'low_z',
  'high_z',
  'xE',
  'zE',
] as const;
/** Room for the lane variables of the control flow; behind it the step keeps what one of its functions leaves to the next. */
const CONTROL_VARIABLES = 36;
/**
 * Lane variables of a register: more than it needs, since 4,096 bytes apart a processor takes a load from one register
 * for a store to the other.
 */
const LANE_VARIABLES = 304;
/** Names in the control flow of the lane variables the step reads and writes; of a group, its first. */
const LANE_NAMES: Readonly<Record<string, string>> = {
  a: 'A_',
  h: 'H',
  ka0: 'K',
  g2: 'G2',
  g3: 'G3',
  drag: 'DRAG',
  lift: 'LIFT',
  decay: 'DECAY',
  rInv: 'RINV',
  across: 'ACROSS',
  perTolerance: 'PER_TOLERANCE',
  an: 'NEW',
  kaE: 'KN',
  error: 'ERROR',
  wanted: 'WANTED',
  low_x: 'LOW_X',
  high_x: 'HIGH_X',
  low_z: 'LOW_Z',
  high_z: 'HIGH_Z',
  xE: 'END_X',
  zE: 'END_Z',
};

/** The whole text of the lane variables, as AssemblyScript. */
export function lanesText(): string {
  const all: readonly string[] = [...LANE_INPUTS, ...LANE_OUTPUTS];
  const lines = Object.entries(LANE_NAMES).map(([name, constant]) => {
    const index = all.indexOf(name);
    if (index < 0) throw new Error(`the step has no lane variable ${name}`);
    return `export const ${constant}: usize = ${index};`;
  });
  return `// Written by simd-source.ts (npm run generate); edit that, not this: not in version control.

/** Bytes of a register. */
export const REGISTER: usize = ${16 * LANE_VARIABLES};
/** First of the ${CONTROL_VARIABLES} lane variables that are the control flow's own. */
export const CONTROL: usize = ${all.length};
// Lane variables the step reads and writes, each two numbers, one a lane.
${lines.join('\n')}
`;
}

/** Least and greatest cell the stages of a step asked for. A number that is none shows in the error. */
function ranges(): string[] {
  return ['x', 'z'].flatMap((name) =>
    [
      ['low', 'f64x2.pmin'],
      ['high', 'f64x2.pmax'],
    ].map(([id, of]) => {
      const cells = LATER_STAGES.map((i) => `${name}${i}`);
      return `const ${id}_${name} = ${cells.reduce((sum, cell) => `${of}(${sum}, ${cell})`)};`;
    }),
  );
}

/**
 * The whole text of the AssemblyScript step: a function for each stage, called for one register and then for the other.
 * A stage waits for the one before; a processor works on the other register meanwhile. Both in one function would take
 * twice the time, most numbers going to and from the stack.
 */
export function simdText(): string {
  const parts = [
    ...LATER_STAGES.map((i) => laterStage(simd, i)),
    [...velocityEnd(simd), ...endStage(simd)],
    [...displacementEnd(simd), ...ranges()],
    errorNorms(simd),
  ];
  const words = parts.map((part) => new Set(part.join('\n').match(/\b[a-zA-Z]\w*\b/g)));
  const slots = new Map<string, number>([...LANE_INPUTS, ...LANE_OUTPUTS].map((name, i) => [name, i]));
  const constants = new Map<string, number>();

  const text = (part: readonly string[], n: number): string => {
    const defined = part.flatMap((line) =>
      [...line.matchAll(/(?:const |, )(\w+) =/g)].map((match) => match[1] ?? ''),
    );
    const lines = [...slots].flatMap(([name, slot]) =>
      words[n]?.has(name) && !defined.includes(name) ? [`const ${name} = v128.load(r, ${16 * slot});`] : [],
    );
    // Constants come from memory, declared before their first use: as immediates each would cost four instructions.
    const declared = new Set<string>();
    for (const line of part) {
      lines.push(
        line.replace(/f64x2\.splat\(([-\d.e]+)\)/g, (_, value: string) => {
          const index = constants.get(value) ?? constants.size;
          constants.set(value, index);
          if (!declared.has(value))
            lines.push(`const K${index} = v128.load64_splat(CONSTANTS, ${8 * index});`);
          declared.add(value);
          return `K${index}`;
        }),
      );
    }
    for (const name of defined) {
      const kept = words.slice(n + 1).some((later) => later.has(name));
      if (kept && !slots.has(name)) slots.set(name, slots.size + CONTROL_VARIABLES);
      const slot = slots.get(name);
      if (slot !== undefined && slot >= LANE_VARIABLES)
        throw new Error('a register has no room for the step');
      if (slot !== undefined) lines.push(`v128.store(r, ${name}, ${16 * slot});`);
    }
    return `export function part${n}(r: usize): void {\n${lines.map((line) => `  ${line}`).join('\n')}\n}`;
  };

  const functions = parts.map(text);
  return `// Written by simd-source.ts (npm run generate); edit that, not this: not in version control.
import { REGISTER } from './lanes.generated';
import { REGISTERS, REYNOLDS_TABLE, SPIN_TABLE } from './layout';

const CONSTANTS = memory.data<f64>([${[...constants.keys()].join(', ')}]);

/** One attempt of a step, ${STAGES} evaluations of the force law, for two registers of two flights. */
export function step(): void {
${parts.map((_, n) => `  part${n}(REGISTERS); part${n}(REGISTERS + REGISTER);`).join('\n')}
}

// Exported, or the compiler would put them back into one.
${functions.join('\n\n')}
`;
}
