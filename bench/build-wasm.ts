/** Compiles src/wasm/batch.ts with AssemblyScript and writes it, as text, where src/batch.ts finds it. usage: npm run build:wasm */
import { writeFileSync } from 'node:fs';
import { main } from 'assemblyscript/asc';

let binary: Uint8Array | undefined;
const { error, stderr } = await main(
  [
    'src/wasm/batch.ts',
    '-o',
    'batch.wasm',
    '-O3',
    '--runtime',
    'stub',
    '--enable',
    'simd',
    '--noAssert',
    '--memoryBase',
    '1024',
    '--initialMemory',
    '8',
  ],
  {
    writeFile: (name: string, contents: string | Uint8Array) => {
      if (name.endsWith('.wasm') && typeof contents !== 'string') binary = contents;
    },
  },
);
if (error || binary === undefined) {
  console.error(String(stderr), error);
  process.exit(1);
}
const text = Buffer.from(binary).toString('base64');
writeFileSync(
  new URL('../src/flight/engine/batch-wasm.generated.ts', import.meta.url),
  `// Written by bench/build-wasm.ts (npm run build:wasm); not in version control.\n/** The compiled batch kernel, base64. */\nexport const BATCH_WASM: string =\n  '${text}';\n`,
);
