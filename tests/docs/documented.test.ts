import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const ENTRIES = ['index', 'units/index', 'reference', 'schema/index', 'sweep/index', 'node/index'];

/** Members of the interfaces an entry exports that say nothing about themselves. */
function silentMembers(): string[] {
  const paths = ENTRIES.map((entry) => `${root}/src/${entry}.ts`);
  const { options } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(`${root}/tsconfig.json`, ts.sys.readFile).config,
    ts.sys,
    root,
  );
  const program = ts.createProgram(paths, options);
  const checker = program.getTypeChecker();
  const exported = paths.flatMap((path) => {
    const file = program.getSourceFile(path);
    const module = file && checker.getSymbolAtLocation(file);
    return module === undefined ? [] : checker.getExportsOfModule(module);
  });
  expect(exported.length).toBeGreaterThan(150);
  const silent = exported
    .map((symbol) => (symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol))
    .flatMap((symbol) => symbol.declarations ?? [])
    .filter(ts.isInterfaceDeclaration)
    .flatMap((declaration) =>
      declaration.members
        .filter((member) => !ts.getJSDocCommentsAndTags(member).some(ts.isJSDoc))
        .map((member) => {
          const file = relative(root, declaration.getSourceFile().fileName);
          return `${file}: ${declaration.name.text}.${member.name?.getText() ?? '?'}`;
        }),
    );
  return [...new Set(silent)];
}

// What functions, types and links lack, `npm run docs` tells; it cannot tell a field from a field of a nested literal.
it('every field of a public record says what it is, with its unit', () => {
  expect(silentMembers()).toEqual([]);
});
