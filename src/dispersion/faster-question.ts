import { isFairflightError, isList } from '../errors.js';
import { type Delivery, deliveryFields } from '../inputs/delivery.js';
import {
  type CustomField,
  custom,
  type Declared,
  type ListField,
  optional,
  record,
} from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { allows, readField, readList, readOptions } from '../inputs/read.js';
import { rangeText, refusal, refuseType } from '../inputs/refuse.js';
import { type ResolvedScene, resolveScene } from '../scene/scene.js';
import { createPlayer, type Player } from '../shot/player.js';
import { type ShotOptions, type ShotSettings, shotOptionFields, shotSettings } from '../shot/shot-options.js';
import { mph, type Speed, si } from '../units/index.js';
import { type CloudOptions, cloudOptionFields } from './cloud.js';
import { type ExpectedStrokesOptions, strokesOptionFields } from './expected-strokes.js';
import { type Hole, holeField } from './hole.js';
import { type ScatterLaw, scatterLawFields } from './scatter-law.js';
import { readSubject } from './scattered.js';
import { type ScalableSpread, scalableSpreadField } from './spread.js';

/** What is asked: whose swing, on which holes, by which law of scatter. */
export interface FasterQuestion {
  /** The player's usual delivery now. */
  readonly delivery: Delivery;
  /** Scatter now; path, face or strike must be among what scatters. */
  readonly spread: ScalableSpread;
  /** One hole, or all holes of a round on which the club is used, 1 to 100. */
  readonly hole: Hole | readonly Hole[];
  /** How scatter changes with speed; default constant degrees. */
  readonly law?: ScatterLaw;
}

/** Options of {@link fasterOrStraighter}. */
export interface FasterOptions extends ShotOptions, CloudOptions, ExpectedStrokesOptions {
  /**
   * Shots at each speed and scatter, 64 to 1,000,000; default 1,024. Rounded up to a multiple of 8. What one mph and 10 %
   * are worth rests on four times as many.
   */
  readonly shots?: number;
  /** Club speeds to look at [m/s], 1 to 90; default 4 mph slower to 12 mph faster than now, by 2 mph. */
  readonly speeds?: readonly Speed[];
  /** Called after each cloud of shots with the share done, 0 to 1. */
  readonly onProgress?: (done: number) => void;
}

const DEFAULT_SHOTS = 1024;

const someHoles: ListField = /* @__PURE__ */ frozen(() => ({
  kind: 'list',
  of: holeField,
  least: 1,
  most: 100,
  label: 'holes',
}));

const holesField: CustomField = /* @__PURE__ */ frozen(() => ({
  kind: 'custom',
  read: (value, path) =>
    isList(value) ? readList(someHoles, value, path) : [readField(holeField, value, path)],
  label: 'hole',
}));

/** Declaration of {@link FasterQuestion}. @internal */
export const fasterQuestionFields: Declared<FasterQuestion> = /* @__PURE__ */ frozen(() => ({
  delivery: record(deliveryFields, 'delivery'),
  spread: scalableSpreadField,
  hole: holesField,
  law: optional(record(scatterLawFields, 'law of scatter')),
}));

/** Declaration of {@link FasterOptions}. @internal */
export const fasterOptionFields: Declared<FasterOptions> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  ...cloudOptionFields,
  ...strokesOptionFields,
  speeds: optional({ kind: 'list', of: deliveryFields.clubSpeed, least: 1, most: 100, label: 'club speeds' }),
  onProgress: custom((value, path) => {
    if (typeof value !== 'function') throw refuseType(path, 'a function', value);
    return value;
  }, 'progress'),
}));

/** What {@link fasterOrStraighter} is asked, read. @internal */
export interface FasterReading {
  readonly delivery: Delivery;
  readonly spread: ScalableSpread;
  readonly holes: readonly Hole[];
  readonly law: ScatterLaw;
  /** Speeds to look at, slowest first, today's among them. */
  readonly speeds: readonly Speed[];
  readonly scene: ResolvedScene;
  readonly settings: ShotSettings;
  readonly options: FasterOptions;
  /** {@link FasterOptions.shots} or its default. */
  readonly shots: number;
}

/** Reads the question, and plays the usual shot at every speed and one mph faster than now. @throws FairflightError naming the field @internal */
export function readFaster(question: unknown, scene: unknown, options: unknown): FasterReading {
  const { delivery, spread, hole, law = {} } = readSubject(fasterQuestionFields, question);
  requireScale(spread);
  const resolved = resolveScene(scene);
  const given = readOptions(fasterOptionFields, options);
  const settings = shotSettings(given);
  const player = createPlayer(resolved, settings);
  player.fromDelivery(delivery);
  const speeds = speedsOf(given.speeds, delivery.clubSpeed);
  const field = given.speeds === undefined ? 'delivery.clubSpeed' : 'options.speeds';
  requirePlayable(player, delivery, speeds, field);
  requirePlayable(player, delivery, [si<Speed>(delivery.clubSpeed + mph(1))], 'delivery.clubSpeed');
  return {
    delivery,
    spread,
    // Reading has made a list of one hole.
    holes: hole as readonly Hole[],
    law,
    speeds,
    scene: resolved,
    settings,
    options: given,
    shots: given.shots ?? DEFAULT_SHOTS,
  };
}

/** @throws FairflightError where nothing scatters that could be made straighter */
function requireScale({ sd }: ScalableSpread): void {
  if ([sd.clubPath, sd.faceAngle, sd.toe, sd.high].some((scatter) => (scatter ?? 0) > 0)) return;
  throw refusal(
    'spread.sd',
    'spread.sd needs a scatter of clubPath, faceAngle, toe or high, which straighter shots would have less of',
  );
}

/** Speeds to look at, slowest first. @throws FairflightError where they are too few or out of range */
function speedsOf(given: readonly Speed[] | undefined, now: Speed): Speed[] {
  const speeds =
    given === undefined
      ? [-4, -2, 0, 2, 4, 6, 8, 10, 12].map((step) => si<Speed>(now + mph(step)))
      : [...new Set([...given, now])];
  if (!speeds.every((speed) => allows(deliveryFields.clubSpeed, speed))) {
    throw refusal(
      'delivery.clubSpeed',
      `delivery.clubSpeed is so near an end of its range, ${rangeText(deliveryFields.clubSpeed)}, that the speeds looked at by default leave it`,
      { value: now, unit: 'm/s', hint: 'give options.speeds' },
      'outside-range',
    );
  }
  if (speeds.length < 3) {
    throw refusal('options.speeds', 'options.speeds needs at least two speeds beside the present one', {
      value: speeds.length,
    });
  }
  return speeds.sort((a, b) => a - b);
}

/** Plays the usual shot at every speed. @throws FairflightError for the field that the speeds come from */
function requirePlayable(player: Player, delivery: Delivery, speeds: readonly Speed[], field: string): void {
  for (const clubSpeed of speeds) {
    try {
      player.fromDelivery({ ...delivery, clubSpeed });
    } catch (error) {
      if (!isFairflightError(error)) throw error;
      const { code, message, hint } = error;
      throw refusal(
        field,
        `${field} leads to ${clubSpeed.toFixed(1)} m/s, at which the shot cannot be played: ${message}`,
        { value: clubSpeed, unit: 'm/s', ...(hint !== undefined && { hint }) },
        code,
      );
    }
  }
}
