import { bestLoft, type CarryMap, carryMap, type Launch, strike } from 'fairflight';
import {
  type Calibration,
  type GainsToShow,
  type MeasuredShot,
  type SessionOptions,
  type SessionSummary,
  summariseSession,
} from 'fairflight/session';
import {
  type Angle,
  degrees,
  type Length,
  mph,
  rpm,
  type Speed,
  si,
  toDegrees,
  toRpm,
} from 'fairflight/units';
import type { Display } from '../lib/display.js';
import { gainsOf } from '../lib/gains.js';
import type { Progress } from '../lib/progress.js';
import { counted, fixed } from '../lib/text.js';
import { UsageError } from '../lib/usage-error.js';
import { type OddNote, oddNote } from './odd-shots.js';
import { type LadderSetup, type Rung, rungOf } from './rungs.js';
import { type Step, stepsOf } from './steps.js';

/** What the best loft carries at one club speed and the player's attack angle there. */
export interface AttainablePoint {
  readonly clubSpeed: Speed;
  readonly attackAngle: Angle;
  readonly carry: Length;
}

/** The whole answer. */
export interface Ladder {
  readonly setup: LadderSetup;
  /** How head and ball of the setup were fitted to the shots, when they were. */
  readonly calibration: Calibration | undefined;
  readonly summary: SessionSummary;
  /** Shots that stand apart, in words. */
  readonly odd: readonly OddNote[];
  /** Slowest first. */
  readonly rungs: readonly Rung[];
  readonly steps: readonly Step[];
  /** What it takes to show a gain of club speed; absent where that does not repeat. */
  readonly toShow: GainsToShow | undefined;
  readonly attainable: readonly AttainablePoint[];
  /** The band of the map, and the map; absent when its club speed is not known. */
  readonly map: { readonly rung: Rung; readonly carry: CarryMap };
  /** Launches this head gives at the speed of the map's band as its loft changes. */
  readonly deliverable: readonly Launch[];
}

/** What to work out. */
export interface LadderQuestion {
  readonly display: Display;
  readonly shots: readonly MeasuredShot[];
  readonly setup: LadderSetup;
  /** How head and ball of the setup were fitted to the shots, when they were. */
  readonly calibration: Calibration | undefined;
  readonly bands: SessionOptions['bands'];
  /** Band of the launch and spin map, counted from 1; default the one with most carry to gain. */
  readonly mapBand: number | undefined;
}

/** Bands found from the data go by their mean speed in the units shown; others keep the name they were given. */
function bandNames(
  { bands, bandedBy }: SessionSummary,
  { keepOutliers }: LadderSetup,
  display: Display,
): string[] {
  if (bandedBy !== 'found') return bands.map(({ name }) => name);
  const named = (decimals: number): string[] =>
    bands.map(({ quantities, withoutOutliers, name }) => {
      const speed = (keepOutliers ? quantities : (withoutOutliers ?? quantities)).clubSpeed?.mean;
      return speed === undefined ? name : `${fixed(display.speed.of(speed), decimals)} ${display.speed.unit}`;
    });
  return new Set(named(0)).size === bands.length ? named(0) : named(1);
}

/** Steps of work for a progress bar. */
export const WORK = 100;

/** Works the ladder out. */
export function ladderOf(
  { shots, setup, calibration, bands, mapBand, display }: LadderQuestion,
  progress: Progress,
): Ladder {
  const summary = summariseSession(shots, bands === undefined ? {} : { bands });
  if (summary.bands.length === 0) {
    const reasons = [...new Set(summary.unassigned.map(({ reason }) => reason))].slice(0, 3).join('; ');
    throw new UsageError(`--bands: no shot falls into a band (${reasons})`);
  }
  const names = bandNames(summary, setup, display);
  const ordered = summary.bands.map((band, i) => {
    const rung = rungOf(band, names[i] ?? band.name, summary, shots, setup);
    progress.tick((40 * (i + 1)) / summary.bands.length);
    return rung;
  });
  const rungs = ordered.sort((a, b) => (a.clubSpeed ?? 0) - (b.clubSpeed ?? 0));
  const rung = mapRung(rungs, mapBand);
  const steps = stepsOf(rungs, setup);
  progress.tick(60);
  const attainable = attainableLine(rungs, setup);
  progress.tick(85);
  const map = { rung, carry: mapOf(rung, setup) };
  progress.tick(WORK);
  const odd = summary.oddShots.flatMap((each) => {
    const home = rungs.find(({ shots: own }) => own.some(({ index }) => index === each.shot));
    return home === undefined ? [] : [oddNote(each, home, setup, display)];
  });
  return {
    setup,
    calibration,
    summary,
    odd,
    rungs,
    steps,
    toShow: gainsOf(shots),
    attainable,
    map,
    deliverable: deliverableLaunches(rung, setup),
  };
}

const SAMPLES = 15;

/** Best-loft carry from a little below the slowest to a little above the fastest band. */
function attainableLine(rungs: readonly Rung[], setup: LadderSetup): readonly AttainablePoint[] {
  const known = rungs.flatMap(({ clubSpeed, attackAngle }) =>
    clubSpeed === undefined || attackAngle === undefined ? [] : [{ speed: clubSpeed, attack: attackAngle }],
  );
  const [first, last] = [known[0], known[known.length - 1]];
  if (first === undefined || last === undefined) return [];
  const from = first.speed - mph(4);
  const to = last.speed + mph(4);
  return Array.from({ length: SAMPLES }, (_, i) => {
    const clubSpeed = si<Speed>(from + ((to - from) * i) / (SAMPLES - 1));
    const attackAngle = si<Angle>(attackAt(clubSpeed, known));
    const { clubhead, scene, maximise } = setup;
    const best = bestLoft({ clubSpeed, attackAngle }, scene, { clubhead, maximise });
    return { clubSpeed, attackAngle, carry: best.shot.carry };
  });
}

/** The player's attack angle at a speed: linear between bands, level beyond them. */
function attackAt(
  speed: number,
  known: readonly { readonly speed: number; readonly attack: number }[],
): number {
  for (const [i, high] of known.entries()) {
    const low = known[i - 1];
    if (speed > high.speed) continue;
    if (low === undefined) return high.attack;
    const share = (speed - low.speed) / (high.speed - low.speed);
    return low.attack + share * (high.attack - low.attack);
  }
  return known[known.length - 1]?.attack ?? 0;
}

function mapRung(rungs: readonly Rung[], asked: number | undefined): Rung {
  if (asked !== undefined) {
    const rung = rungs[asked - 1];
    if (rung !== undefined) return rung;
    throw new UsageError(`--map-band: there is no band ${asked}; there are ${counted(rungs.length, 'band')}`);
  }
  const left = ({ advice }: Rung): number =>
    Math.max(
      0,
      ...(advice?.changes ?? []).map(({ verdict, carry }) => (verdict === 'advised' ? carry.value : 0)),
    );
  return rungs.reduce((kept, rung) => (left(rung) > left(kept) ? rung : kept));
}

/** Carry around the shots of a band and its best loft. */
function mapOf(rung: Rung, { scene }: LadderSetup): CarryMap {
  const launches = [
    ...rung.shots.map(({ launch }) => launch),
    ...(rung.loft ? [rung.loft.optimum.shot.launch] : []),
  ];
  const angles = launches.map((launch) => toDegrees(launch.launchAngle));
  const spins = launches.map((launch) => toRpm(launch.spinRate));
  const cut = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
  const round = (value: number, step: number): number => Math.round(value / step) * step;
  return carryMap(
    {
      ballSpeed: rung.launch.ballSpeed,
      launchAngle: {
        min: degrees(cut(round(Math.min(...angles) - 2, 1), 0, 20)),
        max: degrees(cut(round(Math.max(...angles) + 4, 1), 12, 45)),
      },
      spinRate: {
        min: rpm(cut(round(Math.min(...spins) - 500, 100), 500, 6000)),
        max: rpm(cut(round(Math.max(...spins) + 800, 100), 2500, 12_000)),
      },
    },
    scene,
    { columns: 70, rows: 50 },
  );
}

function deliverableLaunches({ clubSpeed, attackAngle }: Rung, { clubhead }: LadderSetup): readonly Launch[] {
  if (clubSpeed === undefined) return [];
  const lofts = Array.from({ length: 49 }, (_, i) => degrees(4 + i * 0.5));
  return lofts.map(
    (dynamicLoft) =>
      strike({ clubSpeed, attackAngle: attackAngle ?? si<Angle>(0), dynamicLoft }, { clubhead }).launch,
  );
}
