import { type GolferSkill, strokesOptionFields } from '../dispersion/expected-strokes.js';
import { type Hole, holeField } from '../dispersion/hole.js';
import { choice, count, type Declared, optional, partial, record } from '../inputs/field.js';
import type { FlightOptions } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions } from '../inputs/read.js';
import { type ReadingErrors, readingErrorFields } from '../inputs/readings.js';
import { seedField } from '../inputs/seed.js';
import type { MaximisedDistance } from '../optimum/index.js';
import { type ShotOptions, type ShotSettings, shotOptionFields, shotSettings } from '../shot/shot-options.js';
import { defaultReadingErrors } from '../strike/measurement.js';
import { millimetres } from '../units/index.js';
import { levelField, USUAL_LEVEL } from './level.js';

/** Tolerance of the flights unless another is asked for: gains are counted in yards. */
const COARSE: FlightOptions = /* @__PURE__ */ frozen(() => ({ tolerance: millimetres(10) }));

/** Options of `rankChanges`; flights are computed to 10 mm unless `tolerance` says otherwise. */
export interface RankOptions extends ShotOptions {
  /** The distance that is judged; default carry. The other one must not suffer. */
  readonly maximise?: MaximisedDistance;
  /** A hole: with it strokes are counted too, and less scatter is among the changes. */
  readonly hole?: Hole;
  /** Whose strokes; default `professional`. */
  readonly skill?: GolferSkill;
  /** Standard deviations of the readings, taken as common to all shots; defaults as in `defaultReadingErrors`. */
  readonly readingErrors?: Partial<ReadingErrors>;
  /** Coverage of the intervals, 0.5 to 0.999; default 0.95. */
  readonly level?: number;
  /** Players drawn who could have hit these shots, 100 to 100,000; default 300. */
  readonly draws?: number;
  /** Seed of the draws, a whole number, 0 to 2⁵³ − 1; default 0. */
  readonly seed?: number;
}

/** Declaration of {@link RankOptions}. @internal */
export const rankOptionFields: Declared<RankOptions> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  maximise: optional(choice<MaximisedDistance>(['carry', 'total'], 'what to maximise')),
  hole: optional(holeField),
  skill: strokesOptionFields.skill,
  readingErrors: optional(record(partial(readingErrorFields), 'reading errors')),
  level: optional(levelField),
  draws: optional(count(100, 100_000, 300, 'players drawn')),
  seed: optional(seedField),
}));

/** {@link RankOptions} with their defaults filled in. @internal */
export interface RankSettings {
  readonly maximise: MaximisedDistance;
  readonly hole: Hole | undefined;
  readonly skill: GolferSkill;
  readonly errors: ReadingErrors;
  readonly level: number;
  readonly draws: number;
  readonly seed: number;
  readonly shot: ShotSettings;
}

/** Reads the options of `rankChanges`. @throws FairflightError naming the field @internal */
export function readRankOptions(options: unknown): RankSettings {
  const {
    maximise = 'carry',
    hole,
    skill,
    readingErrors,
    level = USUAL_LEVEL,
    draws = 300,
    seed = 0,
    ...shot
  } = readOptions(rankOptionFields, options as RankOptions);
  return {
    maximise,
    hole,
    skill: skill ?? 'professional',
    errors: { ...defaultReadingErrors, ...readingErrors },
    level,
    draws,
    seed,
    shot: shotSettings({ ...COARSE, ...shot }),
  };
}
