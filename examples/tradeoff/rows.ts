import type { BreakEven } from 'fairflight/dispersion';
import type { Display } from '../lib/display.js';
import { fixed, signed } from '../lib/text.js';
import type { Tradeoff } from './tradeoff.js';

/** One speed, as text. */
export interface SpeedRow {
  readonly now: boolean;
  readonly speed: string;
  readonly scatter: string;
  readonly carry: string;
  readonly total: string;
  readonly fairway: string;
  readonly strokes: string;
  readonly change: string;
  /** Half of its 95 % interval. */
  readonly error: string;
  /** Scatter that leaves the strokes as they are now. */
  readonly allowed: string;
}

/** All speeds looked at, slowest first. */
export function rowsOf({ answer }: Tradeoff, { speed, distance }: Display): readonly SpeedRow[] {
  return answer.steps.map((step, i) => {
    return {
      now: step.clubSpeed === answer.now,
      speed: fixed(speed.of(step.clubSpeed)),
      scatter: fixed(100 * step.directionFactor),
      carry: fixed(distance.of(step.carry.value)),
      total: fixed(distance.of(step.total.value)),
      fairway: fixed(100 * step.fairway),
      strokes: fixed(step.strokes.value, 2),
      change: signed(step.change.value, 2),
      error: fixed((step.change.interval.high - step.change.interval.low) / 2, 2),
      allowed: allowedText(answer.breakEven[i]),
    };
  });
}

/** Scatter that leaves the strokes as they are, in % of now. */
function allowedText(point: BreakEven | undefined): string {
  if (point === undefined || point.kind === 'unclear') return 'not clear';
  if (point.kind !== 'within') return `${point.kind} ${fixed(100 * point.factor)}`;
  return point.factors.map(({ value }) => fixed(100 * value)).join(', ');
}

/** What scatters, and how much: name, usual value and standard deviation. */
export function scatterRows(
  { player: { usual, spread } }: Tradeoff,
  { speed, angle }: Display,
): readonly (readonly [string, string, string])[] {
  const { sd } = spread;
  const degrees = (
    name: string,
    value: number | undefined,
    by: number | undefined,
  ): [string, string, string] => [
    name,
    `${signed(angle.of(value ?? 0), 1)}°`,
    `${fixed(angle.of(by ?? 0), 1)}°`,
  ];
  const millimetres = (name: string, value: number, by: number | undefined): [string, string, string] => [
    name,
    `${signed(1000 * value)} mm`,
    `${fixed(1000 * (by ?? 0))} mm`,
  ];
  return [
    [
      'club speed',
      `${fixed(speed.of(usual.clubSpeed), 1)} ${speed.unit}`,
      `${fixed(speed.of(sd.clubSpeed ?? 0), 1)} ${speed.unit}`,
    ],
    degrees('attack angle (+ up)', usual.attackAngle, sd.attackAngle),
    degrees('club path (+ right)', usual.clubPath, sd.clubPath),
    degrees('face angle (+ right)', usual.faceAngle, sd.faceAngle),
    degrees('dynamic loft', usual.dynamicLoft, sd.dynamicLoft),
    millimetres('strike, toward the toe', usual.strikeOffset?.toe ?? 0, sd.toe),
    millimetres('strike, up the face', usual.strikeOffset?.high ?? 0, sd.high),
  ];
}
