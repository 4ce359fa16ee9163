import { isList } from '../errors.js';
import {
  type CustomField,
  custom,
  type Declared,
  optional,
  quantity,
  record,
  text,
} from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import { readChoice, readList } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { naturalGroups } from '../numerics/index.js';
import { mph, type Speed, toMph } from '../units/index.js';
import { MPH } from '../units/unit.js';

/** A band of club speed: `from` included, `to` excluded. */
export interface SpeedBand {
  /** Name for reports; default the two speeds. */
  readonly name?: string;
  /** Slowest club speed of the band [m/s], 0 to 90. */
  readonly from: Speed;
  /** Club speed at which the band ends [m/s], 0 to 1,000, not below `from`. */
  readonly to: Speed;
}

/**
 * How shots are put into bands. `labels`: by the label each shot carries. `found`: by the gaps in the club speeds
 * themselves. `one`: all together. Or a list of bands.
 */
export type Banding = 'labels' | 'found' | 'one' | readonly SpeedBand[];

/** Declaration of {@link SpeedBand}. @internal */
export const speedBandFields: Declared<SpeedBand> = /* @__PURE__ */ frozen(() => ({
  name: optional(text('easy', 'name of the band')),
  from: quantity(MPH, 0, 90, 40, 'start of the band'),
  to: quantity(MPH, 0, 1000, 44, 'end of the band'),
}));

/** Declaration of {@link Banding}. @internal */
export const bandingField: CustomField & { readonly optional: true } = /* @__PURE__ */ frozen(() =>
  custom(readBanding, 'bands'),
);

type BandingName = Exclude<Banding, readonly SpeedBand[]>;

function readBanding(value: unknown, path: string): Banding {
  if (!isList(value)) return readChoice<BandingName>(['labels', 'found', 'one'], value, path);
  const of = record(speedBandFields, 'speed band', requireForward);
  const bands = readList({ of, least: 0, most: 1000 }, value, path) as readonly SpeedBand[];
  const ordered = [...bands].sort((a, b) => a.from - b.from);
  ordered.slice(1).forEach((band, i) => {
    const before = ordered[i];
    if (before === undefined || before.to <= band.from) return;
    throw refusal(path, `${path} must not overlap: ${nameOf(before)} and ${nameOf(band)}`, { value });
  });
  return ordered;
}

function requireForward({ from, to }: SpeedBand, path: string): void {
  if (to >= from) return;
  throw refusal(`${path}.to`, `${path}.to must not be below ${path}.from: ${to} m/s after ${from} m/s`, {
    value: to,
    unit: 'm/s',
  });
}

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
const LEAST_SPREAD: Speed = /* @__PURE__ */ frozen(() => mph(0.5));

/** Puts shots into bands; the banding has been read, and so its bands lie in order. @internal */
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

function byGivenBands(shots: readonly MeasuredShot[], ordered: readonly SpeedBand[]): BandedShots {
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

function nameOf(band: SpeedBand): string {
  return band.name ?? `${toMph(band.from).toFixed(0)} to ${toMph(band.to).toFixed(0)} mph`;
}
