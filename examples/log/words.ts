import { mean } from 'd3-array';
import type { QuantityName } from 'fairflight/session';
import type { Display } from '../lib/display.js';
import { quantityNamed, shownBy } from '../lib/shot-quantities.js';
import { counted, fixed, listed, signed } from '../lib/text.js';
import type { TrainingLog } from './log.js';
import { COMBINED_TRAINING } from './published.js';

/** Is the gain real? */
export function verdictSentence({ report, first, last }: TrainingLog, { speed }: Display): string {
  const { change, detectable, verdict, block, level } = report;
  if (change === undefined || detectable === undefined) {
    return `Is the gain real? It cannot be said: ${counted(report.sessions.length, 'session')} do not show how much one day differs from another. Four is the least, eight is better.`;
  }
  const range = `${signed(speed.of(change.low), 1)} to ${signed(speed.of(change.high), 1)} ${speed.unit} at ${fixed(100 * level)} %`;
  const what = `mean club speed went from ${fixed(speed.of(first), 1)} to ${fixed(speed.of(last), 1)} ${speed.unit}, ${signed(speed.of(change.value), 1)} ${speed.unit} (${range}), between the first and last ${block === 1 ? 'session' : `${block} sessions`}`;
  const limit = `the ${fixed(speed.of(detectable), 1)} ${speed.unit} that days alone can make`;
  const answers = {
    gain: `Yes, the gain is real: ${what}. That is more than ${limit}.`,
    loss: `Speed was lost: ${what}. That is more than ${limit}.`,
    'not-shown': `A gain is not shown: ${what}. That is within ${limit}. Nor do these sessions show that there was none.`,
    'too-few-sessions': '',
  } as const;
  return answers[verdict];
}

/** What it brought in distance. */
export function worthSentence({ report }: TrainingLog, { distance }: Display): string {
  const { worth, causes, verdict } = report;
  if (verdict === 'not-shown' || verdict === 'too-few-sessions') {
    return 'What it brought: while no change of speed is shown, no change of distance can be put down to it.';
  }
  const said = ({ value, low, high }: { value: number; low: number; high: number }): string =>
    `${signed(distance.of(value), 0)} ${distance.unit} (${signed(distance.of(low), 0)} to ${signed(distance.of(high), 0)})`;
  const parts = [
    ...(worth === undefined
      ? []
      : [`at this player’s own strike the change of speed is worth ${said(worth)} of carry`]),
    ...(causes?.carry.measured === undefined
      ? []
      : [`the mean carry measured changed by ${said(causes.carry.measured)}`]),
  ];
  if (parts.length === 0) {
    return 'What it brought in distance cannot be said: the log holds no carry that follows club speed.';
  }
  return `What it brought: ${parts.join('; ')}.`;
}

const SCATTER_WORDS: { readonly [K in QuantityName]?: string } = {
  clubSpeed: 'club speed',
  smashFactor: 'smash factor',
  launchDirection: 'start direction',
  carry: 'carry',
  side: 'sideways at landing',
};

/** Name of a quantity whose scatter is compared. */
export function scatterName(name: QuantityName): string {
  return SCATTER_WORDS[name] ?? name;
}

/** Scatter before and after in the units shown. */
export function scatterShown(name: QuantityName, value: number, display: Display): string {
  const { unit, of, decimals } = shownBy(quantityNamed(name), display);
  const text = fixed(of(value), unit === '' ? 3 : Math.max(1, decimals));
  return unit === '' || unit === '°' ? `${text}${unit}` : `${text} ${unit}`;
}

/** Did the scatter grow? */
export function scatterSentence({ report }: TrainingLog, display: Display): string {
  const entries = Object.entries(report.scatter) as [
    QuantityName,
    TrainingLog['report']['scatter']['side'],
  ][];
  if (entries.length === 0)
    return 'Whether scatter grew cannot be said: no session at either end has two shots.';
  const named = (wanted: 'grew' | 'shrank'): string[] =>
    entries.flatMap(([name, change]) =>
      change?.verdict !== wanted
        ? []
        : [
            `${scatterName(name)} (${scatterShown(name, change.before, display)} to ${scatterShown(name, change.after, display)}, ${fixed(change.ratio, 1)} times)`,
          ],
    );
  const [grew, shrank] = [named('grew'), named('shrank')];
  const parts = [
    ...(grew.length === 0 ? [] : [`it grew in ${listed(grew)}`]),
    ...(shrank.length === 0 ? [] : [`it shrank in ${listed(shrank)}`]),
  ];
  if (parts.length === 0) {
    return 'Did scatter grow? Not shown in anything measured; the intervals below say how much growth could hide.';
  }
  const warning =
    grew.length > 0
      ? ' Speed pays only while the ball stays in play: work on direction before more speed.'
      : '';
  return `Did scatter grow? Standard deviation within sessions: ${parts.join('; ')}.${warning}`;
}

/** What to aim at next. */
export function targetSentence({ report, toShow }: TrainingLog, { speed }: Display): string {
  const { next, detectable } = report;
  if (next === undefined) return '';
  // The step is one of the whole mph that the library gives sessions for.
  const shown = toShow?.gains.find(({ gain }) => Math.abs(gain - next.step) < 1e-9);
  const show =
    shown?.sessions === undefined
      ? ''
      : `; to show it, average ${counted(shown.sessions, 'session')} before and as many after`;
  const why =
    detectable !== undefined && next.step < detectable
      ? 'more at a time is not sensible, though this log shows a step of that size only with more sessions'
      : 'the smallest step in whole mph that this log could show';
  return `Next target: mean club speed of ${fixed(speed.of(next.clubSpeed), 1)} ${speed.unit}, ${fixed(speed.of(next.step), 1)} ${speed.unit} more than now (${why})${show}. Take weeks over it, and only without pain.`;
}

/** How this gain stands beside what has been published. */
export function besideSentence({ report, first }: TrainingLog): string {
  if (report.change === undefined) return '';
  const share = (value: number): string => `${signed((100 * value) / first, 1)} %`;
  const { value, low, high } = report.change;
  return `This log: ${share(value)} of club speed (${share(low)} to ${share(high)}). The review’s mean for combined training is ${signed(100 * COMBINED_TRAINING, 1)} %. One player’s log cannot say what caused a change: practice, fitness, the season and the device change too.`;
}

/** How wide the intervals are, in words. */
export function widthSentence({ report, sessions }: TrainingLog, { speed }: Display): string {
  const counts = sessions.map((band) => band.shots.length);
  const [fewest, most] = [Math.min(...counts), Math.max(...counts)];
  const shots = fewest === most ? `${fewest}` : `${fewest} to ${most}`;
  const days =
    report.dayToDay === undefined
      ? ''
      : ` One day’s mean differs from another’s by a typical ${fixed(speed.of(report.dayToDay), 1)} ${speed.unit} (standard deviation). ${moreOf(report.dayToDay, sessions)}`;
  return `${counted(report.sessions.length, 'session')} with ${shots} shots each: the intervals are wide, and smaller differences than they say are noise.${days}`;
}

/** Whether days or shots limit what can be shown: the part of the day-to-day variance that a session's few shots make. */
function moreOf(dayToDay: number, sessions: TrainingLog['sessions']): string {
  const fromShots = sessions.flatMap(({ quantities: { clubSpeed } }) =>
    clubSpeed?.sd === undefined ? [] : [clubSpeed.sd ** 2 / clubSpeed.count],
  );
  return (mean(fromShots) ?? Number.NaN) < 0.5 * dayToDay ** 2
    ? 'That is mostly the day, not the number of shots: more sessions help, more shots a session hardly do.'
    : 'Much of that is the small number of shots: more shots a session help, and so do more sessions.';
}

/** How far the figures can be trusted. */
export const LIMITS: readonly string[] = [
  'Sessions count, not shots: the typical error is that of a session mean from one day to the next, and a steady gain is not mistaken for it (Hopkins 2000; minimal detectable change after Weir 2005, with Student’s t).',
  'The device must be the same throughout, and stand the same way. A new device, ball, club or place can look like a gain.',
  'The split of the carry into causes is the model’s; what it does not explain is shown. Air and wind are taken as the same on all days unless the log was made indoors or was corrected.',
  'Intervals for the growth of scatter hold for normal shots and are too narrow for wilder ones.',
];
