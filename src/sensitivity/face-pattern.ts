import type { Clubhead } from '../clubhead/index.js';
import { type Delivery, deliveryFields, type StrikeOffset, strikeOffsetFields } from '../inputs/delivery.js';
import { record } from '../inputs/field.js';
import { readList, readOptions, readRecord } from '../inputs/read.js';
import { brentMinimum } from '../numerics/index.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import type { ShotOptions } from '../shot/index.js';
import { shotOptionFields, shotSettings } from '../shot/shot-options.js';
import { type Length, si } from '../units/index.js';
import { type FacePoint, facePlayer } from './face-map.js';

/** Where a player strikes the face. */
export interface StrikePattern {
  /** Number of strikes. */
  readonly count: number;
  /** Mean position. */
  readonly centre: StrikeOffset;
  /** Covariance of toe and high [m²] (divisor n − 1); zero for a single strike. */
  readonly covariance: readonly [readonly [number, number], readonly [number, number]];
  /** Standard deviations [m]. */
  readonly spread: { readonly toe: Length; readonly high: Length };
}

/** A change that physics says would help this pattern. */
export interface FaceMove {
  /**
   * `stance`: stand closer or farther, so that the pattern moves along the face. `tee-height`: up or down the face.
   * `head`: the most forgiving head the rules allow (5900 g cm² about the vertical).
   */
  readonly move: 'stance' | 'tee-height' | 'head';
  /** Shift of the pattern [m], + toward the toe, + up; 0 for the head. */
  readonly change: number;
  /** Mean carry gained [m]. */
  readonly gain: Length;
  /** Mean distance from the line to where the ball rests, gained (+) or lost (−) [m]. */
  readonly straighter: Length;
}

/** What {@link judgePattern} returns. */
export interface PatternReport {
  /** The pattern. */
  readonly pattern: StrikePattern;
  /** Mean carry over the strikes [m]. */
  readonly carry: Length;
  /** Carry of the centred strike [m]. */
  readonly centredCarry: Length;
  /** Mean distance from the target line at rest [m]. */
  readonly offLine: Length;
  /** All moves looked at, the most gain first. Meant for a qualified fitter to try, not as a prescription. */
  readonly moves: readonly FaceMove[];
}

/** Mean, covariance and spread of strikes on the face. @throws `FairflightError` for an empty or bad list */
export function strikePattern(strikes: readonly StrikeOffset[]): StrikePattern {
  return patternOf(readStrikes(strikes));
}

function readStrikes(strikes: unknown): readonly StrikeOffset[] {
  const of = record(strikeOffsetFields, 'strike');
  return readList({ of, least: 1, most: 1e6 }, strikes, 'strikes') as readonly StrikeOffset[];
}

function patternOf(strikes: readonly StrikeOffset[]): StrikePattern {
  const n = strikes.length;
  const mean = (of: (s: StrikeOffset) => number): number => strikes.reduce((sum, s) => sum + of(s), 0) / n;
  const toe = mean((s) => s.toe);
  const high = mean((s) => s.high);
  const scale = n > 1 ? n / (n - 1) : 0;
  const a = scale * mean((s) => (s.toe - toe) ** 2);
  const b = scale * mean((s) => (s.toe - toe) * (s.high - high));
  const d = scale * mean((s) => (s.high - high) ** 2);
  return {
    count: n,
    centre: { toe: si(toe), high: si(high) },
    covariance: [
      [a, b],
      [b, d],
    ],
    spread: { toe: si(Math.sqrt(a)), high: si(Math.sqrt(d)) },
  };
}

/** Farthest a pattern is moved when looking for gain [m]. */
const REACH = { toe: 0.025, high: 0.015 };
/** Vertical-axis inertia the rules allow, 5900 g cm² (R&A and USGA 2019, part 2 section 4b). */
const MOST_FORGIVING = 5.9e-4;

/**
 * What a pattern of strikes costs, and which single change physics says would gain most carry: where the player stands,
 * how high the ball is teed, or a more forgiving head. Each is tried alone, all else held, on the pattern as
 * it is; no one knows how a player answers to a change, so take it as a question for a qualified fitter. Loft is
 * judged by {@link rankChanges}.
 * @param strikes - Strikes measured on the face or located by `locateStrike`.
 * @param delivery - The player's usual delivery; its own strike offset plays no part.
 * @param scene - Air, wind, ground, turf, ball and coefficient model.
 * @param options - Clubhead, tolerance and time limit.
 * @throws `FairflightError` naming the field.
 */
export function judgePattern(
  strikes: readonly StrikeOffset[],
  delivery: Delivery,
  scene: Scene = {},
  options: ShotOptions = {},
): PatternReport {
  const given = readStrikes(strikes);
  const usualDelivery = readRecord(deliveryFields, delivery, 'delivery');
  const resolved = resolveScene(scene);
  const settings = shotSettings(readOptions(shotOptionFields, options));
  const { clubhead: head } = settings;
  const usual = facePlayer(usualDelivery, resolved, settings);
  const over = (play: typeof usual, toe = 0, high = 0): { carry: number; offLine: number } => {
    const points = given.map((s): FacePoint => play(s.toe + toe, s.high + high));
    const mean = (of: (p: FacePoint) => number): number =>
      points.reduce((sum, p) => sum + of(p), 0) / points.length;
    return { carry: mean((p) => p.carry), offLine: mean((p) => Math.abs(p.side)) };
  };
  const now = over(usual);
  const best = (
    [low, high]: readonly [number, number],
    at: (change: number) => { carry: number; offLine: number },
  ): Found => {
    const change = brentMinimum((x) => -at(x).carry, low, high, { tolerance: 1e-5 }).x;
    return { change, ...at(change) };
  };
  const room = (name: 'toe' | 'high'): readonly [number, number] => [
    Math.max(-REACH[name], ...given.map((s) => -strikeOffsetFields[name].max - s[name])),
    Math.min(REACH[name], ...given.map((s) => strikeOffsetFields[name].max - s[name])),
  ];
  const stance = best(room('toe'), (x) => over(usual, x, 0));
  const tee = best(room('high'), (x) => over(usual, 0, x));
  const moves = [
    moveOf('stance', stance, now),
    moveOf('tee-height', tee, now),
    ...(head.inertia.vertical < MOST_FORGIVING
      ? [
          moveOf(
            'head',
            {
              change: 0,
              ...over(facePlayer(usualDelivery, resolved, { ...settings, clubhead: forgiving(head) })),
            },
            now,
          ),
        ]
      : []),
  ];
  moves.sort((a, b) => b.gain - a.gain);
  return {
    pattern: patternOf(given),
    carry: si(now.carry),
    centredCarry: si(usual(0, 0).carry),
    offLine: si(now.offLine),
    moves,
  };
}

interface Found {
  readonly change: number;
  readonly carry: number;
  readonly offLine: number;
}

function moveOf(
  move: FaceMove['move'],
  found: Found,
  now: { readonly carry: number; readonly offLine: number },
): FaceMove {
  return {
    move,
    change: found.change,
    gain: si(found.carry - now.carry),
    straighter: si(now.offLine - found.offLine),
  };
}

/** The head with inertia at the limit, the same shape of the tensor and a bulge that suits: R in proportion to inertia. */
function forgiving(head: Clubhead): Clubhead {
  const factor = MOST_FORGIVING / head.inertia.vertical;
  const { faceNormal, vertical, heelToe } = head.inertia;
  return {
    ...head,
    inertia: {
      faceNormal: si(faceNormal * factor),
      vertical: si(vertical * factor),
      heelToe: si(heelToe * factor),
    },
    ...(head.bulge !== undefined && { bulge: si<Length>(head.bulge * factor) }),
    ...(head.roll !== undefined && { roll: si<Length>(head.roll * factor) }),
  };
}
