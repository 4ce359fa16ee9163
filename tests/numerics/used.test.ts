import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { expect, it } from 'vitest';

const src = fileURLToPath(new URL('../../src', import.meta.url));

/** Names that a file exports as values, and names it uses; importing, exporting and declaring one is no use. */
function namesOf(path: string): { readonly exported: readonly string[]; readonly used: readonly string[] } {
  const file = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  const exported: string[] = [];
  const used: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isIdentifier(node)) {
      const { parent } = node;
      const declared =
        (ts.isFunctionDeclaration(parent) || ts.isVariableDeclaration(parent)) && parent.name === node;
      const statement = ts.isVariableDeclaration(parent) ? parent.parent.parent : parent;
      if (!declared) used.push(node.text);
      else if (
        ts.canHaveModifiers(statement) &&
        ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
      ) {
        exported.push(node.text);
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return { exported, used };
}

it('numerics holds nothing that the library does not use', () => {
  const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => ({ name, ...namesOf(join(src, name)) }));
  const used = new Set(files.flatMap((file) => file.used));
  const exported = files.filter(({ name }) => name.startsWith('numerics')).flatMap((file) => file.exported);
  expect(exported.length).toBeGreaterThan(40);
  expect(exported.filter((name) => !used.has(name))).toEqual([]);
});
