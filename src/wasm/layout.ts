/** Memory of the batch kernel, in bytes. Tables first, then the lanes, then one chunk of flights in and out. */
import {
  INPUTS, REGISTER, RESULTS, REYNOLDS_CELLS, REYNOLDS_NUMBERS, SPIN_CELLS, SPIN_NUMBERS,
} from './lanes.generated';

/** One cell to spare in either table. */
export const SPIN_TABLE: usize = 65536;
export const REYNOLDS_TABLE: usize = SPIN_TABLE + (SPIN_CELLS + 1) * SPIN_NUMBERS * 8;
/** Two registers of two lanes; each lane variable is two numbers, one a lane. */
export const REGISTERS: usize = REYNOLDS_TABLE + (REYNOLDS_CELLS + 1) * REYNOLDS_NUMBERS * 8;
export const FLIGHTS: usize = REGISTERS + 2 * REGISTER;
/** Flights in a chunk. */
export const CHUNK: i32 = 512;
export const RESULTS_AT: usize = FLIGHTS + <usize>CHUNK * <usize>INPUTS * 8;
