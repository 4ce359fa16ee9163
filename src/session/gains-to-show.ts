import { type Declared, type ListField, optional, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type MeasuredShot, readMeasuredShots } from '../inputs/measured-shot.js';
import { readOptions } from '../inputs/read.js';
import { mean, median, typicalErrorWithin } from '../numerics/index.js';
import { mph, type Speed, si } from '../units/index.js';
import { MPH } from '../units/unit.js';
import { countToShow, dayToDayOf, FEWEST_SESSIONS, usualBlock } from './day-to-day.js';
import { levelField, USUAL_LEVEL } from './level.js';
import { sessionGroups } from './log-sessions.js';
import { oddShots } from './odd-shots.js';
import { bandShots } from './speed-bands.js';

/** What it takes to show one gain of club speed, four times out of five. */
export interface GainToShow {
  /** The gain [m/s]. */
  readonly gain: Speed;
  /** Shots before and as many after within one session, as when two clubs are compared; absent where 2³⁰ would not do. */
  readonly shots?: number;
  /**
   * Sessions before and as many after, each of as many shots as `shotsASession` says, as when training is judged; absent
   * where 2³⁰ would not do.
   */
  readonly sessions?: number;
}

/** What {@link gainsToShow} returns. */
export interface GainsToShow {
  /** One entry for each gain asked for. */
  readonly gains: readonly GainToShow[];
  /** Standard deviation of club speed from shot to shot within a session, at one effort [m/s]. */
  readonly shotToShot: Speed;
  /** Standard deviation of a session's mean from one day to another [m/s], wider where days carry over. */
  readonly dayToDay: Speed;
  /**
   * `measured` from four sessions on. `assumed` with fewer: days then differ by 1 % of club speed beside what the shots
   * of a session explain, which no source gives.
   */
  readonly basis: 'measured' | 'assumed';
  /** The usual (median) number of shots in a session, at one effort. */
  readonly shotsASession: number;
}

/** Options of {@link gainsToShow}. */
export interface GainsToShowOptions {
  /** Gains of club speed [m/s], each 0.001 to 90; default 1, 2 and 3 mph. */
  readonly gains?: readonly Speed[];
  /** Coverage with which a gain is shown, 0.5 to 0.999; default 0.95. */
  readonly level?: number;
}

const gainsField: ListField = /* @__PURE__ */ frozen(() => ({
  kind: 'list',
  of: quantity(MPH, 1e-3, 90, 1, 'gain of club speed'),
  least: 0,
  most: 100,
  label: 'gains of club speed',
}));

/** Declaration of {@link GainsToShowOptions}. @internal */
export const gainsToShowOptionFields: Declared<GainsToShowOptions> = /* @__PURE__ */ frozen(() => ({
  gains: optional(gainsField),
  level: optional(levelField),
}));

/** How much one day's mean differs from another's beside what its shots explain, as a share. Assumption, no source. */
const USUAL_DAY = 0.01;

/**
 * How many shots it takes to show a gain of club speed within a session, and how many sessions from one day to another.
 * The two differ: within a session only the shots scatter, between sessions the day counts too, and more shots a session
 * hardly help. Shots are grouped by session (or date) and, within one, by label or by gaps in club speed; shots far
 * apart from their group are left out.
 *
 * Sources: number of shots Cohen (1988), power 0.8, the scatter taken as the estimate it is (Julious and Owen 2006);
 * typical error of session means Hopkins (2000).
 * @param shots - at least one
 * @param options - gains and coverage; each has a default
 * @returns undefined where no session holds two club speeds at one effort that differ
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field
 * @example gainsToShow(shots)?.gains[0]?.sessions
 */
export function gainsToShow(
  shots: readonly MeasuredShot[],
  options: GainsToShowOptions = {},
): GainsToShow | undefined {
  const settings = readOptions(gainsToShowOptionFields, options);
  const { level = USUAL_LEVEL, gains = [mph(1), mph(2), mph(3)] } = settings;
  const measured = readMeasuredShots(shots, 'shots', 1);
  const sessions = sessionGroups(
    withoutOutliers(measured.filter(({ clubSpeed }) => clubSpeed !== undefined)),
  );
  const groups = effortsOf(sessions)
    .map((shots) => shots.flatMap(({ clubSpeed }) => clubSpeed ?? []))
    .filter((speeds) => speeds.length >= 2);
  if (groups.length === 0) return undefined;
  const within = typicalErrorWithin(groups);
  if (!(within.value > 0)) return undefined;
  const shotsASession = median(groups.map((speeds) => speeds.length));
  const means = sessions.map(({ members }) => mean(members.flatMap(({ clubSpeed }) => clubSpeed ?? [])));
  const days = means.length < FEWEST_SESSIONS ? undefined : dayToDayOf(means, usualBlock(means.length));
  const dayToDay =
    days?.error ?? Math.hypot(USUAL_DAY * mean(means), within.value / Math.sqrt(shotsASession));
  return {
    gains: gains.map((gain) => {
      const shots = countToShow(gain, within.value, level, within.dof);
      const sessions = countToShow(gain, dayToDay, level, days?.dof);
      return {
        gain,
        ...(Number.isFinite(shots) && { shots }),
        ...(Number.isFinite(sessions) && { sessions }),
      };
    }),
    shotToShot: si(within.value),
    dayToDay: si(dayToDay),
    basis: days === undefined ? 'assumed' : 'measured',
    shotsASession,
  };
}

type Session = ReturnType<typeof sessionGroups>[number];

/** Shots of one session at one effort. */
function effortsOf(sessions: readonly Session[]): readonly (readonly MeasuredShot[])[] {
  return sessions.flatMap(({ members }) =>
    bandShots(members, undefined).bands.map(({ shots }) => shots.flatMap((i) => members[i] ?? [])),
  );
}

/** Shots that do not stand far apart from those of the same session and effort: a misread is no scatter. */
function withoutOutliers(shots: readonly MeasuredShot[]): readonly MeasuredShot[] {
  const efforts = effortsOf(sessionGroups(shots));
  const all = efforts.flat();
  let from = 0;
  const bands = efforts.map((members, k) => {
    const band = { name: String(k), shots: members.map((_, i) => from + i) };
    from += members.length;
    return band;
  });
  const out = new Set(
    oddShots(all, bands).flatMap(({ shot, verdict }) => (verdict === 'outlier' ? [shot] : [])),
  );
  return all.filter((_, i) => !out.has(i));
}
