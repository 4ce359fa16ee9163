import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { BAND_SHARES, BAND_SPEEDS, BAND_SPIN_RATIOS } from '../../src/aerodynamics/carry-band.js';
import { fittedModernConstants, presentDayModels } from '../../src/aerodynamics/index.js';
import {
  aerodynamicModels,
  balls,
  type Clubhead,
  clubheads,
  type Source,
  type Turf,
  turfs,
} from '../../src/index.js';

/** The page docs/models.md: what is computed and where each formula comes from, read from the code itself. */

const src = fileURLToPath(new URL('../../src', import.meta.url));

/** Rooms that compute physics or statistics, in the order of the walk. */
const ROOMS = [
  ['air', 'Air and wind'],
  ['aerodynamics', 'Drag, lift and spin decay'],
  ['strike', 'Strike'],
  ['flight', 'Flight'],
  ['turf', 'Bounce and run'],
  ['optimum', 'Optimum'],
  ['sensitivity', 'Sensitivity'],
  ['dispersion', 'Dispersion and strokes'],
  ['session', 'Sessions'],
  ['sweep', 'Designs and sweeps'],
  ['numerics', 'Numerical methods'],
] as const;

/** A paragraph names its source when it holds a year, a standard, or the mark of a number without one. */
const CITES = /\b(1[89]\d\d|20[0-2]\d)\b|WMO-No|ISO \d|from memory|no source|[Aa]ssum|calibrat/;

interface Entry {
  readonly name: string;
  readonly summary: string;
  readonly sources: readonly string[];
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replace(/\s+/g, ' ').trim();
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return [head, head.map(() => '---'), ...rows].map((row) => `| ${row.map(cell).join(' | ')} |`).join('\n');
}

/** Paragraphs of a doc comment, without the braces of its links and without its tags. */
function paragraphs(comment: string): string[] {
  return (comment.split(/(?:^|\s)@(?=internal|param|returns|throws|example)/)[0] ?? '')
    .replace(/\{@link (\S+?)\}/g, '`$1`')
    .split(/\n\s*\n/)
    .map((paragraph) => paragraph.replace(/\s+/g, ' ').trim())
    .filter((paragraph) => paragraph !== '');
}

function isExported(node: ts.Node): boolean {
  return (
    ts.canHaveModifiers(node) &&
    (ts.getModifiers(node) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
  );
}

function entriesOf(path: string): Entry[] {
  const text = readFileSync(path, 'utf8');
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  return file.statements.filter(isExported).flatMap((node): Entry[] => {
    const name = ts.isFunctionDeclaration(node)
      ? `${node.name?.text}()`
      : ts.isVariableStatement(node)
        ? node.declarationList.declarations[0]?.name.getText()
        : undefined;
    const comment = ts.getJSDocCommentsAndTags(node).find(ts.isJSDoc);
    const raw = comment === undefined ? undefined : ts.getTextOfJSDocComment(comment.comment);
    if (name === undefined || raw === undefined) return [];
    const [summary = '', ...rest] = paragraphs(raw);
    const sources = rest.filter((paragraph) => CITES.test(paragraph));
    return sources.length === 0 && !CITES.test(summary) ? [] : [{ name, summary, sources }];
  });
}

function filesOf(room: string): string[] {
  return readdirSync(join(src, room), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.includes('generated'))
    .sort();
}

function room([name, title]: (typeof ROOMS)[number]): string {
  const rows = filesOf(name).flatMap((file) =>
    entriesOf(join(src, name, file)).map(({ name: what, summary, sources }) => [
      `\`${what}\``,
      summary,
      sources.join(' ') || 'in the description',
      `src/${name}/${file}`,
    ]),
  );
  return rows.length === 0
    ? ''
    : `### ${title}\n\n${table(['name', 'computes', 'source, as the code states it', 'file'], rows)}`;
}

function cite(source: Source): string {
  const { authors, year, work, locus, doi } = source;
  return [`${authors} (${year})`, work, locus, doi && `doi ${doi}`]
    .filter((part) => part !== undefined && part !== '')
    .join(', ');
}

function sourced(rows: readonly (readonly [string, string, Source])[]): string {
  return table(
    ['what', 'in words', 'source', 'confidence', 'note'],
    rows.map(([name, words, source]) => [name, words, cite(source), source.confidence, source.note ?? '']),
  );
}

const fittedModernPath = join(src, 'aerodynamics', 'fitted-modern.ts');

/** The doc comment of a function or interface of a file, and of each member of an interface. */
function commentsOf(
  path: string,
  name: string,
): { readonly own: string; readonly members: [string, string][] } {
  const file = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  const textOf = (node: ts.Node): string => {
    const comment = ts.getJSDocCommentsAndTags(node).find(ts.isJSDoc);
    return paragraphs((comment && ts.getTextOfJSDocComment(comment.comment)) ?? '').join(' ');
  };
  const found = file.statements.find(
    (node) => (ts.isFunctionDeclaration(node) || ts.isInterfaceDeclaration(node)) && node.name?.text === name,
  );
  if (found === undefined) throw new Error(`no ${name} in ${path}`);
  const members = ts.isInterfaceDeclaration(found) ? found.members : [];
  return { own: textOf(found), members: members.map((node) => [node.name?.getText() ?? '', textOf(node)]) };
}

/** The law of the default ball with its constants, and how far the sources leave its carry open. */
function defaultBall(): string[] {
  const constants: Readonly<Record<string, number>> = { ...fittedModernConstants };
  const { members } = commentsOf(fittedModernPath, 'FittedModernConstants');
  return [
    '## The default ball',
    commentsOf(fittedModernPath, 'fittedLift').own,
    commentsOf(fittedModernPath, 'fittedDrag').own,
    'S is r ω / U with the spin across the air, Re is ρ U 2r / μ.',
    table(
      ['constant', 'value', 'what it is'],
      members.map(([name, what]) => [`\`${name}\``, String(constants[name]), what]),
    ),
    'How far the sources leave its carry open: standard error, in per cent of the carry, from leaving out one source at a\n' +
      'time (`npm run refit`). `flight.carryBand` is this share of the carry, straight between the nodes; beyond them it is left out.',
    table(
      ['ball speed', ...BAND_SPIN_RATIOS.map((spinRatio) => `S ${spinRatio}`)],
      BAND_SHARES.map((shares, i) => [
        `${BAND_SPEEDS[i]} m/s`,
        ...shares.map((share) => (100 * share).toFixed(1)),
      ]),
    ),
  ];
}

const percent = (value: number): string => value.toFixed(3);
const head = (name: string, club: Clubhead): readonly [string, string, Source] => [
  `\`clubheads.${name}\``,
  `${club.name}: ${(club.mass * 1000).toFixed(0)} g, loft ${((club.staticLoft * 180) / Math.PI).toFixed(1)}°, restitution ${percent(club.restitution.atReference)}`,
  club.source,
];

function bounceWords({ bounce }: Turf): string {
  const tilt = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)}°`;
  return bounce.model === 'biber-2023'
    ? `${bounce.model}: tilt ${tilt(bounce.tilt)}, restitution ${bounce.restitution}, friction ${bounce.friction}`
    : `${bounce.model}: tilt × ${bounce.tiltScale}, at most ${tilt(bounce.tiltCap)}, restitution × ${bounce.restitutionScale}, friction ${bounce.friction}`;
}

/** Renders docs/models.md. */
export function renderModelsPage(): string {
  const aerodynamics = Object.values(aerodynamicModels);
  return `${[
    '# What is computed, and from where',
    'Generated by `npm run docs:models` from the code: from the `source` of every record and from the doc comments of what the\n' +
      'rooms export. Do not edit; a test fails when it is stale. Confidence is one of: published (read in the cited work),\n' +
      'second-hand, from memory (recalled, not looked up), derived, fitted (by a script in this repository), assumption, or common\n' +
      'practice without a source. How the results compare with the outside is in [validation.md](validation.md).',
    '## Coefficient models of the ball',
    `The default is \`${aerodynamics[0]?.id}\`.`,
    sourced(aerodynamics.map((model) => [`\`${model.id}\``, model.label, model.source])),
    'Ranges with data, and what happens outside them (a warning goes with every result that left its range):',
    table(
      ['model', 'ball', 'Reynolds number', 'spin ratio', 'outside'],
      aerodynamics.map(({ id, validity, extrapolation }) => [
        `\`${id}\``,
        presentDayModels.some((present) => present === id) ? 'present-day' : 'of its time',
        `${validity.reynolds.min}–${validity.reynolds.max}`,
        `${validity.spinRatio.min.toPrecision(2)}–${validity.spinRatio.max.toPrecision(2)}`,
        extrapolation,
      ]),
    ),
    '`flyEnsemble` flies a launch by each model of a present-day ball and gives the spread of those whose range it keeps to.',
    ...defaultBall(),
    '## Ball, heads and turf',
    sourced([
      [
        '`balls.conforming`',
        `${(balls.conforming.mass * 1000).toFixed(2)} g, ${(balls.conforming.radius * 2000).toFixed(2)} mm`,
        balls.conforming.source,
      ],
      ...Object.entries(clubheads).map(([name, club]) => head(name, club)),
      ...Object.entries(turfs).map(([name, turf]): readonly [string, string, Source] => [
        `\`turfs.${name}\``,
        `${bounceWords(turf)}, rolling ${turf.rollingResistance}`,
        turf.source,
      ]),
    ]),
    '## Formulae and methods',
    ...ROOMS.map(room).filter((text) => text !== ''),
  ].join('\n\n')}\n`;
}
