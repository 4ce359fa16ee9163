import { deviation, mean, median, sum } from 'd3-array';
import { type Clubhead, type Delivery, isFairflightError, locateStrike, type PlayerHand } from 'fairflight';
import type { Correlation, DeliverySd, ScalableSpread, ScatterLaw } from 'fairflight/dispersion';
import {
  type MeasuredShot,
  type OddShot,
  type ScatterTrend,
  scatterTrend,
  summariseSession,
} from 'fairflight/session';
import { type Angle, type Length, type Speed, si, toMph } from 'fairflight/units';
import type { Progress } from '../lib/progress.js';
import { UsageError } from '../lib/usage-error.js';

/** How scatter is said to change with speed. */
export type LawChoice = 'constant' | 'measured' | { readonly perMph: number } | undefined;

/** The growth of scatter that is reckoned with, and where it comes from. */
export type ChosenLaw =
  | { readonly kind: 'constant' | 'asked'; readonly growth: ScatterLaw }
  | { readonly kind: 'measured'; readonly growth: ScatterLaw; readonly trend: ScatterTrend };

/** A player as the shots show him or her. */
export interface Player {
  /** The usual delivery now. */
  readonly usual: Delivery;
  readonly spread: ScalableSpread;
  readonly law: ChosenLaw;
  /** The player's own trend of direction scatter; absent where all shots have one speed. */
  readonly trend: ScatterTrend | undefined;
  /** Shots of the band that stands for now, and its measured sideways scatter at landing [m]. */
  readonly now: { readonly shots: readonly MeasuredShot[]; readonly side: number | undefined };
  /** Shots behind the scatter. */
  readonly used: number;
  /** Outliers left out, and shots whose readings no strike explains. */
  readonly odd: readonly OddShot[];
  readonly unexplained: readonly number[];
  /** Shots without the readings that are needed. */
  readonly incomplete: number;
}

/** What is asked of the shots. */
export interface PlayerQuestion {
  readonly shots: readonly MeasuredShot[];
  readonly clubhead: Clubhead;
  readonly hand: PlayerHand;
  readonly now: Speed | undefined;
  readonly law: LawChoice;
  readonly keepOutliers: boolean;
}

interface Located {
  readonly delivery: Delivery;
  readonly shot: MeasuredShot;
}

/** Names of what scatters, and how it is read from a delivery. */
const SCATTERS = {
  clubSpeed: ({ clubSpeed }: Delivery) => clubSpeed,
  attackAngle: ({ attackAngle }: Delivery) => attackAngle,
  clubPath: ({ clubPath }: Delivery) => clubPath ?? 0,
  faceAngle: ({ faceAngle }: Delivery) => faceAngle ?? 0,
  dynamicLoft: ({ dynamicLoft }: Delivery) => dynamicLoft,
  toe: ({ strikeOffset }: Delivery) => strikeOffset?.toe ?? 0,
  high: ({ strikeOffset }: Delivery) => strikeOffset?.high ?? 0,
} as const;
type ScatterName = keyof typeof SCATTERS;
const NAMES = Object.keys(SCATTERS) as ScatterName[];

/** Fewest shots of a band from which scatter is taken, and of a player. */
const FEWEST = 3;
const FEWEST_ALL = 5;
/** Below this many degrees of freedom correlations are noise. */
const ENOUGH_FOR_CORRELATIONS = 20;

/** Reads a player out of measured shots. `progress` counts them. @throws UsageError when they do not say enough */
export function playerFrom(question: PlayerQuestion, progress: Progress): Player {
  const { shots, clubhead, hand, keepOutliers } = question;
  const complete = shots.filter(isComplete);
  if (complete.length < FEWEST_ALL) {
    throw new UsageError(
      `${complete.length} of ${shots.length} shots have club speed, ball speed, launch angle, launch direction and spin; ${FEWEST_ALL} are needed to see a scatter`,
    );
  }
  const summary = summariseSession(complete);
  const outliers = new Set(
    summary.oddShots.flatMap(({ shot, verdict }) => (verdict === 'outlier' ? [shot] : [])),
  );
  const unexplained: number[] = [];
  let done = 0;
  const bands = summary.bands.map((band) =>
    band.shots.flatMap((i): Located[] => {
      const shot = complete[i];
      if (shot === undefined || (!keepOutliers && outliers.has(i))) return [];
      const found = locateStrike(shot, { clubhead, hand });
      done++;
      progress.tick(done);
      if (found.outcome === 'located') return [{ delivery: found.delivery, shot }];
      unexplained.push(shot.line ?? i + 1);
      return [];
    }),
  );
  const groups = bands.filter((band) => band.length >= FEWEST);
  if (groups.length === 0) {
    throw new UsageError(`no band of club speed has ${FEWEST} shots that can be used; hit more at one speed`);
  }
  const trend = trendOf(groups);
  const law = lawFrom(question.law, trend);
  const home = homeBand(groups, question.now);
  const clubSpeed = question.now ?? speedOf(home);
  return {
    usual: { ...meanDelivery(home), clubSpeed, hand },
    spread: spreadOf(groups, law.growth, clubSpeed),
    law,
    trend,
    now: { shots: home.map(({ shot }) => shot), side: sideOf(home) },
    used: sum(groups, ({ length }) => length),
    odd: summary.oddShots,
    unexplained,
    incomplete: shots.length - complete.length,
  };
}

function isComplete(shot: MeasuredShot): boolean {
  return (['clubSpeed', 'ballSpeed', 'launchAngle', 'launchDirection', 'spinRate'] as const).every(
    (name) => shot[name] !== undefined,
  );
}

function trendOf(groups: readonly (readonly Located[])[]): ScatterTrend | undefined {
  const labelled = groups.flatMap((group, i) => group.map(({ shot }) => ({ ...shot, label: `band ${i}` })));
  try {
    return scatterTrend(labelled, { bands: 'labels' });
  } catch (error) {
    if (isFairflightError(error) && error.code === 'invalid-input') return undefined;
    throw error;
  }
}

/** The law asked for; else the player's own trend where it is shown, and constant degrees where it is not. */
function lawFrom(choice: LawChoice, trend: ScatterTrend | undefined): ChosenLaw {
  if (choice === 'constant') return { kind: 'constant', growth: {} };
  if (typeof choice === 'object') {
    return { kind: 'asked', growth: { directionPerMph: choice.perMph, strikePerMph: choice.perMph } };
  }
  if (choice === 'measured' && trend === undefined) {
    throw new UsageError('--law measured needs shots at two speeds or more, three of each');
  }
  if (trend === undefined || (choice === undefined && trend.unclear)) return { kind: 'constant', growth: {} };
  return { kind: 'measured', growth: { directionPerMph: trend.growthPerMph }, trend };
}

/** The band nearest the speed asked for; else the one with most shots, of several that nearest the median speed. */
function homeBand(groups: readonly (readonly Located[])[], now: Speed | undefined): readonly Located[] {
  const most = Math.max(...groups.map((group) => group.length));
  const usual = now === undefined ? groups.filter((group) => group.length === most) : groups;
  const aim = now ?? median(groups.flat(), ({ shot }) => shot.clubSpeed) ?? Number.NaN;
  return usual.reduce((kept, group) =>
    Math.abs(speedOf(group) - aim) < Math.abs(speedOf(kept) - aim) ? group : kept,
  );
}

/** Mean club speed of a band as measured; the strikes found may say something else. */
function speedOf(band: readonly Located[]): Speed {
  return si(mean(band, ({ shot }) => shot.clubSpeed) ?? Number.NaN);
}

function meanDelivery(band: readonly Located[]): Delivery {
  const of = (name: ScatterName): number =>
    mean(band, ({ delivery }) => SCATTERS[name](delivery)) ?? Number.NaN;
  return {
    clubSpeed: si<Speed>(of('clubSpeed')),
    attackAngle: si<Angle>(of('attackAngle')),
    clubPath: si<Angle>(of('clubPath')),
    faceAngle: si<Angle>(of('faceAngle')),
    dynamicLoft: si<Angle>(of('dynamicLoft')),
    strikeOffset: { toe: si<Length>(of('toe')), high: si<Length>(of('high')) },
  };
}

function sideOf(band: readonly Located[]): number | undefined {
  const sides = band.flatMap(({ shot }) => shot.side ?? []);
  return sides.length < FEWEST ? undefined : deviation(sides);
}

/** Scatter pooled over all bands, each brought to the present speed by the law. */
function spreadOf(groups: readonly (readonly Located[])[], law: ScatterLaw, now: Speed): ScalableSpread {
  const rows = groups.flatMap((group) => {
    const centre = meanDelivery(group);
    const { direction, strike } = factorsOf(law, toMph(si<Speed>(centre.clubSpeed - now)));
    return group.map(({ delivery }) =>
      NAMES.map((name) => {
        const left = SCATTERS[name](delivery) - SCATTERS[name](centre);
        if (name === 'clubPath' || name === 'faceAngle') return left / direction;
        return name === 'toe' || name === 'high' ? left / strike : left;
      }),
    );
  });
  const dof = rows.length - groups.length;
  const product = (i: number, j: number): number => sum(rows, (row) => (row[i] ?? 0) * (row[j] ?? 0)) / dof;
  const sd = NAMES.map((_, i) => Math.sqrt(product(i, i)));
  const correlations = NAMES.flatMap((a, i): Correlation<ScatterName>[] =>
    NAMES.slice(i + 1).map((b, k) => {
      const j = i + 1 + k;
      return { between: [a, b], value: product(i, j) / ((sd[i] ?? 1) * (sd[j] ?? 1)) };
    }),
  );
  return {
    kind: 'student-t',
    sd: Object.fromEntries(NAMES.map((name, i) => [name, sd[i]])) as DeliverySd,
    ...(dof >= ENOUGH_FOR_CORRELATIONS && sd.every((each) => each > 0) && { correlations }),
  };
}

/** Factors on the scatter of direction and strike, some mph faster than now. */
export function factorsOf(
  { directionPerMph = 0, strikePerMph = 0 }: ScatterLaw,
  faster: number,
): { direction: number; strike: number } {
  return { direction: (1 + directionPerMph) ** faster, strike: (1 + strikePerMph) ** faster };
}
