import * as z from 'zod/mini';
import type { ModelChoice, ModelData } from '../aerodynamics/index.js';
import { modelAsData } from '../aerodynamics/resolve.js';
import {
  type Air,
  airAt,
  airAtAltitude,
  roughness,
  type TerrainName,
  type Wind,
  type WindProfile,
  windFrom,
} from '../air/index.js';
import { FASTEST_WIND } from '../air/require-wind.js';
import { FairflightError } from '../errors.js';
import type { Ground, Scene } from '../scene/index.js';
import { type TurfName, turfs } from '../turf/index.js';
import type {
  Angle,
  Density,
  DynamicViscosity,
  Length,
  Pressure,
  Speed,
  Temperature,
} from '../units/index.js';
import { parseWith } from './parse.js';
import { type QuantityRule, quantity } from './quantity.js';

const maybe = <Q extends number>(dimension: QuantityRule['dimension'], low: number, high: number) =>
  z.exactOptional(quantity<Q>({ dimension, range: [low, high] }));
const namesOf = <Name extends string>(record: Readonly<Record<Name, unknown>>): z.ZodMiniType<Name> =>
  z.enum(Object.keys(record) as Name[]) as unknown as z.ZodMiniType<Name>;

/** A schema for the fields, then the function of the library that makes the record from them. */
const made = <Given, Made>(fields: z.ZodMiniType<Given>, make: (given: Given) => Made): z.ZodMiniType<Made> =>
  z.pipe(fields, z.transform(make) as never) as unknown as z.ZodMiniType<Made>;

/** Picks the shape by the fields that are there, so that complaints are about the shape the writer meant. */
const shapeOf = <Made>(pick: (has: (field: string) => boolean) => z.ZodMiniType<Made>): z.ZodMiniType<Made> =>
  z.pipe(
    z.record(z.string(), z.unknown()),
    z.transform((given: Record<string, unknown>, context): Made => {
      const result = pick((field) => Object.hasOwn(given, field)).safeParse(given);
      if (result.success) return result.data;
      context.issues.push(...(result.error.issues as typeof context.issues));
      return z.NEVER;
    }),
  ) as unknown as z.ZodMiniType<Made>;

const temperature = maybe<Temperature>('temperature', 223.15, 333.15);
const relativeHumidity = maybe<number>('ratio', 0, 1);

const airFromDensity: z.ZodMiniType<Air> = z.strictObject({
  density: quantity<Density>({ dimension: 'density', range: [0, 3] }),
  viscosity: quantity<DynamicViscosity>({ dimension: 'viscosity', range: [1e-6, 1e-4] }),
});
const airFromAltitude: z.ZodMiniType<Air> = made(
  z.strictObject({
    altitude: quantity<Length>({ dimension: 'length', range: [-500, 5000] }),
    temperature,
    relativeHumidity,
  }),
  airAtAltitude,
);
const airFromInstruments: z.ZodMiniType<Air> = made(
  z.strictObject({ temperature, pressure: maybe<Pressure>('pressure', 30_000, 110_000), relativeHumidity }),
  airAt,
);
const airSchema: z.ZodMiniType<Air> = shapeOf((has) => {
  if (has('density') || has('viscosity')) return airFromDensity;
  return has('altitude') ? airFromAltitude : airFromInstruments;
});

const referenceHeight = maybe<Length>('length', 0.5, 200);
const profile: z.ZodMiniType<WindProfile> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('uniform') }),
  z.strictObject({
    kind: z.literal('log'),
    roughness: quantity<Length>({ dimension: 'length', range: [1e-5, 5] }),
    displacement: maybe<Length>('length', 0, 50),
    referenceHeight,
  }),
  z.strictObject({
    kind: z.literal('power'),
    exponent: z.number().check(z.minimum(0), z.maximum(1)),
    referenceHeight,
  }),
]);

const turn = (): z.ZodMiniType<Angle> =>
  quantity<Angle>({ dimension: 'angle', range: [-2 * Math.PI, 2 * Math.PI] });
const reading = {
  speed: quantity<Speed>({ dimension: 'speed', range: [0, FASTEST_WIND] }),
  terrain: z.exactOptional(namesOf<TerrainName>(roughness)),
  measuredAt: maybe<Length>('length', 0.5, 200),
};
const windFromComponents: z.ZodMiniType<Wind> = z.strictObject({
  along: quantity<Speed>({ dimension: 'speed', range: [-FASTEST_WIND, FASTEST_WIND] }),
  across: quantity<Speed>({ dimension: 'speed', range: [-FASTEST_WIND, FASTEST_WIND] }),
  profile: z.exactOptional(profile),
});
const windFromClock: z.ZodMiniType<Wind> = made(
  z.strictObject({ ...reading, clock: z.number().check(z.minimum(0), z.maximum(12)) }),
  windFrom,
);
const windFromBearing: z.ZodMiniType<Wind> = made(
  z.strictObject({ ...reading, bearing: turn(), targetBearing: turn() }),
  windFrom,
);
const windFromAngle: z.ZodMiniType<Wind> = made(z.strictObject({ ...reading, from: turn() }), windFrom);
const windSchema: z.ZodMiniType<Wind> = shapeOf((has) => {
  if (has('along') || has('across')) return windFromComponents;
  if (has('clock')) return windFromClock;
  return has('bearing') || has('targetBearing') ? windFromBearing : windFromAngle;
});

const groundSchema: z.ZodMiniType<Ground> = z.strictObject({
  elevation: maybe<Length>('length', -1000, 1000),
  slope: maybe<Angle>('angle', -0.6, 0.6),
  crossSlope: maybe<Angle>('angle', -0.6, 0.6),
});

const modelSchema = z.pipe(
  z.unknown(),
  z.transform((given): string | ModelData => {
    const field = 'scene.aerodynamics';
    const model = modelAsData(given as ModelChoice, field);
    if (model !== undefined) return model;
    throw new FairflightError(
      'unsupported',
      `${field} is made of functions, which JSON cannot hold; give an id or a model as data`,
      { field, value: given, hint: 'tabulatedModel() and scaledModel() make data' },
    );
  }),
) as unknown as z.ZodMiniType<string | ModelData>;

const sceneSchema: z.ZodMiniType<Scene> = z.strictObject({
  air: z.exactOptional(airSchema),
  wind: z.exactOptional(windSchema),
  ground: z.exactOptional(groundSchema),
  turf: z.exactOptional(namesOf<TurfName>(turfs)),
  aerodynamics: z.exactOptional(modelSchema),
});

/**
 * Reads a {@link Scene} from plain JSON. Every quantity carries its unit, in the key or beside the value:
 * `{ "air": { "altitude (m)": 1200, "temperature (C)": 24 }, "wind": { "speed (mph)": 8, "clock": 1.5, "terrain": "links-course" },
 * "ground": { "elevation (ft)": -30 }, "turf": "firm", "aerodynamics": "fitted-modern" }`.
 *
 * Air is given by temperature, pressure and humidity, or by altitude, or by density and viscosity; wind by its
 * components (`along`, `across`) or by speed and origin (`from`, `clock`, or `bearing` with `targetBearing`). Turf and
 * coefficient model go by the names of the built-in ones; a model may also be held as data
 * (`{ "kind": "scaled", "of": "fitted-modern", "drag": 0.98 }`). A ball or turf of one's own is a record with its source
 * and is given in code.
 * @throws `FairflightError` `invalid-input` for a missing, unknown or unitless field, `outside-range` for a
 * value outside the range the field documents.
 */
export function parseScene(json: unknown): Scene {
  return parseWith('scene', sceneSchema, json);
}
