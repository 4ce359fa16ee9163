/**
 * The batch kernel in WebAssembly SIMD, in an entry of its own so that the root entry does not carry it.
 * @module
 */
import { type BatchExports, type BatchKernel, batchKernel } from './flight/engine/batch.js';
import { BATCH_WASM } from './flight/engine/batch-wasm.generated.js';

/** The part of the WebAssembly interface used here; neither the ES nor the Node types carry it as a value. */
interface WebAssemblyApi {
  readonly validate: (bytes: Uint8Array) => boolean;
  readonly instantiate: (
    bytes: Uint8Array,
    imports: Readonly<Record<string, Readonly<Record<string, () => void>>>>,
  ) => Promise<{ readonly instance: { readonly exports: unknown } }>;
}

export type { BatchKernel } from './flight/engine/batch.js';

/**
 * Compiles and starts the WebAssembly kernel for `flyMany`: `flyMany(launches, scene, { kernel })`. Resolves to
 * `undefined` where the runtime has no WebAssembly SIMD; flyMany then takes the JavaScript engine.
 * @example const flights = flyMany(launches, {}, { kernel: await loadBatchKernel() });
 */
export async function loadBatchKernel(): Promise<BatchKernel | undefined> {
  const api = (globalThis as { readonly WebAssembly?: WebAssemblyApi }).WebAssembly;
  if (api === undefined) return undefined;
  const bytes = Uint8Array.from(atob(BATCH_WASM), (character) => character.charCodeAt(0));
  if (!api.validate(bytes)) return undefined;
  const { instance } = await api.instantiate(bytes, {
    env: {
      abort: () => {
        throw new Error('the batch kernel stopped');
      },
    },
  });
  return batchKernel(instance.exports as BatchExports);
}
