import { type GainsToShow, gainsToShow, type MeasuredShot } from 'fairflight/session';
import type { Display } from './display.js';
import { fixed, listed, near } from './text.js';

/** What it takes to show a gain of club speed, by all shots of a file: the same for every program. */
export function gainsOf(shots: readonly MeasuredShot[]): GainsToShow | undefined {
  return shots.length === 0 ? undefined : gainsToShow(shots);
}

/** Shots within a session and sessions from day to day that show a gain; none where club speed does not repeat. */
export function gainSentences(shown: GainsToShow | undefined, { speed }: Display): readonly string[] {
  if (shown === undefined) return [];
  const { gains, shotToShot, dayToDay, basis, shotsASession } = shown;
  const each = (of: 'shots' | 'sessions'): string =>
    listed(
      gains.map(
        (gain) =>
          `${Number(speed.of(gain.gain).toFixed(1))} ${speed.unit} takes ${gain[of] ?? 'more than anyone can make'}`,
      ),
    );
  const days =
    basis === 'measured'
      ? 'as these sessions show'
      : 'an assumption, since fewer than four sessions do not show it';
  return [
    `To show a gain of club speed within one session, as when two clubs are compared, four times out of five: ${each('shots')} shots with each (from shot to shot it scatters by ${fixed(speed.of(shotToShot), 1)} ${speed.unit}).`,
    `To show it from day to day, as when training is judged: ${each('sessions')} sessions of ${fixed(shotsASession)} shots before and as many after (a session’s mean differs by ${fixed(speed.of(dayToDay), 1)} ${speed.unit} from one day to another, ${days}).`,
  ];
}

/** The same as JSON. */
export function gainsRecord(shown: GainsToShow, { speed }: Display): Readonly<Record<string, unknown>> {
  return {
    gains: shown.gains.map(({ gain, shots, sessions }) => ({
      [`gain (${speed.unit})`]: near(speed.of(gain), 2),
      'shots before and as many after, within a session': shots,
      'sessions before and as many after': sessions,
    })),
    [`shot to shot (${speed.unit})`]: near(speed.of(shown.shotToShot), 2),
    [`day to day (${speed.unit})`]: near(speed.of(shown.dayToDay), 2),
    'day to day is': shown.basis,
    'shots a session': shown.shotsASession,
  };
}
