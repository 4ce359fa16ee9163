import { choice, type Declared, optional, quantity, record, text } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions, readRecord } from '../inputs/read.js';
import type { ValidRange } from '../source.js';
import {
  CELSIUS,
  DEGREES,
  FAHRENHEIT,
  inUnit,
  METRES,
  METRES_PER_SECOND,
  MILLIMETRES,
  MPH,
  RATIO,
  type Unit,
  YARDS,
} from '../units/unit.js';
import type { ModelWarning, Severity, WarningCode } from './warning.js';

/** Units a sentence speaks in: `yards` with mph and feet, or `metres` with metres per second. */
export type SpokenUnits = 'yards' | 'metres';

/** Options of {@link warningText}. */
export interface WarningTextOptions {
  /** Units of the sentence; default yards. */
  readonly units?: SpokenUnits;
}

/** Declaration of {@link WarningTextOptions}. @internal */
export const warningTextOptionFields: Declared<WarningTextOptions> = /* @__PURE__ */ frozen(() => ({
  units: optional(choice<SpokenUnits>(['yards', 'metres'], 'units of the sentence')),
}));

type Say = (warning: ModelWarning, units: SpokenUnits) => string;

const speedUnit = (units: SpokenUnits): Unit => (units === 'yards' ? MPH : METRES_PER_SECOND);

const SENTENCES: Readonly<Record<WarningCode, Say>> = {
  'reynolds-outside-data': ({ value, range, model, effect }, units) =>
    `The Reynolds number reached ${value.toFixed(0)}; ${model} has data from ${range.min.toFixed(0)} to ${range.max.toFixed(0)}, so drag and lift are extrapolated there${onCarry(effect, units)}.`,
  'spin-ratio-outside-data': ({ value, range, model, effect }, units) =>
    `The spin ratio reached ${value.toFixed(3)}; ${model} has data from ${range.min} to ${range.max}, so drag and lift are extrapolated there${onCarry(effect, units)}.`,
  'still-in-the-air': ({ value }) =>
    `The ball was still in the air after ${value.toFixed(1)} s; the figures describe that moment, not a landing.`,
  'never-above-ground': () =>
    'The ball never came above the ground; the figures describe the moment it was nearest to it.',
  topped: () =>
    'A topped shot: the ball was launched along the ground or into it and never flew; how far it runs is not modelled.',
  'club-speed-outside-data': (warning, units) =>
    `A club speed of ${told(warning, speedUnit(units), 0)} the restitution of a head was calibrated on; its slope with speed is extrapolated.`,
  'spin-loft-outside-data': (warning) =>
    `A spin loft of ${told(warning, DEGREES, 0)} the grip of this head was calibrated on; take the spin rate as a rough figure.`,
  'strike-beyond-face-map': ({ value, range }) =>
    `The strike is ${inUnit(MILLIMETRES, value).toFixed(0)} mm from the face centre; restitution is known to ${inUnit(MILLIMETRES, range.max).toFixed(0)} mm and held beyond.`,
  'ball-temperature-outside-data': (warning, units) =>
    `A ball at ${told(warning, units === 'yards' ? FAHRENHEIT : CELSIUS, 0)} of the trade figures behind its effect on ball speed, which is extrapolated.`,
  'landing-speed-outside-data': (warning, units) =>
    `A landing speed of ${told(warning, speedUnit(units), 0)} the bounce was measured at; the run is extrapolated.`,
  'descent-outside-data': (warning) =>
    `A descent to the ground of ${told(warning, DEGREES, 0)} the bounce was measured at; the run is extrapolated.`,
  'flatter-than-asked': ({ value, range }) =>
    `No flight in the range searched comes down at ${inUnit(DEGREES, range.min).toFixed(0)}° or more; this is the steepest, ${inUnit(DEGREES, value).toFixed(1)}°.`,
};

/** Declaration of {@link ModelWarning}. @internal */
export const warningFields: Declared<ModelWarning> = /* @__PURE__ */ frozen(() => {
  const any = quantity(RATIO, -1e300, 1e300, 0.7, 'value of a warning');
  return {
    code: choice(Object.keys(SENTENCES) as WarningCode[], 'code of a warning'),
    severity: choice<Severity>(['note', 'caution'], 'severity'),
    model: text('fitted-modern', 'id of the model'),
    quantity: text('spinRatio', 'quantity'),
    range: record<ValidRange>({ min: any, max: any }, 'published range'),
    value: any,
    effect: optional(
      record<Required<ModelWarning>['effect']>(
        { carry: optional(quantity(METRES, 0, 1000, 2, 'change of carry')) },
        'what it may change',
      ),
    ),
  };
});

/** `; the carry is good to about ±4 yd`, where that can be told. */
function onCarry(effect: ModelWarning['effect'], units: SpokenUnits): string {
  if (effect?.carry === undefined) return '';
  const unit = units === 'yards' ? YARDS : METRES;
  return `; the carry is good to about ±${inUnit(unit, effect.carry).toFixed(1)} ${unit.symbol}`;
}

/** Decimals a number may need to be told from the end of a range it lies outside of. */
const MOST_DIGITS = 6;

/** Units whose symbol is written otherwise in a sentence. */
const SAID: Readonly<Record<string, string>> = { deg: '°', C: ' °C', F: ' °F' };

/** `130 mph is above the 80 to 125 mph`, with as many decimals as tell the value from the end it has passed. */
function told(warning: ModelWarning, unit: Unit, digits: number): string {
  const { value, range } = warning;
  const say = (x: number): string => inUnit(unit, x).toFixed(digits);
  const symbol = SAID[unit.symbol] ?? ` ${unit.symbol}`;
  const [where, end] = value > range.max ? ['above', range.max] : ['below', range.min];
  if (say(value) === say(end) && digits < MOST_DIGITS) return told(warning, unit, digits + 1);
  return `${say(value)}${symbol} is ${where} the ${say(range.min)} to ${say(range.max)}${symbol}`;
}

/**
 * A warning as one sentence a person can act on.
 * @param warning - from any result's `warnings`
 * @throws `FairflightError` `invalid-input` for an unknown code or unit
 * @example for (const warning of flight.warnings) console.log(warningText(warning));
 */
export function warningText(warning: ModelWarning, options: WarningTextOptions = {}): string {
  const { units = 'yards' } = readOptions(warningTextOptionFields, options);
  const read = readRecord(warningFields, warning, 'warning');
  return SENTENCES[read.code](read, units);
}
