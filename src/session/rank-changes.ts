import { type AerodynamicModelId, coefficientLaws } from '../aerodynamics/registry.js';
import type { Launch } from '../inputs/launch.js';
import { type MeasuredShot, readMeasuredShots } from '../inputs/measured-shot.js';
import { refusal } from '../inputs/refuse.js';
import { type ResolvedScene, readScene, type Scene, withDefaults } from '../scene/scene.js';
import { flyEnsemble } from '../sensitivity/ensemble.js';
import { createPlayer } from '../shot/player.js';
import { si } from '../units/index.js';
import { createChangePlayer } from './change-player.js';
import type { ChangeRanking, EvidenceName } from './change-ranking.js';
import { stepsFor } from './change-steps.js';
import { scoredScatter } from './change-strokes.js';
import { drawnDistance, WORTH } from './change-verdict.js';
import {
  againstCentred,
  type DrawnWorld,
  type Judge,
  judgeScatter,
  judgeStep,
  playedScatter,
  ranked,
} from './judge-change.js';
import { evidenceOf, type PlayerEvidence } from './player-evidence.js';
import { drawWorlds, middleWorld, type WorldSource } from './player-worlds.js';
import { type RankOptions, type RankSettings, readRankOptions } from './rank-options.js';

/** Share of the draws that must be computed for a figure. */
const ENOUGH = 0.9;

/**
 * Ranks what a player could change by what it brings, and gives one verdict on each: a change is advised when it is worth 3 yd and
 * clear of its own interval, when the other distance does not suffer, and when its worth does not hang on something
 * that was assumed, and from five shots on. Club speed is not advised but found `by-training`: it takes weeks, and crowds no fitting out.
 *
 * Steps can be attained: loft by up to 2° toward the best and no further (driver), attack angle up by 2.5° and no steeper than
 * 5° (driver), half of the way to a centred strike's ball speed, 3 mph of club speed, and with a hole a tenth less
 * scatter. The launch as read is moved by the difference that the strike model sees.
 *
 * The intervals hold what the shots leave open. Players are drawn who could have hit them: few shots and scatter (Student's
 * t), errors of reading common to all shots, spin and its answer to a change (`spinBand`), the run (`run.band`), and the
 * ball, by every model of `presentDayModels` that counts for this flight, unless the scene names one. What was not
 * read is drawn from what players do: for a driver attack 0 ± 3.5° and dynamic loft the static loft +2 ± 4°. All
 * figures are for level, square shots; steps and priors are assumptions. No one knows how a player answers to a change, so
 * take each as a question for a coach or fitter.
 * @param shots - of one player with one club at one effort; at least one, with club or ball speed
 * @param scene - where the shots were hit and are judged
 * @param options - what to maximise, hole, clubhead, reading errors, coverage, draws and seed
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field, also when no shot has a speed and when
 *   no strike explains the shots
 * @example rankChanges(shots).changes.filter(({ verdict }) => verdict === 'advised')
 */
export function rankChanges(
  shots: readonly MeasuredShot[],
  scene: Scene = {},
  options: RankOptions = {},
): ChangeRanking {
  const settings = readRankOptions(options);
  const given = readScene(scene);
  const resolved = withDefaults(given);
  const measured = readMeasuredShots(shots, 'shots', 1);
  const evidence = evidenceOf(measured);
  if (evidence.clubSpeed === undefined && evidence.ballSpeed === undefined) {
    throw refusal('shots', 'shots need a club speed or a ball speed; none of them has either', {
      value: measured.length,
    });
  }
  const { clubhead } = settings.shot;
  const source: WorldSource = { evidence, errors: settings.errors, clubhead, golfBall: resolved.ball };
  const middle = middleWorld(source);
  if (middle === undefined) throw unexplained(measured.length);
  const launch: Launch = {
    ballSpeed: si(middle.ballSpeed),
    launchAngle: si(middle.launchAngle),
    spinRate: si(middle.spinRate),
  };
  const models = given.aerodynamics === undefined ? countingModels(launch, scene) : [];
  const laws = models.length === 0 ? [resolved.model] : models.map((id) => coefficientLaws[id]);
  const player = createChangePlayer(resolved, settings.shot, laws, runErrorOf(launch, resolved, settings));
  const { steps, none } = stepsFor(
    createChangePlayer(resolved, settings.shot, [resolved.model], 0),
    middle,
    settings.maximise,
    clubhead.clubClass,
    evidence.smash !== undefined,
  );
  const worlds = drawWorlds(source, settings.draws, settings.seed).flatMap((world): DrawnWorld[] => {
    const now = player.distances(world, player.launch(world, {}));
    return now === undefined ? [] : [{ world, now }];
  });
  if (worlds.length < ENOUGH * settings.draws) throw unexplained(measured.length);
  const scored = scoredScatter(measured, settings);
  const scatter = scored && playedScatter(player, worlds, scored);
  const judge: Judge = { player, worlds, evidence, settings, shots: measured.length, scatter };
  const changes = [
    ...steps.flatMap((step) => judgeStep(judge, step) ?? []),
    ...(scatter === undefined ? [] : judgeScatter(judge, scatter)),
  ];
  return {
    maximise: settings.maximise,
    worth: si(WORTH),
    level: settings.level,
    now: {
      carry: drawnDistance(
        worlds.map(({ now }) => now.carry),
        settings.level,
      ),
      total: drawnDistance(
        worlds.map(({ now }) => now.total),
        settings.level,
      ),
    },
    changes: ranked(changes, settings),
    leave: [...none, ...changes.flatMap(({ change, verdict }) => (verdict === 'leave' ? [change] : []))],
    ...(evidence.smash && { againstCentred: againstCentred(judge) }),
    readings: readingsOf(evidence),
    models,
  };
}

function unexplained(count: number): Error {
  return refusal(
    'shots',
    'shots cannot be explained: for the most part no level, square strike with this clubhead launches the ball so, or it does not land',
    { value: count, hint: 'check launch angle, attack angle, units and clubhead' },
    'outside-range',
  );
}

/** The models of a present-day ball whose range the flight keeps to. */
function countingModels(launch: Launch, scene: Scene): readonly AerodynamicModelId[] {
  return flyEnsemble(launch, scene).flights.flatMap(({ counts, model }) => (counts ? [model] : []));
}

/** Standard error of the run, as a share of it: half of its band. */
function runErrorOf(launch: Launch, scene: ResolvedScene, { shot }: RankSettings): number {
  const run = createPlayer(scene, shot).fromLaunch(launch).run;
  return run === undefined || run.distance === 0 ? 0 : (run.band.high - run.distance) / run.distance / 2;
}

function readingsOf(evidence: PlayerEvidence): ChangeRanking['readings'] {
  const count = (name: EvidenceName): number => evidence[name]?.count ?? 0;
  return {
    clubSpeed: count('clubSpeed'),
    ballSpeed: count('ballSpeed'),
    attackAngle: count('attackAngle'),
    dynamicLoft: count('dynamicLoft'),
    launchAngle: count('launchAngle'),
    spinRate: count('spinRate'),
  };
}
