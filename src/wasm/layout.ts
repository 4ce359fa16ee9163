/** Memory of the batch kernel, in bytes. Tables first, then the lanes, then one chunk of flights in and out. */
import { REGISTER } from './lanes.generated';

/** 2,048 cells of 8 numbers. */
export const SPIN_TABLE: usize = 65536;
/** 1,024 cells of 4 numbers. */
export const REYNOLDS_TABLE: usize = SPIN_TABLE + 2049 * 64;
/** Two registers of two lanes; each lane variable is two numbers, one a lane. */
export const REGISTERS: usize = REYNOLDS_TABLE + 1025 * 32;
export const FLIGHTS: usize = REGISTERS + 2 * REGISTER;
/** Flights in a chunk. */
export const CHUNK: i32 = 512;
/** Numbers in (KERNEL_PARAMETERS) and out for a flight. */
export const INPUTS: i32 = 26;
export const RESULTS: i32 = 14;
export const RESULTS_AT: usize = FLIGHTS + <usize>CHUNK * <usize>INPUTS * 8;
