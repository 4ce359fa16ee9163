import type { ConditionArrays, LaunchArrays } from '../flight/fly-many.js';
import { memberPath, refusal } from '../inputs/refuse.js';
import type { SobolScramble } from '../numerics/sobol.js';
import type { Design } from '../sweep/design.js';
import type { FactorName } from '../sweep/factors.js';
import { gatherInputs } from '../sweep/inputs.js';
import { designPoints } from '../sweep/points.js';
import { isNormal } from '../sweep/random-factors.js';
import { readDesign } from '../sweep/read-design.js';
import type { Source, Sources } from './scene-numbers.js';
import type { SummaryAsked } from './summary-options.js';
import { INPUTS, type InputName } from './wgsl/problem.js';

/** Factors of a sweep that a card takes, and the input each is. */
const FACTORS: Readonly<Record<string, InputName>> = {
  ...Object.fromEntries(INPUTS.slice(0, 6).map((name) => [`launch.${name}`, name])),
  'air.density': 'airDensity',
  'air.viscosity': 'airViscosity',
  'wind.along': 'windAlong',
  'wind.across': 'windAcross',
  'ground.elevation': 'elevation',
  'aerodynamics.dragScale': 'dragScale',
  'aerodynamics.liftScale': 'liftScale',
  'aerodynamics.spinDecay': 'spinDecay',
};

/** A design whose points a card draws. @internal */
export interface Drawing {
  readonly rows: number;
  readonly dimensions: number;
  readonly seed: number;
  readonly scramble: SobolScramble;
  readonly sources: Sources;
  /** The same points on the processor, as columns. */
  readonly columns: (rows: readonly number[]) => {
    readonly launches: Partial<LaunchArrays>;
    readonly conditions: ConditionArrays;
  };
}

/**
 * Reads a design for a card.
 * @throws FairflightError `unsupported` for one the card does not draw
 * @internal
 */
export function readDrawing(value: Design, { setup }: SummaryAsked): Drawing {
  const design = readDesign(value);
  if (design.kind !== 'sobol') {
    throw refusal(
      'design.kind',
      `a graphics card draws a sobol design, not a ${design.kind} one`,
      { value: design.kind, hint: 'sweep computes it on the processor' },
      'unsupported',
    );
  }
  const points = designPoints(design);
  const { find } = gatherInputs(points.names, design.kind, setup);
  design.factors.forEach((factor, j) => {
    if (isNormal(factor)) throw refuseFactor(`design.factors[${j}]`, factor.names.join(', '));
    if (FACTORS[factor.name] === undefined) throw refuseFactor(`design.factors[${j}].name`, factor.name);
  });
  for (const name of Object.keys(setup.fixed)) {
    if (FACTORS[name] === undefined) throw refuseFactor(memberPath('options.fixed', name), name);
  }
  const sources: { [Name in InputName]?: Source } = {};
  for (const [name, input] of Object.entries(FACTORS)) {
    const found = find(name as FactorName);
    if (found === undefined) continue;
    const factor = design.factors[found.column];
    if (factor === undefined || isNormal(factor)) sources[input] = { kind: 'fixed', value: found.constant };
    else
      sources[input] = {
        kind: 'drawn',
        dimension: found.column,
        from: factor.from,
        width: factor.to - factor.from,
      };
  }
  const { scramble = 'owen', seed = 0 } = design;
  return {
    rows: points.rows,
    dimensions: points.names.length,
    seed,
    scramble,
    sources,
    columns: (rows) => columnsOf(points, sources, rows),
  };
}

function columnsOf(
  points: ReturnType<typeof designPoints>,
  sources: Sources,
  rows: readonly number[],
): ReturnType<Drawing['columns']> {
  const drawn = points.names.map(() => new Float64Array(rows.length));
  const one = points.names.map(() => new Float64Array(1));
  rows.forEach((row, i) => {
    points.fill(row, 1, one);
    one.forEach((column, j) => {
      (drawn[j] as Float64Array)[i] = column[0] as number;
    });
  });
  const entries = INPUTS.flatMap((name): [InputName, Float64Array][] => {
    const source = sources[name];
    if (source === undefined) return [];
    if (source.kind === 'drawn') return [[name, drawn[source.dimension] as Float64Array]];
    return [[name, new Float64Array(rows.length).fill(source.kind === 'fixed' ? source.value : 0)]];
  });
  const isLaunch = ([name]: [InputName, Float64Array]): boolean => INPUTS.indexOf(name) < 6;
  return {
    launches: Object.fromEntries(entries.filter(isLaunch)),
    conditions: Object.fromEntries(entries.filter((entry) => !isLaunch(entry))),
  };
}

function refuseFactor(path: string, name: string): Error {
  return refusal(
    path,
    `a graphics card does not take ${name}; it takes ${Object.keys(FACTORS).join(', ')}, each over a range`,
    { value: name, hint: 'sweep computes it on the processor' },
    'unsupported',
  );
}
