import type { CudaTime } from './cuda.js';
import type { Errors } from './errors.js';

/** What a run measured; times in seconds. A part that was not asked for is absent. */
export interface Results {
  card: string;
  processor: string;
  errors?: readonly Errors[];
  onCard?: readonly { readonly of: string; readonly flights: number; readonly seconds: number }[];
  cuda?: readonly CudaTime[];
  batch?: { readonly flights: number; readonly seconds: number };
  map?: {
    readonly first: number;
    readonly median: number;
    readonly best: number;
    readonly onProcessor: number;
  };
  sums?: readonly { readonly flights: number; readonly seconds: number; readonly megabytes: number }[];
  cores?: readonly {
    readonly of: string;
    readonly workers: number;
    readonly one: number;
    readonly all: number;
  }[];
}
