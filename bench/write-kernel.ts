/** Writes the unrolled kernels from their templates. usage: npm run generate */
import { writeFileSync } from 'node:fs';
import { kernelText } from '../src/flight/engine/kernel-template.js';
import { lanesText, simdText } from '../src/flight/engine/simd-source.js';

writeFileSync(new URL('../src/flight/engine/kernel.generated.ts', import.meta.url), kernelText());
writeFileSync(new URL('../src/wasm/lanes.generated.ts', import.meta.url), lanesText());
writeFileSync(new URL('../src/wasm/step.generated.ts', import.meta.url), simdText());
