import { createFlightEngine } from '../../flight/engine/general.js';
import { resolveFlightOptions } from '../../flight/fly.js';
import type { FlightOptions } from '../../flight/index.js';
import { flightProblem } from '../../flight/problem.js';
import type { Launch, Scene } from '../../scene/index.js';
import { si } from '../../units/index.js';
import type { FactorName } from '../factors.js';
import { type Inputs, valueAt } from '../inputs.js';
import { STATUS_CODE } from '../status.js';
import type { RowScene, SceneRows } from './scene-rows.js';
import { isRowFault, type Stage } from './strike-stage.js';
import type { Work } from './work.js';

const LAUNCH = [
  'launch.ballSpeed',
  'launch.launchAngle',
  'launch.launchDirection',
  'launch.spinRate',
  'launch.spinAxisTilt',
  'launch.rifleSpin',
] as const satisfies readonly FactorName[];

const ENDINGS = {
  landed: STATUS_CODE.landed,
  'time-limit': STATUS_CODE.timeLimit,
  'below-ground': STATUS_CODE.belowGround,
} as const;

/** Puts the launch of each row where the strike would have put it. @internal */
export function launchStage(inputs: Inputs): Stage {
  return (columns, work, count) => {
    for (const name of LAUNCH) {
      const input = inputs.find(name);
      const column = work.column(name);
      for (let i = 0; i < count; i++) column[i] = input === undefined ? 0 : valueAt(input, columns, i);
    }
  };
}

/** The flight of each row. @throws {@link FairflightError} for bad options or scene @internal */
export function flightStage(scenes: SceneRows, scene: Scene, options: FlightOptions = {}): Stage {
  const { tolerance, timeLimit } = resolveFlightOptions(options);
  const engine = createFlightEngine();
  const aerodynamics = scene.aerodynamics === undefined ? {} : { aerodynamics: scene.aerodynamics };
  return (columns, work, count) => {
    for (let i = 0; i < count; i++) {
      if (work.status[i] !== STATUS_CODE.landed) continue;
      const row = scenes.at(columns, i);
      if (row === undefined) {
        work.status[i] = STATUS_CODE.outsideRange;
        continue;
      }
      const launch = launchOf(work, i);
      try {
        const problem = flightProblem(launch, { ...sceneOf(row), ...aerodynamics });
        const { ending, time, apex, apexAt, state } = engine.fly(problem, tolerance, timeLimit);
        work.status[i] = ENDINGS[ending];
        keep(work, i, launch, time, apex, apexAt, state);
        work.column('axis.x')[i] = problem.nx;
        work.column('axis.y')[i] = problem.ny;
        work.column('axis.z')[i] = problem.nz;
      } catch (error) {
        if (!isRowFault(error)) throw error;
        const { code } = error as { code: string };
        work.status[i] = code === 'not-converged' ? STATUS_CODE.notConverged : STATUS_CODE.outsideRange;
      }
    }
  };
}

function launchOf(work: Work, i: number): Launch {
  const value = (name: (typeof LAUNCH)[number]): number => work.column(name)[i] as number;
  return {
    ballSpeed: si(value('launch.ballSpeed')),
    launchAngle: si(value('launch.launchAngle')),
    launchDirection: si(value('launch.launchDirection')),
    spinRate: si(value('launch.spinRate')),
    spinAxisTilt: si(value('launch.spinAxisTilt')),
    rifleSpin: si(value('launch.rifleSpin')),
  };
}

function sceneOf({ air, windAlong, windAcross, profile, ground, ball }: RowScene): Scene {
  const wind = { along: si<never>(windAlong), across: si<never>(windAcross) };
  return { air, wind: profile === undefined ? wind : { ...wind, profile }, ground, ball };
}

function keep(
  work: Work,
  i: number,
  launch: Launch,
  time: number,
  apex: number,
  apexAt: number,
  state: Float64Array,
): void {
  const [x, , z, vx, vy, vz, spin] = state as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const direction = launch.launchDirection ?? 0;
  work.column('landing.x')[i] = x;
  work.column('landing.z')[i] = z;
  work.column('landing.vx')[i] = vx;
  work.column('landing.vy')[i] = vy;
  work.column('landing.vz')[i] = vz;
  work.column('carry')[i] = Math.hypot(x, z);
  work.column('flight.side')[i] = z;
  work.column('flight.curve')[i] = z * Math.cos(direction) - x * Math.sin(direction);
  work.column('flight.apex')[i] = apex;
  work.column('flight.apexAt')[i] = apexAt;
  work.column('flight.hangTime')[i] = time;
  work.column('flight.descentAngle')[i] = Math.atan2(-vy, Math.hypot(vx, vz));
  work.column('flight.landing.speed')[i] = Math.hypot(vx, vy, vz);
  work.column('flight.landing.spinRate')[i] = spin;
}
