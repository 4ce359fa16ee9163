import { type BatchKernel, loadBatchKernel } from '../../src/batch.js';
import { createCompiledEngine } from '../../src/flight/engine/compiled.js';
import { createFlightEngine } from '../../src/flight/engine/general.js';
import {
  type FlightProblem,
  sceneProblem,
  setLaunch,
  type WritableProblem,
} from '../../src/flight/problem.js';
import {
  type AerodynamicModel,
  aerodynamicModels,
  fly,
  flyMany,
  metres,
  toDegrees,
} from '../../src/index.js';
import { flyReference } from '../../src/reference.js';
import { resolveScene } from '../../src/scene/scene.js';
import { radians } from '../../src/units/index.js';
import { type Answer, type ReferenceFlight, testLaw } from './work-item.js';

/** A method made ready for a list of flights; only `run` is timed. */
export interface Prepared {
  readonly run: () => void;
  /** Answers of the last run, in the order of the flights. */
  readonly answers: () => readonly Answer[];
}

/** One row of ours in the tables. To add one, add it to {@link methods}. */
export interface Method {
  readonly name: string;
  /** Coefficient model flown. Errors are taken against the file for the test law, against odex at 1e-13 for others. */
  readonly model: AerodynamicModel;
  /** Finest tolerance it can fly [m]; default all of {@link tolerances}. */
  readonly finest?: number;
  readonly prepare: (flights: readonly ReferenceFlight[], tolerance: number) => Prepared | Promise<Prepared>;
}

/** Tolerances every method of ours is run at [m]. */
export const tolerances: readonly number[] = [
  10, 3, 1, 3e-1, 1e-1, 3e-2, 1e-2, 3e-3, 1e-3, 3e-4, 1e-4, 3e-5, 1e-5, 3e-6, 1e-6, 1e-7, 1e-8,
];

/** A method that flies one flight at a time. */
function oneByOne(
  maker: (tolerance: number) => (flight: ReferenceFlight, answer: Answer) => void,
): Method['prepare'] {
  return (flights, tolerance) => {
    const answers = flights.map(() => ({ x: 0, z: 0, apex: 0, time: 0, angle: 0 }));
    const one = maker(tolerance);
    const run = (): void => {
      for (let i = 0; i < flights.length; i++) one(flights[i] as ReferenceFlight, answers[i] as Answer);
    };
    return { run, answers: () => answers };
  };
}

const publicCall = oneByOne((tolerance) => {
  const options = { tolerance: metres(tolerance) };
  return ({ launch, scene }, answer) => {
    const flight = fly(launch, scene, options);
    answer.x = flight.landing.position.x;
    answer.z = flight.landing.position.z;
    answer.apex = flight.apex;
    answer.time = flight.hangTime;
    answer.angle = toDegrees(flight.descentAngle);
  };
});

/** The numbers a kernel leaves behind, without the record that `fly` makes of them. */
function noteState(answer: Answer, state: ArrayLike<number>, apex: number, time: number): void {
  const [x, , z, vx, vy, vz] = state as unknown as readonly [number, number, number, number, number, number];
  answer.x = x;
  answer.z = z;
  answer.apex = apex;
  answer.time = time;
  answer.angle = toDegrees(radians(Math.atan2(-vy, Math.sqrt(vx * vx + vz * vz))));
}

/**
 * Writes the reference flights into one problem, as the C++ peers do: air, ball and law stand, launch and wind change.
 * Nothing is checked.
 */
function problemWriter(): (flight: ReferenceFlight) => FlightProblem {
  let problem: WritableProblem | undefined;
  return ({ launch, scene }) => {
    problem ??= sceneProblem(resolveScene(scene));
    problem.windAlong = scene.wind?.along ?? 0;
    problem.windAcross = scene.wind?.across ?? 0;
    const { ballSpeed, launchAngle, launchDirection, spinRate, spinAxisTilt, rifleSpin } = launch;
    setLaunch(
      problem,
      ballSpeed,
      launchAngle,
      launchDirection ?? 0,
      spinRate,
      spinAxisTilt ?? 0,
      rifleSpin ?? 0,
    );
    return problem;
  };
}

const generalEngine = oneByOne((tolerance) => {
  const engine = createFlightEngine();
  const problemOf = problemWriter();
  return (flight, answer) => {
    const { state, apex, time } = engine.fly(problemOf(flight), tolerance, 60);
    noteState(answer, state, apex, time);
  };
});

const defaultEngine = oneByOne((tolerance) => {
  const engine = createCompiledEngine(false);
  const problemOf = problemWriter();
  return (flight, answer) => {
    const end = engine.fly(problemOf(flight), tolerance, 60);
    if (end === undefined) throw new Error('the compiled kernel does not cover this flight');
    noteState(answer, end.state, end.apex, end.time);
  };
});

/** All flights in one call, columns in and out. */
function batch(flights: readonly ReferenceFlight[], tolerance: number, kernel?: BatchKernel): Prepared {
  const column = (of: (flight: ReferenceFlight) => number): Float64Array => Float64Array.from(flights, of);
  const launches = {
    ballSpeed: column(({ launch }) => launch.ballSpeed),
    launchAngle: column(({ launch }) => launch.launchAngle),
    spinRate: column(({ launch }) => launch.spinRate),
    spinAxisTilt: column(({ launch }) => launch.spinAxisTilt ?? 0),
    rifleSpin: column(({ launch }) => launch.rifleSpin ?? 0),
  };
  const conditions = {
    windAlong: column(({ scene }) => scene.wind?.along ?? 0),
    windAcross: column(({ scene }) => scene.wind?.across ?? 0),
  };
  const options = { tolerance: metres(tolerance), conditions, kernel };
  // One scene serves all; the wind of each flight is a column.
  const scene = flights[0]?.scene ?? {};
  let out: ReturnType<typeof flyMany>;
  const at = (values: Float64Array, i: number): number => values[i] as number;
  return {
    run: () => {
      out = flyMany(launches, scene, options);
    },
    answers: () =>
      flights.map((_, i) => ({
        x: at(out.x, i),
        z: at(out.z, i),
        apex: at(out.apex, i),
        time: at(out.hangTime, i),
        angle: toDegrees(radians(at(out.descentAngle, i))),
      })),
  };
}

/** Every row of ours. Each runs in a process of its own, as the JavaScript peers do. */
export const methods: readonly Method[] = [
  { name: 'fly', model: testLaw, prepare: publicCall },
  {
    name: 'flyMany (WebAssembly)',
    model: testLaw,
    // Finer, the flights would be the general engine's.
    finest: 1e-6,
    prepare: async (flights, tolerance) => {
      const kernel = await loadBatchKernel();
      if (kernel === undefined) throw new Error('this Node.js has no WebAssembly SIMD');
      return batch(flights, tolerance, kernel);
    },
  },
  { name: 'flyMany', model: testLaw, prepare: (flights, tolerance) => batch(flights, tolerance) },
  { name: 'default engine', model: testLaw, finest: 1e-6, prepare: defaultEngine },
  { name: 'general engine', model: testLaw, prepare: generalEngine },
  {
    name: 'fly (default ball model)',
    model: aerodynamicModels['fitted-modern'],
    prepare: publicCall,
  },
  {
    name: 'fly (Smits-Smith 1994)',
    model: aerodynamicModels['smits-smith-1994'],
    prepare: publicCall,
  },
];

/** The flights with a model's own answers, by odex at 1e-13, where the file's do not apply. */
export function withAnswers(flights: readonly ReferenceFlight[], model: AerodynamicModel): ReferenceFlight[] {
  if (model === testLaw) return [...flights];
  return flights.map(({ launch, scene }) => {
    const { landing, apex, hangTime, descentAngle } = flyReference(launch, scene);
    const { x, z } = landing.position;
    return { launch, scene, answer: { x, z, apex, time: hangTime, angle: toDegrees(descentAngle) } };
  });
}
