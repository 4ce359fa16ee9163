/** Writes the unrolled kernels from their templates and compiles the batch kernel. usage: npm run generate */
import { writeFileSync } from 'node:fs';
import { compileBatch } from './compile-batch.js';
import { kernelText } from './kernel-template.js';
import { lanesText } from './lanes.js';
import { simdText } from './simd-step.js';
import { wgslText } from './wgsl-step.js';

const src = new URL('../../../', import.meta.url);

writeFileSync(new URL('flight/engine/kernel.generated.ts', src), kernelText());
writeFileSync(new URL('flight/engine/step-wgsl.generated.ts', src), wgslText());
writeFileSync(new URL('wasm/lanes.generated.ts', src), lanesText());
writeFileSync(new URL('wasm/step.generated.ts', src), simdText());
writeFileSync(new URL('flight/engine/batch-wasm.generated.ts', src), await compileBatch());
