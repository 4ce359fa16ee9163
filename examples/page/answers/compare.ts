import { mean } from 'd3-array';
import { isFairflightError, type Scene } from 'fairflight';
import {
  attributeChange,
  type ChangeFactor,
  type DistanceChange,
  type MeasuredShot,
  type SampleEstimates,
  summariseSession,
} from 'fairflight/session';
import type { Display } from '../../lib/display.js';
import type { Cell, Sheet } from '../../lib/sheet.js';
import { COLUMNS, inWords, type Quantity, quantityNamed, shownBy } from '../../lib/shot-quantities.js';
import { fixed, grouped, signed } from '../../lib/text.js';
import type { Messages } from '../catalogue/messages.js';
import type { Answer } from '../protocol.js';
import { type Drawing, notes, table } from './parts.js';

/** Last time beside this time. */
export interface Comparison {
  readonly last: SampleEstimates;
  readonly now: SampleEstimates;
  /** Change of the measured carry; absent where it was not measured both times. */
  readonly carry: DistanceChange | undefined;
  readonly causes: readonly { readonly cause: ChangeFactor; readonly carry: DistanceChange }[];
  readonly spread: { readonly last: number | undefined; readonly now: number | undefined };
}

/** Compares the shots of two days. */
export function comparisonOf(
  last: readonly MeasuredShot[],
  now: readonly MeasuredShot[],
  scene: Scene,
): Comparison {
  const of = (shots: readonly MeasuredShot[]): SampleEstimates => {
    const [band] = summariseSession(shots, { bands: 'one' }).bands;
    return band?.withoutOutliers ?? band?.quantities ?? {};
  };
  const estimates = { last: of(last), now: of(now) };
  const spread = { last: estimates.last.side?.sd, now: estimates.now.side?.sd };
  try {
    const { carry } = attributeChange({ before: last, after: now }, scene);
    const causes = (Object.keys(carry.causes) as ChangeFactor[])
      .map((cause) => ({ cause, carry: carry.causes[cause] }))
      .filter(({ carry: { low, high } }) => low !== 0 || high !== 0);
    return { ...estimates, carry: carry.measured, causes, spread };
  } catch (error) {
    if (!isFairflightError(error)) throw error;
    return { ...estimates, carry: undefined, causes: [], spread };
  }
}

/** What changed since last time. */
export function compareAnswer(comparison: Comparison, display: Display, drawing: Drawing): Answer {
  const { answers } = drawing.words;
  const { carry, causes } = comparison;
  const distance = quantityNamed('carry');
  const words = (si: number): string => `${si > 0 ? '+' : ''}${inWords(distance, si, display)}`;
  const facts = carry && { change: words(carry.value), low: words(carry.low), high: words(carry.high) };
  const first =
    facts === undefined || carry === undefined
      ? answers.compareNone
      : carry.low > 0 || carry.high < 0
        ? answers.compareCarry(facts)
        : answers.compareUnclear(facts);
  const parts = causes.map(({ cause, carry: part }) => `${answers.causes[cause]} ${words(part.value)}`);
  return {
    id: 'compare',
    says: [first, ...(parts.length === 0 ? [] : [answers.compareCauses(answers.join(parts))])],
    parts: [
      table('compare', comparisonTable(comparison, display, drawing.words), drawing),
      ...notes(answers.limits, [answers.compareNote]),
    ],
  };
}

/** Both days beside each other, quantity by quantity. */
export function comparisonTable({ last, now }: Comparison, display: Display, words: Messages): Sheet {
  const { heads } = words.answers;
  const known = [...COLUMNS, quantityNamed('side')].filter(
    ({ name }) => last[name] !== undefined && now[name] !== undefined,
  );
  return {
    columns: [
      { head: heads.quantity, text: true },
      { head: heads.last },
      { head: heads.this },
      { head: heads.change },
    ],
    rows: known.map((quantity) => {
      const [before, after] = [last[quantity.name], now[quantity.name]];
      const { of, unit, decimals } = shownBy(quantity, display);
      const change =
        before === undefined || after === undefined ? undefined : of(after.mean) - of(before.mean);
      const name = words.page.quantities[quantity.name as 'carry'];
      return [
        { value: unit === '' ? name : `${name}, ${unit}` },
        estimateCell(before, quantity, display),
        estimateCell(after, quantity, display),
        { value: signed(change, decimals) },
      ];
    }),
  };
}

function estimateCell(
  estimate: SampleEstimates['carry'] | SampleEstimates['ballSpeed'] | { mean: number } | undefined,
  quantity: Quantity,
  display: Display,
): Cell {
  const { of, decimals } = shownBy(quantity, display);
  if (estimate === undefined) return { value: '–' };
  const value = decimals === 0 ? grouped(of(estimate.mean)) : fixed(of(estimate.mean), decimals);
  if (!('interval' in estimate) || estimate.interval === undefined) return { value };
  const half = mean([
    of(estimate.interval.high) - of(estimate.mean),
    of(estimate.mean) - of(estimate.interval.low),
  ]);
  return { value, small: [`±${fixed(half, decimals)}`] };
}
