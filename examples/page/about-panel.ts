import type { Messages } from './catalogue/messages.js';
import { h, select } from './dom.js';
import { PLACE_UNITS, type Study, TURFS } from './study.js';

/** The form about player and place. `clubs` are those of the file. */
export function aboutElements(
  study: Study,
  clubs: readonly string[],
  words: Messages,
  change: (change: Partial<Study>) => void,
): readonly HTMLElement[] {
  const { page } = words;
  const field = (name: keyof typeof page.fields, control: HTMLElement, unit = ''): HTMLElement =>
    h(
      'p',
      { class: 'field' },
      h('label', { for: `about-${name}` }, unit === '' ? page.fields[name] : `${page.fields[name]}, ${unit}`),
      control,
    );
  const typed = (
    name: 'player' | 'date' | 'place' | 'loft' | 'altitude' | 'temperature' | 'score',
  ): HTMLElement => {
    const numeric = name === 'loft' || name === 'altitude' || name === 'temperature' || name === 'score';
    const input = h('input', {
      id: `about-${name}`,
      type: 'text',
      value: study[name],
      autocomplete: 'off',
      ...(numeric && { inputmode: 'decimal' }),
    });
    input.addEventListener('input', () => change({ [name]: input.value }));
    return input;
  };
  const note = h('textarea', { id: 'about-note', rows: '3' }, study.note);
  note.addEventListener('input', () => change({ note: note.value }));
  const keep = h('input', { id: 'about-keepOdd', type: 'checkbox' });
  keep.checked = study.keepOdd;
  keep.addEventListener('change', () => change({ keepOdd: keep.checked }));
  const chosen = <T extends string>(
    name: 'club' | 'hand' | 'turf',
    values: readonly T[],
    label: (value: T) => string,
  ): HTMLElement =>
    select(
      `about-${name}`,
      values.map((value) => ({ value, label: label(value) })),
      study[name],
      (value) => change({ [name]: value }),
    );
  const unit = PLACE_UNITS[study.units];
  return [
    field('player', typed('player')),
    field('date', typed('date')),
    field('place', typed('place')),
    field(
      'club',
      chosen('club', ['', ...clubs], (value) => (value === '' ? page.mostShots : value)),
    ),
    field(
      'hand',
      chosen('hand', ['', 'right', 'left'] as const, (value) => page.hands[value]),
    ),
    field('loft', typed('loft')),
    field('altitude', typed('altitude'), unit.altitude),
    field('temperature', typed('temperature'), `°${unit.temperature}`),
    field(
      'turf',
      chosen('turf', TURFS, (value) => page.turfs[value]),
    ),
    field('score', typed('score')),
    h('p', { class: 'field wide' }, h('label', { for: 'about-note' }, page.fields.note), note),
    h('p', { class: 'check wide' }, keep, h('label', { for: 'about-keepOdd' }, page.fields.keepOdd)),
  ];
}
