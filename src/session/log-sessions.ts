import type { MeasuredShot } from '../inputs/measured-shot.js';
import { refusal } from '../inputs/refuse.js';
import { mean } from '../numerics/index.js';
import { type Length, type Speed, si } from '../units/index.js';

/** One session of a training log. */
export interface SessionRow {
  /** Name, or the date where it has none. */
  readonly name: string;
  /** Time since the first session: weeks where every session has a date, else sessions. */
  readonly time: number;
  /** Shots with a club speed. */
  readonly shots: number;
  /** Mean club speed [m/s]. */
  readonly clubSpeed: Speed;
  /** Mean carry [m]; absent when none was measured. */
  readonly carry?: Length;
}

const DAYS_A_WEEK = 7;
const MS_A_DAY = 86_400_000;

/** A session with its shots. @internal */
export interface LoggedSession extends SessionRow {
  readonly members: readonly MeasuredShot[];
}

/** Shots by session, or by date where they name none; in order of time where all are dated. @internal */
export function sessionGroups(
  shots: readonly MeasuredShot[],
): readonly { readonly name: string; readonly members: readonly MeasuredShot[]; readonly day?: number }[] {
  const groups = new Map<string, MeasuredShot[]>();
  for (const shot of shots) {
    const key = shot.session ?? shot.date ?? '';
    const members = groups.get(key);
    if (members === undefined) groups.set(key, [shot]);
    else members.push(shot);
  }
  const dated = [...groups].map(([name, members]) => {
    const day = dayOf(members);
    return { name, members, ...(day !== undefined && { day }) };
  });
  if (dated.every(({ day }) => day !== undefined)) dated.sort((a, b) => (a.day ?? 0) - (b.day ?? 0));
  return dated;
}

/** Shots put into sessions, in order of time. @throws FairflightError for fewer than two sessions @internal */
export function sessionsOf(shots: readonly MeasuredShot[]): {
  readonly sessions: readonly LoggedSession[];
  readonly timeUnit: 'weeks' | 'sessions';
  readonly unused: number;
} {
  const usable = shots.filter(
    ({ session, date, clubSpeed }) => (session ?? date) !== undefined && clubSpeed !== undefined,
  );
  const dated = sessionGroups(usable);
  if (dated.length < 2) {
    throw refusal(
      'shots',
      `a training log needs two sessions or more with club speeds, each shot with its session or date; got ${dated.length}`,
      { value: shots.length },
    );
  }
  const allDated = dated.every(({ day }) => day !== undefined);
  const start = dated[0]?.day ?? 0;
  return {
    sessions: dated.map(({ name, members, day }, i): LoggedSession => {
      const carries = members.flatMap((shot) => shot.carry ?? []);
      return {
        name,
        time: allDated ? ((day ?? 0) - start) / DAYS_A_WEEK : i,
        shots: members.length,
        clubSpeed: si(mean(members.flatMap((shot) => shot.clubSpeed ?? []))),
        ...(carries.length > 0 && { carry: si<Length>(mean(carries)) }),
        members,
      };
    }),
    timeUnit: allDated ? 'weeks' : 'sessions',
    unused: shots.length - usable.length,
  };
}

/** Days since 1970 of the first shot with a date written YYYY-MM-DD. */
function dayOf(members: readonly MeasuredShot[]): number | undefined {
  for (const { date } of members) {
    const found = /^(\d{4})-(\d{2})-(\d{2})/.exec(date ?? '');
    if (found !== null) {
      const time = Date.UTC(Number(found[1]), Number(found[2]) - 1, Number(found[3]));
      if (Number.isFinite(time)) return time / MS_A_DAY;
    }
  }
  return undefined;
}
