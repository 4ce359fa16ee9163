import { breakEvenAt } from '../../../src/dispersion/break-even.js';
import { strokesSettings } from '../../../src/dispersion/expected-strokes.js';
import type { BreakEven, FasterOrStraighter, Hole, PairedDifference } from '../../../src/dispersion/index.js';
import { pairedDifference } from '../../../src/dispersion/paired-difference.js';
import { sameShots } from '../../../src/dispersion/same-shots.js';
import { resolveScene } from '../../../src/scene/scene.js';
import { shotSettings } from '../../../src/shot/shot-options.js';
import { mph, type Speed, si, toMph } from '../../../src/units/index.js';
import { golfer } from './holes.js';

/** Strokes against today's, flown with draws of their own. */
export type Flown = (clubSpeed: Speed, factor: number) => PairedDifference;

/** Flies any speed and scatter on a hole, each once. */
export function flownOn(hole: Hole, shots: number): Flown {
  const play = sameShots(resolveScene({}), shotSettings({}), {
    usual: golfer.delivery,
    spread: golfer.spread,
    holes: [hole],
    strokes: strokesSettings({}),
    draws: { sampling: 'random', seed: 987_654_321 },
  });
  const strokes = (clubSpeed: Speed, factor: number): Float64Array =>
    play({ clubSpeed, direction: factor, strike: factor }, shots).strokes;
  const today = strokes(golfer.delivery.clubSpeed, 1);
  const known = new Map<string, PairedDifference>();
  return (clubSpeed, factor) => {
    const key = `${clubSpeed} ${factor}`;
    const flown = known.get(key) ?? pairedDifference(strokes(clubSpeed, factor), today);
    known.set(key, flown);
    return flown;
  };
}

/** One figure of an answer beside what was flown. */
export interface Row {
  readonly what: string;
  readonly reported: string;
  readonly flown: string;
  readonly agrees: boolean;
}

const shown = ({ value, interval: { low, high } }: PairedDifference): string =>
  `${value.toFixed(4)} (${low.toFixed(4)} to ${high.toFixed(4)})`;
const speedOf = (clubSpeed: Speed): string => toMph(clubSpeed).toFixed(0);

/** Every clear statement of an answer against what was flown: signs, best speeds, break-even. */
export function judged(answer: FasterOrStraighter, flown: Flown): Row[] {
  const { now, oneMphFaster, tenPercentStraighter, cancellingOneMph, breakEven } = answer;
  const signed = (what: string, reported: PairedDifference, truth: PairedDifference): Row => ({
    what,
    reported: shown(reported),
    flown: shown(truth),
    // A sign is stated where it is clear of the interval, and must then not be clearly the other one.
    agrees:
      reported.interval.low > 0
        ? truth.interval.high > 0
        : reported.interval.high < 0
          ? truth.interval.low < 0
          : true,
  });
  const wider = breakEven.filter(({ clubSpeed, kind }) => clubSpeed !== now && kind === 'within');
  return [
    signed('one mph faster', oneMphFaster, flown(si<Speed>(now + mph(1)), 1)),
    signed('10 % straighter', tenPercentStraighter, flown(now, 0.9)),
    bestRow(answer, flown),
    ...breakEvenRows('cancels one mph', cancellingOneMph, flown),
    ...wider
      .slice(-1)
      .flatMap((each) => breakEvenRows(`breaks even at ${speedOf(each.clubSpeed)} mph`, each, flown)),
  ];
}

function bestRow({ steps, best, locallyBest }: FasterOrStraighter, flown: Flown): Row {
  const truth = steps
    .map(({ clubSpeed }) => ({ clubSpeed, change: flown(clubSpeed, 1) }))
    .reduce((kept, step) => (step.change.value < kept.change.value ? step : kept));
  const holds = locallyBest.some(
    ({ mayBeBest, interval }) =>
      mayBeBest && truth.clubSpeed >= interval.low && truth.clubSpeed <= interval.high,
  );
  return {
    what: 'best speed',
    reported: locallyBest
      .map((each) => {
        const { low, high } = each.interval;
        const mark = each === best || each.clubSpeed === best.clubSpeed ? '' : each.mayBeBest ? '?' : ' no';
        return `${speedOf(each.clubSpeed)} (${speedOf(low)} to ${speedOf(high)})${mark}`;
      })
      .join(', '),
    flown: speedOf(truth.clubSpeed),
    agrees: holds,
  };
}

function breakEvenRows(what: string, answer: BreakEven, flown: Flown): Row[] {
  if (answer.kind === 'unclear') return [];
  if (answer.kind !== 'within') {
    const truth = flown(answer.clubSpeed, answer.factor);
    const agrees = answer.kind === 'under' ? truth.interval.high > 0 : truth.interval.low < 0;
    return [{ what, reported: `${answer.kind} ${answer.factor.toFixed(3)}`, flown: shown(truth), agrees }];
  }
  return answer.factors.map(({ value, interval, pays }) => {
    const [low, middle, high] = [interval.low, value, interval.high].map((factor) =>
      flown(answer.clubSpeed, factor),
    ) as [PairedDifference, PairedDifference, PairedDifference];
    const [fewer, more] = pays === 'narrower' ? [low, high] : [high, low];
    // At the factor itself strokes are 0, give or take what the way to either end of the interval is worth.
    const slope = (high.value - low.value) / (interval.high - interval.low);
    const worth = Math.abs(slope) * Math.max(value - interval.low, interval.high - value);
    const even = middle.interval.low < worth && middle.interval.high > -worth;
    return {
      what,
      reported: `factor ${value.toFixed(4)} (${interval.low.toFixed(4)} to ${interval.high.toFixed(4)})`,
      flown: `${shown(middle)} at it, where the interval is worth ${worth.toFixed(4)}`,
      agrees: even && fewer.interval.low < 0 && more.interval.high > 0,
    };
  });
}

/** The break-even factor itself, found among flown shots. */
export function flownBreakEven(clubSpeed: Speed, flown: Flown, factors: readonly number[]): BreakEven {
  return breakEvenAt(clubSpeed, (factor) => flown(clubSpeed, factor), factors);
}
