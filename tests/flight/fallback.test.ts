import { afterEach, describe, expect, it, vi } from 'vitest';
import { loadBatchKernel } from '../../src/batch.js';
import { flyMany } from '../../src/index.js';

// Runtimes without WebAssembly, or with one that has no SIMD: `validate` is how the latter say so (WebAssembly
// JavaScript Interface, W3C).
const runtimes: readonly (readonly [string, unknown])[] = [
  ['without WebAssembly', undefined],
  [
    'without SIMD',
    {
      validate: () => false,
      instantiate: () => Promise.reject(new Error('must not be asked')),
    },
  ],
];

afterEach(() => {
  vi.unstubAllGlobals();
});

describe.each(runtimes)('in a runtime %s', (_name, api) => {
  it('there is no batch kernel, and flyMany flies as it does without one', async () => {
    const launches = {
      ballSpeed: Float64Array.of(40, 55, 70),
      launchAngle: Float64Array.of(0.4, 0.3, 0.2),
      spinRate: Float64Array.of(800, 600, 260),
    };
    const plain = flyMany(launches);
    vi.stubGlobal('WebAssembly', api);
    const kernel = await loadBatchKernel();
    expect(kernel).toBeUndefined();
    expect(flyMany(launches, {}, { kernel })).toEqual(plain);
  });
});

it('in a runtime that has both there is one', async () => {
  expect(await loadBatchKernel()).toBeDefined();
});
