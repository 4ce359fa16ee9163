import { count, type Declared, optional } from '../inputs/field.js';
import { type FlightOptions, flightOptionFields } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';
import { type MeasuredShot, readMeasuredShots } from '../inputs/measured-shot.js';
import { readOptions } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { fewestForSlope, mean, studentTQuantile, type TheilSenLine, theilSen } from '../numerics/index.js';
import { type ResolvedScene, resolveScene, type Scene } from '../scene/scene.js';
import { type Length, mph, type Speed, si, toMph } from '../units/index.js';
import { attribute, type ChangeAttribution } from './attribution.js';
import { type AttributionSettings, attributionSettings } from './attribution-options.js';
import { type CarryOver, growth } from './carry-over.js';
import { dayToDayOf, FEWEST_SESSIONS, usualBlock } from './day-to-day.js';
import { launchIn } from './launch-of.js';
import { levelField } from './level.js';
import { type LoggedSession, sessionsOf } from './log-sessions.js';
import { scatterOf } from './scatter-change.js';
import { trainingCautions } from './training-cautions.js';
import { remarksOn } from './training-remarks.js';
import type { LogChange, TrainingReport } from './training-report.js';

/** Options of {@link judgeTraining}. */
export interface TrainingOptions extends FlightOptions {
  /** Sessions averaged at each end, 1 to 1,000,000 and at most half of them; default a third. */
  readonly block?: number;
  /** Coverage of intervals, 0.5 to 0.999; default 0.95. */
  readonly level?: number;
}

/** Declaration of {@link TrainingOptions}. @internal */
export const trainingOptionFields: Declared<TrainingOptions> = /* @__PURE__ */ frozen(() => ({
  ...flightOptionFields,
  block: optional(count(1, 1_000_000, 2, 'sessions averaged')),
  level: optional(levelField),
}));

/** No target is more than this above the present speed, whatever could be shown. */
const LARGEST_STEP: Speed = /* @__PURE__ */ frozen(() => mph(3));

/**
 * Judges a log of practice sessions: is the gain in club speed real, what is it worth, did scatter grow.
 *
 * A session's mean differs from day to day by more than its shots explain, so sessions count, not shots: the typical
 * error of a session mean is the standard deviation of the differences between neighbouring sessions over √2, which
 * leaves a steady gain out (Hopkins W G 2000, Sports Med. 30, 1–15). A change between the averages of k sessions at
 * each end is real when it passes t √(2/k) typical errors (minimal detectable change, Weir 2005, with Student's t for
 * his 1.96 because few sessions estimate the error). Days that carry over make it wider: see `carryOver`.
 * @param shots - shots with `session` or `date` and a club speed; dates as YYYY-MM-DD put sessions in order and on a
 *   time axis, otherwise they are taken in the order given
 * @param scene - where the launches are flown for the causes; each field has a default
 * @param options - block, coverage, tolerance and time limit
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field, also when no shot can be used or
 *   there is one session only
 */
export function judgeTraining(
  shots: readonly MeasuredShot[],
  scene: Scene = {},
  options: TrainingOptions = {},
): TrainingReport {
  const given = readOptions(trainingOptionFields, options);
  const settings = attributionSettings(given);
  const { level } = settings;
  const here = resolveScene(scene);
  const measured = readMeasuredShots(shots);
  const { sessions, timeUnit, unused } = sessionsOf(measured);
  const block = blockOf(sessions.length, given.block);
  const first = sessions.slice(0, block).flatMap((session) => session.members);
  const last = sessions.slice(-block).flatMap((session) => session.members);
  const speed = speedChange(sessions, block, level);
  const worth = speed === undefined ? undefined : worthOf(measured, speed.change, level);
  const causes = causesOf(first, last, here, settings);
  const scatter = scatterOf(sessions.slice(0, block), sessions.slice(-block), level);
  const verdict =
    speed === undefined
      ? 'too-few-sessions'
      : speed.change.low > 0
        ? 'gain'
        : speed.change.high < 0
          ? 'loss'
          : 'not-shown';
  const report = {
    sessions: sessions.map(({ members: _, ...row }) => row),
    timeUnit,
    block,
    verdict,
    ...(speed !== undefined && speed),
    ...(worth !== undefined && { worth }),
    ...(causes !== undefined && { causes }),
    scatter,
    level,
    cautions: trainingCautions,
  } as const;
  return { ...report, remarks: remarksOn(report, unused) };
}

function blockOf(sessions: number, given: number | undefined): number {
  const most = Math.floor(sessions / 2);
  const block = given ?? usualBlock(sessions);
  if (block <= most) return block;
  throw refusal(
    'options.block',
    `options.block must be at most ${most}, got ${block}: the first and last of ${sessions} sessions must not overlap`,
    { value: block, unit: 'sessions', range: [1, most] },
    'outside-range',
  );
}

function speedChange(
  sessions: readonly LoggedSession[],
  block: number,
  level: number,
):
  | (Required<Pick<TrainingReport, 'carryOver' | 'dayToDay' | 'detectable' | 'next'>> & {
      readonly change: LogChange<Speed>;
      readonly perTime?: LogChange<Speed>;
    })
  | undefined {
  if (sessions.length < FEWEST_SESSIONS) return undefined;
  const means = sessions.map((session) => session.clubSpeed);
  const { typical, error, dof, carryOver } = dayToDayOf(means, block);
  const detectable = studentTQuantile(0.5 + level / 2, dof) * error * Math.sqrt(2 / block);
  const present = mean(means.slice(-block));
  const change = present - mean(means.slice(0, block));
  const times = sessions.map((session) => session.time);
  const line =
    new Set(times).size > 1 && means.length >= fewestForSlope(level)
      ? theilSen(times, means, level)
      : undefined;
  const step = Math.min(LARGEST_STEP, mph(Math.max(1, Math.ceil(toMph(si<Speed>(detectable)) - 1e-9))));
  return {
    carryOver,
    dayToDay: si(typical),
    detectable: si(detectable),
    change: { value: si(change), low: si(change - detectable), high: si(change + detectable) },
    ...(line !== undefined && { perTime: perTimeOf(line, times, carryOver) }),
    next: { clubSpeed: si(present + step), step: si(step) },
  };
}

/** Slope of the line, its interval widened where days carry over. */
function perTimeOf(
  { slope, interval }: TheilSenLine,
  times: readonly number[],
  { verdict, autocorrelation }: CarryOver,
): LogChange<Speed> {
  const centre = mean(times);
  const wider =
    verdict === 'carries-over'
      ? growth(
          times.map((time) => time - centre),
          autocorrelation,
        )
      : 1;
  return {
    value: si(slope),
    low: si(slope + wider * (interval.low - slope)),
    high: si(slope + wider * (interval.high - slope)),
  };
}

/** The change of speed at the player's own carry against club speed, both intervals kept. */
function worthOf(
  shots: readonly MeasuredShot[],
  change: LogChange<Speed>,
  level: number,
): LogChange<Length> | undefined {
  const pairs = shots.flatMap(({ clubSpeed, carry }) =>
    clubSpeed === undefined || carry === undefined ? [] : [{ clubSpeed, carry }],
  );
  if (pairs.length < 10 || new Set(pairs.map((pair) => pair.clubSpeed)).size < 2) return undefined;
  const line = theilSen(
    pairs.map((pair) => pair.clubSpeed),
    pairs.map((pair) => pair.carry),
    level,
  );
  if (line.interval.low <= 0) return undefined;
  const value = line.slope * change.value;
  // Relative errors of a product, added in quadrature: a first-order interval.
  const relative = (line.interval.high - line.interval.low) / 2 / line.slope;
  const half = Math.hypot(relative * value, (line.slope * (change.high - change.low)) / 2);
  return { value: si(value), low: si(value - half), high: si(value + half) };
}

function causesOf(
  first: readonly MeasuredShot[],
  last: readonly MeasuredShot[],
  scene: ResolvedScene,
  settings: AttributionSettings,
): ChangeAttribution | undefined {
  const flown = (shots: readonly MeasuredShot[]): boolean =>
    shots.some((shot) => !('missing' in launchIn(shot)));
  if (!flown(first) || !flown(last)) return undefined;
  return attribute({ before: first, after: last }, { before: scene, after: scene }, settings);
}
