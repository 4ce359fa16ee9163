import {
  type ChangeRanking,
  type MeasuredShot,
  type RankedChange,
  rankChanges,
} from '../../src/session/index.js';
import { type Angle, type AngularSpeed, si, toDegrees, toRpm, toYards } from '../../src/units/index.js';
import { type AdvicePlayer, drivesOf, type Expected, players } from './advice-players.js';
import { paragraph, table } from './markdown.js';

/** Draws of a ranking on this page; the default of the library. */
const DRAWS = 300;

const signed = (value: number, decimals: number): string => {
  const text = Math.abs(value).toFixed(decimals);
  return Number(text) === 0 ? text : `${value < 0 ? '−' : '+'}${text}`;
};

function changeWords({ change, step }: RankedChange): string {
  switch (change) {
    case 'loft':
      return `${step > 0 ? 'more' : 'less'} loft, ${signed((step * 180) / Math.PI, 1)}°`;
    case 'attack-angle':
      return `hitting up, ${signed((step * 180) / Math.PI, 1)}°`;
    case 'strike':
      return `strike, ${signed(100 * step, 1)} % ball speed`;
    case 'speed':
      return '3 mph more';
    case 'scatter':
      return 'less scatter';
  }
}

/** What the library advises, in the words of {@link Expected}. */
export function advisedFor({ changes }: ChangeRanking): readonly Expected[] {
  return changes.flatMap(({ change, step, verdict }): Expected[] => {
    if (verdict !== 'advised') return [];
    if (change === 'loft') return [step > 0 ? 'more loft' : 'less loft'];
    if (change === 'attack-angle') return ['hitting up'];
    return change === 'strike' ? ['strike'] : [];
  });
}

function gainWords(change: RankedChange, maximise: ChangeRanking['maximise']): string {
  const { value, low, high } = change[maximise];
  const [at, from, to] = [value, low, high].map((each) => signed(toYards(each), 1));
  return `${changeWords(change)}: ${at} yd (${from} to ${to})`;
}

/** One player with what the library says. */
export interface AdvisedPlayer {
  readonly player: AdvicePlayer;
  readonly ranking: ChangeRanking;
  readonly agrees: boolean;
}

/** Asks the library about every player. */
export function advisedPlayers(): readonly AdvisedPlayer[] {
  return players.map((player) => {
    const { scene = {}, maximise = 'carry', expected } = player;
    const ranking = rankChanges(drivesOf(player), scene, { maximise, draws: DRAWS });
    const agrees = [...advisedFor(ranking)].sort().join() === [...expected].sort().join();
    return { player, ranking, agrees };
  });
}

const VERDICTS: Readonly<Record<RankedChange['verdict'], string>> = {
  advised: '',
  'by-training': 'by training',
  'not-worth-it': 'not worth a change',
  leave: '',
  'too-few-shots': 'too few shots',
  'not-clear': 'may bring nothing',
  'costs-the-other': 'costs the other distance',
  'measure-first': 'measure first',
};

function meanOf<K extends 'launchAngle' | 'spinRate'>(
  shots: readonly MeasuredShot[],
  name: K,
): K extends 'launchAngle' ? Angle : AngularSpeed {
  return si(shots.reduce((sum, shot) => sum + (shot[name] ?? 0), 0) / shots.length);
}

function row({ player, ranking, agrees }: AdvisedPlayer): readonly string[] {
  const { who, speed, attack, where = '', expected, why, differs } = player;
  const { changes, maximise, leave, now } = ranking;
  const advised = changes.filter(({ verdict }) => verdict === 'advised');
  const rest = changes.flatMap((change) => {
    const verdict = VERDICTS[change.verdict];
    return verdict === '' ? [] : [`${gainWords(change, maximise)}, ${verdict}`];
  });
  const left = leave.length === 0 ? [] : [`left as it is: ${leave.join(', ').replaceAll('-', ' ')}`];
  const shots = drivesOf(player);
  const launch = toDegrees(meanOf(shots, 'launchAngle')).toFixed(1);
  const spin = (Math.round(toRpm(meanOf(shots, 'spinRate')) / 10) * 10).toLocaleString('en');
  const place = where === '' ? '' : `, ${where}`;
  return [
    `**${who}**, ${speed} mph, attack ${signed(attack, 1)}°, launch ${launch}°, ${spin} rpm${place}; now ${toYards(now[maximise].value).toFixed(0)} yd`,
    advised.length === 0 ? 'nothing' : advised.map((change) => gainWords(change, maximise)).join('; '),
    [...rest, ...left].join('; '),
    `${expected.length === 0 ? 'Nothing' : expected.join(' and ')}. ${why}`,
    agrees ? 'the same' : `**differs:** ${differs ?? '?'}`,
  ];
}

/** Writes docs/advice.md. */
export function renderAdvicePage(all: readonly AdvisedPlayer[]): string {
  const same = all.filter(({ agrees }) => agrees).length;
  return [
    '# What is advised, and what a fitter would say',
    paragraph(`Written by \`npm run docs:advice\`. Twelve invented players hit fourteen drives each with a generic driver;
      \`rankChanges\` says what is worth changing. Gains are of carry unless the row says total, with intervals of 95 %. Beside them
      stands what a fitter or coach would expect: common practice, no source. They agree for ${same} of ${all.length}; where not, the
      last column says why. More speed is worth distance to everybody. It is found by training, not by a fitting, and stands apart.`),
    table(['player', 'advised', 'also looked at', 'a fitter would expect', 'the library says'], all.map(row)),
    paragraph(`The loft that fits is the best at the player’s own attack angle. A change of loft reaches no further than 2°, of attack
      angle 2.5° and no steeper than 5° up. A change is advised when it is worth 3 yd and clear of its own interval.`),
    '',
  ].join('\n\n');
}
