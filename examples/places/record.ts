import type { ShotTable } from 'fairflight/schema';
import type { ModelledChange } from 'fairflight/session';
import type { Display } from '../lib/display.js';
import { oddLines } from '../lib/odd.js';
import { sceneWords } from '../lib/scene-options.js';
import { near } from '../lib/text.js';
import { type Elsewhere, warningLines } from './elsewhere.js';
import { CARD_NOTE, headOf, LIMITS, placeSentences, widthSentence, windSentence } from './words.js';

/** The distances elsewhere as JSON: every number under a key that says its unit. */
export function elsewhereRecord(
  answer: Elsewhere,
  table: ShotTable,
  file: string,
  display: Display,
): unknown {
  const { of, unit } = display.distance;
  const shown = (value: number): number => near(of(value), 1);
  const changed = ({ value, spread, known }: ModelledChange): object => ({
    value: shown(value),
    ...(spread && { low: shown(spread.low), high: shown(spread.high) }),
    ...(known !== undefined && { known }),
  });
  return {
    about: {
      what: 'The same shots elsewhere',
      file,
      comments: table.comments,
      conditions: sceneWords(answer.home, display),
      'outliers count': answer.keptOutliers,
      limits: [CARD_NOTE, ...LIMITS],
    },
    input: {
      rows: table.rowsRead,
      used: table.shots.length,
      'left out': table.rowsLeftOut,
      'without a launch': answer.withoutLaunch,
      rejected: table.rejected,
      notes: table.notes,
    },
    places: answer.places.map((place) => ({
      key: place.key,
      name: headOf(place),
      conditions: sceneWords(place.scene, display),
    })),
    clubs: answer.clubs.map(({ club, shots, carry, total, basis, modelLess, there }) => ({
      club,
      shots,
      [`carry (${unit})`]: {
        mean: shown(carry.mean),
        ...(carry.interval && { low: shown(carry.interval.low), high: shown(carry.interval.high) }),
        basis: basis.carry,
      },
      [`total (${unit})`]: { mean: shown(total.mean), basis: basis.total },
      ...(modelLess !== undefined && { [`model less measured (${unit})`]: shown(modelLess) }),
      there: Object.fromEntries(
        answer.places.map(({ key }) => [
          key,
          {
            [`carry (${unit})`]: shown(there[key].carry),
            [`change of carry (${unit})`]: changed(there[key].carryChange),
            [`total (${unit})`]: shown(there[key].total),
            [`change of total (${unit})`]: changed(there[key].totalChange),
            [`drift to the right (${unit})`]: changed(there[key].drift),
          },
        ]),
      ),
    })),
    answers: [
      ...placeSentences(answer, display),
      windSentence(answer, display),
      widthSentence(answer, display),
    ],
    'odd shots': oddLines(answer.sifted, display),
    warnings: warningLines(answer, display),
  };
}
