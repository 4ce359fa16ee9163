import { decodedText } from '../lib/decoded-text.js';
import { aboutElements } from './about-panel.js';
import type { Messages } from './catalogue/messages.js';
import { fill, saveFile } from './dom.js';
import { fileElements } from './file-panel.js';
import { oneByOne } from './one-by-one.js';
import { inOtherUnits } from './other-units.js';
import { sizeForOneSide } from './paper.js';
import { answerElements } from './parts.js';
import { ANSWERS, type AnswerId, type ReadFile, type SheetModel, type Told } from './protocol.js';
import { runnerOf } from './runner.js';
import { fileNameFor, sheetElement, sheetFile } from './sheet-element.js';
import { type Shell, shellOf } from './shell.js';
import { freshFile, NO_STUDY, type Study } from './study.js';
import { isStudyText, openedStudy, studyText } from './study-file.js';

/** What the page is made of. */
export interface Parts {
  readonly words: Messages;
  readonly version: string;
  /** Program of the worker, and styles of the sheet. */
  readonly workerCode: string;
  readonly sheetStyle: string;
  readonly demo: { readonly name: string; readonly text: string };
}

/** Wait after a key stroke before the answers are worked out anew [ms]. */
const PATIENCE = 300;
/** Charts are drawn no narrower and no wider than this [px]. */
const NARROWEST = 280;
const WIDEST = 860;
/** Choices that change what is printed and nothing that is worked out. */
const PRINTED: readonly (keyof Study)[] = ['player', 'date', 'place', 'note'];

/** Starts the page in an empty body. */
export function startPage(root: HTMLElement, parts: Parts): void {
  const { words, version } = parts;
  let study = NO_STUDY;
  let read: readonly ReadFile[] = [];
  let sheet: SheetModel | undefined;
  let number = 0;
  let width = 0;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let stale = false;
  let sizing: ReturnType<typeof setTimeout> | undefined;
  let paperSize = '10.5pt';
  const answered = new Set<AnswerId>();

  const shell: Shell = shellOf(root, words, version, {
    files: (files) => void addFiles(files),
    demo: () => addTexts([parts.demo]),
    units: (units) => {
      if (units !== study.units) update({ ...inOtherUnits(study), units });
      showAbout();
    },
    stop: () => {
      runner.stop();
      clearTimeout(waiting);
      shell.progress(undefined, words.page.stopped);
    },
    again: () => ask(),
    print: (everything) => {
      fitSheet();
      document.documentElement.dataset['print'] = everything ? 'all' : 'sheet';
      window.print();
    },
    saveSheet: () => {
      const element = shell.sheet.querySelector<HTMLElement>('.sheet');
      if (element === null) return;
      const name = fileNameFor(study, days(), 'sheet');
      const title = study.player === '' ? words.sheet.title : study.player;
      fitSheet();
      const style = `${parts.sheetStyle}:root{--paper-size:${paperSize}}`;
      saveFile(`${name}.html`, 'text/html', sheetFile(element, style, words.language, title));
    },
    saveStudy: () =>
      saveFile(`${fileNameFor(study, days(), 'study')}.json`, 'application/json', studyText(study, version)),
  });
  const queue = oneByOne();
  const runner = runnerOf(
    parts.workerCode,
    (told) => queue.add(() => hear(told)),
    () => shell.progress(undefined, words.page.crashed),
  );
  new ResizeObserver(() => {
    const now = chartWidth();
    if (study.files.length === 0 || Math.abs(now - width) < 12) return;
    if (runner.busy()) stale = true;
    else askSoon();
  }).observe(shell.answersWidth);
  showAbout();

  function days(): string {
    return read.at(-1)?.days ?? '';
  }

  function chartWidth(): number {
    return Math.round(Math.min(WIDEST, Math.max(NARROWEST, shell.answersWidth.clientWidth)));
  }

  function update(change: Partial<Study>): void {
    study = { ...study, ...change };
    showSheet();
    const names = Object.keys(change) as (keyof Study)[];
    if (names.some((name) => !PRINTED.includes(name))) askSoon();
  }

  function askSoon(): void {
    clearTimeout(waiting);
    waiting = setTimeout(ask, PATIENCE);
  }

  function ask(): void {
    clearTimeout(waiting);
    if (study.files.length === 0) return;
    number += 1;
    width = chartWidth();
    stale = false;
    shell.progress({ share: 0 }, words.page.reading);
    queue.clear();
    runner.run({ number, study, width });
  }

  function hear(told: Told): void {
    switch (told.kind) {
      case 'read':
        read = told.files;
        showFiles();
        showAbout();
        break;
      case 'progress': {
        const what = told.stage === 'reading' ? words.page.reading : words.page.answers[told.stage];
        shell.progress({ share: told.share }, what);
        break;
      }
      case 'answer':
        fill(shell.answer(told.answer.id), ...answerElements(told.answer, words));
        shell.showAnswer(told.answer.id, true);
        answered.add(told.answer.id);
        break;
      case 'sheet':
        sheet = told.sheet;
        showSheet();
        break;
      case 'done':
        // A question that the shots no longer ask loses its old answer.
        if (told.trouble === '') for (const id of ANSWERS) if (!answered.has(id)) shell.showAnswer(id, false);
        answered.clear();
        shell.progress(undefined, told.trouble === '' ? words.page.finished : told.trouble);
        if (stale) askSoon();
        break;
    }
  }

  async function addFiles(files: readonly File[]): Promise<void> {
    const texts = await Promise.all(
      files.map(async (file) => ({
        name: file.name,
        text: decodedText(new Uint8Array(await file.arrayBuffer())).text,
      })),
    );
    addTexts(texts);
  }

  function addTexts(texts: readonly { readonly name: string; readonly text: string }[]): void {
    const saved = texts.find(({ text }) => isStudyText(text));
    if (saved !== undefined) {
      open(saved.text);
      return;
    }
    const files = [...study.files, ...texts.map(({ name, text }) => freshFile(name, text))];
    shell.say(files.length > 2 ? words.page.tooMany : '');
    update({ files: files.slice(-2) });
    showFiles();
  }

  function open(text: string): void {
    const opened = openedStudy(text);
    if (opened === undefined) {
      shell.say(words.page.notAStudy);
      return;
    }
    const same = opened.version === version;
    shell.say(same ? words.page.opened(version) : words.page.openedOther(opened.version, version));
    read = [];
    update(opened.study);
    shell.units(study.units);
    showFiles();
    showAbout();
  }

  function showFiles(): void {
    shell.hasFiles(study.files.length > 0);
    const acts = {
      remove: (at: number): void => {
        read = read.filter((_, i) => i !== at);
        update({ files: study.files.filter((_, i) => i !== at) });
        if (study.files.length === 0) {
          runner.stop();
          sheet = undefined;
          shell.progress(undefined, '');
        }
        showFiles();
      },
      swap: (): void => {
        read = [...read].reverse();
        update({ files: [...study.files].reverse() });
        showFiles();
      },
      change: (at: number, change: Partial<Study['files'][number]>): void =>
        update({ files: study.files.map((file, i) => (i === at ? { ...file, ...change } : file)) }),
    };
    fill(shell.files, ...fileElements(study.files, read, words, acts));
  }

  function showAbout(): void {
    fill(shell.about, ...aboutElements(study, read.at(-1)?.clubs ?? [], words, update));
  }

  function fitSheet(): void {
    const element = shell.sheet.querySelector<HTMLElement>('.sheet');
    if (element !== null) paperSize = sizeForOneSide(element);
    document.documentElement.style.setProperty('--paper-size', paperSize);
  }

  function showSheet(): void {
    fill(shell.sheet, ...(sheet === undefined ? [] : [sheetElement(sheet, study, days(), words)]));
    clearTimeout(sizing);
    sizing = setTimeout(fitSheet, PATIENCE);
  }
}
