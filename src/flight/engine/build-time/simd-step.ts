import {
  REYNOLDS_CELLS,
  REYNOLDS_IN_BOTH,
  REYNOLDS_NOWHERE,
  REYNOLDS_NUMBERS,
  SPIN_CELLS,
  SPIN_NUMBERS,
} from '../../../aerodynamics/compiled-law.js';
import {
  type Expression,
  type Formula,
  inUniformWind,
  namesGiven,
  namesRead,
  type Stage,
  type UniformFormula,
} from './expression.js';
import { FIRST_FREE, LANE_BYTES, LANE_VARIABLES, OUTPUT_NAMES, SHARED_NAMES } from './lanes.js';
import {
  displacementEnd,
  endStage,
  errorNorms,
  LATER_STAGES,
  laterStage,
  STAGES,
  velocityEnd,
} from './step-formulas.js';

/** Gives the name of a constant, which it declares before the line in hand. */
type NameConstant = (value: number) => string;

/** Writes an expression on the two flights of a register (WebAssembly f64x2), as AssemblyScript. */
function written(expression: Expression, constant: NameConstant): string {
  if (typeof expression === 'string') return expression;
  if (typeof expression === 'number') return constant(expression);
  const [operator, ...operands] = expression;
  const args = operands.map((operand) => written(operand, constant)).join(', ');
  return operator === 'spinEntering'
    ? `v128.bitselect(${args}, across)`
    : `f64x2.${INSTRUCTIONS[operator]}(${args})`;
}

const INSTRUCTIONS = {
  '+': 'add',
  '-': 'sub',
  '*': 'mul',
  '/': 'div',
  sqrt: 'sqrt',
  min: 'pmin',
  max: 'pmax',
} as const;

/** 1.5 · 2^52: added to a number, it leaves the whole part in the low bits of the sum. */
const WHOLE_PART = 6755399441055744;

/**
 * Looks up the law for both flights, for one and then for the other: a register holds lift and drag of one flight, which
 * share their place in a cell, and the two are sorted at the end. Cells are found by adding 1.5 · 2^52 to x − 1/2. At a
 * whole x that may be the cell before, at its end, where the two cubics agree to within the error of the tables.
 */
function lookUp(i: Stage, constant: NameConstant): string[] {
  const cell = (name: string): string[] => {
    const [half, whole] = [constant(0.5), constant(WHOLE_PART)];
    return [
      `const ${name}v${i} = f64x2.add(f64x2.sub(${name}${i}, ${half}), ${whole});`,
      `const ${name}t${i} = f64x2.sub(${name}${i}, f64x2.sub(${name}v${i}, ${whole}));`,
    ];
  };
  const place = (name: string, lane: number, cells: number, numbers: number): string[] => [
    `const ${name}${lane}_${i} = (<usize>i64x2.extract_lane(${name}v${i}, ${lane}) & ${cells - 1}) << ${Math.log2(8 * numbers)};`,
    `const ${name}t${lane}_${i} = i64x2.shuffle(${name}t${i}, ${name}t${i}, ${lane}, ${lane});`,
    `const ${name}q${lane}_${i} = f64x2.mul(${name}t${lane}_${i}, ${name}t${lane}_${i});`,
  ];
  /** The cubics of lift and drag whose eight numbers begin at `offset` of a cell. */
  const cubics = (name: string, lane: number, table: string, offset: number): string => {
    const at = (k: number): string => `v128.load(${name}${lane}_${i}, ${table} + ${8 * offset + 16 * k})`;
    const line = (k: number): string => `f64x2.add(${at(k)}, f64x2.mul(${name}t${lane}_${i}, ${at(k + 1)}))`;
    return `f64x2.add(${line(0)}, f64x2.mul(${name}q${lane}_${i}, ${line(2)}))`;
  };
  const spin = (lane: number): string[] => [
    ...place('x', lane, SPIN_CELLS, SPIN_NUMBERS),
    `let law${lane}_${i} = ${cubics('x', lane, 'SPIN_TABLE', 0)};`,
  ];
  const reynolds = (lane: number): string[] => [
    ...place('z', lane, REYNOLDS_CELLS, REYNOLDS_NUMBERS),
    `let c${lane}_${i} = ${cubics('z', lane, 'REYNOLDS_TABLE', 0)};`,
    `if (form == ${REYNOLDS_IN_BOTH}) c${lane}_${i} = f64x2.mul(c${lane}_${i}, ${cubics('x', lane, 'SPIN_TABLE', 8)});`,
    `law${lane}_${i} = f64x2.add(law${lane}_${i}, c${lane}_${i});`,
  ];
  return [
    `const z${i} = f64x2.mul(u${i}, cellsPerSpeed);`,
    ...cell('x'),
    ...spin(0),
    ...spin(1),
    `if (form != ${REYNOLDS_NOWHERE}) {`,
    ...[...cell('z'), ...reynolds(0), ...reynolds(1)].map((line) => `  ${line}`),
    '}',
    `const cl${i} = i64x2.shuffle(law0_${i}, law1_${i}, 0, 2);`,
    `const cd${i} = i64x2.shuffle(law0_${i}, law1_${i}, 1, 3);`,
  ];
}

/** Least and greatest cell the stages of a step asked for. A number that is none shows in the error. */
function ranges(): Formula[] {
  return ['x', 'z'].flatMap((name) =>
    (['min', 'max'] as const).map((which): Formula => {
      const cells = LATER_STAGES.map((i): Expression => `${name}${i}`);
      const value = cells.reduce((sum, cell) => [which, sum, cell]);
      return { name: `${which === 'min' ? 'low' : 'high'}_${name}`, value };
    }),
  );
}

/**
 * Where in a register the names of a step live: those shared with the control flow, then, behind its own variables,
 * those that one part of the step leaves to a later one.
 */
function placesOf(parts: readonly (readonly Formula[])[]): ReadonlyMap<string, number> {
  const places = new Map(SHARED_NAMES.map((name, i) => [name, i]));
  let free = FIRST_FREE;
  parts.forEach((part, n) => {
    const readLater = new Set(
      parts
        .slice(n + 1)
        .flat()
        .flatMap(namesRead),
    );
    for (const name of part.flatMap(namesGiven)) {
      if (readLater.has(name) && !places.has(name)) places.set(name, free++);
    }
  });
  if (free > LANE_VARIABLES) throw new Error('a register has no room for the step');
  return places;
}

/** Writes one part of the step as a function of a register: loads, formulas, stores. */
function partText(
  n: number,
  part: readonly UniformFormula[],
  places: ReadonlyMap<string, number>,
  constants: Map<number, number>,
): string {
  const given = part.flatMap(namesGiven);
  const read = new Set(part.flatMap(namesRead));
  const loads = [...places].filter(([name]) => read.has(name) && !given.includes(name));
  // Constants come from memory, declared before their first use: as immediates each would cost four instructions.
  const declared = new Set<number>();
  const formulas = part.flatMap((formula) => {
    const declarations: string[] = [];
    const constant: NameConstant = (value) => {
      const index = constants.get(value) ?? constants.size;
      constants.set(value, index);
      if (!declared.has(value))
        declarations.push(`const K${index} = v128.load64_splat(CONSTANTS, ${8 * index});`);
      declared.add(value);
      return `K${index}`;
    };
    const lines =
      'name' in formula
        ? [`const ${formula.name} = ${written(formula.value, constant)};`]
        : lookUp(formula.lookUp, constant);
    return [...declarations, ...lines];
  });
  const lines = [
    ...loads.map(([name, place]) => `const ${name} = v128.load(r, ${LANE_BYTES * place});`),
    ...formulas,
    ...given.flatMap((name) => {
      const place = places.get(name);
      return place === undefined ? [] : [`v128.store(r, ${name}, ${LANE_BYTES * place});`];
    }),
  ];
  return `export function part${n}(r: usize): void {\n${lines.map((line) => `  ${line}`).join('\n')}\n}`;
}

/**
 * The whole text of the AssemblyScript step: a function for each stage, called for one register and then for the other.
 * A stage waits for the one before; a processor works on the other register meanwhile. Both in one function would take
 * twice the time, most numbers going to and from the stack.
 */
export function simdText(): string {
  const parts = [
    ...LATER_STAGES.map(laterStage),
    [...velocityEnd(), ...endStage()],
    [...displacementEnd(), ...ranges()],
    errorNorms(),
  ].map((part) => part.flatMap(inUniformWind));
  const given = new Set(parts.flat().flatMap(namesGiven));
  const missing = OUTPUT_NAMES.filter((name) => !given.has(name));
  if (missing.length > 0) throw new Error(`the step does not give ${missing.join(', ')}`);
  const places = placesOf(parts);
  const constants = new Map<number, number>();
  const functions = parts.map((part, n) => partText(n, part, places, constants));
  return `// Written by build-time/simd-step.ts (npm run generate); edit that, not this: not in version control.
import { REGISTER } from './lanes.generated';
import { REGISTERS, REYNOLDS_TABLE, SPIN_TABLE } from './layout';

const CONSTANTS = memory.data<f64>([${[...constants.keys()].join(', ')}]);

let form: i32 = 0;

/** Sets how Re enters the law. */
export function setForm(reynoldsForm: i32): void { form = reynoldsForm; }

/** One attempt of a step, ${STAGES} evaluations of the force law, for two registers of two flights. */
export function step(): void {
${parts.map((_, n) => `  part${n}(REGISTERS); part${n}(REGISTERS + REGISTER);`).join('\n')}
}

// Exported, or the compiler would put them back into one.
${functions.join('\n\n')}
`;
}
