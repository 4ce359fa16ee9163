import type { ShotColumn } from 'fairflight/schema';
import type { Sheet } from '../lib/sheet.js';
import type { Study } from './study.js';

/** Questions the page answers, in the order in which it answers them. */
export const ANSWERS = [
  'speeds',
  'steps',
  'changes',
  'compare',
  'face',
  'strokes',
  'weeks',
  'elsewhere',
] as const;
export type AnswerId = (typeof ANSWERS)[number];

/** A chart drawn for the width it stands in, what it shows in a sentence, and its figures. */
export interface ChartPart {
  readonly kind: 'chart';
  readonly title: string;
  readonly says: string;
  /** Key and drawing. Markup made here, every text in it escaped. */
  readonly markup: string;
  readonly figures: Sheet;
}

/** A table under its title. */
export interface TablePart {
  readonly kind: 'table';
  readonly title: string;
  readonly sheet: Sheet;
  readonly note?: string;
}

/** Sentences under a title, such as methods and limits; folded away. */
export interface NotesPart {
  readonly kind: 'notes';
  readonly title: string;
  readonly items: readonly string[];
}

export type Part = ChartPart | TablePart | NotesPart;

/** What one question is answered with. */
export interface Answer {
  readonly id: AnswerId;
  /** The answer in sentences, what matters most first. */
  readonly says: readonly string[];
  readonly parts: readonly Part[];
}

/** What was read from a file. */
export interface ReadFile {
  readonly name: string;
  /** In one sentence. */
  readonly says: string;
  /** Why nothing could be read; empty when something was. */
  readonly problem: string;
  /** What the file says of itself. */
  readonly comments: readonly string[];
  readonly notes: readonly string[];
  readonly columns: readonly (ShotColumn & { readonly sample: string })[];
  readonly leftOut: readonly string[];
  readonly preview: Sheet;
  readonly clubs: readonly string[];
  /** First and last day of the shots, as the file writes them; empty where it does not. */
  readonly days: string;
}

/** The sheet a player takes home. */
export interface SheetModel {
  readonly sentences: readonly [where: string, most: string, next: string];
  readonly pictures: readonly ChartPart[];
  readonly table: Sheet;
  readonly tableTitle: string;
  readonly caution: string;
  readonly small: string;
}

/** What the page asks of the worker. Widths are those in which charts will stand [px]. */
export interface Job {
  readonly number: number;
  readonly study: Study;
  readonly width: number;
}

/** What the worker tells the page. */
export type Told =
  | { readonly kind: 'read'; readonly number: number; readonly files: readonly ReadFile[] }
  | {
      readonly kind: 'progress';
      readonly number: number;
      readonly stage: AnswerId | 'reading';
      readonly share: number;
    }
  | { readonly kind: 'answer'; readonly number: number; readonly answer: Answer }
  | { readonly kind: 'sheet'; readonly number: number; readonly sheet: SheetModel | undefined }
  | { readonly kind: 'done'; readonly number: number; readonly trouble: string };
