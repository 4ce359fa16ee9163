import { gripLevel } from '../clubhead/grip-level.js';
import type { ClubheadName } from '../clubhead/index.js';
import { clubheads } from '../clubhead/index.js';
import { clubheadField } from '../clubhead/presets.js';
import { type FlightSettings, settingsOf } from '../flight/fly.js';
import type { Clubhead } from '../inputs/clubhead.js';
import { handField, type PlayerHand, strikeOffsetFields } from '../inputs/delivery.js';
import {
  choice,
  type Declared,
  type ListField,
  optional,
  partial,
  type QuantityField,
  quantity,
  record,
} from '../inputs/field.js';
import { type FlightOptions, flightOptionFields } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import { type NormalPrior, priorField } from '../inputs/prior.js';
import { readOptions } from '../inputs/read.js';
import {
  type FlightReadingErrors,
  flightReadingErrorFields,
  type ReadingErrors,
  readingErrorFields,
} from '../inputs/readings.js';
import { refusal } from '../inputs/refuse.js';
import { defaultReadingErrors } from '../strike/measurement.js';
import { RATIO } from '../units/unit.js';
import { defaultFlightReadingErrors } from './calibrate-flight.js';
import type { CalibrationTarget } from './calibration.js';

/** What has a prior in a calibration: the values themselves, and where on the face the strikes are. */
export type CalibrationPriors = { readonly [K in CalibrationTarget | 'toe' | 'high']: NormalPrior };

/** Options of `calibrate`. */
export interface CalibrationOptions extends FlightOptions {
  /** What to fit; default all four. What the shots cannot be asked is listed in `notFitted`, and stays as it was. */
  readonly what?: readonly CalibrationTarget[];
  /** The head the shots were hit with, or the name of a preset; default the generic driver. */
  readonly clubhead?: Clubhead | ClubheadName;
  /** Which way round the player stands; default what the first shot with a hand says, else right. */
  readonly hand?: PlayerHand;
  /** Standard deviations of the readings of club and ball; defaults as in `defaultReadingErrors`. */
  readonly readingErrors?: Partial<ReadingErrors>;
  /** Standard deviations of the readings of the flight; default carry 1.5 %, apex 3 %, descent 1°. */
  readonly flightErrors?: Partial<FlightReadingErrors>;
  /**
   * Priors. Defaults, all assumptions: restitution and tangential restitution those of the head ± 0.02 and ± 0.1, drag
   * and lift scale 1 ± 0.1 and 1 ± 0.15. Strikes over the face: 0 ± 15 mm and 0 ± 10 mm for one in ten, taken as wild;
   * the spread of the rest is learnt from ten or more located strikes, else it is the same. Giving `toe` or `high` turns
   * the learning off.
   */
  readonly priors?: Partial<CalibrationPriors>;
}

/** What can be fitted, and the bounds of the estimates: what heads and balls in use can be. @internal */
export const targetFields: Readonly<Record<CalibrationTarget, QuantityField<''>>> = /* @__PURE__ */ frozen(
  () => ({
    restitution: quantity(RATIO, 0.6, 0.9, 0.83, 'restitution'),
    tangentialRestitution: quantity(RATIO, -0.7, 0.7, -0.2, 'tangential restitution'),
    dragScale: quantity(RATIO, 0.6, 1.6, 1, 'drag scale'),
    liftScale: quantity(RATIO, 0.4, 2, 1, 'lift scale'),
  }),
);

/** Widest standard deviation of a prior [SI]: as good as none. */
const WIDEST = 10;

/** Declaration of the {@link CalibrationPriors} given. @internal */
export const calibrationPriorFields: Declared<Partial<CalibrationPriors>> = /* @__PURE__ */ frozen(() => ({
  restitution: optional(priorField(targetFields.restitution, WIDEST)),
  tangentialRestitution: optional(priorField(targetFields.tangentialRestitution, WIDEST)),
  dragScale: optional(priorField(targetFields.dragScale, WIDEST)),
  liftScale: optional(priorField(targetFields.liftScale, WIDEST)),
  toe: optional(priorField(strikeOffsetFields.toe, WIDEST)),
  high: optional(priorField(strikeOffsetFields.high, WIDEST)),
}));

const TARGETS: readonly CalibrationTarget[] = [
  'restitution',
  'tangentialRestitution',
  'dragScale',
  'liftScale',
];

const whatField: ListField = /* @__PURE__ */ frozen(() => ({
  kind: 'list',
  of: choice(TARGETS, 'value to fit'),
  least: 1,
  most: TARGETS.length,
  label: 'what to fit',
}));

/** Declaration of {@link CalibrationOptions}. @internal */
export const calibrationOptionFields: Declared<CalibrationOptions> = /* @__PURE__ */ frozen(() => ({
  ...flightOptionFields,
  what: optional(whatField),
  clubhead: optional(clubheadField),
  hand: optional(handField),
  readingErrors: optional(record(partial(readingErrorFields), 'reading errors')),
  flightErrors: optional(record(partial(flightReadingErrorFields), 'flight errors')),
  priors: optional(record(calibrationPriorFields, 'priors')),
}));

/** {@link CalibrationOptions} with their defaults filled in. @internal */
export interface CalibrationSettings {
  readonly what: readonly CalibrationTarget[];
  readonly clubhead: Clubhead;
  readonly hand: PlayerHand;
  readonly readingErrors: ReadingErrors;
  readonly flightErrors: FlightReadingErrors;
  readonly priors: CalibrationPriors;
  /** Whether the pattern of the player's strikes is learnt. */
  readonly learn: boolean;
  readonly flight: FlightSettings;
}

/** Reads the options of `calibrate`. @throws FairflightError naming the field @internal */
export function resolveCalibration(options: unknown, shots: readonly MeasuredShot[]): CalibrationSettings {
  const given = readOptions(calibrationOptionFields, options);
  const { what = TARGETS, readingErrors, flightErrors, priors } = given;
  if (new Set(what).size < what.length) {
    throw refusal('options.what', 'options.what must not list a value twice', { value: what });
  }
  // Reading has put the record in the place of a preset's name.
  const clubhead = (given.clubhead as Clubhead | undefined) ?? clubheads.driver;
  return {
    what,
    clubhead,
    hand: given.hand ?? shots.find(({ hand }) => hand !== undefined)?.hand ?? 'right',
    readingErrors: { ...defaultReadingErrors, ...readingErrors },
    flightErrors: { ...defaultFlightReadingErrors, ...flightErrors },
    priors: { ...usualPriors(clubhead), ...priors },
    learn: priors?.toe === undefined && priors?.high === undefined,
    flight: settingsOf(given),
  };
}

function usualPriors(head: Clubhead): CalibrationPriors {
  return {
    restitution: { mean: head.restitution.atReference, standardDeviation: 0.02 },
    tangentialRestitution: { mean: gripLevel(head.tangentialRestitution), standardDeviation: 0.1 },
    dragScale: { mean: 1, standardDeviation: 0.1 },
    liftScale: { mean: 1, standardDeviation: 0.15 },
    toe: { mean: 0, standardDeviation: 0.015 },
    high: { mean: 0, standardDeviation: 0.01 },
  };
}
