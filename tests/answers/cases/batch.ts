import { loadBatchKernel } from '../../../src/batch.js';
import { type FlightColumns, type FlyManyOptions, flyMany } from '../../../src/flight/index.js';
import type { Scene } from '../../../src/scene/index.js';
import { degrees, metres, metresPerSecond, mph, rpm } from '../../../src/units/index.js';
import { type Numbers, pick, type Room } from '../room.js';

const kernel = await loadBatchKernel();
const ROWS = 12;
const column = (from: number, to: number): Float64Array =>
  Float64Array.from({ length: ROWS }, (_, i) => from + ((to - from) * i) / (ROWS - 1));

/** From a chip to the longest drive, with a little of everything else. */
const launches = {
  ballSpeed: column(mph(15), mph(200)),
  launchAngle: column(degrees(48), degrees(8)),
  spinRate: column(rpm(9000), rpm(1500)),
  launchDirection: column(degrees(-6), degrees(6)),
  spinAxisTilt: column(degrees(20), degrees(-20)),
};
const many = (scene: Scene, options: FlyManyOptions): FlightColumns => flyMany(launches, scene, options);

const numbersOf = (columns: FlightColumns): Numbers =>
  pick(columns, 'carry.0', 'curve.4', 'apex.8', 'carry.11');

const breeze: Scene = {
  wind: { along: metresPerSecond(-5), across: metresPerSecond(3) },
  ground: { elevation: metres(-4), slope: degrees(1), crossSlope: degrees(-2) },
};
const conditions = { airDensity: column(0.9, 1.3), windAlong: column(-9, 9), elevation: column(-8, 0) };

/** Many flights at once, without and with the WebAssembly kernel. */
export const batch: Room = {
  room: 'batch',
  digits: 10,
  questions: {
    calm: () => numbersOf(many({}, {})),
    'breeze-on-a-slope': () => numbersOf(many(breeze, {})),
    'row-by-row': () => numbersOf(many({}, { conditions })),
    'kernel-calm': () => numbersOf(many({}, { kernel })),
    'kernel-breeze-on-a-slope': () => numbersOf(many(breeze, { kernel })),
    'kernel-row-by-row': () => numbersOf(many({}, { kernel, conditions })),
    'kernel-other-model': () => numbersOf(many({ aerodynamics: 'smits-smith-1994' }, { kernel })),
  },
};
