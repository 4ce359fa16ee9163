import { type FlightSettings, settingsOf } from '../flight/fly.js';
import { count, type Declared, optional, type RecordField, record } from '../inputs/field.js';
import { type FlightOptions, flightOptionFields } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import { seedField } from '../inputs/seed.js';
import { type Scene, sceneFields } from '../scene/scene.js';
import { levelField, USUAL_LEVEL } from './level.js';

/** The two groups of shots of `attributeChange`. */
export interface ShotGroups {
  /** First group. */
  readonly before: readonly MeasuredShot[];
  /** Second group. */
  readonly after: readonly MeasuredShot[];
}

/** Air and wind that a group of shots was measured in. */
export type GroupConditions = Pick<Scene, 'air' | 'wind'>;

/** Options of `attributeChange`. */
export interface AttributionOptions extends FlightOptions {
  /** Air and wind of either group, where they are not those of the scene. */
  readonly conditions?: { readonly before?: GroupConditions; readonly after?: GroupConditions };
  /** Coverage of the intervals, 0.5 to 0.999; default 0.95. */
  readonly level?: number;
  /** Bootstrap resamples, 100 to 1,000,000; default 2,000. */
  readonly resamples?: number;
  /** Seed of the bootstrap, a whole number, 0 to 2⁵³ − 1; default 0. */
  readonly seed?: number;
  /** Most pairs of shots flown in every mixture, 1 to 1,000,000; default 200. More pairs cost time and buy little. */
  readonly pairs?: number;
}

const conditionsField: RecordField = /* @__PURE__ */ frozen(() => {
  const group: Declared<GroupConditions> = { air: sceneFields.air, wind: sceneFields.wind };
  const fields: Declared<Required<AttributionOptions>['conditions']> = {
    before: optional(record(group, 'air and wind of the first group')),
    after: optional(record(group, 'air and wind of the second group')),
  };
  return record(fields, 'air and wind of the groups');
});

/** Declaration of {@link AttributionOptions}. @internal */
export const attributionFields: Declared<AttributionOptions> = /* @__PURE__ */ frozen(() => ({
  ...flightOptionFields,
  conditions: optional(conditionsField),
  level: optional(levelField),
  resamples: optional(count(100, 1_000_000, 2000, 'bootstrap resamples')),
  seed: optional(seedField),
  pairs: optional(count(1, 1_000_000, 200, 'pairs of shots')),
}));

/** How a change is attributed, with the defaults filled in. @internal */
export interface AttributionSettings {
  readonly level: number;
  readonly resamples: number;
  readonly seed: number;
  readonly pairs: number;
  readonly flight: FlightSettings;
}

/** Fills in the defaults of options already read. @internal */
export function attributionSettings(options: Omit<AttributionOptions, 'conditions'>): AttributionSettings {
  const { level = USUAL_LEVEL, resamples = 2000, seed = 0, pairs = 200 } = options;
  return { level, resamples, seed, pairs, flight: settingsOf(options) };
}
