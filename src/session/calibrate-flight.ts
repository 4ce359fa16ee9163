import { scaledLaw } from '../aerodynamics/scaled.js';
import type { FlightSettings } from '../flight/fly.js';
import { frozen } from '../inputs/frozen.js';
import type { Launch } from '../inputs/launch.js';
import { LAUNCH_NEEDS } from '../inputs/launch.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import type { FlightReadingErrors, ReadingErrors } from '../inputs/readings.js';
import { FLIGHT_READINGS } from '../inputs/readings.js';
import { inverseOfSymmetric } from '../numerics/index.js';
import type { ResolvedScene } from '../scene/scene.js';
import { createWalk } from '../shot/walk.js';
import { readingError } from '../strike/locate-model.js';
import { degrees, si } from '../units/index.js';
import type { ShotLikelihood } from './mixture-likelihood.js';

/** Assumed where nothing is given: carry 1.5 %, apex 3 %, descent angle 1°. No published values. */
export const defaultFlightReadingErrors: FlightReadingErrors = /* @__PURE__ */ frozen(() => ({
  carry: 0.015,
  apex: 0.03,
  descentAngle: degrees(1),
}));

/** Errors of a misread are this many times the usual ones. */
const GROSS = 20;

/** Carry, apex and descent angle of a flight. @internal */
export type Flown = readonly [carry: number, apex: number, descentAngle: number];

/** Flies many launches with one ball. @internal */
export type FlyAll = (launches: readonly Launch[]) => readonly Flown[];

/** Flies launches with drag and lift scaled. @internal */
export function scaledFlights(
  scene: ResolvedScene,
  settings: FlightSettings,
): (drag: number, lift: number) => FlyAll {
  return (drag, lift) => {
    const walk = createWalk({ ...scene, model: scaledLaw(scene.model, { drag, lift }) }, settings);
    return (launches) =>
      launches.map((launch) => {
        const { carry, apex, descentAngle } = walk.play(launch, false);
        return [carry, apex, descentAngle];
      });
  };
}

/** One shot's measured flight against computed ones. @internal */
export interface FlightShot {
  readonly launch: Launch;
  readonly likelihood: (flown: Flown) => ShotLikelihood;
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
  const shifted = LAUNCH_NEEDS.map((reading) => {
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
    const at = usual[i] as Flown;
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
    const misfit = (flown: Flown): number => {
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
