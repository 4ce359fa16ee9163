import type { Length, Speed } from '../units/index.js';
import type { ChangeAttribution } from './attribution.js';
import type { CarryOver } from './carry-over.js';
import type { SessionRow } from './log-sessions.js';
import type { QuantityName } from './quantities.js';
import type { ScatterChange } from './scatter-change.js';

/** A change between the first and the last sessions, with its interval. */
export interface LogChange<Q extends number> {
  /** Last sessions less first. */
  readonly value: Q;
  /** Lower end. */
  readonly low: Q;
  /** Upper end. */
  readonly high: Q;
}

/** What a training log shows. */
export interface TrainingReport {
  /** The sessions in order of time. */
  readonly sessions: readonly SessionRow[];
  /** Unit of {@link SessionRow.time}. */
  readonly timeUnit: 'weeks' | 'sessions';
  /** Sessions averaged at each end. */
  readonly block: number;
  /**
   * `gain` or `loss`: the change is more than day-to-day variation makes. `not-shown`: it is not. `too-few-sessions`:
   * with fewer than four sessions day-to-day variation is not known.
   */
  readonly verdict: 'gain' | 'loss' | 'not-shown' | 'too-few-sessions';
  /** Whether sessions resemble their neighbours, which widens what follows; absent with too few sessions. */
  readonly carryOver?: CarryOver;
  /** Change of mean club speed between the first and last sessions; absent with too few sessions. */
  readonly change?: LogChange<Speed>;
  /** Change of club speed a week (or a session), Theil–Sen through the session means; absent with too few sessions, at 95 % fewer than five. */
  readonly perTime?: LogChange<Speed>;
  /** Typical error of a session's mean club speed from one day to another [m/s]; absent with too few sessions. */
  readonly dayToDay?: Speed;
  /** Smallest change between first and last sessions that is more than day-to-day variation [m/s]. */
  readonly detectable?: Speed;
  /** Yards the change of speed is worth at the player's own carry against club speed; absent when that shows no trend. */
  readonly worth?: LogChange<Length>;
  /** Change of carry split into its causes, when launches were measured at both ends. */
  readonly causes?: ChangeAttribution;
  /** Scatter within sessions, where it could be compared. */
  readonly scatter: { readonly [K in QuantityName]?: ScatterChange };
  /** Next target for mean club speed; absent with too few sessions. How many sessions show the step, `gainsToShow` says. */
  readonly next?: { readonly clubSpeed: Speed; readonly step: Speed };
  /** Coverage of all intervals. */
  readonly level: number;
  /** What a reader should know, in words. */
  readonly remarks: readonly string[];
  /** Precautions that belong beside any advice to train speed. */
  readonly cautions: readonly string[];
}
