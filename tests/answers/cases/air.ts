import {
  type Air,
  type AirState,
  airAt,
  airAtAltitude,
  defaultAir,
  geopotentialAltitude,
  moistAirDensity,
  standardAtmosphere,
  stationPressure,
  terrains,
  type WindProfile,
  type WindReading,
  windFrom,
} from '../../../src/air/index.js';
import { windRatio } from '../../../src/air/wind-ratio.js';
import { celsius, degrees, hectopascals, metres, mph, pascals } from '../../../src/units/index.js';
import { each, type Numbers, pick, type Room } from '../room.js';

/** Viscosity in µPa s. */
const numbersOf = (air: Air): Numbers => ({ density: air.density, viscosity: 1e6 * air.viscosity });
const state = (temperature: number, pressure: number, humidity: number): AirState => ({
  temperature: celsius(temperature),
  pressure: hectopascals(pressure),
  relativeHumidity: humidity,
});
const pressureAt = (reduced: number, elevation: number, temperature?: number): Numbers => ({
  pressure: stationPressure({
    seaLevelPressure: hectopascals(reduced),
    elevation: metres(elevation),
    ...(temperature !== undefined && { temperature: celsius(temperature) }),
  }),
});
const ratios = (profile: WindProfile): Numbers =>
  Object.fromEntries([0.01, 2, 60].map((h) => [`at-${h}m`, windRatio(profile, h)]));

const places = {
  'sea-level': { altitude: metres(0) },
  '1600m-warm-and-dry': { altitude: metres(1600), temperature: celsius(28), relativeHumidity: 0.2 },
  'limit-below-the-sea': { altitude: metres(-500) },
  'limit-5000m': { altitude: metres(5000), relativeHumidity: 1 },
} as const;

const states: Readonly<Record<string, AirState>> = {
  'mild-20C': state(20, 1013.25, 0.5),
  'limit-frost-minus-49C': state(-49, 1040, 0),
  'limit-heat-60C-and-steam': state(60, 990, 1),
  'mountain-700hPa': state(5, 700, 0.4),
};

const readings: Readonly<Record<string, WindReading>> = {
  'from-30-degrees': { speed: mph(12), from: degrees(30) },
  'clock-7': { speed: mph(8), clock: 7 },
  'bearing-310-target-45': { speed: mph(15), bearing: degrees(310), targetBearing: degrees(45) },
  'hand-held-on-links': { speed: mph(8), clock: 1.5, terrain: 'links-course', measuredAt: metres(2) },
};

/** Air and wind. */
export const air: Room = {
  room: 'air',
  digits: 12,
  questions: {
    default: () => numbersOf(defaultAir),
    ...each(places, (place) => numbersOf(airAtAltitude(place))),
    ...each(states, (at) => numbersOf(airAt(at))),
    'carbon-dioxide': () => ({
      density: moistAirDensity({ ...state(15, 1000, 0.6), carbonDioxide: 0.0008 }),
    }),
    'standard-2000m': () => ({
      ...pick(standardAtmosphere(metres(2000)), 'temperature', 'pressure', 'density', 'speedOfSound'),
      geopotential: geopotentialAltitude(metres(2000)),
    }),
    'pressure-altimeter-1500m': () => pressureAt(1013.25, 1500),
    'pressure-weather-map-1500m': () => pressureAt(1002, 1500, 12),
    'pressure-in-pascals': () => ({
      pressure: stationPressure({ seaLevelPressure: pascals(101_325), elevation: metres(80) }),
    }),
    ...each(readings, (reading) => pick(windFrom(reading), 'along', 'across')),
    'profile-log-parkland': () => ratios({ kind: 'log', roughness: terrains.parkland.roughness }),
    'profile-log-displaced': () =>
      ratios({ kind: 'log', roughness: metres(0.3), displacement: metres(1.2), referenceHeight: metres(12) }),
    'profile-power': () => ratios({ kind: 'power', exponent: 0.15 }),
  },
};
