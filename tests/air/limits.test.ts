import { describe, expect, it } from 'vitest';
import {
  type AirState,
  airAt,
  airAtAltitude,
  geometricAltitude,
  geopotentialAltitude,
  standardAtmosphere,
  stationPressure,
  windFrom,
} from '../../src/air/index.js';
import { resolveScene } from '../../src/scene/scene.js';
import { metres, metresPerSecond as mps, pascals, si } from '../../src/units/index.js';
import { caught } from '../caught.js';

const air = (change: Partial<AirState>) => airAt(change);
const profiled = (profile: object) => resolveScene({ wind: { along: mps(0), across: mps(0), profile } });
const log = (change: object) => profiled({ kind: 'log', roughness: 0.03, ...change });
const power = (change: object) => profiled({ kind: 'power', exponent: 0.2, ...change });
const sea = pascals(101_325);

/** The limits the documentation states: both ends pass, a thousandth of the range beyond is refused with that range. */
const limits: readonly (readonly [
  what: string,
  from: number,
  to: number,
  call: (value: number) => unknown,
])[] = [
  ['temperature', 223.15, 333.15, (v) => air({ temperature: si(v) })],
  ['pressure', 30_000, 110_000, (v) => air({ pressure: si(v) })],
  ['relative humidity', 0, 1, (v) => air({ relativeHumidity: v })],
  ['carbon dioxide', 0, 0.01, (v) => air({ carbonDioxide: v })],
  ['altitude of a place', -500, 5000, (v) => airAtAltitude({ altitude: si(v) })],
  ['altitude in the standard atmosphere', -2000, 11_000, (v) => standardAtmosphere(si(v))],
  ['geometric altitude', -2000, 12_000, (v) => geopotentialAltitude(si(v))],
  ['geopotential altitude', -2000, 12_000, (v) => geometricAltitude(si(v))],
  [
    'sea-level pressure',
    85_000,
    110_000,
    (v) => stationPressure({ seaLevelPressure: si(v), elevation: si(100) }),
  ],
  ['elevation', -500, 5000, (v) => stationPressure({ seaLevelPressure: sea, elevation: si(v) })],
  ['wind along', -60, 60, (v) => resolveScene({ wind: { along: si(v), across: mps(0) } })],
  ['wind across', -60, 60, (v) => resolveScene({ wind: { along: mps(0), across: si(v) } })],
  ['roughness', 1e-5, 5, (v) => log({ roughness: v })],
  ['displacement', 0, 50, (v) => log({ displacement: v, referenceHeight: 60 })],
  ['reference height', 0.5, 200, (v) => log({ referenceHeight: v })],
  ['reference height of the power law', 0.5, 200, (v) => power({ referenceHeight: v })],
  ['exponent', 0, 1, (v) => power({ exponent: v })],
  ['wind speed', 0, 60, (v) => windFrom({ speed: si(v), clock: 3 })],
  ['clock', 0, 12, (v) => windFrom({ speed: mps(3), clock: v })],
  ['origin', -2 * Math.PI, 2 * Math.PI, (v) => windFrom({ speed: mps(3), from: si(v) })],
  [
    'bearing',
    -2 * Math.PI,
    2 * Math.PI,
    (v) => windFrom({ speed: mps(3), bearing: si(v), targetBearing: si(0) }),
  ],
  [
    'target bearing',
    -2 * Math.PI,
    2 * Math.PI,
    (v) => windFrom({ speed: mps(3), bearing: si(0), targetBearing: si(v) }),
  ],
  [
    'height of a reading',
    0.5,
    200,
    (v) => windFrom({ speed: mps(3), clock: 3, terrain: 'smooth', measuredAt: metres(v) }),
  ],
];

describe('stated limits', () => {
  it.each(limits)('%s: %f to %f', (_what, from, to, call) => {
    const beyond = (to - from) / 1000;
    for (const end of [from, to]) expect(() => call(end)).not.toThrow();
    for (const outside of [from - beyond, to + beyond]) {
      const error = caught(() => call(outside));
      expect(error.code).toBe('outside-range');
      expect(error.range).toEqual([from, to]);
      expect(error.value).toBe(outside);
    }
  });
});
