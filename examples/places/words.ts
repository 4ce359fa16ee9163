import type { ModelledChange } from 'fairflight/session';
import type { Display } from '../lib/display.js';
import { capital, fixed, listed, signed } from '../lib/text.js';
import type { ClubCard, Elsewhere } from './elsewhere.js';
import type { Place } from './scenes.js';

/** How far the figures can be trusted. */
export const LIMITS: readonly string[] = [
  'The launch is taken as it was measured. In the cold a ball also leaves the club slower, and stiff muscles and thick clothes cost club speed: none of that is in these figures, for want of a published figure that could be read. Expect a little less in winter than the card says.',
  'Readings are moved by the difference the model sees between the two places, so most of what it gets wrong about a ball cancels out.',
  'Air density is the main effect of weather and height. It is well known, but how a ball answers to it is less so, least of all at slow speeds. Beside each change stands what four models of present-day balls span; where they disagree in sign or by more than the change itself, it is not known. They may all be wrong together. Wind is that of a forecast, at 10 m over open ground, steady and level: between trees, in gusts and on slopes it differs.',
  'The run is known to ±25 %, and turf is sorted into five kinds by feel: read totals as a guide.',
];

/** What goes beside a card that is carried. */
export const CARD_NOTE =
  'Carry, the same launch flown elsewhere; the run is extra. In competition, ask first whether local rules allow a card.';

/** One sentence a club that stands for the bag: what each place does to it. */
export function placeSentences({ clubs, places }: Elsewhere, display: Display): readonly string[] {
  const middle = clubs[Math.floor(clubs.length / 2)];
  const chosen = [...new Set([clubs[0], middle])].flatMap((club) => club ?? []);
  return chosen.map((club) => {
    const parts = places
      .filter(({ key }) => key !== 'across')
      .map(({ key, says }) => `${changeWords(club.there[key].carryChange, display)} ${says}`);
    return `${capital(club.club)}, ${distanceWords(club.carry.mean, display)} of carry where it was measured: ${listed(parts)}.`;
  });
}

/** What wind does to the club that loses most in it. */
export function windSentence({ clubs, places }: Elsewhere, display: Display): string {
  const says = (key: Place['key']): string => places.find((place) => place.key === key)?.says ?? '';
  const most = clubs.reduce<ClubCard | undefined>(
    (kept, club) => (kept === undefined || lost(club) > lost(kept) ? club : kept),
    undefined,
  );
  if (most === undefined) return '';
  const drift = Math.max(...clubs.map((club) => Math.abs(club.there.across.drift.value)));
  const { into, with: behind } = most.there;
  return `Wind: ${says('into')} the ${most.club} ${bringsWords(into.carryChange, display)}, ${says('with')} it ${bringsWords(behind.carryChange, display)}. From the side the same wind moves a ball by up to ${distanceWords(drift, display)}.`;
}

/** What a change brings, by its sign. */
function bringsWords({ value, known, spread }: ModelledChange, display: Display): string {
  if (known === false) return `may lose or gain, which is not known${rangeWords(spread, display)}`;
  return `${value < 0 ? 'loses' : 'gains'} ${distanceWords(Math.abs(value), display)}`;
}

function lost(club: ClubCard): number {
  return -club.there.into.carryChange.value;
}

/** How wide the intervals are, in words. */
export function widthSentence({ clubs }: Elsewhere, { distance }: Display): string {
  const halves = clubs.flatMap(({ carry: { interval } }) =>
    interval === undefined ? [] : [distance.of(interval.high - interval.low) / 2],
  );
  const counts = clubs.map(({ shots }) => shots);
  const shots = range(Math.min(...counts), Math.max(...counts));
  if (halves.length === 0) {
    return 'With one shot a club nothing can be said about how far the distances are known: hit more shots.';
  }
  const single = halves.length < clubs.length ? ' A club with one shot only has no interval at all.' : '';
  return `With ${shots} shots a club the mean carry is known to ±${range(Math.min(...halves), Math.max(...halves))} ${distance.unit} only (95 %): hit more shots before leaning on small differences.${single} Differences between places are known better than that, since the same shots are flown in all of them.`;
}

function range(low: number, high: number): string {
  const [a, b] = [fixed(low), fixed(high)];
  return a === b ? a : `${a} to ${b}`;
}

/** What rests on readings, and what on the model alone; empty when all carries were measured. */
export function basisSentence({ clubs }: Elsewhere): string {
  const modelled = clubs.filter(({ basis }) => basis.carry === 'modelled').map(({ club }) => club);
  if (modelled.length === 0) return '';
  return `Carry was not measured for every shot of: ${listed(modelled)}; there the model’s own carry stands in.`;
}

function changeWords({ value, spread, known }: ModelledChange, display: Display): string {
  const { of, unit } = display.distance;
  if (known === false) return `not known${rangeWords(spread, display)}`;
  return `${signed(of(value))} ${unit}${rangeWords(spread, display)}`;
}

/** What models of the ball span, in brackets; nothing without a spread. */
function rangeWords(spread: ModelledChange['spread'], display: Display): string {
  return spread === undefined ? '' : ` (${spreadWords(spread, display)})`;
}

/** What models of the ball span, such as `−5 to −3`; to a decimal where whole units would hide it. */
export function spreadWords(
  { low, high }: NonNullable<ModelledChange['spread']>,
  { distance: { of } }: Display,
): string {
  const shown = (decimals: number): readonly string[] => [
    ...new Set([low, high].map((end) => signed(of(end), decimals))),
  ];
  return (Math.abs(of(high) - of(low)) < 1 ? shown(1) : shown(0)).join(' to ');
}

/** A distance there, or that it is not known. */
export function thereWords(
  distance: number,
  { known }: ModelledChange,
  { distance: { of } }: Display,
): string {
  return known === false ? 'not known' : fixed(of(distance));
}

function distanceWords(value: number, { distance }: Display): string {
  return `${fixed(distance.of(value))} ${distance.unit}`;
}

/** Head of a column on one line. */
export function headOf({ head }: Pick<Place, 'head'>): string {
  return head.join(' ');
}
