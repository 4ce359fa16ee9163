import type { BestSpeed } from 'fairflight/dispersion';
import type { ScatterTrend } from 'fairflight/session';
import { mph } from 'fairflight/units';
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

/** The answer. */
export function answerSentence(tradeoff: Tradeoff, display: Display): string {
  const { answer, constant } = tradeoff;
  const { best, now, steps } = answer;
  const close = Math.abs(best.clubSpeed - now) < mph(1);
  const nearest = steps.reduce((kept, step) =>
    Math.abs(step.clubSpeed - best.clubSpeed) < Math.abs(kept.clubSpeed - best.clubSpeed) ? step : kept,
  );
  const gain = nearest.change.value;
  const sure = Math.abs(gain) > 2 * nearest.change.standardError;
  const worth = sure ? `${strokes(gain)} fewer ${per(tradeoff)}` : 'a gain too small to show here';
  const grows = constant === undefined ? 'with the same scatter' : 'with scatter that grows as said';
  if (best.kind === 'within' && close) {
    return `Straighter: ${grows}, this player is at the speed where more stops paying (${shownSpeed(best.clubSpeed, display)}).`;
  }
  if (best.clubSpeed < now) {
    const to =
      best.kind === 'slower-than'
        ? `${shownSpeed(best.clubSpeed, display)} or less`
        : `about ${shownSpeed(best.clubSpeed, display)}`;
    return `Straighter: ${grows}, ${to} would be worth ${worth} than ${shownSpeed(now, display)}.`;
  }
  if (best.kind === 'faster-than') {
    return `Faster: ${grows}, more speed still pays at ${shownSpeed(best.clubSpeed, display)}, the fastest looked at (${worth} than at ${shownSpeed(now, display)}).`;
  }
  return `Faster, up to about ${shownSpeed(best.clubSpeed, display)}: ${grows}, that is ${worth} than at ${shownSpeed(now, display)}; beyond it wider shots cost what distance brings.`;
}

/** One mph against being straighter. */
export function exchangeSentence(tradeoff: Tradeoff, display: Display): string {
  const { strokesPerMph, strokesForTenPercentStraighter: straighter } = tradeoff.answer;
  const unit = display.speed.unit;
  const perUnit = strokesPerMph.value / display.speed.of(mph(1));
  const clear = Math.abs(strokesPerMph.value) > 2 * strokesPerMph.standardError;
  const straight = `10 % less scatter of path, face and strike saves ${strokes(straighter.value)}`;
  if (!clear) return `${straight} ${per(tradeoff)}; one ${unit} more makes no difference that shows.`;
  const verb = strokesPerMph.value < 0 ? 'saves' : 'costs';
  const as =
    strokesPerMph.value < 0 && straighter.value < 0
      ? `, as much as ${fixed(straighter.value / perUnit, 1)} ${unit} more would`
      : '';
  return `One ${unit} more ${verb} ${strokes(perUnit)} ${per(tradeoff)}; ${straight}${as}.`;
}

/** The growth of scatter that eats a mph, beside the player's own. */
export function cancellingSentence({ answer, player }: Tradeoff, display: Display): string {
  const { cancellingGrowthPerMph: cancelling } = answer;
  const unit = display.speed.unit;
  const share = (value: number): string => `${fixed(100 * perUnit(value, display), 1)} %`;
  if (cancelling.value <= 2 * cancelling.standardError) {
    return 'Even with the same scatter more speed is not worth having here.';
  }
  const own = player.trend === undefined ? '' : ` ${trendSentence(player.trend, display)}`;
  return `A ${unit} more is cancelled when scatter grows by ${share(cancelling.value)} with it.${own}`;
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
  const flat = answer.steps.filter(
    (step) => step.change.value < Math.min(...answer.steps.map(({ change }) => change.value)) + 0.1,
  );
  const [from, to] = [flat[0], flat[flat.length - 1]];
  const range =
    from === undefined || to === undefined || from === to
      ? ''
      : ` Within 0.1 strokes it makes no difference from ${shownSpeed(from.clubSpeed, display)} to ${shownSpeed(to.clubSpeed, display)}.`;
  const seen = counted(player.used, 'shot');
  if (ends === undefined) {
    const why =
      constant === undefined && player.trend?.unclear === true
        ? ' Whether this player’s scatter grows with speed these shots do not show, so it is taken as constant.'
        : '';
    return `The answer rests on ${seen}, so scatter is known roughly.${why}${range}`;
  }
  const [low, high] = [says(ends.high.best), says(ends.low.best)];
  if (low === high) {
    return `With ${seen} the growth of scatter is known roughly; at both ends of its interval the speed where more stops paying lies ${ends.low.best.kind === 'within' ? `at ${low}` : low}.${range}`;
  }
  return `With ${seen} the growth of scatter is known so roughly that the speed where more stops paying may lie anywhere from ${low} to ${high}.${range}`;
}

/** The model's scatter beside the measured one. */
export function checkSentence({ now, player }: Tradeoff, display: Display): string {
  const { of, unit } = display.distance;
  const model = `${fixed(of(now.dispersion.side.sd.value), 1)} ${unit}`;
  if (player.now.side === undefined) {
    return `Played through the model these shots scatter ${model} sideways at landing (standard deviation); the side of ${counted(player.now.shots, 'shot')} at this speed was not measured, so that cannot be checked.`;
  }
  return `Check: played through the model these shots scatter ${model} sideways at landing (standard deviation); measured were ${fixed(of(player.now.side), 1)} ${unit}, from ${counted(player.now.shots, 'shot')} at this speed.`;
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
