import type { BestSpeed, BreakEven, MonteCarlo, PairedDifference } from 'fairflight/dispersion';
import type { ShotTable } from 'fairflight/schema';
import { adviceRecord } from '../lib/advice.js';
import type { Display } from '../lib/display.js';
import { sceneWords } from '../lib/scene-options.js';
import { near } from '../lib/text.js';
import type { Tradeoff } from './tradeoff.js';
import {
  answerSentence,
  CAUTIONS,
  cancellingSentence,
  checkSentence,
  courseWords,
  LIMITS,
  lawWords,
  speedSentence,
  widthSentence,
} from './words.js';

/** The trade-off as JSON: every number under a key that says its unit. */
export function tradeoffRecord(
  tradeoff: Tradeoff,
  table: ShotTable,
  file: string,
  display: Display,
): unknown {
  const { answer, constant, ends, player, course, now, faster } = tradeoff;
  const { speed, distance, angle } = display;
  const best = (value: BestSpeed): unknown => ({
    kind: value.kind,
    [`club speed (${speed.unit})`]: near(speed.of(value.clubSpeed), 1),
    [`from (${speed.unit})`]: near(speed.of(value.interval.low), 1),
    [`to (${speed.unit})`]: near(speed.of(value.interval.high), 1),
    'strokes against now': difference(value.change),
  });
  const { trend } = player;
  return {
    about: {
      what: 'Faster or straighter',
      file,
      comments: table.comments,
      course: courseWords(course, display),
      conditions: sceneWords(tradeoff.scene, display),
      law: lawWords(tradeoff, display),
      limits: LIMITS,
      cautions: CAUTIONS,
    },
    input: {
      rows: table.rowsRead,
      used: player.used,
      'left out': table.rowsLeftOut,
      incomplete: player.incomplete,
      outliers: player.odd.filter(({ verdict }) => verdict === 'outlier').length,
      unexplained: player.unexplained,
      rejected: table.rejected,
      notes: table.notes,
    },
    answer: answerSentence(tradeoff, display),
    answers: [
      speedSentence(tradeoff, display),
      cancellingSentence(tradeoff, display),
      widthSentence(tradeoff, display),
      checkSentence(tradeoff, display),
    ],
    ...(tradeoff.advice && { advice: adviceRecord(tradeoff.advice, display) }),
    [`now (${speed.unit})`]: near(speed.of(answer.now), 1),
    best: best(answer.best),
    ...(answer.locallyBest.length > 1 && { 'locally best': answer.locallyBest.map(best) }),
    ...(constant && { 'best with the same scatter': best(constant.best) }),
    ...(ends && {
      'best at the ends of the trend': {
        'least growth': best(ends.low.best),
        'most growth': best(ends.high.best),
      },
    }),
    'strokes for one mph more': difference(answer.oneMphFaster),
    'strokes for 10 % less scatter': difference(answer.tenPercentStraighter),
    'scatter that cancels one mph (of now)': scatter(answer.cancellingOneMph),
    ...(trend && {
      'own growth of direction scatter a mph (share)': {
        value: near(trend.growthPerMph, 4),
        low: near(trend.interval.low, 4),
        high: near(trend.interval.high, 4),
        shown: !trend.unclear,
      },
    }),
    speeds: answer.steps.map((step, i) => ({
      [`club speed (${speed.unit})`]: near(speed.of(step.clubSpeed), 1),
      'direction scatter (of now)': near(step.directionFactor, 3),
      'strike scatter (of now)': near(step.strikeFactor, 3),
      [`carry (${distance.unit})`]: near(distance.of(step.carry.value), 1),
      [`total (${distance.unit})`]: near(distance.of(step.total.value), 1),
      'fairways (share)': near(step.fairway, 3),
      strokes: error(step.strokes),
      'strokes against now': difference(step.change),
      'scatter allowed (of now)': scatter(answer.breakEven[i]),
    })),
    'sideways scatter at landing': {
      [`modelled (${distance.unit})`]: near(distance.of(now.dispersion.side.sd.value), 1),
      ...(player.now.side !== undefined && {
        [`measured (${distance.unit})`]: near(distance.of(player.now.side), 1),
      }),
      'shots measured': player.now.shots.length,
    },
    'tee shots': [now, faster].map(({ clubSpeed, dispersion }) => ({
      [`club speed (${speed.unit})`]: near(speed.of(clubSpeed), 1),
      'on the fairway (share)': near(dispersion.fairway?.share ?? 0, 3),
      ...(dispersion.beyond && {
        'beyond the trees, left (share)': near(dispersion.beyond.left?.share ?? 0, 3),
        'beyond the trees, right (share)': near(dispersion.beyond.right?.share ?? 0, 3),
      }),
    })),
    scatter: {
      [`club speed (${speed.unit})`]: near(speed.of(player.spread.sd.clubSpeed ?? 0), 2),
      'attack angle (deg)': near(angle.of(player.spread.sd.attackAngle ?? 0), 2),
      'club path (deg)': near(angle.of(player.spread.sd.clubPath ?? 0), 2),
      'face angle (deg)': near(angle.of(player.spread.sd.faceAngle ?? 0), 2),
      'dynamic loft (deg)': near(angle.of(player.spread.sd.dynamicLoft ?? 0), 2),
      'toward the toe (mm)': near(1000 * (player.spread.sd.toe ?? 0), 1),
      'up the face (mm)': near(1000 * (player.spread.sd.high ?? 0), 1),
    },
  };
}

function error({ value, standardError }: MonteCarlo): unknown {
  return { value: near(value, 4), 'standard error': near(standardError, 4) };
}

/** With the ends of the 95 % interval. */
function difference({ value, interval: { low, high } }: PairedDifference): unknown {
  return { value: near(value, 4), low: near(low, 4), high: near(high, 4) };
}

function scatter(point: BreakEven | undefined): unknown {
  if (point === undefined || point.kind === 'unclear') return { kind: 'unclear' };
  if (point.kind !== 'within') return { kind: point.kind, factor: near(point.factor, 3) };
  const factors = point.factors.map(({ value, interval: { low, high }, pays }) => ({
    value: near(value, 3),
    low: near(low, 3),
    high: near(high, 3),
    pays,
  }));
  return { kind: 'within', factors };
}
