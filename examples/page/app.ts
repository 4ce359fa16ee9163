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
import { type Runner, runnerOf } from './runner.js';
import { fileNameFor, sheetElement, sheetFile } from './sheet-element.js';
import { type Shell, shellOf } from './shell.js';
import { freshFile, NO_STUDY, type Study, type StudyFile } from './study.js';
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

type Timer = ReturnType<typeof setTimeout>;

/** Wait after a key stroke before the answers are worked out anew [ms]. */
const PATIENCE = 300;
/** Charts are drawn no narrower and no wider than this, and anew when the width has changed by so much [px]. */
const NARROWEST = 280;
const WIDEST = 860;
const NOTICED = 12;
/** Choices that change what is printed and nothing that is worked out. */
const PRINTED: readonly (keyof Study)[] = ['player', 'date', 'place', 'note'];

/** The page: what was given, what was answered, and the places where both are shown. */
export class App {
  readonly #parts: Parts;
  readonly #shell: Shell;
  readonly #runner: Runner;
  readonly #queue = oneByOne();
  #study: Study = NO_STUDY;
  #read: readonly ReadFile[] = [];
  #sheet: SheetModel | undefined;
  #answered = new Set<AnswerId>();
  #job = 0;
  #width = 0;
  #stale = false;
  #paperSize = '10.5pt';
  /** Two files just given stand in the order of their days, until a person says otherwise. */
  #byDay = false;
  #asking: Timer | undefined;
  #sizing: Timer | undefined;

  /** Starts the page in an empty element. */
  constructor(root: HTMLElement, parts: Parts) {
    const { words, version, workerCode, demo } = parts;
    this.#parts = parts;
    this.#shell = shellOf(root, words, version, {
      files: (files) => void this.#addFiles(files),
      demo: () => this.#addTexts([demo]),
      units: (units) => this.#speak(units),
      stop: () => this.#stop(),
      again: () => this.#ask(),
      print: (everything) => this.#print(everything),
      saveSheet: () => this.#saveSheet(),
      saveStudy: () => {
        const name = fileNameFor(this.#study, this.#days(), 'study');
        saveFile(`${name}.json`, 'application/json', studyText(this.#study, version));
      },
    });
    this.#runner = runnerOf(
      workerCode,
      (told) => this.#queue.add(() => this.#hear(told)),
      () => this.#shell.progress(undefined, words.page.crashed),
    );
    // Printing by the browser's own menu prints the sheet.
    window.addEventListener('beforeprint', () => this.#fitSheet());
    window.addEventListener('afterprint', () => {
      document.documentElement.dataset['print'] = 'sheet';
    });
    new ResizeObserver(() => this.#resized()).observe(this.#shell.answersWidth);
    this.#showAbout();
  }

  #days(): string {
    return this.#read.at(-1)?.days ?? '';
  }

  #update(change: Partial<Study>): void {
    this.#study = { ...this.#study, ...change };
    this.#showSheet();
    const names = Object.keys(change) as (keyof Study)[];
    if (names.some((name) => !PRINTED.includes(name))) this.#askSoon();
  }

  #askSoon(): void {
    clearTimeout(this.#asking);
    this.#asking = setTimeout(() => this.#ask(), PATIENCE);
  }

  #ask(): void {
    clearTimeout(this.#asking);
    if (this.#study.files.length === 0) return;
    this.#job += 1;
    this.#width = this.#chartWidth();
    this.#stale = false;
    this.#answered = new Set();
    this.#shell.progress({ share: 0 }, this.#parts.words.page.reading);
    this.#queue.clear();
    this.#runner.run({ number: this.#job, study: this.#study, width: this.#width });
  }

  #stop(): void {
    this.#runner.stop();
    this.#queue.clear();
    clearTimeout(this.#asking);
    this.#shell.progress(undefined, this.#parts.words.page.stopped);
  }

  #chartWidth(): number {
    return Math.round(Math.min(WIDEST, Math.max(NARROWEST, this.#shell.answersWidth.clientWidth)));
  }

  #resized(): void {
    if (this.#study.files.length === 0 || Math.abs(this.#chartWidth() - this.#width) < NOTICED) return;
    if (this.#runner.busy()) this.#stale = true;
    else this.#askSoon();
  }

  #hear(told: Told): void {
    const { words } = this.#parts;
    switch (told.kind) {
      case 'read':
        this.#heardFiles(told.files);
        break;
      case 'progress': {
        const what = told.stage === 'reading' ? words.page.reading : words.page.answers[told.stage];
        this.#shell.progress({ share: told.share }, what);
        break;
      }
      case 'answer':
        fill(this.#shell.answer(told.answer.id), ...answerElements(told.answer, words));
        this.#shell.showAnswer(told.answer.id, true);
        this.#answered.add(told.answer.id);
        break;
      case 'sheet':
        this.#sheet = told.sheet;
        this.#showSheet();
        break;
      case 'done':
        this.#done(told.trouble);
        break;
    }
  }

  #heardFiles(files: readonly ReadFile[]): void {
    this.#read = files;
    if (this.#byDay && areSwapped(files)) {
      this.#swap();
      return;
    }
    this.#byDay = false;
    this.#showFiles();
    this.#showAbout();
  }

  #done(trouble: string): void {
    // A question that the shots no longer ask loses its old answer.
    if (trouble === '') {
      for (const id of ANSWERS) if (!this.#answered.has(id)) this.#shell.showAnswer(id, false);
    }
    this.#shell.progress(undefined, trouble === '' ? this.#parts.words.page.finished : trouble);
    if (this.#stale) this.#askSoon();
  }

  async #addFiles(files: readonly File[]): Promise<void> {
    const texts = await Promise.all(
      files.map(async (file) => ({
        name: file.name,
        text: decodedText(new Uint8Array(await file.arrayBuffer())).text,
      })),
    );
    this.#addTexts(texts);
  }

  #addTexts(texts: readonly { readonly name: string; readonly text: string }[]): void {
    const saved = texts.find(({ text }) => isStudyText(text));
    if (saved !== undefined) {
      this.#open(saved.text);
      return;
    }
    const files = [...this.#study.files, ...texts.map(({ name, text }) => freshFile(name, text))];
    this.#shell.say(files.length > 2 ? this.#parts.words.page.tooMany : '');
    this.#byDay = true;
    this.#update({ files: files.slice(-2) });
    this.#showFiles();
  }

  #open(text: string): void {
    const { words, version } = this.#parts;
    const opened = openedStudy(text);
    if (opened === undefined) {
      this.#shell.say(words.page.notAStudy);
      return;
    }
    const same = opened.version === version;
    this.#shell.say(same ? words.page.opened(version) : words.page.openedOther(opened.version, version));
    this.#read = [];
    this.#update(opened.study);
    this.#shell.units(this.#study.units);
    this.#showFiles();
    this.#showAbout();
  }

  #remove(at: number): void {
    this.#read = this.#read.filter((_, i) => i !== at);
    this.#update({ files: this.#study.files.filter((_, i) => i !== at) });
    if (this.#study.files.length === 0) {
      this.#stop();
      this.#sheet = undefined;
      this.#shell.progress(undefined, '');
    }
    this.#showFiles();
  }

  #swap(): void {
    this.#byDay = false;
    this.#read = [...this.#read].reverse();
    this.#update({ files: [...this.#study.files].reverse() });
    this.#showFiles();
  }

  #changeFile(at: number, change: Partial<StudyFile>): void {
    this.#update({ files: this.#study.files.map((file, i) => (i === at ? { ...file, ...change } : file)) });
  }

  #speak(units: Study['units']): void {
    if (units !== this.#study.units) this.#update({ ...inOtherUnits(this.#study), units });
    this.#showAbout();
  }

  #showFiles(): void {
    this.#shell.hasFiles(this.#study.files.length > 0);
    const acts = {
      remove: (at: number): void => this.#remove(at),
      swap: (): void => this.#swap(),
      change: (at: number, change: Partial<StudyFile>): void => this.#changeFile(at, change),
    };
    fill(this.#shell.files, ...fileElements(this.#study.files, this.#read, this.#parts.words, acts));
  }

  #showAbout(): void {
    const clubs = this.#read.at(-1)?.clubs ?? [];
    const elements = aboutElements(this.#study, clubs, this.#parts.words, (change) => this.#update(change));
    fill(this.#shell.about, ...elements);
  }

  #showSheet(): void {
    const { words } = this.#parts;
    const sheet = this.#sheet;
    fill(
      this.#shell.sheet,
      ...(sheet === undefined ? [] : [sheetElement(sheet, this.#study, this.#days(), words)]),
    );
    clearTimeout(this.#sizing);
    this.#sizing = setTimeout(() => this.#fitSheet(), PATIENCE);
  }

  /** The sheet on the page, its letters as large as one printed side allows; undefined before there is one. */
  #fitSheet(): HTMLElement | undefined {
    const element = this.#shell.sheet.querySelector<HTMLElement>('.sheet') ?? undefined;
    if (element !== undefined) this.#paperSize = sizeForOneSide(element);
    document.documentElement.style.setProperty('--paper-size', this.#paperSize);
    return element;
  }

  #print(everything: boolean): void {
    this.#fitSheet();
    document.documentElement.dataset['print'] = everything ? 'all' : 'sheet';
    window.print();
  }

  #saveSheet(): void {
    const element = this.#fitSheet();
    if (element === undefined) return;
    const { words, sheetStyle } = this.#parts;
    const title = this.#study.player === '' ? words.sheet.title : this.#study.player;
    const style = `${sheetStyle}:root{--paper-size:${this.#paperSize}}`;
    const name = fileNameFor(this.#study, this.#days(), 'sheet');
    saveFile(`${name}.html`, 'text/html', sheetFile(element, style, words.language, title));
  }
}

/** True where the first of two files was shot after the second; days that are not written like 2026-03-31 say nothing. */
function areSwapped(files: readonly ReadFile[]): boolean {
  const [first, second] = files.map(({ days }) => /^\d{4}-\d\d-\d\d/.exec(days)?.[0]);
  return first !== undefined && second !== undefined && first > second;
}
