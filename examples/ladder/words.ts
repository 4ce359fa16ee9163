import type { MaximisedDistance } from 'fairflight';
import type { MeasuredShot } from 'fairflight/session';
import type { Display } from '../lib/display.js';
import { counted, fixed, listed, signed } from '../lib/text.js';
import type { Ladder } from './ladder.js';
import type { LoftAnswer, Rung } from './rungs.js';
import type { Step } from './steps.js';

/** Cautions that go with every ladder. */
export const CAUTIONS: readonly string[] = [
  'Speed work: warm up first, build up over weeks, rest between hard sessions, and stop at pain. With an injury, a heart condition, in youth or in doubt, ask a doctor, physiotherapist or qualified trainer before swinging at full effort.',
  'Hitting at full effort: keep others well clear, and use a range or net made for it.',
  'Before a club is changed, let a qualified fitter watch it hit. A changed loft, head or shaft must still conform to the equipment rules and to local rules where you play.',
];

/** How far the figures can be trusted. */
export const LIMITS: readonly string[] = [
  'Carry by the model: about ±3 yd (rms on tour averages) where launch and spin are measured well.',
  'Run after landing: ±25 %, as far as means of many shots go; landings flatter than 16° lie outside what has been measured, so totals of very low flights are rough.',
  'Best loft: spin from a strike is known to ±13 % (one standard error), which moves the best loft by about a degree either way. The optimum is flat: read the window, not the peak.',
  'The head is a generic driver, not yours: mass, inertia, restitution and face curvature are typical figures.',
];

/** {@link LIMITS}, with what a calibration changed about the head. */
export function limitsOf({ calibration }: Ladder): readonly string[] {
  const ofHead = ['restitution', 'tangentialRestitution'];
  if (!calibration?.values.some(({ target }) => ofHead.includes(target))) return LIMITS;
  return [
    ...LIMITS.slice(0, -1),
    'The head is a generic driver with restitution fitted to these shots: mass, inertia and face curvature are typical figures, and the fit absorbs whatever is wrong with them.',
  ];
}

const LOFT_WORDS: Readonly<Record<LoftAnswer['verdict'], string>> = {
  fits: 'its loft fits',
  'too little loft': 'wants more loft',
  'too much loft': 'wants less loft',
};

/** The change of nominal loft advised, in degrees with its sign. */
function changeOf({ optimum, delivered }: LoftAnswer, { angle }: Display): string {
  return `${signed(angle.of(optimum.advice?.change ?? delivered), 1)}°`;
}

/** The verdict on the loft of one band, in a sentence. */
export function loftSentence({ loft, loftProblem, name, model }: Rung, display: Display): string {
  if (loft === undefined) return `${name}: no loft can be advised, since ${loftProblem}.`;
  const { distance, angle } = display;
  const nominal = `${fixed(angle.of(loft.nominalBest), 1)}° nominal`;
  const what =
    loft.verdict === 'fits'
      ? `${LOFT_WORDS.fits} (best ${nominal})`
      : `${LOFT_WORDS[loft.verdict]}, about ${changeOf(loft, display)} (${nominal})`;
  const { all, loft: fromLoft, strike } = loft.carryLeft;
  const carry = `${signed(distance.of(all))} ${distance.unit} of carry, ${signed(distance.of(fromLoft))} from loft ${strikePart(distance.of(strike))}`;
  const room = Math.max(
    ...[model, loft.optimum.shot].map(({ run }) => (run ? (run.band.high - run.band.low) / 2 : 0)),
  );
  const total = `${signed(distance.of(loft.totalLeft))} ${distance.unit} in total`;
  const doubt = Math.abs(loft.totalLeft) < room ? ' (within what is uncertain about the run)' : '';
  const left = distance.of(all) < 1 ? 'Nothing left on the table' : 'Left on the table';
  const still =
    loft.verdict === 'fits' && loft.window?.verdict === 'too low'
      ? ' The flight is still lower than its window: less spin or more curve than a square, centred strike gives.'
      : '';
  return `${name}: ${what}. ${left}: ${carry}; ${total}${doubt}.${spinSentence(loft, display)}${still}`;
}

/** How far the doubt about a strike's spin leaves the best loft and the gain open. */
function spinSentence({ optimum, verdict, nominalBest }: LoftAnswer, { distance, angle }: Display): string {
  const { loftBand, dynamicLoft, maximised, advice } = optimum;
  const nominal = (loft: number): string => fixed(angle.of(nominalBest + loft - dynamicLoft), 1);
  const best = ` As far as spin is known, the best loft is ${nominal(loftBand.low)} to ${nominal(loftBand.high)}° nominal`;
  if (verdict === 'fits' || advice === undefined) return `${best}.`;
  const [low, high] = [advice.gainBand.low, advice.gainBand.high].map((gain) => signed(distance.of(gain)));
  return `${best} and the change is worth ${low} to ${high} ${distance.unit} of ${maximised}.`;
}

/** What a centred strike would bring; a loss means that the launch as measured goes further than the model's. */
function strikePart(gain: number): string {
  const shown = fixed(Math.abs(gain));
  return gain < 0 && shown !== '0'
    ? `less ${shown}, since the strike as measured carries further than the model’s centred one`
    : `and ${signed(gain)} from a centred strike`;
}

/** Which bands the driver fits, in a sentence, and what the advice does to the total where that shrinks. */
export function fitSentence(rungs: readonly Rung[], maximise: MaximisedDistance, display: Display): string {
  const group = (verdict: LoftAnswer['verdict']): string[] =>
    rungs.flatMap(({ loft, name }) =>
      loft?.verdict !== verdict ? [] : [verdict === 'fits' ? name : `${name} (${changeOf(loft, display)})`],
    );
  const parts = (['too little loft', 'too much loft', 'fits'] as const).flatMap((verdict) => {
    const bands = group(verdict);
    return bands.length === 0 ? [] : [`${LOFT_WORDS[verdict]} at ${listed(bands)}`];
  });
  if (parts.length === 0) return 'Nothing can be said about loft here.';
  const lost = rungs.flatMap(({ loft }) =>
    loft === undefined || loft.verdict === 'fits' ? [] : [display.distance.of(-loft.totalLeft)],
  );
  const most = fixed(Math.max(0, ...lost));
  const price =
    most === '0'
      ? ''
      : ` The run shrinks with it: in total that costs up to ${most} ${display.distance.unit}, as far as a run can be foretold.`;
  const fits = parts.join('; ').replace(/^its loft fits/, 'fits');
  return `Is this driver right? For ${maximise}, by the model, it ${fits}.${price}`;
}

/** What is left on the table, in a sentence. */
export function leftSentence(rungs: readonly Rung[], { distance }: Display): string {
  const parts = rungs.flatMap(({ loft, name }) =>
    loft === undefined ? [] : [`${fixed(distance.of(loft.carryLeft.all))} at ${name}`],
  );
  if (parts.length === 0) return '';
  return `Carry left on the table (${distance.unit}), best loft and centred strike together: ${listed(parts)}.`;
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

/** How many shots it takes to show a gain. */
export function shotsSentence({ summary: { shotsToShow } }: Ladder, { speed }: Display): string {
  const parts = shotsToShow.map(
    ({ gain, shots }) => `${Number(speed.of(gain).toFixed(1))} ${speed.unit} takes ${shots}`,
  );
  if (parts.length === 0) return '';
  return `To show a gain of club speed at this scatter, four times out of five: ${listed(parts)} shots before and as many after.`;
}

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
