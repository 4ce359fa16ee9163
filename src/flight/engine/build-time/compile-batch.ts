import { fileURLToPath } from 'node:url';

/** The compiler's entry; typed here, since its own declarations bring a `console` that hides Node's. */
interface Compiler {
  readonly main: (
    args: readonly string[],
    host: { readonly writeFile: (name: string, contents: string | Uint8Array) => void },
  ) => Promise<{ readonly error: Error | null; readonly stderr: object }>;
}
const COMPILER: string = 'assemblyscript/asc';

const root = fileURLToPath(new URL('../../../../', import.meta.url));

const OPTIONS = [
  ...['--baseDir', root, '-o', 'batch.wasm', '-O3', '--runtime', 'stub', '--enable', 'simd', '--noAssert'],
  ...['--memoryBase', '1024', '--initialMemory', '11'],
];

/** Compiles src/wasm/batch.ts with AssemblyScript; returns the module that holds it as text. */
export async function compileBatch(): Promise<string> {
  const { main } = (await import(COMPILER)) as Compiler;
  let binary: Uint8Array | undefined;
  const { error, stderr } = await main(['src/wasm/batch.ts', ...OPTIONS], {
    writeFile: (name, contents) => {
      if (name.endsWith('.wasm') && typeof contents !== 'string') binary = contents;
    },
  });
  if (error || binary === undefined) throw new Error(`AssemblyScript: ${stderr}`, { cause: error });
  return `// Written by compile-batch.ts (npm run generate); not in version control.
/** The compiled batch kernel, base64. */
export const BATCH_WASM: string =
  '${Buffer.from(binary).toString('base64')}';
`;
}
