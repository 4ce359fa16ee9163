import { readFileSync } from 'node:fs';
import ts from 'typescript';
import type * as stepDecisions from '../step-decisions.js';

type Decisions = typeof stepDecisions;
type Names<Kind> = {
  [Name in keyof Decisions]: Decisions[Name] extends Kind ? Name : never;
}[keyof Decisions];

/** A text for each argument. */
type Texts<Args extends readonly unknown[]> = { readonly [I in keyof Args]: string };

const path = new URL('../step-decisions.ts', import.meta.url);
const file = ts.createSourceFile(
  'step-decisions.ts',
  readFileSync(path, 'utf8'),
  ts.ScriptTarget.Latest,
  true,
);

/** The text of each constant, and of each function its parameters and the expression it returns. */
const constants = new Map<string, string>();
const functions = new Map<
  string,
  { readonly parameters: readonly string[]; readonly value: ts.Expression }
>();
for (const statement of file.statements) {
  if (ts.isVariableStatement(statement)) {
    for (const { name, initializer } of statement.declarationList.declarations) {
      if (initializer !== undefined) constants.set(name.getText(), initializer.getText());
    }
  } else if (ts.isFunctionDeclaration(statement) && statement.name !== undefined) {
    const [only, ...others] = statement.body?.statements ?? [];
    if (
      only === undefined ||
      others.length > 0 ||
      !ts.isReturnStatement(only) ||
      only.expression === undefined
    )
      throw new Error(`${statement.name.text} must be one expression`);
    const parameters = statement.parameters.map(({ name }) => name.getText());
    functions.set(statement.name.text, { parameters, value: only.expression });
  }
}

/** A constant of step-decisions.ts as it stands there. */
export function constant(name: Names<number>): string {
  const text = constants.get(name);
  if (text === undefined) throw new Error(`step-decisions.ts has no constant ${name}`);
  return text;
}

/** A function of step-decisions.ts, written out for these arguments. */
export function decide<Name extends Names<(...args: never) => unknown>>(
  name: Name,
  ...args: Texts<Parameters<Decisions[Name]>>
): string {
  const found = functions.get(name);
  if (found === undefined) throw new Error(`step-decisions.ts has no function ${name}`);
  const { parameters, value } = found;
  const given = new Map(parameters.map((parameter, i) => [parameter, args[i] ?? '']));
  const written = (node: ts.Node): string => {
    if (ts.isIdentifier(node)) {
      const argument = given.get(node.text);
      if (argument !== undefined) return /^\w+$/.test(argument) ? argument : `(${argument})`;
      return constants.get(node.text) ?? node.text;
    }
    const parts = node.getChildren();
    return parts.length === 0 ? node.getText() : parts.map(written).join(spaced(node) ? ' ' : '');
  };
  return `(${written(value)})`;
}

/** Whether the parts of a node stand apart. */
function spaced(node: ts.Node): boolean {
  return (
    ts.isBinaryExpression(node) || ts.isConditionalExpression(node) || node.kind === ts.SyntaxKind.SyntaxList
  );
}
