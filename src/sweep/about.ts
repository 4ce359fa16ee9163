import type { ModelChoice } from '../aerodynamics/index.js';
import { type ModelNumbers, modelNumbers } from '../aerodynamics/probe.js';
import { modelAsData } from '../aerodynamics/resolve.js';
import { resolveModel } from '../aerodynamics/resolve-model.js';
import { choice, type Declared, type ListField, record, text } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type ReadScene, withDefaults } from '../scene/scene.js';
import { STRIKE_MODEL } from '../strike/warnings.js';
import { turfOf } from '../turf/presets.js';
import { VERSION } from '../version.js';
import { rowWarnings } from '../warnings/bits.js';
import { columnName } from './column-name.js';
import { factorFields } from './factors.js';
import { OUTPUTS, type OutputName } from './outputs.js';
import type { DesignPoints } from './points.js';
import type { RowRange } from './row-range.js';
import type { SweepSetup } from './setup.js';
import { rowStatuses } from './status.js';

/** A column of a sweep. */
export interface ColumnAbout {
  /** Name of the factor or the output. */
  readonly name: string;
  /** Its name in files: in snake case, with the unit, as `launch_ball_speed_m_per_s`. */
  readonly column: string;
  /** SI unit; empty for a ratio. */
  readonly unit: string;
  /** Whether it was put in or computed. */
  readonly role: 'input' | 'output';
}

/** Declaration of the columns of a sweep. @internal */
export const columnsField: ListField = /* @__PURE__ */ frozen(() => {
  const fields: Declared<ColumnAbout> = {
    name: text('carry', 'name'),
    column: text('carry_m', 'name in files'),
    unit: text('m', 'unit'),
    role: choice(['input', 'output'], 'role'),
  };
  return { kind: 'list', of: record(fields, 'column'), least: 1, most: 1000, label: 'columns' };
});

/** What a paper needs to cite a sweep and a program to repeat it. Plain data, also written into files. */
export interface SweepAbout {
  /** Name of this library. */
  readonly library: 'fairflight';
  /** Its version. */
  readonly version: string;
  /** Rows of the whole sweep. */
  readonly rows: number;
  /** Which rows of the design they are, where they are not all. */
  readonly part?: RowRange & { readonly of: number };
  /** The columns in their order. */
  readonly columns: readonly ColumnAbout[];
  /** Names of the codes in the status column. */
  readonly statuses: readonly string[];
  /** Codes of the warnings that are counted: the k-th is 2ᵏ in the column `warnings`, where that was asked for. */
  readonly warnings: readonly string[];
  /** The design; a list is told by its factors, size and a checksum of its values. */
  readonly design: Readonly<Record<string, unknown>>;
  /** Seed of the design; absent where nothing is random. */
  readonly seed?: number;
  /** What flew the balls: `JavaScript`, or the name of the batch kernel. The two may differ in the last digits. */
  readonly engine: string;
  /** Ids of the models. */
  readonly models: { readonly aerodynamics: string; readonly strike?: string; readonly run: string };
  /** Drag and lift of the coefficient model on a small grid, and a checksum that tells models apart that have one id. */
  readonly coefficients: ModelNumbers;
  /** Where the coefficient model comes from. */
  readonly source: { readonly authors: string; readonly year: number; readonly work: string };
  /**
   * Scene and options with their defaults filled in, every number of head, ball, turf and air; a coefficient model made of
   * functions is told by its id.
   */
  readonly setup: Readonly<Record<string, unknown>>;
}

/** What a sweep turned out to be. @internal */
export interface SweepParts {
  readonly points: DesignPoints;
  readonly rows: number;
  readonly outputs: readonly OutputName[];
  readonly setup: SweepSetup;
  readonly scene: ReadScene;
  readonly struck: boolean;
  readonly engine: string;
}

/** @internal */
export function sweepAbout(parts: SweepParts, aerodynamics: ModelChoice | undefined): SweepAbout {
  const { points, rows, outputs, setup, scene, struck, engine } = parts;
  const { start, fixed, settings } = setup;
  const { clubhead, ...flight } = settings;
  const { wind, ground } = scene;
  const { model, air, ball } = withDefaults(scene);
  const turf = turfOf(scene.turf);
  const { authors, year, work } = resolveModel(aerodynamics).source;
  const about: SweepAbout = {
    library: 'fairflight',
    version: VERSION,
    rows,
    ...(setup.rows && { part: { ...setup.rows, of: points.rows } }),
    columns: [
      ...points.names.map((name) => columnAbout(name, factorFields[name].si, 'input')),
      ...outputs.map((name) => columnAbout(name, OUTPUTS[name].unit, 'output')),
      ...(setup.warnings === 'column' ? [columnAbout('warnings', '', 'output')] : []),
    ],
    statuses: rowStatuses,
    warnings: rowWarnings,
    design: points.about,
    ...(points.seed !== undefined && { seed: points.seed }),
    engine,
    models: {
      aerodynamics: model.id,
      ...(struck && { strike: STRIKE_MODEL }),
      run: turf.bounce.model,
    },
    coefficients: modelNumbers(model),
    source: { authors, year, work },
    setup: {
      ...(start && { from: start.delivery ?? start.launch }),
      fixed,
      ...(struck && { clubhead }),
      scene: { air, wind, ground, turf, ball, aerodynamics: modelAsData(aerodynamics) ?? model.id },
      flight,
    },
  };
  // Through JSON, so that it is the same before and after a trip to a file or a worker.
  return JSON.parse(JSON.stringify(about)) as SweepAbout;
}

function columnAbout(name: string, unit: string, role: ColumnAbout['role']): ColumnAbout {
  return { name, column: columnName(name, unit), unit, role };
}
