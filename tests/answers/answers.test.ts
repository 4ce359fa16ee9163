import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readRecord, rooms } from './answers.js';
import { type AnswerRecord, agree, differences, patternsIn, recordOf, unnamed } from './record.js';
import { type Answer, answersOf } from './room.js';

const changelog = readFileSync(new URL('../../CHANGELOG.md', import.meta.url), 'utf8');

describe('the recorded answers', () => {
  const record = readRecord();
  const computed = answersOf(rooms);

  it('are what the code gives: npm run answers shows what moved and by how much', () => {
    expect(differences(record, computed)).toEqual([]);
  });

  it('that moved since the last release are named in the changelog, with the reason', () => {
    expect(unnamed(record, changelog)).toEqual({ answers: [], patterns: [] });
  });

  it('are some five hundred, from every room', () => {
    expect(computed.size).toBeGreaterThan(500);
    const counts = rooms.map(
      ({ room }) => [...computed.keys()].filter((id) => id.startsWith(`${room}/`)).length,
    );
    expect(Math.min(...counts)).toBeGreaterThan(10);
  });

  it.each(rooms)('of $room are refused when the last digit held changes', ({ room, digits }) => {
    const [id, answer] =
      [...computed].find(([name, { value }]) => name.startsWith(`${room}/`) && value !== 0) ?? [];
    if (id === undefined || answer === undefined) throw new Error('nothing to change');
    const changed = { ...answer, value: answer.value * (1 + 10 ** (1 - digits)) };
    const found = differences(recordOf(undefined, computed, false), new Map([...computed, [id, changed]]));
    expect(found.map((difference) => difference.id)).toEqual([id]);
  });
});

describe('the record', () => {
  const answers = (values: Readonly<Record<string, number>>): ReadonlyMap<string, Answer> =>
    new Map(Object.entries(values).map(([id, value]) => [id, { value, digits: 8 }]));
  const first: AnswerRecord = recordOf(undefined, answers({ 'a/b/c': 2, 'a/b/d': 3 }), false);

  it('holds significant digits, and takes what is next to nothing for 0', () => {
    expect(agree(2, 2 * (1 + 4e-8), 8)).toBe(true);
    expect(agree(2, 2 * (1 + 6e-8), 8)).toBe(false);
    expect(agree(0, 9e-13, 8)).toBe(true);
    expect(agree(0, 2e-12, 8)).toBe(false);
  });

  it('finds what changed, what is missing and what is new', () => {
    expect(differences(first, answers({ 'a/b/c': 2, 'a/b/d': 3 }))).toEqual([]);
    expect(differences(first, answers({ 'a/b/c': 2.001, 'a/b/e': 4 }))).toEqual([
      { id: 'a/b/c', recorded: 2, computed: 2.001 },
      { id: 'a/b/d', recorded: 3 },
      { id: 'a/b/e', computed: 4 },
    ]);
  });

  it('keeps the released number beside the one of now, until it moves back or is released', () => {
    const second = recordOf(first, answers({ 'a/b/c': 2.001, 'a/b/d': 3 }), false);
    expect(second).toMatchObject({ released: { 'a/b/c': 2, 'a/b/d': 3 }, moved: { 'a/b/c': 2.001 } });
    expect(differences(second, answers({ 'a/b/c': 2.001, 'a/b/d': 3 }))).toEqual([]);
    expect(differences(second, answers({ 'a/b/c': 2, 'a/b/d': 3 }))).toHaveLength(1);
    expect(recordOf(second, answers({ 'a/b/c': 2, 'a/b/d': 3 }), false)).toEqual(first);
    expect(recordOf(second, answers({ 'a/b/c': 2.001, 'a/b/d': 3 }), true)).toMatchObject({
      released: { 'a/b/c': 2.001, 'a/b/d': 3 },
      moved: {},
    });
  });

  it('takes no number that is not finite', () => {
    const room = (value: number) =>
      [{ room: 'a', digits: 8, questions: { b: () => ({ c: value }) } }] as const;
    expect(() => answersOf(room(Number.NaN))).toThrow('a/b/c is no finite number');
    expect(() => answersOf([...room(1), ...room(1)])).toThrow('asked twice');
  });
});

describe('the changelog', () => {
  const record = { about: '', released: {}, moved: { 'flight/headwind/carry': 1, 'run/wet/distance': 2 } };
  const page = (...items: readonly string[]): string =>
    [
      '# Changelog',
      '## [Unreleased]',
      '### Numbers that moved',
      ...items,
      '## [0.1.0]',
      '- `run/*`: old',
    ].join('\n');

  it('must name every answer that moved', () => {
    const why = 'the wind is\n  taken at the height: of the ball, see `fly`.';
    expect(unnamed(record, page(`- \`flight/*\`: ${why}`))).toEqual({
      answers: ['run/wet/distance'],
      patterns: [],
    });
    expect(unnamed(record, page(`- \`flight/*/carry\`, \`run/wet/*\`: ${why}`))).toEqual({
      answers: [],
      patterns: [],
    });
    expect(unnamed(record, '## [Unreleased]\n- `run/*`: elsewhere').answers).toHaveLength(2);
  });

  it('must name nothing that stayed', () => {
    expect(unnamed(record, page('- `*`: all of it.', '- `strike/*`: no.')).patterns).toEqual(['strike/*']);
  });

  it('must say why', () => {
    expect(() => patternsIn(page('- `flight/*`'))).toThrow('why it moved');
    expect(() => patternsIn(page('- everything: yes'))).toThrow('why it moved');
  });
});
