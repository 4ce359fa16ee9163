import type { BestSpeed, PairedDifference } from 'fairflight/dispersion';
import type { ScatterTrend } from 'fairflight/session';
import { mph, toMph } from 'fairflight/units';
import type { Display } from '../lib/display.js';
import { counted, fixed, listed } from '../lib/text.js';
import type { Course, Tradeoff } from './tradeoff.js';

/** Precautions beside any advice to swing faster. */
export const CAUTIONS: readonly string[] = [
  'Speed is gained over weeks, not on the course: warm up, build up slowly, rest between hard sessions, stop at pain. With an injury, a heart or joint condition, in youth, in age or in doubt, ask a doctor, physiotherapist or qualified trainer first.',
  'Full-effort swings need clear space all round, and nobody in front.',
];

/** How far the answer can be trusted. */
export const LIMITS: readonly string[] = [
  'Strokes are those of the published table for professionals (Broadie 2012). For anyone else they are modelled from published tee-shot lines, and say what an average golfer of that score needs, not this player.',
  'Everything but club speed and scatter stays as it is: attack angle, loft, aim. A faster swing may want another loft.',
  'Every hole has the same straight fairway, rough and trees; trees leave a recovery shot, out of bounds costs stroke and distance. A tight, wet or bent course gives another answer: say what it is like with the options.',
  'Scatter has tails wider than a normal distribution (Student t, 5 degrees of freedom), since a normal one fits shots poorly (Ko 2012). The strike on the face is worked out from the readings of ball and club.',
  'Run after landing is known to ±25 %.',
];

const per = ({ course }: Tradeoff): string =>
  course.lengths.length === 1 ? 'on this hole' : `over these ${course.lengths.length} holes`;

const shownSpeed = (speed: number, display: Display): string =>
  `${fixed(display.speed.of(speed))} ${display.speed.unit}`;

/** Strokes as a coach says them: two decimals below 1. */
function strokes(value: number): string {
  return `${fixed(Math.abs(value), 2)} strokes`;
}

/** True where strokes are fewer, beyond what the simulation leaves open. */
function isFewer({ interval }: Pick<PairedDifference, 'interval'>): boolean {
  return interval.high < 0;
}

/** Step of club speed that is compared with less scatter. */
const FASTER = mph(3);

/** The answer: two steps that can be attained, the one that saves more first. */
export function answerSentence(tradeoff: Tradeoff, display: Display): string {
  const { oneMphFaster, tenPercentStraighter: straighter } = tradeoff.answer;
  const faster = timesOf(oneMphFaster, toMph(FASTER));
  const { speed } = display;
  const more = stepWords(`${fixed(speed.of(FASTER))} ${speed.unit} more`, faster);
  const less = stepWords('10 % less scatter of path, face and strike', straighter);
  if (isFewer(straighter) && !(faster.value < straighter.value)) {
    return `Straighter: ${less} ${per(tradeoff)}; ${more}.`;
  }
  if (isFewer(faster)) return `Faster: ${more} ${per(tradeoff)}; ${less}.`;
  return `Neither shows: ${more}, and ${less}.`;
}

function timesOf(
  { value, interval }: PairedDifference,
  times: number,
): Pick<PairedDifference, 'value' | 'interval'> {
  return {
    value: times * value,
    interval: { ...interval, low: times * interval.low, high: times * interval.high },
  };
}

function stepWords(what: string, change: Pick<PairedDifference, 'value' | 'interval'>): string {
  return isClear(change)
    ? `${what} ${verb(change)} ${strokes(change.value)}`
    : `${what} makes no difference that shows`;
}

/** The speed that is best with everything else as it is. */
export function speedSentence(tradeoff: Tradeoff, display: Display): string {
  const { answer, constant } = tradeoff;
  const { best, now, steps, locallyBest } = answer;
  const at = (speed: number): string => shownSpeed(speed, display);
  const grows = constant === undefined ? 'with the same scatter' : 'with scatter that grows as said';
  const rivals = locallyBest.filter(({ mayBeBest }) => mayBeBest);
  if (rivals.length > 1) {
    const speeds = listed(rivals.map(({ clubSpeed }) => at(clubSpeed)));
    return `Speed alone, ${grows}: ${speeds} are each better than the speeds between, and which of them is best these shots do not show.`;
  }
  const better = [best, ...steps].filter(({ change }) => isFewer(change));
  if (better.length === 0) {
    return `Speed alone, ${grows}: none looked at is clearly better than ${at(now)}, this player’s now.`;
  }
  // The best itself, unless only another speed is clearly better than now.
  const shown = isFewer(best.change)
    ? best
    : better.reduce((kept, step) => (step.change.value < kept.change.value ? step : kept));
  const takes = `${at(shown.clubSpeed)} takes ${strokes(shown.change.value)} fewer ${per(tradeoff)} than ${at(now)}`;
  const beyond = shown.clubSpeed < now ? '' : `; ${beyondWords(tradeoff, display)}`;
  return `Speed alone, ${grows}: ${takes}${beyond}.`;
}

/** What is clear about still more speed. */
function beyondWords({ answer: { best, steps } }: Tradeoff, display: Display): string {
  const [fastest, before] = [steps.at(-1)?.clubSpeed, steps.at(-2)?.clubSpeed];
  const { low, high } = best.interval;
  if (best.kind === 'faster-than' && low === before) {
    return 'more speed still pays there, at the fastest looked at';
  }
  return high === fastest
    ? 'whether still more pays these shots do not show'
    : `from ${shownSpeed(high, display)} on strokes are clearly more again`;
}

function isClear({ interval: { low, high } }: Pick<PairedDifference, 'interval'>): boolean {
  return low > 0 || high < 0;
}

function verb({ value }: Pick<PairedDifference, 'value'>): string {
  return value < 0 ? 'saves' : 'costs';
}

/** The growth of scatter that eats a mph, beside the player's own. */
export function cancellingSentence({ answer, player }: Tradeoff, display: Display): string {
  const { cancellingOneMph: cancelling, oneMphFaster } = answer;
  const unit = display.speed.unit;
  const own = player.trend === undefined ? '' : ` ${trendSentence(player.trend, display)}`;
  if (cancelling.kind === 'over') {
    return `A ${unit} more pays even when scatter grows by ${growth(cancelling.factor, display)} with it.${own}`;
  }
  const [only, ...more] = cancelling.kind === 'within' ? cancelling.factors : [];
  if (only !== undefined && more.length === 0 && only.interval.low > 1) {
    const { low, high } = only.interval;
    return `More speed stops paying when scatter grows by ${growth(only.value, display)} with each ${unit} (95 %: ${growth(low, display)} to ${growth(high, display)}).${own}`;
  }
  if (cancelling.kind === 'under' || (only !== undefined && more.length === 0 && only.interval.high < 1)) {
    return `Even with the same scatter one ${unit} more costs strokes here.`;
  }
  return isClear(oneMphFaster)
    ? `How much growth of scatter would cancel a ${unit} these shots do not show.${own}`
    : `Whether one ${unit} more is worth having these shots do not show.${own}`;
}

/** A factor on scatter for one mph as growth a unit of speed shown. */
function growth(factor: number, display: Display): string {
  return `${fixed(100 * perUnit(factor - 1, display), 1)} %`;
}

function trendSentence(trend: ScatterTrend, display: Display): string {
  const share = (value: number): string => `${fixed(100 * perUnit(value, display), 1)} %`;
  const { low, high } = trend.interval;
  const shown = trend.unclear ? 'growth is not shown' : 'growth is shown';
  return `This player’s start direction scatters ${share(trend.growthPerMph)} more a ${display.speed.unit} (95 %: ${share(low)} to ${share(high)}; ${shown}).`;
}

/** Compounding growth a mph as growth a unit of speed shown. */
function perUnit(growthPerMph: number, { speed }: Display): number {
  return (1 + growthPerMph) ** (1 / speed.of(mph(1))) - 1;
}

/** How well the answer is known, in words. */
export function widthSentence({ answer, constant, ends, player }: Tradeoff, display: Display): string {
  const says = (best: BestSpeed): string => {
    const at = shownSpeed(best.clubSpeed, display);
    return best.kind === 'within' ? at : best.kind === 'faster-than' ? `beyond ${at}` : `below ${at}`;
  };
  const { low, high } = answer.best.interval;
  const [slowest, fastest] = [answer.steps[0]?.clubSpeed, answer.steps.at(-1)?.clubSpeed];
  const open = [...(low === slowest ? ['slower'] : []), ...(high === fastest ? ['faster'] : [])];
  const or = open.length === 0 ? '' : ` or ${open.join(' or ')}`;
  const range = ` The simulated shots put the best speed between ${shownSpeed(low, display)} and ${shownSpeed(high, display)}${or} (95 %).`;
  const seen = counted(player.used, 'shot');
  if (ends === undefined) {
    const why =
      constant === undefined && player.trend?.unclear === true
        ? ' Whether this player’s scatter grows with speed these shots do not show, so it is taken as constant.'
        : '';
    return `The answer rests on ${seen}, so scatter is known roughly.${why}${range}`;
  }
  const [least, most] = [says(ends.high.best), says(ends.low.best)];
  if (least === most) {
    return `With ${seen} the growth of scatter is known roughly; at both ends of its interval the speed where more stops paying lies ${ends.low.best.kind === 'within' ? `at ${least}` : least}.${range}`;
  }
  return `With ${seen} the growth of scatter is known so roughly that the speed where more stops paying may lie anywhere from ${least} to ${most}.${range}`;
}

/** The model's scatter beside the measured one. */
export function checkSentence({ now, player }: Tradeoff, display: Display): string {
  const { of, unit } = display.distance;
  const model = `${fixed(of(now.dispersion.side.sd.value), 1)} ${unit}`;
  if (player.now.side === undefined) {
    return `Played through the model these shots scatter ${model} sideways at landing (standard deviation); the side of ${counted(player.now.shots.length, 'shot')} at this speed was not measured, so that cannot be checked.`;
  }
  return `Check: played through the model these shots scatter ${model} sideways at landing (standard deviation); measured were ${fixed(of(player.now.side), 1)} ${unit}, from ${counted(player.now.shots.length, 'shot')} at this speed.`;
}

/** The law of scatter in words. */
export function lawWords({ player: { law } }: Tradeoff, display: Display): string {
  const share = (value: number): string =>
    `${fixed(100 * perUnit(value, display), 1)} % a ${display.speed.unit}`;
  if (law.kind === 'constant') return 'scatter stays the same degrees';
  if (law.kind === 'measured') return `direction scatters ${share(law.trend.growthPerMph)} more, as measured`;
  return `scatter of direction and strike grows ${share(law.growth.directionPerMph ?? 0)}, as asked`;
}

/** The course in words. */
export function courseWords(course: Course, { distance }: Display): string {
  const { lengths, fairway, trees, bounds, skill } = course;
  const shown = (value: number): string => `${fixed(distance.of(value))} ${distance.unit}`;
  const holes =
    lengths.length === 1
      ? `one hole of ${shown(lengths[0] ?? 0)}`
      : `${lengths.length} driving holes of ${fixed(distance.of(Math.min(...lengths)))} to ${shown(Math.max(...lengths))}`;
  const sides = [
    ...(trees === undefined ? [] : [`trees ${shown(trees)}`]),
    ...(bounds === undefined ? [] : [`out of bounds ${shown(bounds)}`]),
  ];
  const beyond = sides.length === 0 ? 'open rough' : `${listed(sides)} from its middle on both sides`;
  const who = skill === 'professional' ? 'a professional' : `a golfer averaging ${skill.averageScore}`;
  return `${holes}, fairway ${shown(fairway)} wide, ${beyond}; strokes of ${who}`;
}
