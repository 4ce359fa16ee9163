import type { StrikeOffset, StrikeVerdict } from 'fairflight';
import type { FaceMove } from 'fairflight/session';
import { millimetres, yards } from 'fairflight/units';
import { trainingLines, worthTrying } from '../lib/advice.js';
import type { Display } from '../lib/display.js';
import { counted, fixed, signed } from '../lib/text.js';
import type { FaceStudy } from './study.js';

/** Least gain of carry worth a move: 3 yd, as for every change. */
const WORTH = yards(3);

/** Moves of less are none. */
const LEAST_MOVE = millimetres(1);

/** Fewest strikes that make a pattern. */
const FEWEST_STRIKES = 5;

/** True where there are strikes enough to speak of a pattern. */
export function hasPattern({ strikes }: FaceStudy): boolean {
  return strikes.length >= FEWEST_STRIKES;
}

/** Cautions that go with every map. */
export const CAUTIONS: readonly string[] = [
  'A suggestion is a question for a qualified fitter or coach, not a prescription: each move is tried in the model alone, everything else held, and players answer to changes in ways no model knows.',
  'A changed loft, head or tee height must still conform to the equipment rules and to local rules where you play.',
  'When trying changes at full effort: warm up, keep others well clear, and stop at pain.',
  'Speed comes by weeks of training: build up slowly, rest between hard sessions, and with an injury, a heart or joint condition, in youth, in age or in doubt ask a doctor, physiotherapist or qualified trainer first.',
];

/** How far the figures can be trusted. */
export const LIMITS: readonly string[] = [
  'Strikes worked out from readings are uncertain by a few millimetres; tape or powder on the face is better. Give it in columns toe (mm) and high (mm).',
  'The head is a generic driver, not yours. How restitution falls off over the face is bounded by the rules but no map of a modern face has been published; that fall is an assumption.',
  'Spin from a delivery is known to ±13 %, and the run after landing to ±25 %.',
];

const mm = (value: number): string => fixed(Math.abs(value) * 1000);

/** A place on the face in words. */
export function placeWords({ toe, high }: StrikeOffset): string {
  const across =
    Math.abs(toe) < 0.0005 ? 'in the middle' : `${mm(toe)} mm toward the ${toe > 0 ? 'toe' : 'heel'}`;
  const up = Math.abs(high) < 0.0005 ? 'at mid height' : `${mm(high)} mm ${high > 0 ? 'high' : 'low'}`;
  return `${across}, ${up}`;
}

/** How much of what the head can give the ball got. */
export const VERDICT_WORDS: Readonly<Record<StrikeVerdict, string>> = {
  full: 'all of it',
  'nearly-full': 'nearly all of it',
  partial: 'part of it',
  little: 'little of it',
};

/** How far left or right, for example `4 left`. */
export function sideWords(side: number, { distance }: Display, decimals = 0): string {
  const text = fixed(Math.abs(distance.of(side)), decimals);
  return Number(text) === 0 ? text : `${text} ${side > 0 ? 'right' : 'left'}`;
}

/** What to do, by the sign of the change. */
function adviceWords({ move, change }: FaceMove): string {
  const more = change > 0;
  switch (move) {
    case 'stance':
      return `stand a little ${more ? 'farther from' : 'closer to'} the ball (pattern ${mm(change)} mm toward the ${more ? 'toe' : 'heel'})`;
    case 'tee-height':
      return `tee the ball a little ${more ? 'higher' : 'lower'} (pattern ${mm(change)} mm ${more ? 'up' : 'down'})`;
    case 'head':
      return 'try a head with a higher moment of inertia';
  }
}

/**
 * Moves of the pattern. How high strikes lie is told by the spin alone where they were not measured on the face, and a head
 * or ball of little spin looks the same: without a measured strike there is no word on the tee.
 */
export function movesOf({ report, strikes }: FaceStudy): readonly FaceMove[] {
  const measured = strikes.every(({ located }) => located === undefined);
  return (report?.moves ?? []).filter(
    ({ move, change }) =>
      (measured || move !== 'tee-height') && (move === 'head' || Math.abs(change) >= LEAST_MOVE),
  );
}

/** A move and what it brings. */
export function moveWords(move: FaceMove, display: Display): string {
  const { of, unit } = display.distance;
  return `${adviceWords(move)}: ${signed(of(move.gain), 1)} ${unit} of carry on average`;
}

/** What the readings say is worth trying, and what only training brings. */
function adviceWorth(advice: FaceStudy['advice'], display: Display): readonly string[] {
  if (advice === undefined) return [];
  return [
    `Worth trying by the readings, each alone: ${worthTrying(advice, display)}.`,
    ...trainingLines([advice], display),
  ];
}

/** The answers in short. */
export function answers(study: FaceStudy, display: Display): readonly string[] {
  const { report, map, strikes, unplaced, advice } = study;
  const { distance } = display;
  const unit = distance.unit;
  if (report === undefined) {
    const { longest, centre } = map;
    return [
      ...adviceWorth(advice, display),
      `A centred strike of the swing on the map carries ${fixed(distance.of(centre.carry))} ${unit}; it carries furthest ${placeWords(longest)}, ${fixed(distance.of(longest.carry))} ${unit}.`,
      unplaced.length === 0
        ? 'Give a file of shots or of strikes to see a player’s pattern on the map.'
        : `None of ${counted(unplaced.length, 'shot')} could be placed on the face, so the map shows a usual swing, not this player’s; the reasons are listed below.`,
    ];
  }
  const left = unplaced.length === 0 ? '' : `, ${unplaced.length} left out`;
  if (!hasPattern(study)) {
    return [
      `${counted(strikes.length, 'strike')} placed${left}: too few to speak of a pattern.`,
      ...adviceWorth(advice, display),
    ];
  }
  const { pattern, carry, offLine } = report;
  const spread = `${mm(pattern.spread.toe)} mm across and ${mm(pattern.spread.high)} mm up and down`;
  const [best] = movesOf(study).filter(({ gain }) => gain >= WORTH);
  return [
    `${counted(strikes.length, 'strike')} placed${left}. The pattern lies ${placeWords(pattern.centre)}, with a spread of ${spread} (standard deviations).`,
    `It costs ${fixed(distance.of(Math.max(0, map.longest.carry - carry)), 1)} ${unit} of carry on average against the place where it carries furthest (${fixed(distance.of(carry))} against ${fixed(distance.of(map.longest.carry))}); the balls end ${fixed(distance.of(offLine), 1)} ${unit} off the line on average with an otherwise repeated delivery.`,
    ...adviceWorth(advice, display),
    best === undefined
      ? `No single move of the pattern looks worth it: none gains ${fixed(distance.of(WORTH))} ${unit}.`
      : `The one move of the pattern that gains most by the model: ${moveWords(best, display)}.`,
  ];
}
