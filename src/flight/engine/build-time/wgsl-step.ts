import { readFileSync } from 'node:fs';
import ts from 'typescript';
import { type Expression, inUniformWind, type UniformFormula } from './expression.js';
import { firstStage } from './step-formulas.js';

/** Writes the physics of a step and the decisions between steps in WGSL, for the kernel that flies on a graphics card. */

/** Writes an expression of a step. */
function written(expression: Expression): string {
  if (typeof expression === 'string') return expression;
  if (typeof expression === 'number') return literal(String(expression));
  const [operator, ...operands] = expression;
  const [a = '', b = ''] = operands.map(written);
  switch (operator) {
    case 'sqrt':
    case 'min':
    case 'max':
      return `${operator}(${operands.map(written).join(', ')})`;
    case 'spinEntering':
      return `select(${b}, ${a}, ACROSS)`;
    default:
      return `(${a} ${operator} ${b})`;
  }
}

/** A number as one that WGSL cannot take for an integer. */
function literal(text: string): string {
  const plain = text.replaceAll('_', '');
  return /[.e]/.test(plain) ? plain : `${plain}.0`;
}

/** The coefficients come from a function of Re and S, whatever the law. */
function line(formula: UniformFormula): string {
  if ('name' in formula) return `let ${formula.name} = ${written(formula.value)};`;
  const i = formula.lookUp;
  return `let z${i} = u${i} * cellsPerSpeed; let coefficients = law(z${i}, x${i}); let cl${i} = coefficients.x; let cd${i} = coefficients.y;`;
}

/**
 * Rates of (a, b, c, w): air velocity on the axes of a flight, whose third is the spin axis, and r ω. Where wind changes with
 * height the caller has taken it off.
 */
function ratesText(): string {
  return `fn rates(s: vec4f) -> vec4f {
  let a = s.x; let b = s.y; let c = s.z; let w = s.w;
  ${firstStage().flatMap(inUniformWind).map(line).join('\n  ')}
  return vec4f(ka0, kb0, kc0, kw0);
}`;
}

/** Every function of step-decisions.ts, each of which is one expression. */
function decisionsText(): string {
  const path = new URL('../step-decisions.ts', import.meta.url);
  const source = readFileSync(path, 'utf8');
  const file = ts.createSourceFile('step-decisions.ts', source, ts.ScriptTarget.Latest, true);
  const constants = new Map<string, string>();
  const functions: string[] = [];
  for (const statement of file.statements) {
    if (ts.isVariableStatement(statement)) {
      for (const { name, initializer } of statement.declarationList.declarations) {
        if (initializer !== undefined) constants.set(name.getText(), literal(initializer.getText()));
      }
    } else if (ts.isFunctionDeclaration(statement)) {
      const [only] = statement.body?.statements ?? [];
      if (only === undefined || !ts.isReturnStatement(only) || only.expression === undefined)
        throw new Error(`${statement.name?.text} must be one expression`);
      const parameters = statement.parameters.map(({ name, type }) => `${name.getText()}: ${typeOf(type)}`);
      functions.push(
        `fn ${statement.name?.text}(${parameters.join(', ')}) -> ${typeOf(statement.type)} { return ${translated(only.expression, constants)}; }`,
      );
    }
  }
  return functions.join('\n');
}

function typeOf(type: ts.TypeNode | undefined): string {
  return type?.getText() === 'boolean' ? 'bool' : 'f32';
}

function translated(node: ts.Expression, constants: ReadonlyMap<string, string>): string {
  const inner = (part: ts.Expression): string => translated(part, constants);
  if (ts.isNumericLiteral(node)) return literal(node.getText());
  if (ts.isIdentifier(node)) return constants.get(node.text) ?? node.text;
  if (ts.isParenthesizedExpression(node)) return inner(node.expression);
  if (ts.isPrefixUnaryExpression(node)) {
    return `(${ts.tokenToString(node.operator)}${inner(node.operand)})`;
  }
  if (ts.isBinaryExpression(node)) {
    return `(${inner(node.left)} ${node.operatorToken.getText()} ${inner(node.right)})`;
  }
  if (ts.isConditionalExpression(node)) {
    return `select(${inner(node.whenFalse)}, ${inner(node.whenTrue)}, ${inner(node.condition)})`;
  }
  if (ts.isCallExpression(node)) {
    return `${node.expression.getText().replace('Math.', '')}(${node.arguments.map(inner).join(', ')})`;
  }
  throw new Error(`step-decisions.ts: no WGSL for ${node.getText()}`);
}

/** The module that holds both as text. */
export function wgslText(): string {
  return `// Written by build-time/wgsl-step.ts (npm run generate); edit that, not this: not in version control.
/** Rates of a flight's state, from \`law\`, \`ACROSS\` and the constants of a flight. */
export const RATES_WGSL: string = \`${ratesText()}\`;

/** The decisions of step-decisions.ts. */
export const DECISIONS_WGSL: string = \`${decisionsText()}\`;
`;
}
