import { FairflightError, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import { chiSquareQuantile, normalQuantile, symmetricEigen } from '../numerics/index.js';
import type { Launch } from '../scene/index.js';
import type { Delivery } from '../strike/index.js';
import type { Angle, AngularSpeed, Length, Speed } from '../units/index.js';

/** Standard deviations of a player's deliveries from shot to shot; what is left out does not scatter. */
export interface DeliverySd {
  /** Club speed [m/s]. */
  readonly clubSpeed?: Speed;
  /** Attack angle [rad]. */
  readonly attackAngle?: Angle;
  /** Club path [rad]. */
  readonly clubPath?: Angle;
  /** Face angle [rad]. */
  readonly faceAngle?: Angle;
  /** Dynamic loft [rad]. */
  readonly dynamicLoft?: Angle;
  /** Strike offset toward the toe [m]. */
  readonly toe?: Length;
  /** Strike offset up the face [m]. */
  readonly high?: Length;
  /** Closure rate [rad/s]. */
  readonly closureRate?: AngularSpeed;
}

/** Standard deviations of launches from shot to shot; what is left out does not scatter. */
export interface LaunchSd {
  /** Ball speed [m/s]. */
  readonly ballSpeed?: Speed;
  /** Launch angle [rad]. */
  readonly launchAngle?: Angle;
  /** Launch direction [rad]. */
  readonly launchDirection?: Angle;
  /** Spin rate [rad/s]. */
  readonly spinRate?: AngularSpeed;
  /** Tilt of the spin axis [rad]. */
  readonly spinAxisTilt?: Angle;
}

/** Correlation of two scattering quantities, −1 to 1. */
export interface Correlation<Name extends string> {
  /** The two quantities. */
  readonly between: readonly [Name, Name];
  /** Pearson's correlation. */
  readonly value: number;
}

/** How shots scatter about the usual one. `D` is {@link Delivery} or {@link Launch}. */
export type Spread<D extends Delivery | Launch = Delivery> =
  /** Normal, with standard deviations and correlations. */
  | {
      readonly kind: 'normal';
      readonly sd: SdOf<D>;
      readonly correlations?: readonly Correlation<keyof SdOf<D> & string>[];
    }
  /**
   * Multivariate Student t with the same standard deviations and correlations: now and then a swing that is off in
   * everything at once. Degrees of freedom above 2; default 5. Ko S (2012, PhD thesis, Columbia) found that a normal
   * distribution fits shots poorly and t distributions are needed; the default is a choice between normal and the
   * heaviest tails.
   */
  | {
      readonly kind: 'student-t';
      readonly dof?: number;
      readonly sd: SdOf<D>;
      readonly correlations?: readonly Correlation<keyof SdOf<D> & string>[];
    }
  /**
   * The player's own measured shots drawn again and again: their differences from their own mean are added to the
   * usual shot. Correlations and tails come along as they are.
   */
  | { readonly kind: 'own'; readonly shots: readonly D[] };

/** The standard deviations that belong to deliveries or to launches. */
export type SdOf<D extends Delivery | Launch> = D extends Delivery ? DeliverySd : LaunchSd;

const DELIVERY_NAMES = [
  'clubSpeed',
  'attackAngle',
  'clubPath',
  'faceAngle',
  'dynamicLoft',
  'toe',
  'high',
  'closureRate',
] as const;
const LAUNCH_NAMES = ['ballSpeed', 'launchAngle', 'launchDirection', 'spinRate', 'spinAxisTilt'] as const;

/** Draws shots: from coordinates in the open unit cube to a delivery or launch. @internal */
export interface Sampler {
  /** Coordinates a shot needs. */
  readonly dimensions: number;
  /** The shot at a point of the cube. */
  readonly shotAt: (point: ArrayLike<number>) => Delivery | Launch;
}

/** @throws FairflightError when the spread does not fit the shot or its numbers are out of range @internal */
export function samplerFor(usual: Delivery | Launch, spread: Spread<Delivery> | Spread<Launch>): Sampler {
  const kit = kitFor(usual);
  const kind = requireOneOf('spread.kind', spread.kind, ['normal', 'student-t', 'own'] as const);
  if (spread.kind === 'own') return ownSampler(kit, usual, spread.shots);
  requireRecord(
    'spread',
    spread,
    kind === 'normal' ? ['kind', 'sd', 'correlations'] : ['kind', 'sd', 'correlations', 'dof'],
  );
  requireRecord('spread.sd', spread.sd, kit.names);
  const sd = spread.sd as Readonly<Record<string, number | undefined>>;
  const active = kit.names.filter((name) => sd[name] !== undefined && sd[name] !== 0);
  const scales = active.map((name) => requireWithin(`spread.sd.${name}`, sd[name], 0, 1000, 'SI unit'));
  const root = correlationRoot(active, kit.names, spread.correlations ?? []);
  const dof =
    spread.kind === 'student-t' ? requireWithin('spread.dof', spread.dof ?? 5, 2.01, 1e6, '') : undefined;
  const centre = kit.read(usual);
  const places = active.map((name) => kit.names.indexOf(name));
  return {
    dimensions: Math.max(1, active.length + (dof === undefined ? 0 : 1)),
    shotAt: (point) => {
      // One common factor for all quantities makes the t distribution multivariate; it is scaled to keep the SD.
      const wide =
        dof === undefined ? 1 : Math.sqrt((dof - 2) / chiSquareQuantile(point[active.length] ?? 0.5, dof));
      const normals = active.map((_, k) => normalQuantile(point[k] ?? 0.5));
      const values = [...centre];
      places.forEach((place, i) => {
        let sum = 0;
        for (let k = 0; k < normals.length; k++) sum += (root[i]?.[k] ?? 0) * (normals[k] ?? 0);
        values[place] = (values[place] ?? 0) + wide * (scales[i] ?? 0) * sum;
      });
      return kit.write(usual, values);
    },
  };
}

function ownSampler(kit: Kit, usual: Delivery | Launch, shots: readonly (Delivery | Launch)[]): Sampler {
  if (!Array.isArray(shots) || shots.length < 2) {
    throw new FairflightError('invalid-input', 'spread.shots needs at least 2 shots of the player', {
      field: 'spread.shots',
      value: shots,
    });
  }
  const rows = shots.map((shot, i) => {
    if (kitFor(shot) !== kit) {
      throw new FairflightError(
        'invalid-input',
        `spread.shots[${i}] must be of the same kind as the usual shot`,
        {
          field: `spread.shots[${i}]`,
          value: shot,
        },
      );
    }
    return kit.read(shot);
  });
  const centre = kit.read(usual);
  const means = centre.map((_, j) => rows.reduce((sum, row) => sum + (row[j] ?? 0), 0) / rows.length);
  return {
    dimensions: 1,
    shotAt: (point) => {
      const row = rows[Math.min(rows.length - 1, Math.floor((point[0] ?? 0) * rows.length))] ?? [];
      return kit.write(
        usual,
        centre.map((value, j) => value + (row[j] ?? 0) - (means[j] ?? 0)),
      );
    },
  };
}

/** Symmetric square root of the correlation matrix, which also exists where two quantities move as one. */
function correlationRoot(
  active: readonly string[],
  names: readonly string[],
  correlations: readonly Correlation<string>[],
): number[][] {
  const matrix = active.map((_, i) => active.map((__, j) => (i === j ? 1 : 0)));
  correlations.forEach(({ between: [a, b], value }, k) => {
    const field = `spread.correlations[${k}]`;
    requireOneOf(`${field}.between`, a, names);
    requireOneOf(`${field}.between`, b, names);
    requireWithin(`${field}.value`, value, -1, 1, '');
    const [i, j] = [active.indexOf(a), active.indexOf(b)];
    if (i < 0 || j < 0 || i === j) {
      throw new FairflightError(
        'invalid-input',
        `${field} must join two different quantities that scatter, got ${a} and ${b}`,
        {
          field,
          value: [a, b],
        },
      );
    }
    for (const [row, column] of [
      [i, j],
      [j, i],
    ] as const) {
      const line = matrix[row] as number[] | undefined;
      if (line !== undefined) line[column] = value;
    }
  });
  const { values, vectors } = symmetricEigen(matrix);
  if (values.some((value) => value < -1e-9)) {
    throw new FairflightError(
      'invalid-input',
      'spread.correlations contradict each other: no quantities can be correlated like that',
      {
        field: 'spread.correlations',
        value: correlations,
      },
    );
  }
  return active.map((_, i) =>
    active.map((__, j) =>
      vectors.reduce(
        (sum, v, k) => sum + Math.sqrt(Math.max(0, values[k] ?? 0)) * (v[i] ?? 0) * (v[j] ?? 0),
        0,
      ),
    ),
  );
}

interface Kit {
  readonly names: readonly string[];
  readonly read: (shot: Delivery | Launch) => number[];
  readonly write: (shot: Delivery | Launch, values: readonly number[]) => Delivery | Launch;
}

const deliveryKit: Kit = {
  names: DELIVERY_NAMES,
  read: (shot) => {
    const d = shot as Delivery;
    const { toe = 0, high = 0 } = d.strikeOffset ?? {};
    return [
      d.clubSpeed,
      d.attackAngle,
      d.clubPath ?? 0,
      d.faceAngle ?? 0,
      d.dynamicLoft,
      toe,
      high,
      d.closureRate ?? 0,
    ];
  },
  write: (shot, [clubSpeed, attackAngle, clubPath, faceAngle, dynamicLoft, toe, high, closureRate]) =>
    ({
      ...shot,
      clubSpeed,
      attackAngle,
      clubPath,
      faceAngle,
      dynamicLoft,
      strikeOffset: { toe, high },
      closureRate,
    }) as Delivery,
};

const launchKit: Kit = {
  names: LAUNCH_NAMES,
  read: (shot) => {
    const l = shot as Launch;
    return [l.ballSpeed, l.launchAngle, l.launchDirection ?? 0, l.spinRate, l.spinAxisTilt ?? 0];
  },
  write: (shot, [ballSpeed, launchAngle, launchDirection, spinRate, spinAxisTilt]) =>
    ({ ...shot, ballSpeed, launchAngle, launchDirection, spinRate, spinAxisTilt }) as Launch,
};

function kitFor(shot: Delivery | Launch): Kit {
  return 'clubSpeed' in shot ? deliveryKit : launchKit;
}
