import type { Source, SourceConfidence } from '../source.js';
import { choice, count, type Declared, optional, text } from './field.js';
import { frozen } from './frozen.js';

const CONFIDENCE: readonly SourceConfidence[] = [
  'published',
  'second-hand',
  'from memory',
  'derived',
  'fitted',
  'assumption',
  'common practice, no source',
];

/** Declaration of {@link Source}. @internal */
export const sourceFields: Declared<Source> = /* @__PURE__ */ frozen(() => ({
  authors: text('A. Author', 'authors'),
  year: count(0, 9999, 2026, 'year'),
  work: text('A journal 1, 1', 'work'),
  locus: optional(text('table 1', 'place in the work')),
  doi: optional(text('10.1000/1', 'digital object identifier')),
  confidence: choice(CONFIDENCE, 'confidence'),
  note: optional(text('a note', 'note')),
}));
