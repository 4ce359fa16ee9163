import type { MaximisedDistance } from 'fairflight';
import type { ChangeRanking, ChangeVerdict, MeasuredShot } from 'fairflight/session';
import { yards } from 'fairflight/units';
import { adviceLines, changeWords, leaveLines, strikeLossLines, trainingLines } from '../lib/advice.js';
import type { Display } from '../lib/display.js';
import { counted, fixed, listed, signed } from '../lib/text.js';
import type { Ladder } from './ladder.js';
import { loftChange, type Rung } from './rungs.js';
import type { Step } from './steps.js';

/** Cautions that go with every ladder. */
export const CAUTIONS: readonly string[] = [
  'Speed work: warm up first, build up over weeks, rest between hard sessions, and stop at pain. With an injury, a heart condition, in youth or in doubt, ask a doctor, physiotherapist or qualified trainer before swinging at full effort.',
  'Hitting at full effort: keep others well clear, and use a range or net made for it.',
  'Before a club is changed, let a qualified fitter watch it hit. A changed loft, head or shaft must still conform to the equipment rules and to local rules where you play.',
];

/** How well the model's carry is known: rms on tour averages. */
const CARRY_ERROR = yards(3);

/** How far the figures can be trusted, but for the carry. */
const LIMITS: readonly string[] = [
  'Run after landing: ±25 %, as far as means of many shots go; landings flatter than 16° lie outside what has been measured, so totals of very low flights are rough.',
  'What a change brings is given with an interval of 95 %: it holds errors of reading, few shots, spin, run and the spread between models of the ball. Steps are ones that can be attained, each tried alone. The optimum of loft is flat: read the window, not the peak.',
  'The head is a generic driver, not yours: mass, inertia, restitution and face curvature are typical figures.',
];

/** How far the figures can be trusted, with what a calibration changed about the head. */
export function limitsOf({ calibration }: Ladder, { distance }: Display): readonly string[] {
  const carry = `Carry by the model: about ±${fixed(distance.of(CARRY_ERROR))} ${distance.unit} (rms on tour averages) where launch and spin are measured well.`;
  const ofHead = ['restitution', 'tangentialRestitution'];
  if (!calibration?.values.some(({ target }) => ofHead.includes(target))) return [carry, ...LIMITS];
  return [
    carry,
    ...LIMITS.slice(0, -1),
    'The head is a generic driver with restitution fitted to these shots: mass, inertia and face curvature are typical figures, and the fit absorbs whatever is wrong with them.',
  ];
}

/** Verdicts that leave open whether a change is worth it. */
const OPEN: ReadonlySet<ChangeVerdict> = new Set<ChangeVerdict>([
  'measure-first',
  'not-clear',
  'too-few-shots',
]);

/** The verdict on the loft, in two or three words. */
export function loftWords(advice: ChangeRanking | undefined): string {
  const change = loftChange(advice);
  if (advice === undefined || (change !== undefined && OPEN.has(change.verdict))) return 'not enough to say';
  if (change?.verdict !== 'advised') return 'fits';
  return change.step > 0 ? 'wants more' : 'wants less';
}

/** What keeps a band from advice, and what its strike loses. */
export function adviceSentences(
  { name, advice, loft, loftProblem }: Rung,
  display: Display,
): readonly string[] {
  if (advice === undefined)
    return [`${name}: nothing can be advised, since ${loftProblem || 'no strike explains the shots'}.`];
  const without = loft === undefined ? [`${name}: no best loft is shown, since ${loftProblem}.`] : [];
  return [...without, ...strikeLossLines(advice, display).map((line) => `${name}: ${line}`)];
}

/** What is best left as it is, and in which bands. */
export function leaveSentences(rungs: readonly Rung[]): readonly string[] {
  const bands = new Map<string, string[]>();
  for (const { name, advice } of rungs) {
    for (const line of advice === undefined ? [] : leaveLines(advice)) {
      bands.set(line, [...(bands.get(line) ?? []), name]);
    }
  }
  return [...bands].map(([line, names]) =>
    names.length > 1 && names.length === rungs.length ? line : `${listed(names)}: ${line}`,
  );
}

/** The same with every change, where no table shows them. */
export function changeSentences(rung: Rung, display: Display): readonly string[] {
  const { name, advice } = rung;
  const changes = advice === undefined ? [] : adviceLines(advice, display);
  return [...changes.map((line) => `${name}: ${line}`), ...adviceSentences(rung, display)];
}

/** ` at every speed`, or the bands by name; nothing where there is one band. */
function atBands(bands: readonly string[], rungs: readonly Rung[]): string {
  if (rungs.length === 1) return '';
  return bands.length > 1 && bands.length === rungs.length ? ' at every speed' : ` at ${listed(bands)}`;
}

/** Which bands the driver fits, in a sentence. */
export function fitSentence(rungs: readonly Rung[], maximise: MaximisedDistance): string {
  const verdicts = ['wants more', 'wants less', 'fits', 'not enough to say'];
  const parts = verdicts.flatMap((verdict) => {
    const bands = rungs.flatMap(({ advice, name }) => (loftWords(advice) === verdict ? [name] : []));
    const words = verdict.startsWith('wants') ? `${verdict} loft` : verdict;
    return bands.length === 0 ? [] : [`${words}${atBands(bands, rungs)}`];
  });
  return `Is the loft of this driver right? For ${maximise}, by the model: ${parts.join('; ')}.`;
}

/** What is worth trying and where, in a sentence. */
export function worthSentence(rungs: readonly Rung[], display: Display): string {
  const { of, unit } = display.distance;
  const worth = new Map<string, { readonly bands: string[]; readonly gains: number[] }>();
  for (const { advice, name } of rungs) {
    for (const change of advice?.changes ?? []) {
      if (advice === undefined || change.verdict !== 'advised') continue;
      const words = changeWords(change, display);
      const found = worth.get(words) ?? { bands: [], gains: [] };
      worth.set(words, found);
      found.bands.push(name);
      found.gains.push(of(change[advice.maximise].value));
    }
  }
  if (rungs.every(({ advice }) => advice === undefined)) return '';
  const parts = [...worth].map(([words, { bands, gains }]) => {
    const ends = [...new Set([Math.min(...gains), Math.max(...gains)].map((gain) => signed(gain)))];
    return `${words}${atBands(bands, rungs)} (${ends.join(' to ')} ${unit})`;
  });
  const training = trainingLines(
    rungs.flatMap(({ advice }) => advice ?? []),
    display,
  );
  const worthwhile = parts.length === 0 ? 'nothing that is clear' : parts.join('; ');
  return [`Worth trying, each alone: ${worthwhile}.`, ...training].join(' ');
}

/** Distance per speed in the units shown. */
export function perSpeed(value: number, { distance, speed }: Display): number {
  return (value * distance.of(1)) / speed.of(1);
}

/** Unit of {@link perSpeed}. */
export function perSpeedUnit({ distance, speed }: Display): string {
  return `${distance.unit} per ${speed.unit}`;
}

/** What the steps say about where more speed stops paying. */
export function payingSentence({ steps, rungs }: Pick<Ladder, 'steps' | 'rungs'>, display: Display): string {
  const last = steps[steps.length - 1];
  if (last === undefined) {
    if (rungs.every(({ clubSpeed }) => clubSpeed !== undefined)) {
      return 'One band only: what a step of speed brings cannot be said.';
    }
    const hint = rungs.length === 1 ? ' A column "band" groups the shots all the same.' : '';
    return `Club speed was not measured: what a step of speed brings cannot be said.${hint}`;
  }
  const unit = perSpeedUnit(display);
  const shown = (si: number): string => fixed(perSpeed(si, display), 1);
  const rate = ({ carryPerSpeed: { value, interval } }: Step): string =>
    interval === undefined
      ? `${shown(value)} ${unit}`
      : `${shown(value)} ${unit} (95 %: ${shown(interval.low)} to ${shown(interval.high)})`;
  const unknown = steps.find(({ carryPerSpeed }) => carryPerSpeed.interval === undefined);
  if (unknown !== undefined) {
    return `From ${unknown.from} to ${unknown.to} one band has a single shot, which shows no scatter, so whether more speed paid cannot be said: ${rate(unknown)} as it stands.`;
  }
  const flat = steps.find(({ carryPerSpeed: { interval } }) => interval !== undefined && interval.low <= 0);
  if (flat !== undefined) {
    return `From ${flat.from} to ${flat.to} the gain in carry is not clear of zero: ${rate(flat)}. There, these shots do not show that more speed paid.`;
  }
  return `Every step of speed brought carry. The last, from ${last.from} to ${last.to}, still brought ${rate(last)}: in distance, more speed has not stopped paying here.`;
}

/** How the scatter sideways grows with speed. */
export function scatterSentence({ rungs }: Ladder, { distance }: Display): string {
  const sides = rungs.flatMap(({ name, estimates }) =>
    estimates.side?.sd === undefined ? [] : [`${fixed(distance.of(estimates.side.sd))} at ${name}`],
  );
  if (sides.length < 2) return '';
  return `Sideways scatter at landing (standard deviation, ${distance.unit}): ${listed(sides)}. Distance pays only while the ball stays in play.`;
}

/** How wide the intervals are, in words; with ten shots a band and more they speak for themselves. */
export function widthSentence({ rungs }: Ladder, { distance }: Display): string {
  const fewest = Math.min(...rungs.map(({ used }) => used));
  if (fewest >= ENOUGH) return '';
  const most = Math.max(...rungs.map(({ used }) => used));
  const shots = fewest === most ? counted(fewest, 'shot') : `${fewest} to ${counted(most, 'shot')}`;
  const halves = rungs.flatMap(({ estimates: { carry } }) =>
    carry?.interval === undefined ? [] : [distance.of(carry.interval.high - carry.interval.low) / 2],
  );
  const range = [...new Set([Math.min(...halves), Math.max(...halves)].map((half) => fixed(half)))].join(
    ' to ',
  );
  const known = halves.length === 0 ? '' : `: mean carry is known to ±${range} ${distance.unit} only (95 %)`;
  return `With ${shots} a band the intervals are wide${known}; differences smaller than that are noise, and more shots narrow them.`;
}

/** Shots a band from which on nothing is said about few shots. */
const ENOUGH = 10;

/** "8 shots" or "8 of 10 shots". */
export function shotsWords({ shots, used }: Rung): string {
  return used === shots.length ? counted(used, 'shot') : `${used} of ${counted(shots.length, 'shot')}`;
}

/** "79 → 87 mph", or both names in full where they do not end alike. */
export function stepName({ from, to }: Step): string {
  const [, number, unit] = /^([\d.]+)( \S+)$/.exec(from) ?? [];
  return number !== undefined && unit !== undefined && to.endsWith(unit)
    ? `${number} → ${to}`
    : `${from} → ${to}`;
}

/** The days of the shots, as the file writes them; empty when it does not. */
export function daysOf(shots: readonly MeasuredShot[]): string {
  const days = [...new Set(shots.flatMap(({ date }) => date ?? []))].sort();
  return days.length > 2 ? `${days[0]} to ${days[days.length - 1]}` : listed(days);
}

/** Shots that are in no band, a sentence each. */
export function unassignedLines({ summary }: Ladder, shots: readonly MeasuredShot[]): readonly string[] {
  return summary.unassigned.map(({ shot, reason }) => {
    const line = shots[shot]?.line;
    return `in no band, ${line === undefined ? `shot ${shot + 1}` : `line ${line}`}: ${reason}.`;
  });
}

/** Says where launches or carries are the model's, not measured; empty when all were measured. */
export function modelledSentences(rungs: readonly Rung[]): readonly string[] {
  const shots = rungs.flatMap((rung) => rung.shots);
  const launches = shots.filter(({ launchMeasured }) => !launchMeasured).length;
  const carries = shots.filter(({ measured }) => measured.carry === undefined).length;
  const topped = shots.filter(({ model }) => model.flight.ended === 'topped').length;
  const assumed = shots.some(
    ({ launchMeasured, measured }) => !launchMeasured && measured.dynamicLoft === undefined,
  );
  return [
    ...(launches === 0
      ? []
      : [
          `The launch of ${counted(launches, 'shot')} was not measured and comes from the strike model of a centred strike (spin ±13 %)${assumed ? ', with 3° added to the nominal loft, an assumption' : ''}.`,
        ]),
    ...(carries === 0
      ? []
      : [`The carry of ${counted(carries, 'shot')} was not measured and is the model's.`]),
    ...(topped === 0
      ? []
      : [
          `${counted(topped, 'shot was', 'shots were')} topped and never flew: the model gives no carry and no run.`,
        ]),
  ];
}
