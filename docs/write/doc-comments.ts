import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/** What the doc comments of the sources say. */

const src = fileURLToPath(new URL('../../src', import.meta.url));

/** A paragraph names its source when it holds a year, a standard, or the mark of a number without one. */
const CITES = /\b(1[89]\d\d|20[0-2]\d)\b|WMO-No|ISO \d|from memory|no source|[Aa]ssum|calibrat/;

/** What a file exports with a source. */
export interface Entry {
  readonly name: string;
  readonly summary: string;
  readonly sources: readonly string[];
}

/** Paragraphs of a doc comment, without the braces of its links and without its tags. */
function paragraphs(comment: string): string[] {
  return (comment.split(/(?:^|\s)@(?=internal|param|returns|throws|example)/)[0] ?? '')
    .replace(/\{@link (\S+?)\}/g, '`$1`')
    .split(/\n\s*\n/)
    .map((paragraph) => paragraph.replace(/\s+/g, ' ').trim())
    .filter((paragraph) => paragraph !== '');
}

function parse(file: string): ts.SourceFile {
  const path = join(src, file);
  return ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
}

function isExported(node: ts.Node): boolean {
  return (
    ts.canHaveModifiers(node) &&
    (ts.getModifiers(node) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
  );
}

function commentOf(node: ts.Node): string[] | undefined {
  const comment = ts.getJSDocCommentsAndTags(node).find(ts.isJSDoc);
  const raw = comment && ts.getTextOfJSDocComment(comment.comment);
  return raw === undefined ? undefined : paragraphs(raw);
}

function nameOf(node: ts.Node): string | undefined {
  if (ts.isFunctionDeclaration(node) || ts.isInterfaceDeclaration(node)) return node.name?.text;
  return ts.isVariableStatement(node) ? node.declarationList.declarations[0]?.name.getText() : undefined;
}

/** What a file exports with a source in its comment. */
export function entriesOf(file: string): Entry[] {
  return parse(file)
    .statements.filter((node) => isExported(node) && !ts.isInterfaceDeclaration(node))
    .flatMap((node): Entry[] => {
      const name = nameOf(node);
      const comment = commentOf(node);
      if (name === undefined || comment === undefined) return [];
      const [summary = '', ...rest] = comment;
      const sources = rest.filter((text) => CITES.test(text));
      return sources.length === 0 && !CITES.test(summary)
        ? []
        : [{ name: ts.isFunctionDeclaration(node) ? `${name}()` : name, summary, sources }];
    });
}

/** Files of a room that are written by hand. */
export function filesOf(room: string): string[] {
  return readdirSync(join(src, room), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.includes('generated'))
    .map((name) => `${room}/${name}`)
    .sort();
}

function declared(file: string, name: string): ts.Statement {
  const found = parse(file).statements.find((node) => nameOf(node) === name);
  if (found === undefined) throw new Error(`no ${name} in src/${file}`);
  return found;
}

/** The first paragraph of the comment of a declaration: what it computes. */
export function summaryOf(file: string, name: string): string {
  return commentOf(declared(file, name))?.[0] ?? '';
}

/** The members of an interface with their comments. */
export function membersOf(file: string, name: string): [string, string][] {
  const found = declared(file, name);
  if (!ts.isInterfaceDeclaration(found)) throw new Error(`${name} of src/${file} is no interface`);
  return found.members.map((node) => [node.name?.getText() ?? '', (commentOf(node) ?? []).join(' ')]);
}

/** Every number written in the code of a file, comments left out. */
export function numbersIn(file: string): Set<number> {
  const found = new Set<number>();
  const visit = (node: ts.Node): void => {
    if (ts.isNumericLiteral(node)) found.add(Number(node.text.replaceAll('_', '')));
    ts.forEachChild(node, visit);
  };
  visit(parse(file));
  return found;
}
