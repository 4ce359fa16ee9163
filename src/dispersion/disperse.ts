import { type Declared, optional, quantity, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { mean } from '../numerics/index.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import { type ShotOptions, shotOptionFields } from '../shot/shot-options.js';
import type { Angle, Length } from '../units/index.js';
import { YARDS } from '../units/unit.js';
import { aimField, turned } from './aim.js';
import {
  type CloudOptions,
  type CloudWarning,
  cloudOptionFields,
  type FailedShot,
  playScattered,
  type ShotColumns,
} from './cloud.js';
import { type Fairway, fairwayField, type Hazard, hazardsField } from './hole.js';
import {
  type DistanceDistribution,
  distributionOf,
  type MonteCarlo,
  meanOf,
  pick,
  replicatesOf,
  type ShareOfShots,
  shareOf,
} from './monte-carlo.js';
import { type GroundEllipse, groundEllipses, type LandingRegion, landingRegion } from './region.js';
import { readScattered, type Scattered } from './scattered.js';
import { lieOf } from './shot-lie.js';

/** Lateral limits, for example trees or the boundary; one left out is not asked about. */
export interface LateralLimits {
  /** Distance of the limit to the left of the target line [m], 0 to 500. */
  readonly left?: Length;
  /** Distance of the limit to the right of the target line [m], 0 to 500. */
  readonly right?: Length;
}

/** Options of {@link disperse}. */
export interface DispersionOptions extends ShotOptions, CloudOptions {
  /**
   * Direction aimed at [rad], + right of the target line, −1 to 1; default 0. The shots are turned about the tee as they
   * are, and any wind in them with them.
   */
  readonly aim?: Angle;
  /** Fairway whose share is wanted; with it each shot's lie is given. */
  readonly fairway?: Fairway;
  /** Hazards that the lies are to tell; needs a fairway, by whose centre line strips lie. */
  readonly hazards?: readonly Hazard[];
  /** Limits beyond which the share of balls at rest is wanted. */
  readonly limits?: LateralLimits;
}

/** Declaration of {@link DispersionOptions}. @internal */
export const dispersionOptionFields: Declared<DispersionOptions> = /* @__PURE__ */ frozen(() => {
  const limit = optional(quantity(YARDS, 0, 500, 25, 'lateral limit'));
  const limits: Declared<LateralLimits> = { left: limit, right: limit };
  return {
    ...shotOptionFields,
    ...cloudOptionFields,
    aim: optional(aimField),
    fairway: optional(fairwayField),
    hazards: hazardsField,
    limits: optional(record(limits, 'limits')),
  };
});

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
  readonly fairway?: ShareOfShots;
  /** Share of balls at rest beyond the lateral limits given. */
  readonly beyond?: { readonly left?: ShareOfShots; readonly right?: ShareOfShots };
  /** How the estimates settled as shots were added. */
  readonly convergence: readonly ConvergenceRow[];
  /** Every shot. */
  readonly columns: ShotColumns;
  /** Scattered shots outside what can be played, in no figure above. */
  readonly failures: readonly FailedShot[];
  /** Warnings of the models: the worst of each kind, and how many shots had it. */
  readonly warnings: readonly CloudWarning[];
}

const LEVELS = [0.5, 0.9, 0.95];

/**
 * Scatters a player's shots about the usual one, plays each through strike, flight and run, and says where they go.
 *
 * The Monte Carlo error beside each figure is what another seed would change; it says nothing about the models, whose
 * spin is good to ±20 % and whose run is a band of ±25 %.
 * A scattered shot outside what a delivery or launch may have is in no figure and stands among `failures`.
 * @param scattered - the delivery or launch the player means to make, and how shots differ from it
 * @param scene - air, wind, ground, turf, ball and coefficient model; each has a default
 * @param options - clubhead, number of shots, seed, aim, fairway, hazards, limits; each has a default
 * @throws `FairflightError` `invalid-input` or `outside-range`; also when more than 5 % of the scattered shots
 *   cannot be played
 * @example
 * disperse(
 *   {
 *     delivery: { clubSpeed: mph(95), attackAngle: degrees(1), dynamicLoft: degrees(15) },
 *     spread: { kind: 'normal', sd: { clubSpeed: mph(1.5), faceAngle: degrees(2), toe: millimetres(8) } },
 *   },
 *   { turf: 'firm' },
 *   { fairway: { width: yards(32) } },
 * ).fairway
 */
export function disperse(
  scattered: Scattered,
  scene: Scene = {},
  options: DispersionOptions = {},
): Dispersion {
  const scatter = readScattered(scattered);
  const resolved = resolveScene(scene);
  const given = readOptions(dispersionOptionFields, options);
  const { aim = 0, fairway, hazards = [], limits } = given;
  if (given.hazards !== undefined && fairway === undefined) {
    throw refusal(
      'options.hazards',
      'options.hazards needs options.fairway, by whose centre line strips lie',
    );
  }
  const cloud = playScattered(scatter, resolved, given);
  const shots = turned(cloud.columns, aim);
  const { carry, total, landingX, landingZ, restX, restZ } = shots;
  const lie =
    fairway === undefined
      ? undefined
      : restX.map((x, i) =>
          lieOf(
            { x: landingX[i] ?? x, z: landingZ[i] ?? 0 },
            { x, z: restZ[i] ?? 0 },
            { fairway, hazards },
            false,
          ),
        );
  const columns: ShotColumns = lie === undefined ? shots : { ...shots, lie };
  const parts = replicatesOf(columns.shot);
  const onGrass = lie?.map((each) => each === 'fairway');
  const share = onGrass === undefined ? undefined : shareOf(parts, onGrass);
  const region = landingRegion(parts, restX, restZ, LEVELS);
  const { left, right } = limits ?? {};
  return {
    shots: carry.length,
    carry: distributionOf(parts, carry),
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
  };
}

function convergenceOf(
  parts: readonly (readonly number[])[],
  carry: readonly number[],
  total: readonly number[],
  onGrass: readonly boolean[] | undefined,
): ConvergenceRow[] {
  const grass = onGrass?.map(Number);
  return parts.flatMap((_, r) => {
    const so = parts.slice(0, r + 1);
    if (so.length < 2) return [];
    const all = so.flat();
    const soFar = <Q extends number>(values: readonly number[]): MonteCarlo<Q> => ({
      ...meanOf<Q>(so, values),
      value: mean(pick(values, all)) as Q,
    });
    return [
      {
        shots: all.length,
        carry: soFar<Length>(carry),
        total: soFar<Length>(total),
        ...(grass !== undefined && { fairway: soFar(grass) }),
      },
    ];
  });
}
