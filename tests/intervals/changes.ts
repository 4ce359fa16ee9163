import { coefficientLaws, presentDayModels } from '../../src/aerodynamics/registry.js';
import { balls } from '../../src/ball/index.js';
import { clubheads } from '../../src/clubhead/index.js';
import type { Stream } from '../../src/numerics/index.js';
import { resolveScene } from '../../src/scene/scene.js';
import { createChangePlayer } from '../../src/session/change-player.js';
import { type ChangeStep, swingChange } from '../../src/session/change-steps.js';
import { type MeasuredShot, rankChanges } from '../../src/session/index.js';
import { gainOf, playedBoth } from '../../src/session/judge-change.js';
import { centredStrike, type PlayerWorld } from '../../src/session/player-worlds.js';
import { shotSettings } from '../../src/shot/shot-options.js';
import { defaultReadingErrors } from '../../src/strike/measurement.js';
import { createStriker } from '../../src/strike/striker.js';
import { degrees, mph, si } from '../../src/units/index.js';
import type { Outcome, Study } from './study.js';

const clubhead = clubheads.driver;
const ball = balls.conforming;

/** A driver of 75 to 120 mph; the ball that flies is drawn from the ensemble, the spin from its band. */
function truePlayer({ uniform, normal }: Stream): PlayerWorld | undefined {
  const clubSpeed = mph(75 + 45 * uniform());
  const attackAngle = degrees(3.5 * normal());
  const dynamicLoft = degrees(14 + 0.4 * ((attackAngle * 180) / Math.PI) + 2 * normal());
  const centred = centredStrike(createStriker({ clubhead, ball }), clubSpeed, attackAngle, dynamicLoft);
  if (centred === undefined) return undefined;
  const spinFactor = Math.exp(0.13 * normal());
  return {
    clubSpeed,
    attackAngle,
    dynamicLoft,
    ballSpeed: centred.ballSpeed * (1 - Math.abs(0.03 * normal())),
    launchAngle: centred.launchAngle,
    spinRate: centred.spinRate * spinFactor,
    spinFactor,
    ball: uniform(),
    run: normal(),
    response: 0.13 * normal(),
  };
}

/** What a device that errs alike in every shot reads of a player who scatters. */
function readings(
  player: PlayerWorld,
  { normal }: Stream,
  count: number,
  withAttack: boolean,
): MeasuredShot[] {
  const e = defaultReadingErrors;
  const club = 1 + e.clubSpeed * normal();
  const struck = 1 + e.ballSpeed * normal();
  const spun = 1 + e.spinRate * normal();
  const up = e.attackAngle * normal();
  const launched = e.launchAngle * normal();
  return Array.from({ length: count }, (): MeasuredShot => {
    const swing = 1 + 0.015 * normal();
    return {
      clubSpeed: si(player.clubSpeed * swing * club),
      ballSpeed: si(player.ballSpeed * swing * (1 + 0.015 * normal()) * struck),
      launchAngle: si(player.launchAngle + degrees(1.5) * normal() + launched),
      spinRate: si(player.spinRate * Math.max(0.3, 1 + 0.12 * normal()) * spun),
      ...(withAttack && { attackAngle: si(player.attackAngle + degrees(1) * normal() + up) }),
    };
  });
}

function study(conditions: string, count: number, withAttack: boolean): Study {
  return {
    call: 'rankChanges',
    conditions,
    stated: true,
    draws: 1000,
    draw: (random) => {
      const player = truePlayer(random);
      if (player === undefined) return {};
      const shots = readings(player, random, count, withAttack);
      const { changes } = rankChanges(shots, {}, { draws: 200 });
      const laws = presentDayModels.map((id) => coefficientLaws[id]);
      const truth = createChangePlayer(resolveScene({}), shotSettings({}), laws, 0.125);
      const now = truth.distances(player, truth.launch(player, {}));
      const outcomes: Record<string, readonly Outcome[]> = {};
      for (const { change, step, carry, total } of changes) {
        const does = swingChange({ change, step } as ChangeStep);
        const gain = now && gainOf(playedBoth(truth, { world: player, now }, does, 'carry'));
        if (gain === undefined) continue;
        const inside = (x: number, { low, high }: typeof carry): boolean =>
          x >= low - 1e-3 && x <= high + 1e-3;
        outcomes[`carry by ${change}`] = [
          { covered: inside(gain.carry, carry), width: carry.high - carry.low },
        ];
        outcomes[`total by ${change}`] = [
          { covered: inside(gain.total, total), width: total.high - total.low },
        ];
      }
      return outcomes;
    },
  };
}

/** What changes bring, against drawn players. */
export const changeStudies: readonly Study[] = [
  study('14 drives, everything read', 14, true),
  study('5 drives, no attack angle', 5, false),
];
