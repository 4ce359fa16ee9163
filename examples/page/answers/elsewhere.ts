import type { MeasuredShot } from 'fairflight/session';
import type { Display } from '../../lib/display.js';
import type { SceneOption } from '../../lib/scene-options.js';
import type { Sheet } from '../../lib/sheet.js';
import { fixed, grouped, signed } from '../../lib/text.js';
import { changesChart } from '../../places/chart.js';
import { clubOf, type Elsewhere, elsewhere, withoutLaunchSentence } from '../../places/elsewhere.js';
import { placesFrom } from '../../places/scenes.js';
import {
  basisSentence,
  CARD_NOTE,
  LIMITS,
  placeSentences,
  spreadWords,
  thereWords,
  widthSentence,
  windSentence,
} from '../../places/words.js';
import type { Answer } from '../protocol.js';
import { MOST_DRAWN, spreadOver } from '../sample.js';
import type { Study } from '../study.js';
import { chart, type Drawing, notes, table } from './parts.js';

/** Other places in round figures of the units shown. */
const PLACES: Readonly<
  Record<Study['units'], Readonly<Record<'cold' | 'warm' | 'height' | 'breeze', string>>>
> = {
  imperial: { cold: '40F', warm: '85F', height: '5000ft', breeze: '15mph' },
  metric: { cold: '5C', warm: '30C', height: '1600m', breeze: '24km/h' },
};

/** Flies the shots again elsewhere. @throws UsageError where none can be flown */
export function elsewhereOf(
  shots: readonly MeasuredShot[],
  place: Readonly<Partial<Record<SceneOption, string>>>,
  units: Study['units'],
  keepOutliers: boolean,
  tick: (share: number) => void,
): Elsewhere {
  const options: Readonly<Partial<Record<string, string>>> = { ...PLACES[units], ...place };
  const { home, places } = placesFrom({ text: (name) => options[name] }, {});
  const chosen = spreadOver(shots, MOST_DRAWN);
  const clubs = new Set(chosen.map(clubOf)).size;
  const progress = { tick: (done: number): void => tick(done / clubs), stop: (): void => undefined };
  return elsewhere({ shots: chosen, home, places, keepOutliers }, progress);
}

/** How far elsewhere? */
export function elsewhereAnswer(answer: Elsewhere, all: number, display: Display, drawing: Drawing): Answer {
  const { words, width } = drawing;
  const figures = distanceFigures(answer, display, drawing);
  const says = [
    ...placeSentences(answer, display),
    windSentence(answer, display),
    widthSentence(answer, display),
    basisSentence(answer),
    withoutLaunchSentence(answer),
    ...(all > MOST_DRAWN ? [words.answers.sampled(grouped(MOST_DRAWN), grouped(all))] : []),
  ];
  return {
    id: 'elsewhere',
    says: says.filter((each) => each !== ''),
    parts: [
      table('distances', figures, drawing),
      chart('places', changesChart(answer, display, width), figures, drawing),
      ...notes(words.answers.limits, [CARD_NOTE, ...LIMITS]),
    ],
  };
}

function distanceFigures({ clubs, places }: Elsewhere, display: Display, { words }: Drawing): Sheet {
  const { heads } = words.answers;
  const { of, unit } = display.distance;
  return {
    columns: [
      { head: heads.club, text: true },
      { head: heads.shots },
      { head: heads.now, unit },
      ...places.map(({ head: [name, what] }) => ({ head: name, unit: what })),
    ],
    rows: clubs.map(({ club, shots, carry, there }) => [
      { value: club },
      { value: String(shots) },
      { value: fixed(of(carry.mean)) },
      ...places.map(({ key }) => {
        const { carry: far, carryChange, drift } = there[key];
        const across = key === 'across';
        const moved = across ? drift : carryChange;
        const value = thereWords(across ? Math.abs(drift.value) : far, moved, display);
        const change = across || moved.known === false ? [] : [signed(of(moved.value))];
        const span = moved.spread === undefined ? [] : [`(${spreadWords(moved.spread, display)})`];
        return { value: across ? `↔ ${value}` : value, small: [[...change, ...span].join(' ')] };
      }),
    ]),
  };
}
