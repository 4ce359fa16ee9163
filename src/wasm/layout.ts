/** Memory of the batch kernel, in bytes. Tables first, then the lanes, then one chunk of flights in and out. */
import { INPUTS, REGISTER, RESULTS, REYNOLDS_CELLS, SPIN_CELLS } from './lanes.generated';

/** Cells of 8 numbers, and one to spare. */
export const SPIN_TABLE: usize = 65536;
/** Cells of 4 numbers, and one to spare. */
export const REYNOLDS_TABLE: usize = SPIN_TABLE + (SPIN_CELLS + 1) * 64;
/** Two registers of two lanes; each lane variable is two numbers, one a lane. */
export const REGISTERS: usize = REYNOLDS_TABLE + (REYNOLDS_CELLS + 1) * 32;
export const FLIGHTS: usize = REGISTERS + 2 * REGISTER;
/** Flights in a chunk. */
export const CHUNK: i32 = 512;
export const RESULTS_AT: usize = FLIGHTS + <usize>CHUNK * <usize>INPUTS * 8;
