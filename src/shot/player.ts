import { flyIn } from '../flight/fly.js';
import type { Delivery } from '../inputs/delivery.js';
import type { Launch } from '../inputs/launch.js';
import type { ResolvedScene } from '../scene/scene.js';
import { type Strike, strikeOf } from '../strike/strike.js';
import { runFrom } from '../turf/run-out.js';
import { si } from '../units/index.js';
import { RUN_TIME_LIMIT } from './run-out.js';
import type { Shot } from './shot.js';
import type { ShotSettings } from './shot-options.js';
import type { Start } from './start.js';
import { requireFlyable } from './struck-launch.js';

/** Plays shots in one scene with one clubhead: the whole walk, with its records. @internal */
export interface Player {
  /** The strike alone; its ball may be faster than a flight is computed for. */
  readonly strike: (delivery: Delivery) => Strike;
  readonly fromDelivery: (delivery: Delivery) => Shot;
  readonly fromLaunch: (launch: Launch) => Shot;
  readonly play: (start: Start) => Shot;
}

/** Makes a player; scene, settings and what it is given to play are taken as read. @internal */
export function createPlayer(scene: ResolvedScene, settings: ShotSettings): Player {
  const play = (launch: Launch, strike: Strike | undefined): Shot => {
    const flight = flyIn(scene, launch, settings);
    const run =
      flight.ended === 'landed' ? runFrom(flight.landing, scene, RUN_TIME_LIMIT, scene.elevation) : undefined;
    const { x, z } = run?.restsAt ?? flight.landing.position;
    return {
      ...(strike && { strike }),
      launch,
      flight,
      ...(run && { run }),
      carry: flight.carry,
      total: si(Math.hypot(x, z)),
      side: si(z),
      warnings: [...(strike?.warnings ?? []), ...flight.warnings, ...(run?.warnings ?? [])],
    };
  };
  const strikeDelivery = (delivery: Delivery): Strike => strikeOf(delivery, settings.clubhead, scene.ball);
  const fromDelivery = (delivery: Delivery): Shot => {
    const strike = strikeDelivery(delivery);
    return play(requireFlyable(strike.launch, delivery.clubSpeed), strike);
  };
  const fromLaunch = (launch: Launch): Shot => play(launch, undefined);
  return {
    strike: strikeDelivery,
    fromDelivery,
    fromLaunch,
    play: ({ delivery, launch }) => (delivery === undefined ? fromLaunch(launch) : fromDelivery(delivery)),
  };
}
