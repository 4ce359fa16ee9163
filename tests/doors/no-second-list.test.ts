import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { type Declaration, declarations } from '../../docs/write/declarations.js';
import type { Field, Fields } from '../../src/inputs/field.js';

const src = fileURLToPath(new URL('../../src', import.meta.url));

function sourcesBelow(folder = ''): string[] {
  return readdirSync(join(src, folder), { withFileTypes: true }).flatMap((entry) => {
    const file = join(folder, entry.name);
    if (entry.isDirectory())
      return entry.name === 'build-time' || entry.name === 'wasm' ? [] : sourcesBelow(file);
    return file.endsWith('.ts') && !/\.d\.ts$|generated/.test(file) ? [file] : [];
  });
}

const files = sourcesBelow();
const all = await declarations();

interface Place {
  readonly file: string;
  readonly node: ts.Node;
  readonly source: ts.SourceFile;
}

/** Every node of the code that is of a kind. */
function* nodesOf(is: (node: ts.Node) => boolean): Generator<Place> {
  for (const file of files) {
    const text = readFileSync(join(src, file), 'utf8');
    const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
    const stack: ts.Node[] = [source];
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      if (is(node)) yield { file, node, source };
      node.forEachChild((child) => {
        stack.push(child);
      });
    }
  }
}

function lineOf({ file, node, source }: Place): string {
  return `${file}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}`;
}

/** The texts of a list of texts. */
function textsIn(node: ts.Node): readonly string[] {
  if (!ts.isArrayLiteralExpression(node) || !node.elements.every(ts.isStringLiteral)) return [];
  return node.elements.map((each) => (each as ts.StringLiteral).text);
}

/** Ends of the ranges of a record's fields, but for those that a thousand things have. */
function rangesOf(fields: Fields): readonly string[] {
  const inField = (field: Field): readonly string[] => {
    switch (field.kind) {
      case 'quantity':
      case 'count':
        return [`${field.min}, ${field.max}`];
      case 'record':
        return rangesOf(field.fields);
      case 'variant':
        return Object.values(field.cases).flatMap(rangesOf);
      case 'list':
      case 'named':
        return inField(field.of);
      default:
        return [];
    }
  };
  return Object.values(fields).flatMap(inField);
}
const ANYBODYS: readonly string[] = ['0, 1', '-1, 1', '1, 2'];

const ENDS: Readonly<Record<string, string>> = { min: 'max', low: 'high', from: 'to', lower: 'upper' };

/** The two numbers of `[a, b]` or `{ min: a, max: b }`. */
function endsIn(node: ts.Node): string | undefined {
  const numbers = partsOf(node).map((part) =>
    Number(part.getText().replaceAll('_', '').replace('Math.PI', String(Math.PI))),
  );
  return numbers.length === 2 && numbers.every(Number.isFinite) ? numbers.join(', ') : undefined;
}

function partsOf(node: ts.Node): readonly ts.Node[] {
  if (ts.isArrayLiteralExpression(node)) return node.elements;
  if (!ts.isObjectLiteralExpression(node)) return [];
  const [first, second] = node.properties;
  const isPair = ENDS[first?.name?.getText() ?? ''] === second?.name?.getText();
  return isPair ? node.properties.filter(ts.isPropertyAssignment).map(({ initializer }) => initializer) : [];
}

describe('what an input may be stands in its declaration alone', () => {
  it('nobody outside the numerics checks by hand', () => {
    const strays = files.filter(
      (file) =>
        !file.startsWith('numerics/') &&
        /\brequire(Within|OneOf|Record)\b/.test(readFileSync(join(src, file), 'utf8')),
    );
    expect(strays).toEqual([]);
  });
  it('nobody outside src/inputs makes an error of a type or a range', () => {
    const strays = [
      ...nodesOf((node) => ts.isNewExpression(node) && node.expression.getText() === 'FairflightError'),
    ]
      // An error from a worker thread put together again, and several put together into one.
      .filter(({ file }) => !/^(numerics|inputs|errors|node\/task|schema\/parse)/.test(file))
      .map(lineOf);
    expect(strays).toEqual([]);
  });
  it('no list of names repeats the fields of a record', () => {
    const keys = all
      .map(({ name, fields }: Declaration) => [name, Object.keys(fields).sort().join()] as const)
      // Ball speed, launch angle and spin rate, which a map covers, are three readings of every strike.
      .filter(([name, names]) => names.includes(',') && name !== 'MapQuestion');
    const lists = nodesOf((node) => ts.isArrayLiteralExpression(node) || ts.isObjectLiteralExpression(node));
    const repeated = [...lists].flatMap((place) => {
      const texts = textsIn(place.node);
      if (texts.length < 2) return [];
      const names = [...texts].sort().join();
      return keys.filter(([, each]) => each === names).map(([name]) => `${lineOf(place)} repeats ${name}`);
    });
    expect(repeated).toEqual([]);
  });
  it('no range of an input is written a second time', () => {
    const ranges = new Set(
      all.flatMap(({ fields }) => rangesOf(fields)).filter((each) => !ANYBODYS.includes(each)),
    );
    const written = nodesOf(
      (node) => ts.isArrayLiteralExpression(node) || ts.isObjectLiteralExpression(node),
    );
    const again = [...written].filter(({ node }) => ranges.has(endsIn(node) ?? '')).map(lineOf);
    expect(again).toEqual([]);
  });
  it('no message has a range in its words', () => {
    const ranges = all.flatMap(({ fields }) => rangesOf(fields)).filter((each) => !ANYBODYS.includes(each));
    const worded = new Set(ranges.map((each) => each.replace(', ', ' to ')));
    const texts = nodesOf(
      (node) =>
        ts.isStringLiteral(node) ||
        ts.isNoSubstitutionTemplateLiteral(node) ||
        ts.isTemplateHead(node) ||
        ts.isTemplateMiddle(node) ||
        ts.isTemplateTail(node),
    );
    const again = [...texts]
      .filter(({ node }) =>
        (node.getText().match(/-?[\d.]+ to -?[\d.]+/g) ?? []).some((text) => worded.has(text)),
      )
      .map(lineOf);
    expect(again).toEqual([]);
  });
});
