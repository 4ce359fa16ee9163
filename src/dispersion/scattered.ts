import { type Delivery, deliveryFields } from '../inputs/delivery.js';
import { type Declared, type Fields, record } from '../inputs/field.js';
import { type Launch, launchFields } from '../inputs/launch.js';
import { readField, requireKnown } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import type { Scatter } from './sampler.js';
import { deliverySpreadField, launchSpreadField, type Spread } from './spread.js';

/** A player's shots: the usual one, from the club or from the ball, and how others scatter about it. */
export type Scattered =
  | {
      /** The delivery the player means to make. */
      readonly delivery: Delivery;
      /** How deliveries differ from it. */
      readonly spread: Spread<Delivery>;
      readonly launch?: never;
    }
  | {
      /** The launch the player means to make. */
      readonly launch: Launch;
      /** How launches differ from it. */
      readonly spread: Spread<Launch>;
      readonly delivery?: never;
    };

/** The parts of a question, each read under its own name: `delivery.clubSpeed`, `hole.length`. */
function readParts(fields: Fields, given: Readonly<Record<string, unknown>>): object {
  const copy: Record<string, unknown> = {};
  for (const [name, field] of Object.entries(fields)) {
    const part = given[name];
    if (part === undefined && field.optional === true) continue;
    copy[name] = readField(field, part, name);
  }
  return copy;
}

/** Reads what is asked about. @throws FairflightError naming the part and its field @internal */
export function readSubject<T extends object>(fields: Declared<T>, value: unknown): T {
  return readParts(fields as Fields, requireKnown(fields, value, 'subject')) as T;
}

/**
 * {@link readSubject} for a question about scattered shots, with further parts of its own.
 * @throws FairflightError naming the part and its field, also for none or both of delivery and launch
 * @internal
 */
export function readScattered<More extends object = object>(
  value: unknown,
  more: Declared<More> = {} as Declared<More>,
): Scatter & More {
  const delivery = { delivery: record(deliveryFields, 'delivery'), spread: deliverySpreadField };
  const launch = { launch: record(launchFields, 'launch'), spread: launchSpreadField };
  // A copy, so that nothing is looked at twice.
  const given = { ...requireKnown({ ...delivery, ...launch, ...more }, value, 'subject') };
  const { delivery: fromClub, launch: fromBall } = given;
  const club = fromClub !== undefined;
  if (club === (fromBall !== undefined)) {
    throw refusal(
      'delivery',
      `give delivery or launch, the usual shot that others scatter about${club ? '; not both' : ''}`,
    );
  }
  return readParts({ ...(club ? delivery : launch), ...(more as Fields) }, given) as Scatter & More;
}
