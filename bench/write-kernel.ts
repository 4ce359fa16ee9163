/** Writes src/flight/engine/kernel.generated.ts from its template. usage: npm run generate */
import { writeFileSync } from 'node:fs';
import { kernelText } from '../src/flight/engine/kernel-template.js';

writeFileSync(new URL('../src/flight/engine/kernel.generated.ts', import.meta.url), kernelText());
