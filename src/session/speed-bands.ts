import { FairflightError, requireWithin } from '../errors.js';
import { naturalGroups } from '../numerics/index.js';
import { mph, type Speed, toMph } from '../units/index.js';
import type { MeasuredShot } from './measured-shot.js';

/** A band of club speed: `from` included, `to` excluded. */
export interface SpeedBand {
  /** Name for reports; default the two speeds. */
  readonly name?: string;
  /** Slowest club speed of the band [m/s]. */
  readonly from: Speed;
  /** Club speed at which the band ends [m/s]. */
  readonly to: Speed;
}

/**
 * How shots are put into bands. `labels`: by the label each shot carries. `found`: by the gaps in the club speeds
 * themselves. `one`: all together. Or a list of bands.
 */
export type Banding = 'labels' | 'found' | 'one' | readonly SpeedBand[];

/** Shots of one band, by their place in the list. @internal */
export interface BandMembers {
  readonly name: string;
  readonly shots: readonly number[];
}

/** @internal */
export interface BandedShots {
  /** What decided. */
  readonly by: 'labels' | 'given' | 'found' | 'one';
  readonly bands: readonly BandMembers[];
  readonly unassigned: readonly { readonly shot: number; readonly reason: string }[];
}

/** Differences of club speed below half a mile per hour never make a band: devices don't resolve more. */
const LEAST_SPREAD = mph(0.5);

/** @internal */
export function bandShots(shots: readonly MeasuredShot[], banding: Banding | undefined): BandedShots {
  if (typeof banding === 'object') return byGivenBands(shots, banding);
  const labelled = shots.every((shot) => shot.label !== undefined);
  const timed = shots.some((shot) => shot.clubSpeed !== undefined);
  const choice = banding ?? (labelled ? 'labels' : timed ? 'found' : 'one');
  if (choice === 'labels') return byLabel(shots);
  if (choice === 'found') return byGaps(shots);
  return { by: 'one', bands: [{ name: 'all shots', shots: shots.map((_, i) => i) }], unassigned: [] };
}

function byLabel(shots: readonly MeasuredShot[]): BandedShots {
  const groups = new Map<string, number[]>();
  const unassigned: { shot: number; reason: string }[] = [];
  shots.forEach((shot, i) => {
    if (shot.label === undefined) unassigned.push({ shot: i, reason: 'it carries no label' });
    else groups.set(shot.label, [...(groups.get(shot.label) ?? []), i]);
  });
  return {
    by: 'labels',
    bands: [...groups].map(([name, members]) => ({ name, shots: members })),
    unassigned,
  };
}

function byGivenBands(shots: readonly MeasuredShot[], given: readonly SpeedBand[]): BandedShots {
  const ordered = given.map((band, i) => checkedBand(band, i)).sort((a, b) => a.from - b.from);
  ordered.slice(1).forEach((band, i) => {
    const before = ordered[i];
    if (before !== undefined && before.to > band.from) {
      throw new FairflightError(
        'invalid-input',
        `bands must not overlap: ${nameOf(before)} and ${nameOf(band)}`,
        {
          field: 'bands',
          value: given,
        },
      );
    }
  });
  const bands = ordered.map((band) => ({ name: nameOf(band), shots: [] as number[] }));
  const unassigned: { shot: number; reason: string }[] = [];
  shots.forEach((shot, i) => {
    const speed = shot.clubSpeed;
    const at = speed === undefined ? -1 : ordered.findIndex((band) => speed >= band.from && speed < band.to);
    const band = bands[at];
    if (band !== undefined) band.shots.push(i);
    else
      unassigned.push({
        shot: i,
        reason:
          speed === undefined
            ? 'its club speed was not measured'
            : `its club speed, ${toMph(speed).toFixed(1)} mph, lies in no band`,
      });
  });
  return { by: 'given', bands: bands.filter((band) => band.shots.length > 0), unassigned };
}

function byGaps(shots: readonly MeasuredShot[]): BandedShots {
  const timed: number[] = [];
  const speeds: number[] = [];
  const unassigned: { shot: number; reason: string }[] = [];
  shots.forEach((shot, i) => {
    if (shot.clubSpeed === undefined) unassigned.push({ shot: i, reason: 'its club speed was not measured' });
    else {
      timed.push(i);
      speeds.push(shot.clubSpeed);
    }
  });
  if (timed.length === 0) return { by: 'found', bands: [], unassigned };
  const groups = naturalGroups(speeds, LEAST_SPREAD);
  const bands = Array.from({ length: Math.max(...groups) + 1 }, (_, g) => {
    const members = timed.filter((__, k) => groups[k] === g);
    const own = speeds.filter((__, k) => groups[k] === g);
    const low = toMph(Math.min(...own) as Speed).toFixed(0);
    const high = toMph(Math.max(...own) as Speed).toFixed(0);
    return { name: low === high ? `${low} mph` : `${low} to ${high} mph`, shots: members };
  });
  return { by: 'found', bands, unassigned };
}

function checkedBand(band: SpeedBand, i: number): SpeedBand {
  requireWithin(`bands[${i}].from`, band.from, 0, 90, 'm/s');
  requireWithin(`bands[${i}].to`, band.to, band.from, 1000, 'm/s');
  return band;
}

function nameOf(band: SpeedBand): string {
  return band.name ?? `${toMph(band.from).toFixed(0)} to ${toMph(band.to).toFixed(0)} mph`;
}
