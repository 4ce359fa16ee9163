import type { Answer } from './room.js';

/** What the library answers, as it stands in record.json. */
export interface AnswerRecord {
  /** What the file is. */
  readonly about: string;
  /** Answers of the last release; those that are new since stand here as they first were. */
  readonly released: Readonly<Record<string, number>>;
  /** Answers of now, where they are no longer the released ones. */
  readonly moved: Readonly<Record<string, number>>;
}

/** A recorded answer that the code no longer gives. */
export interface Difference {
  readonly id: string;
  /** Absent for an answer that is new. */
  readonly recorded?: number;
  /** Absent for a question that is asked no more. */
  readonly computed?: number;
}

const ABOUT =
  'Answers of the library in SI units unless the question says otherwise. Written by npm run answers; see Changing a number in DEVELOPERS.md.';
/** Below this both numbers count as 0. */
const NOTHING = 1e-12;
/** Digits written beyond those that must stay. */
const SPARE_DIGITS = 2;

/** True when two numbers are the same to the significant digits given. */
export function agree(a: number, b: number, digits: number): boolean {
  return Math.abs(a - b) <= Math.max(0.5 * 10 ** (1 - digits) * Math.abs(a), NOTHING);
}

/** Where code and record differ, in the order of their ids. */
export function differences(
  record: AnswerRecord,
  computed: ReadonlyMap<string, Answer>,
): readonly Difference[] {
  const current: Readonly<Record<string, number>> = { ...record.released, ...record.moved };
  const found: Difference[] = [];
  for (const id of [...new Set([...Object.keys(current), ...computed.keys()])].sort()) {
    const was = current[id];
    const answer = computed.get(id);
    if (was !== undefined && answer !== undefined && agree(was, answer.value, answer.digits)) continue;
    found.push({
      id,
      ...(was !== undefined && { recorded: was }),
      ...(answer !== undefined && { computed: answer.value }),
    });
  }
  return found;
}

/** The record after the code has changed; with `release` what has moved becomes what is released. */
export function recordOf(
  before: AnswerRecord | undefined,
  computed: ReadonlyMap<string, Answer>,
  release: boolean,
): AnswerRecord {
  const released: Record<string, number> = {};
  const moved: Record<string, number> = {};
  for (const [id, { value, digits }] of [...computed].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const now = Number(value.toPrecision(digits + SPARE_DIGITS));
    const was = before?.released[id];
    // What agrees is left as it stands, so that the file changes only where an answer does.
    const stays = was !== undefined && agree(was, value, digits);
    released[id] = stays || (was !== undefined && !release) ? was : now;
    if (!stays && was !== undefined && !release) moved[id] = now;
  }
  return { about: ABOUT, released, moved };
}

const HEADING = '### Numbers that moved';

/**
 * Patterns that the unreleased part of a changelog names under "Numbers that moved": the words in backticks before the
 * colon of each item, after which stands why. `*` is anything.
 * @throws when an item has no pattern or gives no reason
 */
export function patternsIn(changelog: string): readonly string[] {
  const unreleased = changelog.split(/^## /m).find((part) => part.startsWith('[Unreleased]')) ?? '';
  const section = unreleased.split(/^(?=### )/m).find((part) => part.startsWith(HEADING)) ?? '';
  return section
    .split(/^- /m)
    .slice(1)
    .flatMap((item) => {
      const [names = '', ...why] = item.split(/:\s/);
      const patterns = [...names.matchAll(/`([^`]+)`/g)].map((match) => match[1] ?? '');
      if (patterns.length === 0 || why.join('').trim() === '') {
        throw new Error(`${HEADING}: write an item as "- \`room/*\`: why it moved", not "- ${item.trim()}"`);
      }
      return patterns;
    });
}

/** Answers that moved and the changelog does not name, and patterns of the changelog that name nothing that moved. */
export function unnamed(
  record: AnswerRecord,
  changelog: string,
): { readonly answers: readonly string[]; readonly patterns: readonly string[] } {
  const ids = Object.keys(record.moved);
  const tests = patternsIn(changelog).map((pattern) => ({
    pattern,
    matches: (id: string) => matches(pattern, id),
  }));
  return {
    answers: ids.filter((id) => !tests.some((test) => test.matches(id))),
    patterns: tests.filter((test) => !ids.some(test.matches)).map((test) => test.pattern),
  };
}

function matches(pattern: string, id: string): boolean {
  const escaped = pattern.split('*').map((part) => part.replace(/[.+?^${}()|[\]\\]/g, '\\$&'));
  return new RegExp(`^${escaped.join('.*')}$`).test(id);
}
