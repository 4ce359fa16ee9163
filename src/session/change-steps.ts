import type { ClubClass } from '../clubhead/index.js';
import type { MaximisedDistance } from '../optimum/index.js';
import { maximise } from '../optimum/search.js';
import { METRES_PER_SECOND_PER_MPH, RADIANS_PER_DEGREE } from '../units/index.js';
import type { ChangePlayer, SwingChange } from './change-player.js';
import type { ChangeName } from './change-ranking.js';
import type { PlayerWorld } from './player-worlds.js';

/** A change with a step that can be attained. @internal */
export interface ChangeStep {
  readonly change: Exclude<ChangeName, 'scatter'>;
  readonly step: number;
}

/** What a fitting can do to the loft of a driver [rad]. Common practice, no source. */
const LOFT_REACH = 2 * RADIANS_PER_DEGREE;
/** Change of attack angle that a player learns [rad], and the steepest up it is taken to. Assumptions. */
const ATTACK_STEP = 2.5 * RADIANS_PER_DEGREE;
const STEEPEST_UP = 5 * RADIANS_PER_DEGREE;
/** Lofts that a fitting can set about the one now [rad]. */
const FITTED = [-1, 0, 1].map((part) => part * LOFT_REACH);
/** Club speed that training brings [m/s]: 3 mph. Assumption. */
const SPEED_STEP = 3 * METRES_PER_SECOND_PER_MPH;
/** Part of the way to a centred strike. Assumption. */
const STRIKE_PART = 0.5;

/** Smaller steps are none: angles [rad], and a share of ball speed. */
const LEAST_ANGLE = 0.25 * RADIANS_PER_DEGREE;
const LEAST_STRIKE = 0.003;

/** How far the best loft is looked for either way [rad]. */
const SEARCHED = 8 * RADIANS_PER_DEGREE;

/** The steps that can be attained by a player as the readings have him, and what is as good as it can be. @internal */
export function stepsFor(
  player: ChangePlayer,
  world: PlayerWorld,
  objective: MaximisedDistance,
  clubClass: ClubClass,
  strikeRead: boolean,
): { readonly steps: readonly ChangeStep[]; readonly none: readonly ChangeStep['change'][] } {
  // Only a ball on a tee leaves attack angle and loft free.
  const looked: Partial<Record<ChangeStep['change'], ChangeStep | undefined>> = {
    ...(clubClass === 'driver' && {
      loft: loftStep(player, world, objective),
      'attack-angle': attackStep(world),
    }),
    ...(strikeRead && { strike: strikeStep(player, world) }),
    speed: SPEED,
  };
  const names = Object.keys(looked) as ChangeStep['change'][];
  return {
    steps: names.flatMap((name) => looked[name] ?? []),
    // Ball speed that a strike loses is lost, however little half of it would bring.
    none: names.filter((name) => looked[name] === undefined && name !== 'strike'),
  };
}

const SPEED: ChangeStep = { change: 'speed', step: SPEED_STEP };

/** What a step does. @internal */
export function swingChange({ change, step }: ChangeStep): SwingChange {
  switch (change) {
    case 'loft':
      return { loft: step };
    case 'attack-angle':
      return { attackAngle: step, fitted: FITTED };
    case 'strike':
      return { strike: step };
    case 'speed':
      return { clubSpeed: step };
  }
}

function loftStep(
  player: ChangePlayer,
  world: PlayerWorld,
  objective: MaximisedDistance,
): ChangeStep | undefined {
  const best = maximise(
    (loft) => ({
      value: player.distances(world, player.launch(world, { loft }))?.[objective] ?? Number.NEGATIVE_INFINITY,
      margin: Number.POSITIVE_INFINITY,
    }),
    -SEARCHED,
    SEARCHED,
    16,
  );
  const step = Math.min(LOFT_REACH, Math.max(-LOFT_REACH, best.x));
  if (best.value === Number.NEGATIVE_INFINITY || Math.abs(step) < LEAST_ANGLE) return undefined;
  return { change: 'loft', step };
}

function attackStep({ attackAngle }: PlayerWorld): ChangeStep | undefined {
  const step = Math.min(ATTACK_STEP, STEEPEST_UP - attackAngle);
  return step < LEAST_ANGLE ? undefined : { change: 'attack-angle', step };
}

function strikeStep(player: ChangePlayer, world: PlayerWorld): ChangeStep | undefined {
  const centred = player.centred(world);
  const step = centred === undefined ? 0 : STRIKE_PART * (centred.ballSpeed / world.ballSpeed - 1);
  return step < LEAST_STRIKE ? undefined : { change: 'strike', step };
}
