import { mean, median } from 'd3-array';
import type { Scene } from 'fairflight';
import {
  type GainsToShow,
  judgeTraining,
  type MeasuredShot,
  type SessionSummary,
  summariseSession,
  type TrainingReport,
} from 'fairflight/session';
import { gainsOf } from '../lib/gains.js';
import { type Sifted, sift } from '../lib/odd.js';
import type { Progress } from '../lib/progress.js';

/** The whole answer. */
export interface TrainingLog {
  readonly report: TrainingReport;
  readonly sifted: Sifted;
  /** Estimates of each session, in the order of the report. */
  readonly sessions: SessionSummary['bands'];
  /** Mean club speed of the sessions at either end [m/s]. */
  readonly first: number;
  readonly last: number;
  /** Club speed of the trend line at a time [m/s]; absent without a trend. */
  readonly trendAt: ((time: number) => number) | undefined;
  /** What it takes to show a gain of club speed; absent where that does not repeat. */
  readonly toShow: GainsToShow | undefined;
  readonly scene: Scene;
  readonly keptOutliers: boolean;
}

/** What to work out. */
export interface LogQuestion {
  readonly shots: readonly MeasuredShot[];
  readonly block: number | undefined;
  readonly scene: Scene;
  readonly keepOutliers: boolean;
}

/** Steps of work for a progress bar. */
export const WORK = 3;

/** Judges the log. */
export function trainingLog(question: LogQuestion, progress: Progress): TrainingLog {
  const { shots, block, scene, keepOutliers } = question;
  const sifted = sift(shots, sessionOf, keepOutliers);
  progress.tick(1);
  const report = judgeTraining(sifted.used, scene, block === undefined ? {} : { block });
  progress.tick(2);
  const labelled = sifted.used.map((shot) => ({ ...shot, label: sessionOf(shot) }));
  const { bands } = summariseSession(labelled, { bands: 'labels' });
  progress.tick(WORK);
  const speeds = report.sessions.map(({ clubSpeed }) => clubSpeed);
  return {
    report,
    sifted,
    sessions: report.sessions.flatMap(({ name }) => bands.find((band) => band.name === name) ?? []),
    first: mean(speeds.slice(0, report.block)) ?? Number.NaN,
    last: mean(speeds.slice(-report.block)) ?? Number.NaN,
    trendAt: trendOf(report),
    toShow: gainsOf(shots),
    scene,
    keptOutliers: keepOutliers,
  };
}

/** The session of a shot, as the library groups them. */
export function sessionOf({ session, date }: MeasuredShot): string {
  return session ?? date ?? 'no session named';
}

/** Theil and Sen's line: the median slope, through the median of what it leaves. */
function trendOf({ perTime, sessions }: TrainingReport): TrainingLog['trendAt'] {
  if (perTime === undefined) return undefined;
  const start = median(sessions, ({ clubSpeed, time }) => clubSpeed - perTime.value * time) ?? Number.NaN;
  return (time) => start + perTime.value * time;
}
