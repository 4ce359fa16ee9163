import type { Messages } from './catalogue/messages.js';
import { button, fill, h } from './dom.js';
import { ANSWERS, type AnswerId } from './protocol.js';
import type { Study } from './study.js';

/** What a person can do on the page around files and forms. */
export interface ShellActs {
  readonly files: (files: readonly File[]) => void;
  readonly demo: () => void;
  readonly units: (units: Study['units']) => void;
  readonly stop: () => void;
  readonly again: () => void;
  readonly print: (everything: boolean) => void;
  readonly saveSheet: () => void;
  readonly saveStudy: () => void;
}

/** The places of the page that are filled later. */
export interface Shell {
  readonly files: HTMLElement;
  readonly about: HTMLElement;
  readonly sheet: HTMLElement;
  /** As wide as a chart may be. */
  readonly answersWidth: HTMLElement;
  readonly answer: (id: AnswerId) => HTMLElement;
  readonly showAnswer: (id: AnswerId, shown: boolean) => void;
  readonly hasFiles: (has: boolean) => void;
  readonly progress: (work: { readonly share: number } | undefined, says: string) => void;
  /** A word on what was just done. */
  readonly say: (text: string) => void;
  readonly units: (units: Study['units']) => void;
}

/** Builds the page. */
export function shellOf(root: HTMLElement, words: Messages, version: string, acts: ShellActs): Shell {
  const { page } = words;
  const places = {
    files: h('div', { id: 'files' }),
    about: h('div', { class: 'form' }),
    sheet: h('div', { id: 'the-sheet' }),
    answersWidth: h('div', { class: 'ruler', 'aria-hidden': 'true' }),
  };
  const said = h('p', { class: 'said-now', role: 'status' });
  const drop = dropZone(words, acts);
  const bar = progressBar(words, acts);
  const units = unitSwitch(words, acts.units);
  const answers = new Map(
    ANSWERS.map((id) => {
      const body = h('div', {});
      const section = h('section', { id: `answer-${id}`, hidden: true }, h('h3', {}, page.answers[id]), body);
      const link = h('li', { hidden: true }, h('a', { href: `#answer-${id}` }, page.answers[id]));
      return [id, { body, section, link }] as const;
    }),
  );
  const of = (id: AnswerId): { body: HTMLElement; section: HTMLElement; link: HTMLElement } =>
    answers.get(id) ?? { body: h('div', {}), section: h('div', {}), link: h('li', {}) };
  const each = [...answers.values()];
  const later = [
    section('about', h('p', {}, page.aboutHelp), places.about),
    section(
      'sheet',
      h('p', {}, page.sheetHelp),
      h(
        'p',
        { class: 'buttons' },
        button(page.print, () => acts.print(false), { class: 'main', id: 'print-sheet' }),
        button(page.saveSheet, acts.saveSheet, { id: 'save-sheet' }),
        button(page.saveStudy, acts.saveStudy, { id: 'save-study' }),
        button(page.printAll, () => acts.print(true), { id: 'print-all' }),
      ),
      places.sheet,
    ),
    section(
      'answers',
      h('nav', { 'aria-label': page.contents }, h('ul', {}, ...each.map(({ link }) => link))),
      places.answersWidth,
      ...each.map((answer) => answer.section),
    ),
  ];
  fill(
    root,
    h('a', { class: 'skip', href: '#answers' }, page.skip),
    h('header', { class: 'top' }, h('p', { class: 'mark' }, 'fairflight'), units.element),
    bar.element,
    h(
      'main',
      {},
      h('h1', {}, page.title),
      h('p', { class: 'lead' }, page.lead),
      section('file', drop.element, said, places.files),
      ...later,
    ),
    h('footer', {}, h('p', {}, page.foot(version))),
  );

  function section(name: keyof typeof page.steps, ...children: readonly (Node | string)[]): HTMLElement {
    return h('section', { id: name, class: 'step' }, h('h2', {}, page.steps[name]), ...children);
  }

  function hasFiles(has: boolean): void {
    for (const step of later) step.hidden = !has;
    drop.hasFiles(has);
  }
  hasFiles(false);
  return {
    ...places,
    answer: (id) => of(id).body,
    showAnswer: (id, shown) => {
      of(id).section.hidden = !shown;
      of(id).link.hidden = !shown;
    },
    hasFiles,
    progress: bar.show,
    say: (text) => {
      said.textContent = text;
    },
    units: units.choose,
  };
}

function dropZone(
  { page }: Messages,
  acts: ShellActs,
): { readonly element: HTMLElement; readonly hasFiles: (has: boolean) => void } {
  const input = h('input', {
    type: 'file',
    id: 'choose',
    accept: '.csv,.txt,.tsv,.json,text/csv',
    multiple: true,
  });
  input.addEventListener('change', () => {
    acts.files([...(input.files ?? [])]);
    input.value = '';
  });
  const says = h('p', { class: 'drop-words' }, page.drop);
  const demo = button(page.tryIt, acts.demo, { id: 'demo', class: 'quiet' });
  const element = h(
    'div',
    { class: 'drop' },
    says,
    h('p', { class: 'buttons' }, h('label', { for: 'choose', class: 'choose' }, page.choose), input, demo),
    h('p', { class: 'privacy' }, page.privacy),
  );
  // The whole page takes a drop: a file that misses the box must not make the browser leave the page.
  for (const name of ['dragover', 'drop'] as const) {
    document.addEventListener(name, (event) => {
      event.preventDefault();
      element.classList.toggle('over', name === 'dragover');
      if (name === 'drop' && event.dataTransfer !== null) acts.files([...event.dataTransfer.files]);
    });
  }
  document.addEventListener('dragleave', () => element.classList.remove('over'));
  return {
    element,
    hasFiles: (has) => {
      says.textContent = has ? page.dropSecond : page.drop;
      element.classList.toggle('small', has);
      demo.hidden = has;
    },
  };
}

function progressBar(
  { page }: Messages,
  acts: ShellActs,
): { readonly element: HTMLElement; readonly show: Shell['progress'] } {
  const bar = h('progress', { max: '1', 'aria-label': page.steps.answers });
  const says = h('p', { role: 'status' });
  const stop = button(page.cancel, acts.stop, { id: 'stop' });
  const again = button(page.again, acts.again, { id: 'again' });
  const element = h('div', { class: 'work unseen' }, says, bar, stop, again);
  return {
    element,
    show: (work, text) => {
      // What was done well needs no room; it is said to those who hear the page.
      element.classList.toggle('unseen', text === page.finished || text === '');
      bar.hidden = work === undefined;
      stop.hidden = work === undefined;
      again.hidden = text !== page.stopped;
      if (work !== undefined) bar.value = work.share;
      // Said aloud once a stage, not at every step of the bar.
      if (says.textContent !== text) says.textContent = text;
    },
  };
}

function unitSwitch(
  { page }: Messages,
  change: (units: Study['units']) => void,
): { readonly element: HTMLElement; readonly choose: (units: Study['units']) => void } {
  const radio = (value: Study['units'], label: string): [HTMLInputElement, HTMLElement] => {
    const input = h('input', { type: 'radio', name: 'units', value, id: `units-${value}` });
    input.addEventListener('change', () => change(value));
    return [input, h('label', { for: `units-${value}` }, label)];
  };
  const [yards, yardsLabel] = radio('imperial', page.yards);
  const [metres, metresLabel] = radio('metric', page.metres);
  yards.checked = true;
  return {
    element: h(
      'fieldset',
      { class: 'units' },
      h('legend', { class: 'unseen' }, page.units),
      yards,
      yardsLabel,
      metres,
      metresLabel,
    ),
    choose: (units) => {
      yards.checked = units === 'imperial';
      metres.checked = units === 'metric';
    },
  };
}
