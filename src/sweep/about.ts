import type { AerodynamicModel } from '../aerodynamics/index.js';
import { modelAsData } from '../aerodynamics/resolve.js';
import { defaultAir } from '../air/index.js';
import { conformingBall } from '../ball/index.js';
import { clubheads } from '../clubhead/index.js';
import { flightDefaults } from '../flight/index.js';
import { STRIKE_MODEL } from '../strike/warnings.js';
import { RUN_MODEL } from '../turf/run-out.js';
import { VERSION } from '../version.js';
import { sweepFactors } from './factors.js';
import { OUTPUTS, type OutputName } from './outputs.js';
import type { DesignPoints } from './points.js';
import type { SweepSetup } from './setup.js';
import { rowStatuses } from './status.js';

/** A column of a sweep. */
export interface ColumnAbout {
  /** Name of the factor or the output. */
  readonly name: string;
  /** SI unit; empty for a ratio. */
  readonly unit: string;
  /** Whether it was put in or computed. */
  readonly role: 'input' | 'output';
}

/** What a paper needs to cite a sweep and a program to repeat it. Plain data, also written into files. */
export interface SweepAbout {
  /** Name of this library. */
  readonly library: 'fairflight';
  /** Its version. */
  readonly version: string;
  /** Rows of the whole sweep. */
  readonly rows: number;
  /** The columns in their order. */
  readonly columns: readonly ColumnAbout[];
  /** Names of the codes in the status column. */
  readonly statuses: readonly string[];
  /** The design; a list is told by its factors, size and a checksum of its values. */
  readonly design: Readonly<Record<string, unknown>>;
  /** Seed of the design; absent where nothing is random. */
  readonly seed?: number;
  /** What flew the balls: `JavaScript`, or the name of the batch kernel. The two may differ in the last digits. */
  readonly engine: string;
  /** Ids of the models. */
  readonly models: { readonly aerodynamics: string; readonly strike?: string; readonly run: string };
  /** Where the coefficient model comes from. */
  readonly source: { readonly authors: string; readonly year: number; readonly work: string };
  /** The setup with its defaults filled in; a coefficient model made of functions is told by its id. */
  readonly setup: Readonly<Record<string, unknown>>;
}

/** @internal */
export function sweepAbout(
  points: DesignPoints,
  outputs: readonly OutputName[],
  setup: SweepSetup,
  model: AerodynamicModel,
  struck: boolean,
  engine: string,
): SweepAbout {
  const { authors, year, work } = model.source;
  const { scene = {}, from, fixed } = setup;
  const flight = { ...flightDefaults, ...setup.flight };
  const about: SweepAbout = {
    library: 'fairflight',
    version: VERSION,
    rows: points.rows,
    columns: [
      ...points.names.map((name) => ({ name, unit: sweepFactors[name].unit, role: 'input' as const })),
      ...outputs.map((name) => ({ name, unit: OUTPUTS[name].unit, role: 'output' as const })),
    ],
    statuses: rowStatuses,
    design: points.about,
    ...(points.seed !== undefined && { seed: points.seed }),
    engine,
    models: {
      aerodynamics: model.id,
      ...(struck && { strike: STRIKE_MODEL }),
      run: RUN_MODEL,
    },
    source: { authors, year, work },
    setup: {
      ...(from && { from }),
      ...(fixed && { fixed }),
      ...(struck && { clubhead: setup.clubhead ?? clubheads.driver }),
      scene: {
        air: defaultAir,
        turf: 'normal',
        ball: conformingBall,
        ...scene,
        aerodynamics: modelAsData(scene.aerodynamics) ?? model.id,
      },
      flight,
    },
  };
  // Through JSON, so that it is the same before and after a trip to a file or a worker.
  return JSON.parse(JSON.stringify(about)) as SweepAbout;
}
