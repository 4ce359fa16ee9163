import { type AnswerWords, answers } from './answers.js';
import { type PageWords, page } from './page.js';
import { type SheetWords, sheet } from './sheet.js';

/** Every text of the page. */
export interface Messages {
  /** Language tag of the document. */
  readonly language: string;
  readonly page: PageWords;
  readonly answers: AnswerWords;
  readonly sheet: SheetWords;
}

export const messages: Messages = { language: 'en', page, answers, sheet };
