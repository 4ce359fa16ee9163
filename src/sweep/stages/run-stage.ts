import { refusal } from '../../inputs/refuse.js';
import type { Turf } from '../../inputs/turf.js';
import type { ResolvedScene } from '../../scene/scene.js';
import { RUN_TIME_LIMIT } from '../../shot/run-out.js';
import { type RunConstants, runConstants } from '../../turf/constants.js';
import { run, toGround, worldX, worldZ } from '../../turf/kernel.js';
import { landingWarnings } from '../../turf/run-out.js';
import { newRunState, VX, VY, VZ, WX, X, Y, Z } from '../../turf/state.js';
import { bitsOf } from '../../warnings/bits.js';
import { anyVaries, type Input, type Inputs, withInputs } from '../inputs.js';
import { STATUS_CODE } from '../status.js';
import type { SceneRows } from './scene-rows.js';
import type { Stage } from './strike-stage.js';

/** The run of each row that landed. @internal */
export function runStage(inputs: Inputs, scenes: SceneRows, base: Turf): Stage {
  const given = inputs.group('turf');
  requireModel(given, base);
  const fixedTurf = anyVaries(given) ? undefined : withInputs(base, given, [], 0);
  let known: { readonly scene: ResolvedScene; readonly constants: RunConstants } | undefined;
  const state = newRunState();

  const constantsAt = (columns: readonly Float64Array[], i: number, scene: ResolvedScene): RunConstants => {
    if (fixedTurf !== undefined && known?.scene === scene) return known.constants;
    const { ball, air, slope, crossSlope } = scene;
    const rowTurf = fixedTurf ?? withInputs(base, given, columns, i);
    const constants = runConstants(rowTurf, ball, air, slope, crossSlope, RUN_TIME_LIMIT);
    known = { scene, constants };
    return constants;
  };

  return (columns, work, count) => {
    const x0 = work.column('landing.x');
    const z0 = work.column('landing.z');
    const vx = work.column('landing.vx');
    const vy = work.column('landing.vy');
    const vz = work.column('landing.vz');
    const ax = work.column('axis.x');
    const ay = work.column('axis.y');
    const az = work.column('axis.z');
    const spin = work.column('flight.landing.spinRate');
    const total = work.column('total');
    const side = work.column('side');
    const distance = work.column('run.distance');
    const across = work.column('run.side');
    for (let i = 0; i < count; i++) {
      const x = x0[i] as number;
      const z = z0[i] as number;
      total[i] = Math.hypot(x, z);
      side[i] = z;
      if (work.status[i] !== STATUS_CODE.landed) continue;
      const scene = scenes.at(columns, i) as ResolvedScene;
      const c = constantsAt(columns, i, scene);
      const rate = spin[i] as number;
      const hx = vx[i] as number;
      const hz = vz[i] as number;
      state.fill(0);
      toGround(c, hx, vy[i] as number, hz, state, VX);
      toGround(c, rate * (ax[i] as number), rate * (ay[i] as number), rate * (az[i] as number), state, WX);
      const met = landingWarnings(c.law, state[VX] as number, state[VY] as number, state[VZ] as number);
      (work.warnings[i] as number) |= bitsOf(met);
      if (!run(c, state)) work.status[i] = STATUS_CODE.stillRolling;
      const along = state[X] as number;
      const normal = state[Y] as number;
      const sideways = state[Z] as number;
      const dx = worldX(c, along, normal, sideways);
      const dz = worldZ(c, normal, sideways);
      const level = Math.hypot(hx, hz);
      const forward = level > 0 ? hx / level : 1;
      const right = level > 0 ? hz / level : 0;
      total[i] = Math.hypot(x + dx, z + dz);
      side[i] = z + dz;
      distance[i] = dx * forward + dz * right;
      across[i] = dz * forward - dx * right;
    }
  };
}

/** A factor of one bounce model makes no sense on a turf with the other. */
function requireModel(given: readonly Input[], { bounce }: Turf): void {
  for (const { name, path } of given) {
    const key = /^turf\.bounce\.(\w+)$/.exec(name)?.[1];
    if (key === undefined || Object.hasOwn(bounce, key)) continue;
    throw refusal(path, `${name} does not belong to a turf whose bounce is ${bounce.model}`, {
      hint: 'give scene.turf with the other model',
    });
  }
}
