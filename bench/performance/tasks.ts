/** Times calls of the library that are not single flights. usage: node tasks.js; prints one JSON line a task. */

import { disperse } from '../../src/dispersion/index.js';
import {
  bestLaunch,
  bestLoft,
  carryMap,
  type Delivery,
  degrees,
  fly,
  type Launch,
  locateStrike,
  metres,
  metresPerSecond,
  millimetres,
  mph,
  playShot,
  rpm,
  runOut,
  type Scene,
  sensitivities,
  speedForCarry,
  strike,
  type WindProfile,
  yards,
} from '../../src/index.js';
import { calibrate } from '../../src/session/calibrate.js';
import { type MeasuredShot, summariseSession } from '../../src/session/index.js';
import { radians, radiansPerSecond } from '../../src/units/index.js';
import { median } from './results.js';

/** What one task took. */
export interface TaskTime {
  readonly name: string;
  /** What we ask of it, in words. */
  readonly aim: string;
  /** Processor time of a call [s]: median over samples of many calls. */
  readonly seconds: number;
  readonly repeats: number;
}

interface Task {
  readonly name: string;
  readonly aim?: string;
  readonly run: () => unknown;
}

const delivery: Delivery = {
  clubSpeed: mph(95),
  attackAngle: degrees(-1),
  clubPath: degrees(2),
  faceAngle: degrees(1),
  dynamicLoft: degrees(15),
};
const launch = { ballSpeed: mph(140), launchAngle: degrees(13), spinRate: rpm(2700) };
const { landing } = fly(launch);
/** What a device reads of a launch: no rifle spin. */
const readingsOf = ({ rifleSpin: _, ...readings }: Launch): Omit<Launch, 'rifleSpin'> => readings;
const measured = { ...delivery, ...readingsOf(strike(delivery).launch) };
/** A strike off the toe, read with the errors a device makes. */
const noisy = (() => {
  const { launch } = strike({ ...delivery, strikeOffset: { toe: millimetres(14), high: millimetres(-6) } });
  return {
    ...delivery,
    clubSpeed: mph(95.7),
    ballSpeed: metresPerSecond(launch.ballSpeed * 1.004),
    launchAngle: radians(launch.launchAngle - 0.004),
    launchDirection: radians((launch.launchDirection ?? 0) + 0.006),
    spinRate: radiansPerSecond(launch.spinRate * 1.03),
    spinAxisTilt: radians((launch.spinAxisTilt ?? 0) - 0.02),
  };
})();
/** The same with a ball speed that nothing else agrees with. */
const inconsistent = { ...noisy, ballSpeed: metresPerSecond(noisy.ballSpeed * 0.8) };

/** Invented shots of an invented player, 3 mph and a few degrees either way; each tenth has its spin misread. */
const shots: readonly MeasuredShot[] = Array.from({ length: 100 }, (_, i) => {
  const wave = (period: number): number => Math.sin((2 * Math.PI * i) / period);
  const swing: Delivery = {
    clubSpeed: mph(95 + 3 * wave(17)),
    attackAngle: degrees(-1 + wave(7)),
    clubPath: degrees(2 * wave(11)),
    faceAngle: degrees(2 * wave(13)),
    dynamicLoft: degrees(15 + wave(5)),
  };
  const { launch, flight } = playShot(swing);
  const { carry, apex, descentAngle, side, hangTime } = flight;
  const spinRate = radiansPerSecond(launch.spinRate * (i % 10 === 3 ? 1.6 : 1 + 0.02 * wave(3)));
  return { ...swing, ...readingsOf(launch), spinRate, carry, apex, descentAngle, side, hangTime };
});

const windBy = (profile: WindProfile): Scene => ({
  wind: { along: metresPerSecond(-5), across: metresPerSecond(3), profile },
});

const tasks: readonly Task[] = [
  { name: 'strike', run: () => strike(delivery) },
  { name: 'fly, default scene', run: () => fly(launch) },
  {
    name: 'fly, wind by a logarithm',
    run: () => fly(launch, windBy({ kind: 'log', roughness: metres(0.03) })),
  },
  { name: 'fly, wind by a power', run: () => fly(launch, windBy({ kind: 'power', exponent: 0.143 })) },
  { name: 'fly, the same wind at every height', run: () => fly(launch, windBy({ kind: 'uniform' })) },
  ...(['test-range-line', 'lieberman-2001', 'bearman-harvey-1976'] as const).map((aerodynamics) => ({
    name: `fly, by ${aerodynamics}`,
    run: () => fly(launch, { aerodynamics }),
  })),
  { name: 'runOut', run: () => runOut(landing) },
  { name: 'playShot from a delivery', run: () => playShot(delivery) },
  {
    name: 'bestLoft for total',
    run: () => bestLoft({ clubSpeed: mph(95), attackAngle: degrees(-1) }, {}, { maximise: 'total' }),
  },
  {
    name: 'bestLoft for carry',
    run: () => bestLoft({ clubSpeed: mph(95), attackAngle: degrees(-1) }, {}, { maximise: 'carry' }),
  },
  { name: 'bestLaunch for carry', run: () => bestLaunch({ ballSpeed: mph(140) }, {}, { maximise: 'carry' }) },
  { name: 'speedForCarry', run: () => speedForCarry(yards(220)) },
  {
    name: 'carryMap of 200 × 200',
    run: () =>
      carryMap({
        ballSpeed: mph(140),
        launchAngle: { min: degrees(5), max: degrees(25) },
        spinRate: { min: rpm(1500), max: rpm(5000) },
      }),
  },
  { name: 'locateStrike, centred and exact', aim: 'under 2 ms', run: () => locateStrike(measured) },
  { name: 'locateStrike, off the toe and noisy', aim: 'under 2 ms', run: () => locateStrike(noisy) },
  { name: 'locateStrike, a reading that does not fit', run: () => locateStrike(inconsistent) },
  {
    name: 'calibrate, 100 shots, 10 misread',
    aim: 'under 2 s',
    run: () => calibrate(shots),
  },
  { name: 'summariseSession, 100 shots', run: () => summariseSession(shots) },
  { name: 'sensitivities of a delivery', run: () => sensitivities(delivery) },
  {
    name: 'disperse a delivery',
    run: () =>
      disperse({ delivery, spread: { kind: 'normal', sd: { clubSpeed: mph(1.5), faceAngle: degrees(2) } } }),
  },
];

/** Processor time of some calls [s]. */
function timeOf(run: () => unknown, calls: number): number {
  const start = process.cpuUsage();
  for (let i = 0; i < calls; i++) run();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}

/** Processor time for warming up, for one sample and for all samples of a task [s]. */
const WARM_UP = 0.5;
const SAMPLE = 0.05;
const SAMPLES = 1;

for (const { name, aim = '', run } of tasks) {
  let calls = 1;
  for (let spent = 0; spent < WARM_UP; ) {
    const took = timeOf(run, calls);
    spent += took;
    // As many calls a sample as the clock needs.
    calls = Math.max(1, Math.ceil((calls * SAMPLE) / Math.max(took, SAMPLE / 10)));
  }
  const samples: number[] = [];
  for (let spent = 0; spent < SAMPLES || samples.length < 3; ) {
    const took = timeOf(run, calls);
    spent += took;
    samples.push(took / calls);
  }
  const time: TaskTime = { name, aim, seconds: median(samples), repeats: samples.length * calls };
  console.log(JSON.stringify(time));
}
