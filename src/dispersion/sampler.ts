import type { Delivery, PlayerHand } from '../inputs/delivery.js';
import type { Launch } from '../inputs/launch.js';
import { refusal } from '../inputs/refuse.js';
import { chiSquareQuantile, normalQuantile, symmetricEigen } from '../numerics/index.js';
import {
  type Correlation,
  DEFAULT_DOF,
  deliverySdFields,
  launchSdFields,
  type ScalableSpread,
  type Spread,
} from './spread.js';

/** Draws shots: from coordinates in the open unit cube to a delivery or launch. @internal */
export interface Sampler {
  /** Coordinates a shot needs. */
  readonly dimensions: number;
  /** The shot at a point of the cube; its numbers may lie outside what a delivery or launch may have. */
  readonly shotAt: (point: ArrayLike<number>) => Delivery | Launch;
}

/** The usual shot and how others scatter about it, read. @internal */
export type Scatter =
  | { readonly delivery: Delivery; readonly launch?: never; readonly spread: Spread }
  | { readonly launch: Launch; readonly delivery?: never; readonly spread: Spread<Launch> };

/** @throws FairflightError when the parts of a spread contradict each other or the shot @internal */
export function samplerFor({ delivery, launch, spread }: Scatter): Sampler {
  const kit = delivery === undefined ? launchKit(launch) : deliveryKit(delivery);
  return spread.kind === 'own' ? ownSampler(kit, spread.shots) : scaledSampler(kit, spread);
}

function scaledSampler(kit: Kit, spread: ScalableSpread | ScalableSpread<Launch>): Sampler {
  const sd = spread.sd as Readonly<Record<string, number>>;
  const active = kit.names.filter((name) => (sd[name] ?? 0) > 0);
  const scales = active.map((name) => sd[name] ?? 0);
  const root = correlationRoot(active, spread.correlations ?? []);
  const dof = spread.kind === 'student-t' ? (spread.dof ?? DEFAULT_DOF) : undefined;
  const places = active.map((name) => kit.names.indexOf(name));
  return {
    dimensions: Math.max(1, active.length + (dof === undefined ? 0 : 1)),
    shotAt: (point) => {
      // One common factor for all quantities makes the t distribution multivariate; it is scaled to keep the SD.
      const wide =
        dof === undefined ? 1 : Math.sqrt((dof - 2) / chiSquareQuantile(point[active.length] ?? 0.5, dof));
      const normals = active.map((_, k) => normalQuantile(point[k] ?? 0.5));
      const values = [...kit.centre];
      places.forEach((place, i) => {
        let sum = 0;
        for (let k = 0; k < normals.length; k++) sum += (root[i]?.[k] ?? 0) * (normals[k] ?? 0);
        values[place] = (values[place] ?? 0) + wide * (scales[i] ?? 0) * sum;
      });
      return kit.shot(values);
    },
  };
}

function ownSampler(kit: Kit, shots: readonly (Delivery | Launch)[]): Sampler {
  const rows = shots.map((shot, i) => {
    const hand = handOf(shot);
    if (hand !== kit.hand) {
      throw refusal(
        `spread.shots[${i}].hand`,
        `spread.shots[${i}] is ${hand}-handed and the usual delivery ${kit.hand}-handed; their differences do not add up`,
        { value: hand },
      );
    }
    return kit.numbers(shot);
  });
  const means = kit.centre.map((_, j) => rows.reduce((sum, row) => sum + (row[j] ?? 0), 0) / rows.length);
  return {
    dimensions: 1,
    shotAt: (point) => {
      const row = rows[Math.min(rows.length - 1, Math.floor((point[0] ?? 0) * rows.length))] ?? [];
      return kit.shot(kit.centre.map((value, j) => value + (row[j] ?? 0) - (means[j] ?? 0)));
    },
  };
}

/** Symmetric square root of the correlation matrix, which also exists where two quantities move as one. */
function correlationRoot(
  active: readonly string[],
  correlations: readonly Correlation<string>[],
): number[][] {
  const matrix = active.map((_, i) => active.map((__, j): number => (i === j ? 1 : 0)));
  const joined = new Set<string>();
  correlations.forEach(({ between: [a, b], value }, k) => {
    const field = `spread.correlations[${k}]`;
    const [i, j] = [active.indexOf(a), active.indexOf(b)];
    if (i < 0 || j < 0 || i === j) {
      throw refusal(field, `${field} must join two different quantities that scatter, got ${a} and ${b}`, {
        value: `${a}, ${b}`,
      });
    }
    const pair = [a, b].sort().join(' and ');
    if (joined.has(pair)) throw refusal(field, `${field} joins ${pair} a second time`, { value: pair });
    joined.add(pair);
    for (const [row, column] of [
      [i, j],
      [j, i],
    ] as const) {
      const line = matrix[row];
      if (line !== undefined) line[column] = value;
    }
  });
  const { values, vectors } = symmetricEigen(matrix);
  if (values.some((value) => value < -1e-9)) {
    throw refusal(
      'spread.correlations',
      'spread.correlations contradict each other: no quantities can be correlated like that',
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

/** A shot as a row of numbers, and back. */
interface Kit {
  /** What the numbers are, in the order of the standard deviations. */
  readonly names: readonly string[];
  readonly hand: PlayerHand;
  /** The numbers of the usual shot. */
  readonly centre: readonly number[];
  readonly numbers: (shot: Delivery | Launch) => number[];
  /** The usual shot with these numbers. */
  readonly shot: (values: readonly number[]) => Delivery | Launch;
}

function handOf(shot: Delivery | Launch): PlayerHand {
  return ('hand' in shot ? shot.hand : undefined) ?? 'right';
}

function deliveryKit(usual: Delivery): Kit {
  const numbers = (shot: Delivery | Launch): number[] => {
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
  };
  return {
    names: Object.keys(deliverySdFields),
    hand: handOf(usual),
    centre: numbers(usual),
    numbers,
    shot: ([clubSpeed, attackAngle, clubPath, faceAngle, dynamicLoft, toe, high, closureRate]) =>
      ({
        ...usual,
        clubSpeed,
        attackAngle,
        clubPath,
        faceAngle,
        dynamicLoft,
        strikeOffset: { toe, high },
        closureRate,
      }) as Delivery,
  };
}

function launchKit(usual: Launch): Kit {
  const numbers = (shot: Delivery | Launch): number[] => {
    const l = shot as Launch;
    return [
      l.ballSpeed,
      l.launchAngle,
      l.launchDirection ?? 0,
      l.spinRate,
      l.spinAxisTilt ?? 0,
      l.rifleSpin ?? 0,
    ];
  };
  return {
    names: Object.keys(launchSdFields),
    hand: 'right',
    centre: numbers(usual),
    numbers,
    shot: ([ballSpeed, launchAngle, launchDirection, spinRate, spinAxisTilt, rifleSpin]) =>
      ({ ballSpeed, launchAngle, launchDirection, spinRate, spinAxisTilt, rifleSpin }) as Launch,
  };
}
