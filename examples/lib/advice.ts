import { isFairflightError, type Scene } from 'fairflight';
import {
  type ChangeName,
  type ChangeRanking,
  type EvidenceName,
  type MeasuredShot,
  type RankedChange,
  type RankOptions,
  rankChanges,
} from 'fairflight/session';
import type { Display } from './display.js';
import { capital, fixed, listed, near, signed } from './text.js';

const READING_WORDS: Readonly<Record<EvidenceName, string>> = {
  clubSpeed: 'club speed',
  ballSpeed: 'ball speed',
  attackAngle: 'attack angle',
  dynamicLoft: 'dynamic loft',
  launchAngle: 'launch angle',
  spinRate: 'spin',
};

const CHANGE_WORDS: Readonly<Record<ChangeName, (step: number, display: Display) => string>> = {
  loft: (step, { angle }) => `${step > 0 ? 'more' : 'less'} loft, ${signed(angle.of(step), 1)}°`,
  'attack-angle': (step, { angle }) => `hitting ${fixed(angle.of(step), 1)}° more up, with a loft that suits`,
  strike: () => 'winning back half of the ball speed that the strike loses',
  speed: (step, { speed }) => `${fixed(speed.of(step))} ${speed.unit} more club speed`,
  scatter: (step) => `${fixed(100 * step)} % less scatter`,
};

/** The library's verdict on what these shots could be changed by; undefined without shots and where no strike explains them. */
export function adviceOn(
  shots: readonly MeasuredShot[],
  scene: Scene,
  options: RankOptions,
): ChangeRanking | undefined {
  if (shots.length === 0) return undefined;
  try {
    return rankChanges(shots, scene, options);
  } catch (error) {
    if (!isFairflightError(error)) throw error;
    return undefined;
  }
}

/** A change in words, such as `more loft, +1.5°`. */
export function changeWords({ change, step }: RankedChange, display: Display): string {
  return CHANGE_WORDS[change](step, display);
}

/** What a verdict says, in a few words. */
export function verdictWords(
  { verdict, measure }: RankedChange,
  maximise: ChangeRanking['maximise'] = 'carry',
): string {
  switch (verdict) {
    case 'advised':
      return 'worth trying';
    case 'by-training':
      return 'worth having, by weeks of training';
    case 'not-worth-it':
      return 'not worth a change';
    case 'leave':
      return 'best left as it is';
    case 'too-few-shots':
      return 'looks worth it, but hit five shots at least before trusting that';
    case 'not-clear':
      return 'may bring nothing';
    case 'costs-the-other':
      return `not advised, since it costs ${maximise === 'carry' ? 'total' : 'carry'}`;
    case 'measure-first':
      return `not enough to say: measure ${listed(measure.map((name) => READING_WORDS[name]))}`;
  }
}

type Gain = { readonly value: number; readonly low: number; readonly high: number };

function gainWords({ value, low, high }: Gain, { distance: { of, unit } }: Display): string {
  return `${signed(of(value), 1)} ${unit} (${signed(of(low), 1)} to ${signed(of(high), 1)})`;
}

/** Every change of a ranking with its verdict and what it brings, a sentence each, and what is best left as it is. */
export function adviceLines(ranking: ChangeRanking, display: Display): readonly string[] {
  const changes = toChange(ranking).map((each) => {
    const strokes = each.strokes && `, ${signed(-each.strokes.value, 2)} strokes on the hole`;
    return `${capital(changeWords(each, display))}: ${verdictWords(each, ranking.maximise)}. Carry ${gainWords(each.carry, display)}, total ${gainWords(each.total, display)}${strokes ?? ''}.`;
  });
  return [...changes, ...leaveLines(ranking)];
}

/** The changes that bring something; the others are named by {@link leaveLines}. */
export function toChange({ changes }: ChangeRanking): readonly RankedChange[] {
  return changes.filter(({ verdict }) => verdict !== 'leave');
}

const NAMES: Readonly<Record<ChangeName, string>> = {
  loft: 'loft',
  'attack-angle': 'attack angle',
  strike: 'strike',
  speed: 'club speed',
  scatter: 'scatter',
};

/** What is best left as it is, in a sentence; empty where every step would bring something. */
export function leaveLines({ leave, maximise }: ChangeRanking): readonly string[] {
  if (leave.length === 0) return [];
  return [
    `Best left as it is: ${listed(leave.map((name) => NAMES[name]))}. No step that can be attained adds ${maximise}.`,
  ];
}

/** What is worth trying, most gain first, in one sentence without its full stop. */
export function worthTrying(ranking: ChangeRanking, display: Display): string {
  const { of, unit } = display.distance;
  const advised = ranking.changes.filter(({ verdict }) => verdict === 'advised');
  const parts = advised.map(
    (each) => `${changeWords(each, display)} (${signed(of(each[ranking.maximise].value))} ${unit})`,
  );
  return parts.length === 0 ? 'nothing that is clear' : parts.join('; ');
}

/** What more speed would bring, apart from what is worth trying; empty where that does not show. */
export function trainingLines(rankings: readonly ChangeRanking[], display: Display): readonly string[] {
  const { of, unit } = display.distance;
  const found = rankings.flatMap(({ changes, maximise }) =>
    changes.flatMap((each) =>
      each.verdict === 'by-training' ? [{ each, gain: signed(of(each[maximise].value)) }] : [],
    ),
  );
  const [first] = found;
  if (first === undefined) return [];
  const gains = [...new Set(found.map(({ gain }) => gain))].sort((a, b) => Number(a) - Number(b));
  const ends = [...new Set([gains[0], gains.at(-1)])].join(' to ');
  return [`By training, which takes weeks and care: ${changeWords(first.each, display)} (${ends} ${unit}).`];
}

/** What the strike loses in ball speed, and what its spin does; empty where the speeds were not read. */
export function strikeLossLines({ againstCentred }: ChangeRanking, display: Display): readonly string[] {
  if (againstCentred === undefined) return [];
  const { ballSpeed, spin } = againstCentred;
  const { of, unit } = display.distance;
  const range = ({ low, high }: Gain): string => `${fixed(of(low), 1)} to ${fixed(of(high), 1)}`;
  const does = spin.value > 0 ? 'costs' : 'brings';
  return [
    `Against a centred strike the ball speed costs ${fixed(of(ballSpeed.value), 1)} ${unit} of carry (${range(ballSpeed)}).`,
    ...(spin.low > 0 || spin.high < 0
      ? [
          `Spin other than the model’s ${does} ${fixed(Math.abs(of(spin.value)), 1)} ${unit}: ball, head or height of strike, which nothing here tells apart.`,
        ]
      : []),
  ];
}

/** The ranking as JSON, under keys that say their units. */
export function adviceRecord(ranking: ChangeRanking, display: Display): Readonly<Record<string, unknown>> {
  const { of, unit } = display.distance;
  const gain = ({ value, low, high }: Gain): object => ({
    value: near(of(value), 1),
    low: near(of(low), 1),
    high: near(of(high), 1),
  });
  return {
    'judged by': ranking.maximise,
    'best left as it is': ranking.leave,
    changes: ranking.changes.map((each) => ({
      change: each.change,
      what: changeWords(each, display),
      verdict: each.verdict,
      ...(each.measure.length > 0 && { measure: each.measure }),
      [`carry gained (${unit})`]: gain(each.carry),
      [`total gained (${unit})`]: gain(each.total),
    })),
    ...(ranking.againstCentred && {
      [`carry against a centred strike (${unit})`]: {
        'lost by ball speed': gain(ranking.againstCentred.ballSpeed),
        'lost by spin': gain(ranking.againstCentred.spin),
      },
    }),
  };
}
