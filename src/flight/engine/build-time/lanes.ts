import {
  REYNOLDS_CELLS,
  REYNOLDS_IN_BOTH,
  REYNOLDS_NOWHERE,
  REYNOLDS_NUMBERS,
  SPIN_CELLS,
  SPIN_NUMBERS,
} from '../../../aerodynamics/compiled-law.js';
import { KERNEL_PARAMETERS, KERNEL_RESULTS } from './kernel-layout.js';

/**
 * Lane variables the step reads, each two numbers, one a lane: the name in its formulas and, where the control flow
 * uses it, the name there; of a group, its first.
 */
const INPUTS: readonly (readonly [name: string, inControl?: string])[] = [
  ['a', 'STATE'],
  ['b'],
  ['c'],
  ['w'],
  ['A'],
  ['B'],
  ['C'],
  ['span', 'H'],
  ['ka0', 'RATE'],
  ['kb0'],
  ['kc0'],
  ['kw0'],
  ['gravity2', 'GRAVITY2'],
  ['gravity3', 'GRAVITY3'],
  ['drag', 'DRAG'],
  ['lift', 'LIFT'],
  ['decay', 'DECAY'],
  ['cellsPerSpeed', 'CELLS_PER_SPEED'],
  ['across', 'ACROSS'],
  ['perTolerance', 'PER_TOLERANCE'],
];

/** Lane variables it writes: end state, derivative there, error and factor, range of cells asked for, cells at the end. */
const OUTPUTS: readonly (readonly [name: string, inControl?: string])[] = [
  ['an', 'NEW_STATE'],
  ['bn'],
  ['cn'],
  ['wn'],
  ['An'],
  ['Bn'],
  ['Cn'],
  ['kaE', 'NEW_RATE'],
  ['kbE'],
  ['kcE'],
  ['kwE'],
  ['error', 'ERROR'],
  ['wanted', 'WANTED'],
  ['low_x', 'LOW_X'],
  ['high_x', 'HIGH_X'],
  ['low_z', 'LOW_Z'],
  ['high_z', 'HIGH_Z'],
  ['xE', 'END_X'],
  ['zE', 'END_Z'],
];

/** Lane variables of the control flow's own, of a group its first with their number. */
const CONTROL: readonly (readonly [name: string, count?: number])[] = [
  // Parameters of the flight, in the order of KERNEL_PARAMETERS.
  ['NORMAL1'],
  ['NORMAL2'],
  ['NORMAL3'],
  ['NORMAL_WIND'],
  ['UP2'],
  ['UP3'],
  // The node it stands at, and the step wanted from there.
  ['T'],
  ['NEXT'],
  ['HEIGHT'],
  ['CLIMB'],
  ['FALL'],
  // The highest point so far: height, displacement, time.
  ['APEX'],
  ['APEX_A'],
  ['APEX_B'],
  ['APEX_C'],
  ['APEX_T'],
  // Ranges seen at its nodes: cells of Re and of S.
  ['LEAST_Z'],
  ['MOST_Z'],
  ['LEAST_X'],
  ['MOST_X'],
  // Where the flight is with its step.
  ['ATTEMPTS'],
  ['MODE'],
  ['AIMED'],
  ['APEX_INSIDE'],
  ['NEW_HEIGHT'],
  ['NEW_CLIMB'],
];

const SHARED = [...INPUTS, ...OUTPUTS];

/** Names of the lane variables that the step shares with the control flow, in their order in a register. */
export const SHARED_NAMES: readonly string[] = SHARED.map(([name]) => name);
/** Names of those the step must leave behind. */
export const OUTPUT_NAMES: readonly string[] = OUTPUTS.map(([name]) => name);
/** Where the step keeps what one of its functions leaves to the next: behind what is shared and the control flow's own. */
export const FIRST_FREE: number = SHARED.length + CONTROL.reduce((sum, [, count = 1]) => sum + count, 0);
/**
 * Lane variables of a register: more than it needs, since 4,096 bytes apart a processor takes a load from one register
 * for a store to the other.
 */
export const LANE_VARIABLES = 304;
/** Bytes of a lane variable. */
export const LANE_BYTES = 16;

/** The whole text of the lane variables, as AssemblyScript. */
export function lanesText(): string {
  const line = (name: string, index: number): string => `export const ${name}: usize = ${index};`;
  const shared = SHARED.flatMap(([, name], index) => (name === undefined ? [] : [line(name, index)]));
  let free = SHARED.length;
  const control = CONTROL.map(([name, count = 1]) => {
    free += count;
    return line(name, free - count);
  });
  return `// Written by build-time/lanes.ts (npm run generate); edit that, not this: not in version control.

/** Bytes of a register. */
export const REGISTER: usize = ${LANE_BYTES * LANE_VARIABLES};
/** Numbers in for a flight, in the order of KERNEL_PARAMETERS. */
export const INPUTS: i32 = ${KERNEL_PARAMETERS.length};
/** Numbers out for a flight: those of KERNEL_RESULTS up to the work done, then how it ended. */
export const RESULTS: i32 = ${KERNEL_RESULTS.indexOf('nodes') + 1};
/** Cells of the law's tables. */
export const SPIN_CELLS: usize = ${SPIN_CELLS};
export const REYNOLDS_CELLS: usize = ${REYNOLDS_CELLS};
export const SPIN_NUMBERS: usize = ${SPIN_NUMBERS};
export const REYNOLDS_NUMBERS: usize = ${REYNOLDS_NUMBERS};
/** How Re enters the law, at the two ends; between them in drag alone. */
export const REYNOLDS_NOWHERE: i32 = ${REYNOLDS_NOWHERE};
export const REYNOLDS_IN_BOTH: i32 = ${REYNOLDS_IN_BOTH};
// Lane variables, each two numbers, one a lane: first those the step reads and writes.
${[...shared, ...control].join('\n')}
`;
}
