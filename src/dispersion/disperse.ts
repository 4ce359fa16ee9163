import { requireRecord, requireWithin } from '../errors.js';
import { mean } from '../numerics/index.js';
import type { Launch } from '../scene/index.js';
import type { ShotSetup } from '../shot/index.js';
import type { ModelWarning } from '../source.js';
import type { Delivery } from '../strike/index.js';
import { type Length, toYards } from '../units/index.js';
import { type CloudOptions, playCloud, REPLICATES, type ShotColumns } from './cloud.js';
import { type Fairway, onFairway, positionOnHole, requireFairway } from './hole.js';
import {
  type DistanceDistribution,
  distributionOf,
  estimate,
  type MonteCarlo,
  pick,
  placesOf,
  replicatesOf,
  type Share,
  shareOf,
} from './monte-carlo.js';
import { type GroundEllipse, groundEllipses, type LandingRegion, landingRegion } from './region.js';
import type { Spread } from './spread.js';

/** With what, where and how shots are scattered. */
export interface DispersionSetup extends ShotSetup, CloudOptions {
  /** Fairway whose share is wanted. */
  readonly fairway?: Fairway;
  /** Lateral limits, for example trees or the boundary: share of balls at rest beyond them. */
  readonly limits?: {
    /** Distance of the limit to the left of the target line [m]. */
    readonly left?: Length;
    /** Distance of the limit to the right of the target line [m]. */
    readonly right?: Length;
  };
}

/** Estimates after a growing number of shots. */
export interface ConvergenceRow {
  /** Shots so far. */
  readonly shots: number;
  /** Mean carry so far [m]. */
  readonly carry: MonteCarlo<Length>;
  /** Mean total so far [m]. */
  readonly total: MonteCarlo<Length>;
  /** Share of fairway so far. */
  readonly fairway?: MonteCarlo;
}

/** Where a player's shots go. */
export interface Dispersion {
  /** Shots that the figures rest on. */
  readonly shots: number;
  /** Carry. */
  readonly carry: DistanceDistribution;
  /** Total distance. */
  readonly total: DistanceDistribution;
  /** Sideways position where the ball comes down, + right. */
  readonly side: DistanceDistribution;
  /** 50, 90 and 95 % ellipses of where balls come down. */
  readonly landingEllipses: readonly GroundEllipse[];
  /** 50, 90 and 95 % ellipses of where balls rest. */
  readonly restEllipses: readonly GroundEllipse[];
  /** 50, 90 and 95 % highest-density regions of where balls rest; absent when they lie on a line. */
  readonly restRegion?: LandingRegion;
  /** Share of balls at rest on the fairway; present when a fairway was given. */
  readonly fairway?: Share;
  /** Share of balls at rest beyond the lateral limits given. */
  readonly beyond?: { readonly left?: Share; readonly right?: Share };
  /** How the estimates settled as shots were added. */
  readonly convergence: readonly ConvergenceRow[];
  /** Every shot. */
  readonly columns: ShotColumns;
  /** Scattered shots that the models refuse, in no figure above. */
  readonly failures: readonly { readonly shot: number; readonly reason: string }[];
  /** Warnings of the models: the worst of each kind, and how many shots had it. */
  readonly warnings: readonly { readonly warning: ModelWarning; readonly shots: number }[];
  /** What a reader should know, in words. */
  readonly remarks: readonly string[];
}

const LEVELS = [0.5, 0.9, 0.95];

/**
 * Scatters a player's shots about the usual one, plays each through strike, flight and run, and says where they go.
 *
 * The Monte Carlo error beside each figure is what another seed would change; it says nothing about the models, whose
 * spin is good to ±20 % and whose run is a band of ±30 %.
 * @param usual - the delivery (or launch) the player means to make
 * @param spread - how shots differ from it
 * @param setup - clubhead, scene, number of shots, seed, fairway, limits; each has a default
 * @throws {@link FairflightError} `invalid-input` or `outside-range`; also when more than 5 % of the scattered shots
 *   are outside what the models take
 * @example
 * disperse(
 *   { clubSpeed: mph(95), attackAngle: degrees(1), dynamicLoft: degrees(15) },
 *   { kind: 'normal', sd: { clubSpeed: mph(1.5), faceAngle: degrees(2), clubPath: degrees(2), toe: millimetres(8) } },
 *   { fairway: { width: yards(32) } },
 * ).fairway
 */
export function disperse<D extends Delivery | Launch>(
  usual: D,
  spread: D extends Delivery ? Spread<Delivery> : Spread<Launch>,
  setup: DispersionSetup = {},
): Dispersion {
  requireRecord('setup', setup, [
    'clubhead',
    'scene',
    'flight',
    'shots',
    'sampling',
    'seed',
    'fairway',
    'limits',
  ]);
  const { fairway, limits, shots, sampling, seed, ...shotSetup } = setup;
  if (fairway !== undefined) requireFairway('setup.fairway', fairway);
  if (limits !== undefined) {
    requireRecord('setup.limits', limits, ['left', 'right']);
    for (const side of ['left', 'right'] as const) {
      if (limits[side] !== undefined) requireWithin(`setup.limits.${side}`, limits[side], 0, 500, 'm');
    }
  }
  const cloud = playCloud(usual, spread, shotSetup, {
    ...(shots !== undefined && { shots }),
    ...(sampling !== undefined && { sampling }),
    ...(seed !== undefined && { seed }),
  });
  const { columns } = cloud;
  const parts = replicatesOf(columns.shot);
  const { carry, total, landingX, landingZ, restX, restZ } = columns;
  const onGrass =
    fairway === undefined
      ? undefined
      : restX.map((x, i) => onFairway(positionOnHole({ x, z: restZ[i] ?? 0 }, fairway.bend), fairway));
  const share = onGrass === undefined ? undefined : shareOf(parts, onGrass);
  const region = landingRegion(parts, restX, restZ, LEVELS);
  const { left, right } = limits ?? {};
  const distribution = distributionOf(parts, carry);
  return {
    shots: carry.length,
    carry: distribution,
    total: distributionOf(parts, total),
    side: distributionOf(parts, landingZ),
    landingEllipses: groundEllipses(parts, landingX, landingZ, LEVELS),
    restEllipses: groundEllipses(parts, restX, restZ, LEVELS),
    ...(region !== undefined && { restRegion: region }),
    ...(share !== undefined && { fairway: share }),
    ...(limits !== undefined && {
      beyond: {
        ...(left !== undefined && {
          left: shareOf(
            parts,
            restZ.map((z) => z < -left),
          ),
        }),
        ...(right !== undefined && {
          right: shareOf(
            parts,
            restZ.map((z) => z > right),
          ),
        }),
      },
    }),
    convergence: convergenceOf(parts, carry, total, onGrass),
    columns,
    failures: cloud.failures,
    warnings: cloud.warnings,
    remarks: remarksOn(distribution, share, cloud.failures.length, carry.length),
  };
}

function convergenceOf(
  parts: readonly (readonly number[])[],
  carry: readonly number[],
  total: readonly number[],
  onGrass: readonly boolean[] | undefined,
): ConvergenceRow[] {
  return parts.flatMap((_, r) => {
    const so = parts.slice(0, r + 1);
    if (so.length < 2) return [];
    const all = so.flat();
    const own = placesOf(so);
    return [
      {
        shots: all.length,
        carry: estimate<Length>(own, pick(carry, all), mean),
        total: estimate<Length>(own, pick(total, all), mean),
        ...(onGrass !== undefined && { fairway: estimate(own, pick(onGrass.map(Number), all), mean) }),
      },
    ];
  });
}

function remarksOn(
  carry: DistanceDistribution,
  fairway: Share | undefined,
  failures: number,
  shots: number,
): string[] {
  const remarks = [
    `Mean carry ${toYards(carry.mean.value).toFixed(1)} ± ${toYards(carry.mean.standardError).toFixed(2)} yd from ${shots} shots in ${REPLICATES} independent parts.`,
  ];
  if (fairway !== undefined) {
    remarks.push(
      `Fairway ${(100 * fairway.share).toFixed(1)} ± ${(100 * fairway.standardError).toFixed(1)} %.`,
    );
  }
  if (failures > 0)
    remarks.push(`${failures} scattered shots are outside what the models take and in no figure.`);
  return remarks;
}
