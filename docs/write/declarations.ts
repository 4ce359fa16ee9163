import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import ts from 'typescript';
import type { Field, Fields, RecordField } from '../../src/inputs/field.js';

/** The declarations of every input record, as they stand in the code and as they run. */

const src = fileURLToPath(new URL('../../src', import.meta.url));

/** A field of a record with what its type says of it. */
export interface DeclaredField {
  readonly name: string;
  readonly field: Field;
  /** Text of the doc comment. */
  readonly comment: string;
  /** The type as it is written, and what it stands for. */
  readonly type: string;
}

/** One input record. */
export interface Declaration {
  /** Name of the type, for example `Launch`. */
  readonly name: string;
  /** File within src. */
  readonly file: string;
  /** Name of the constant that declares it. */
  readonly constant: string;
  /** First paragraph of the type's doc comment. */
  readonly summary: string;
  /** The fields that the type itself has, without those it extends. */
  readonly own: readonly DeclaredField[];
  /** Names of the types it extends. */
  readonly extends: readonly string[];
  readonly fields: Fields;
}

const parsed = new Map<string, ts.SourceFile>();

function parse(file: string): ts.SourceFile {
  const known = parsed.get(file);
  if (known !== undefined) return known;
  const source = ts.createSourceFile(
    file,
    readFileSync(join(src, file), 'utf8'),
    ts.ScriptTarget.ES2022,
    true,
  );
  parsed.set(file, source);
  return source;
}

type Named = ts.InterfaceDeclaration | ts.TypeAliasDeclaration;

/** The declaration of a type where a file names it: in the file itself or in one it imports it from. */
function typeNamed(name: string, file: string, seen: readonly string[] = []): Named | undefined {
  if (seen.includes(file)) return undefined;
  for (const statement of parse(file).statements) {
    if (
      (ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement)) &&
      statement.name.text === name
    ) {
      return statement;
    }
    const from =
      ts.isImportDeclaration(statement) || ts.isExportDeclaration(statement)
        ? statement.moduleSpecifier
        : undefined;
    if (from === undefined || !ts.isStringLiteral(from) || !from.text.startsWith('.')) continue;
    if (!statement.getText().includes(name) && !/export (type )?\*/.test(statement.getText())) continue;
    const target = normalize(join(dirname(file), from.text.replace(/\.js$/, '.ts')));
    const found = target.includes('generated') ? undefined : typeNamed(name, target, [...seen, file]);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The members of a type that stand in braces, whichever way they are put together, but for those it extends. */
function membersOf(
  type: ts.Node,
  file: string,
  seen: Set<ts.Node> = new Set(),
): readonly ts.PropertySignature[] {
  if (seen.has(type)) return [];
  seen.add(type);
  const below = (node: ts.Node): readonly ts.PropertySignature[] => membersOf(node, file, seen);
  if (ts.isInterfaceDeclaration(type) || ts.isTypeLiteralNode(type))
    return type.members.filter(ts.isPropertySignature);
  if (ts.isTypeAliasDeclaration(type) || ts.isParenthesizedTypeNode(type)) return below(type.type);
  if (ts.isUnionTypeNode(type) || ts.isIntersectionTypeNode(type)) return type.types.flatMap(below);
  if (!ts.isTypeReferenceNode(type)) return [];
  const named = typeNamed(type.typeName.getText(), file);
  return [
    ...(type.typeArguments ?? []).flatMap(below),
    ...(named === undefined ? [] : membersOf(named, named.getSourceFile().fileName, seen)),
  ];
}

function textOf(comment: string): string {
  return comment
    .replace(/^\/\*\*|\*\/$/g, '')
    .replace(/^\s*\* ?/gm, '')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Text of a doc comment without its marks. */
function commentOf(node: ts.Node): string | undefined {
  const doc = ts.getJSDocCommentsAndTags(node).find(ts.isJSDoc);
  return doc === undefined ? undefined : textOf(doc.getText());
}

/** The comment ahead of a type in braces, as it stands in a union, and those of the types around it. */
function commentAround(node: ts.Node): string | undefined {
  const { parent } = node;
  const text = node.getSourceFile().getFullText();
  const ahead = ts.getLeadingCommentRanges(text, parent.getFullStart())?.at(-1);
  if (ahead !== undefined && text.startsWith('/**', ahead.pos))
    return textOf(text.slice(ahead.pos, ahead.end));
  return ts.isSourceFile(parent) || ts.isTypeAliasDeclaration(parent)
    ? commentOf(parent)
    : commentAround(parent);
}

function sources(folder = ''): string[] {
  return readdirSync(join(src, folder), { withFileTypes: true }).flatMap((entry) => {
    const file = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === 'build-time' ? [] : sources(file);
    return file.endsWith('.ts') && !/\.d\.ts$|generated|^wasm/.test(file) ? [file] : [];
  });
}

/** Where one is declared, and the type that says what its fields are. */
interface Found {
  readonly constant: string;
  readonly file: string;
  readonly name: string;
}

/** Types that only the code of a declaration knows, and the public ones whose fields they lay side by side. */
const PUBLIC: Readonly<Record<string, string>> = {
  WindReadingFields: 'WindReading',
  AnyPathOptions: 'PathOptions',
  'Partial<CalibrationPriors>': 'CalibrationPriors',
};

/** Records that are declared as fields of others. */
const PARTS: readonly Found[] = ['Hole', 'Fairway', 'Hazard'].map((name) => ({
  constant: `${name.toLowerCase()}Field`,
  file: 'dispersion/hole.ts',
  name,
}));

/** Every exported `xFields: Declared<X>`. */
function declaredIn(file: string): Found[] {
  return parse(file).statements.flatMap((statement) => {
    if (!ts.isVariableStatement(statement)) return [];
    const exported = statement.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) === true;
    return statement.declarationList.declarations.flatMap(({ name, type }): Found[] => {
      if (!exported || type === undefined || !ts.isTypeReferenceNode(type)) return [];
      const of = type.typeArguments?.[0]?.getText();
      if (type.typeName.getText() !== 'Declared' || of === undefined) return [];
      return [{ constant: name.getText(), file, name: PUBLIC[of] ?? of }];
    });
  });
}

/** Every input record of the library, in the order of its files. */
export async function declarations(): Promise<readonly Declaration[]> {
  return Promise.all([...sources().sort().flatMap(declaredIn), ...PARTS].map(declarationOf));
}

async function declarationOf({ constant, file, name }: Found): Promise<Declaration> {
  const module = (await import(pathToFileURL(join(src, file)).href)) as Record<string, Fields | RecordField>;
  const value = module[constant];
  const fields = (value?.kind === 'record' ? value.fields : value) as Fields;
  const named = typeNamed(name, file);
  if (named === undefined) throw new Error(`${file} has no type ${name}`);
  const heritage = ts.isInterfaceDeclaration(named) ? (named.heritageClauses ?? []) : [];
  return {
    name,
    file,
    constant,
    summary: commentOf(named) ?? '',
    own: fieldsOf(fields, named, ''),
    extends: heritage.flatMap(({ types }) => types.map((each) => each.getText())),
    fields,
  };
}

/** Types that say the same of every quantity; a field of theirs speaks of its own range. */
const GENERIC: readonly string[] = [
  'QuantityRange',
  'NormalPrior',
  'ValidRange',
  'Vector3',
  'Partial',
  'Readonly',
];

/** The fields of a record, and of the records in it that have a type of their own. */
function fieldsOf(fields: Fields, type: Named, path: string): readonly DeclaredField[] {
  const file = type.getSourceFile().fileName;
  const members = membersOf(type, file);
  return Object.entries(fields).flatMap(([key, field]): readonly DeclaredField[] => {
    // The other ways to say it are there to be forbidden, as `polygon?: never`.
    const member = members.find(
      ({ name, type: its }) =>
        name.getText() === key && its?.getText() !== 'never' && its?.getText() !== 'undefined',
    );
    if (member === undefined) return [];
    const of = member.type?.getText() ?? '';
    const words = (of.match(/\w+/g) ?? []).filter((word) => !GENERIC.includes(word));
    const named = words
      .map((word) => typeNamed(word, member.getSourceFile().fileName))
      .find((each) => each !== undefined);
    const alias = named !== undefined && ts.isTypeAliasDeclaration(named) ? named.getText() : '';
    const comment = commentOf(member) ?? commentAround(member);
    const own = {
      name: `${path}${key}`,
      field,
      comment: [comment, alias && named && commentOf(named)].filter(Boolean).join(' '),
      type: `${of} ${alias}`,
    };
    const inner = field.kind === 'list' ? field.of : field;
    return inner.kind === 'record' && named !== undefined
      ? [own, ...fieldsOf(inner.fields, named, `${own.name}.`)]
      : [own];
  });
}
