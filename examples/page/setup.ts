import { type Clubhead, type ClubheadName, clubheads, isFairflightError } from 'fairflight';
import type { ShotTable } from 'fairflight/schema';
import type { MeasuredShot } from 'fairflight/session';
import { type Angle, degrees } from 'fairflight/units';
import type { LadderSetup } from '../ladder/rungs.js';
import { type Display, displays } from '../lib/display.js';
import { driverFor } from '../lib/driver.js';
import { type SceneOption, sceneFrom } from '../lib/scene-options.js';
import { UsageError } from '../lib/usage-error.js';
import { clubsOf } from './read-file.js';
import { PLACE_UNITS, type Study } from './study.js';

/** What the answers about one club start from. */
export interface Setup {
  readonly display: Display;
  /** As the file writes it; empty where it names none. */
  readonly club: string;
  readonly shots: readonly MeasuredShot[];
  readonly ladder: LadderSetup;
  /** Options of the scene as the programs take them. */
  readonly place: Readonly<Partial<Record<SceneOption, string>>>;
  /** Advice on loft, strike and scatter is about drivers. */
  readonly isDriver: boolean;
}

const HEADS: readonly (readonly [RegExp, ClubheadName])[] = [
  [/driver|^1 ?w\b|\b1 ?wood/i, 'driver'],
  [/wood|^\d ?w\b/i, 'fairwayWood'],
  [/hybrid|rescue|^\d ?h\b/i, 'hybrid'],
  [/wedge|^[pgsla] ?w\b/i, 'wedge'],
  [/^[1-4]\b|[1-4] ?-?iron|iron ?[1-4]/i, 'longIron'],
  [/^[89]\b|[89] ?-?iron|iron ?[89]/i, 'shortIron'],
  [/iron|^\d ?i\b/i, 'midIron'],
];

/** The generic head that a club's name stands for; a club without a name is taken as a driver. */
export function headNamed(club: string): ClubheadName {
  if (club === '') return 'driver';
  return HEADS.find(([pattern]) => pattern.test(club))?.[1] ?? 'driver';
}

/** Shots of the club looked at, and the conditions typed. @throws UsageError or FairflightError for what cannot be */
export function setupOf(study: Study, table: ShotTable): Setup {
  const display = displays[study.units];
  const club = clubIn(study, table.shots);
  const shots = club === '' ? table.shots : table.shots.filter((shot) => shot.club === club);
  const place = placeOf(study);
  const scene = sceneFrom({ text: (name) => place[name] });
  const head = headNamed(club);
  const own = driverFor({ ...table, shots }, undefined);
  const read: Clubhead = head === 'driver' ? own : clubheads[head];
  return {
    display,
    club,
    shots,
    place,
    isDriver: head === 'driver',
    ladder: {
      clubhead: study.loft.trim() === '' ? read : { ...read, staticLoft: loftOf(study.loft) },
      scene,
      hand: handIn(study, shots),
      maximise: 'carry',
      keepOutliers: study.keepOdd,
    },
  };
}

/** The club chosen where the file has it, else the one with most shots. */
export function clubIn({ club }: Study, shots: readonly MeasuredShot[]): string {
  const clubs = clubsOf(shots);
  return clubs.find((each) => each === club) ?? clubs[0] ?? '';
}

function placeOf({ altitude, temperature, turf, units }: Study): Setup['place'] {
  const unit = PLACE_UNITS[units];
  const typed = (text: string): string => text.trim().replace(',', '.').replace('−', '-');
  return {
    ...(typed(altitude) !== '' && { altitude: `${typed(altitude)}${unit.altitude}` }),
    ...(typed(temperature) !== '' && { temperature: `${typed(temperature)}${unit.temperature}` }),
    turf,
  };
}

function loftOf(text: string): Angle {
  const value = Number(text.trim().replace(',', '.').replace('°', ''));
  if (value > 0 && value < 70) return degrees(value);
  throw new UsageError(`the loft must be a number of degrees like 10.5, not ${JSON.stringify(text)}`);
}

function handIn({ hand }: Study, shots: readonly MeasuredShot[]): 'right' | 'left' {
  if (hand !== '') return hand;
  return shots.some((shot) => shot.hand === 'left') && shots.every((shot) => shot.hand !== 'right')
    ? 'left'
    : 'right';
}

/** Says what a person can mend; any other error is passed on. */
export function reasonOf(error: unknown): string {
  if (error instanceof UsageError || isFairflightError(error)) return error.message;
  throw error;
}
