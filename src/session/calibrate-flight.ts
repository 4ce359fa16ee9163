import { type AerodynamicModel, resolveModel, scaledModel } from '../aerodynamics/index.js';
import { inverseOfSymmetric } from '../numerics/index.js';
import type { Launch, Scene } from '../scene/index.js';
import { createWalk, type Walk, type WalkResult } from '../shot/walk.js';
import { readingError } from '../strike/locate-model.js';
import type { ReadingErrors } from '../strike/measurement.js';
import { si } from '../units/index.js';
import type { MeasuredShot } from './measured-shot.js';
import type { ShotLikelihood } from './mixture-fit.js';

/** Standard deviations of the readings of a flight. */
export interface FlightReadingErrors {
  /** Carry, as a share. */
  readonly carry: number;
  /** Apex, as a share. */
  readonly apex: number;
  /** Descent angle [rad]. */
  readonly descentAngle: number;
}

/** Assumed where nothing is given: carry 1.5 %, apex 3 %, descent angle 1°. No published values. */
export const defaultFlightReadingErrors: FlightReadingErrors = {
  carry: 0.015,
  apex: 0.03,
  descentAngle: Math.PI / 180,
};

/** Readings of the flight in the order of the vectors here. @internal */
export const FLIGHT_READINGS = ['carry', 'apex', 'descentAngle'] as const;

/** Errors of a misread are this many times the usual ones. */
const GROSS = 20;

/** Carry, apex and descent angle of many launches under one ball. @internal */
export type FlyAll = (launches: readonly Launch[]) => readonly (readonly [number, number, number])[];

/** Flies launches with drag and lift scaled. @internal */
export function scaledFlights(scene: Scene): {
  readonly model: AerodynamicModel;
  readonly at: (drag: number, lift: number) => FlyAll;
} {
  const model = resolveModel(scene.aerodynamics);
  return {
    model,
    at: (drag, lift) => {
      const walk: Walk = createWalk({ ...scene, aerodynamics: scaledModel(model, { drag, lift }) });
      return (launches) =>
        launches.map((launch) => {
          const { carry, apex, descentAngle }: WalkResult = walk.play(launch, false);
          return [carry, apex, descentAngle];
        });
    },
  };
}

/** One shot's measured flight against computed ones. @internal */
export interface FlightShot {
  readonly launch: Launch;
  readonly likelihood: (flown: readonly [number, number, number]) => ShotLikelihood;
}

/**
 * The likelihoods of measured flights given their measured launches. Errors of the launch readings are integrated out
 * in linear approximation: they widen and correlate the errors of the flight.
 * @internal
 */
export function flightShots(
  shots: readonly MeasuredShot[],
  launches: readonly Launch[],
  fly: FlyAll,
  launchErrors: ReadingErrors,
  flightErrors: FlightReadingErrors,
): readonly FlightShot[] {
  const usual = fly(launches);
  const shifted = (['ballSpeed', 'launchAngle', 'spinRate'] as const).map((reading) => {
    const sds = launches.map((launch) => readingError(reading, launch[reading], launchErrors));
    const moved = launches.map(
      (launch, i): Launch => ({ ...launch, [reading]: si(launch[reading] + (sds[i] as number)) }),
    );
    return fly(moved);
  });
  return shots.map((shot, i): FlightShot => {
    const used = FLIGHT_READINGS.map((reading, k) => ({ value: shot[reading], reading, k })).filter(
      (
        entry,
      ): entry is { value: NonNullable<typeof entry.value>; reading: typeof entry.reading; k: number } =>
        entry.value !== undefined,
    );
    const at = usual[i] as readonly [number, number, number];
    const sd = used.map(({ reading, value }) =>
      reading === 'descentAngle' ? flightErrors.descentAngle : flightErrors[reading] * value,
    );
    const jacobian = used.map(({ k }) => shifted.map((all) => (all[i]?.[k] ?? 0) - (at[k] as number)));
    const covariance = jacobian.map((a, r) =>
      jacobian.map((b, c) =>
        a.reduce((sum, x, k) => sum + x * (b[k] as number), r === c ? (sd[r] as number) ** 2 : 0),
      ),
    );
    const inverse = inverseOfSymmetric(covariance) ?? [];
    const misfit = (flown: readonly [number, number, number]): number => {
      const residual = used.map(({ value, k }) => value - (flown[k] as number));
      return inverse.reduce(
        (sum, row, r) =>
          sum + (residual[r] as number) * row.reduce((s, value, c) => s + value * (residual[c] as number), 0),
        0,
      );
    };
    const m = used.length;
    const logMisread = (-0.5 * misfit(at)) / GROSS ** 2 - m * Math.log(GROSS);
    return {
      launch: launches[i] as Launch,
      likelihood: (flown) => {
        const square = misfit(flown);
        return { logMisread, logDensity: (widen) => (-0.5 * square) / widen ** 2 - m * Math.log(widen) };
      },
    };
  });
}
