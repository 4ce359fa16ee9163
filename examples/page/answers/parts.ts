import type { Sheet } from '../../lib/sheet.js';
import type { AnswerWords } from '../catalogue/answers.js';
import type { Messages } from '../catalogue/messages.js';
import type { ChartPart, NotesPart, TablePart } from '../protocol.js';

/** What an answer is drawn with. */
export interface Drawing {
  readonly words: Messages;
  /** Width in which charts will stand [px]. */
  readonly width: number;
}

/** A chart under its title and sentence. */
export function chart(
  name: keyof AnswerWords['charts'],
  markup: string,
  figures: Sheet,
  { words }: Drawing,
  more = '',
): ChartPart {
  const { title, says } = words.answers.charts[name];
  return { kind: 'chart', title, says: more === '' ? says : `${says} ${more}`, markup, figures };
}

/** A table under its title. */
export function table(name: keyof AnswerWords['tables'], sheet: Sheet, { words }: Drawing): TablePart {
  return { kind: 'table', title: words.answers.tables[name], sheet };
}

/** Notes that are folded away; none where there are none. */
export function notes(title: string, items: readonly string[]): readonly NotesPart[] {
  const said = items.filter((each) => each !== '');
  return said.length === 0 ? [] : [{ kind: 'notes', title, items: said }];
}
