import { mean } from 'd3-array';
import { type ModelWarning, type Scene, warningText } from 'fairflight';
import {
  changeElsewhere,
  type MeasuredShot,
  type ModelledChange,
  type SampleEstimate,
  standardise,
  summariseSession,
} from 'fairflight/session';
import type { Length } from 'fairflight/units';
import type { Display } from '../lib/display.js';
import { type Sifted, sift } from '../lib/odd.js';
import type { Progress } from '../lib/progress.js';
import { counted } from '../lib/text.js';
import { UsageError } from '../lib/usage-error.js';
import type { Place } from './scenes.js';

/** A club in one place; distances in metres. */
export interface ClubThere {
  readonly carry: number;
  readonly total: number;
  /** There less where it was measured. */
  readonly carryChange: ModelledChange;
  readonly totalChange: ModelledChange;
  /** How far the ball is moved to the right. */
  readonly drift: ModelledChange;
}

/** One club. */
export interface ClubCard {
  readonly club: string;
  readonly shots: number;
  /** Carry and total where it was measured. */
  readonly carry: SampleEstimate<Length>;
  readonly total: SampleEstimate<Length>;
  readonly basis: { readonly carry: 'measured' | 'modelled'; readonly total: 'measured' | 'modelled' };
  /** Carry by the model less measured; absent when none was measured. */
  readonly modelLess: number | undefined;
  readonly there: Readonly<Record<Place['key'], ClubThere>>;
}

/** The whole answer. */
export interface Elsewhere {
  readonly home: Scene;
  readonly places: readonly Place[];
  /** Longest first. */
  readonly clubs: readonly ClubCard[];
  readonly sifted: Sifted;
  readonly keptOutliers: boolean;
  /** Shots without a launch, which cannot be flown again. */
  readonly withoutLaunch: number;
  /** What the models say about their range, once each. */
  readonly warnings: readonly Noted[];
}

interface Noted {
  /** The first of its kind. */
  readonly warning: ModelWarning;
  readonly shots: number;
}

/** What to work out. */
export interface ElsewhereQuestion {
  readonly shots: readonly MeasuredShot[];
  readonly home: Scene;
  readonly places: readonly Place[];
  readonly keepOutliers: boolean;
}

/** Name of the club of a shot. */
export function clubOf({ club }: MeasuredShot): string {
  return club ?? 'club not named';
}

/** Flies every shot again in every place. `progress` counts the clubs. */
export function elsewhere(question: ElsewhereQuestion, progress: Progress): Elsewhere {
  const { shots, home, places, keepOutliers } = question;
  const flown = shots.filter(
    ({ ballSpeed, launchAngle, spinRate }) =>
      ballSpeed !== undefined && launchAngle !== undefined && spinRate !== undefined,
  );
  if (flown.length === 0) {
    throw new UsageError('no shot has ball speed, launch angle and spin, so none can be flown elsewhere');
  }
  const sifted = sift(flown, clubOf, keepOutliers);
  const warnings = new Map<string, Noted>();
  const names = [...new Set(sifted.used.map(clubOf))];
  const clubs = names.map((club, i) => {
    const own = sifted.used.filter((shot) => clubOf(shot) === club);
    const card = cardOf(club, own, question, warnings);
    progress.tick(i + 1);
    return card;
  });
  return {
    home,
    places,
    clubs: clubs.sort((a, b) => b.carry.mean - a.carry.mean),
    sifted,
    keptOutliers: keepOutliers,
    withoutLaunch: shots.length - flown.length,
    warnings: [...warnings.values()],
  };
}

function cardOf(
  club: string,
  shots: readonly MeasuredShot[],
  { home, places }: ElsewhereQuestion,
  warnings: Map<string, Noted>,
): ClubCard {
  const here = shots.map((shot) => standardise(shot, { from: home, to: home }));
  const { bands } = summariseSession(
    here.map(({ shot }) => shot),
    { bands: 'one' },
  );
  const { carry, total } = bands[0]?.quantities ?? {};
  if (carry === undefined || total === undefined) throw new UsageError(`${club}: no shot could be flown`);
  const there = places.map(({ key, scene }) => {
    const moved = shots.map((shot) => standardise(shot, { from: home, to: scene }));
    for (const each of moved) note(warnings, each.warnings);
    const change = changeElsewhere(shots, { from: home, to: scene });
    return [
      key,
      {
        carry: carry.mean + change.carry.value,
        total: total.mean + change.total.value,
        carryChange: change.carry,
        totalChange: change.total,
        drift: change.side,
      },
    ] as const;
  });
  const basisOf = (name: 'carry' | 'total'): 'measured' | 'modelled' =>
    here.every(({ basis }) => basis[name] === 'measured') ? 'measured' : 'modelled';
  const gaps = here.flatMap(({ here: model, shot, basis }) =>
    basis.carry === 'measured' && shot.carry !== undefined ? [model.carry - shot.carry] : [],
  );
  return {
    club,
    shots: shots.length,
    carry,
    total,
    basis: { carry: basisOf('carry'), total: basisOf('total') },
    modelLess: mean(gaps),
    there: Object.fromEntries(there) as Record<Place['key'], ClubThere>,
  };
}

/** One line a model and kind of warning, however many shots are outside its range. */
function note(warnings: Map<string, Noted>, found: readonly ModelWarning[]): void {
  const keyOf = ({ model, code }: ModelWarning): string => `${model}: ${code}`;
  for (const key of new Set(found.map(keyOf))) {
    const warning = warnings.get(key)?.warning ?? found.find((each) => keyOf(each) === key);
    if (warning !== undefined) warnings.set(key, { warning, shots: (warnings.get(key)?.shots ?? 0) + 1 });
  }
}

/** The warnings in words, and in how many flights each was raised. */
export function warningLines(
  { warnings }: Elsewhere,
  { spoken }: Display,
): readonly { readonly message: string; readonly shots: number }[] {
  return warnings.map(({ warning, shots }) => ({ message: warningText(warning, { units: spoken }), shots }));
}

/** How many shots are not used for want of a launch; empty when all have one. */
export function withoutLaunchSentence({ withoutLaunch }: Elsewhere): string {
  return withoutLaunch === 0
    ? ''
    : `${counted(withoutLaunch, 'shot')} without ball speed, launch angle and spin not used: they cannot be flown again.`;
}
