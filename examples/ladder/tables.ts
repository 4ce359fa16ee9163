import type { DistanceChange } from 'fairflight/session';
import { changeWords, toChange, verdictWords } from '../lib/advice.js';
import type { Display } from '../lib/display.js';
import type { Cell, Sheet } from '../lib/sheet.js';
import { COLUMNS, type Quantity, shownBy } from '../lib/shot-quantities.js';
import { fixed, grouped, signed } from '../lib/text.js';
import type { Ladder } from './ladder.js';
import { type Disagreement, loftChange, type Rung } from './rungs.js';
import type { Ranged } from './steps.js';
import { loftWords, perSpeed, perSpeedUnit, shotsWords, stepName } from './words.js';

const NOTHING: Cell = { value: '–' };

/** Mean of each band with half of its interval. */
export function bandTable(rungs: readonly Rung[], display: Display): Sheet {
  const measured = COLUMNS.filter(({ name }) => rungs.some((rung) => rung.estimates[name] !== undefined));
  return {
    columns: [
      { head: 'band', text: true },
      ...measured.map((each) => ({ head: each.short, unit: shownBy(each, display).unit })),
    ],
    rows: rungs.map((rung) => [bandCell(rung), ...measured.map((each) => estimateCell(rung, each, display))]),
  };
}

function bandCell(rung: Rung): Cell {
  return { value: rung.name, small: [shotsWords(rung)] };
}

function estimateCell(rung: Rung, quantity: Quantity, display: Display): Cell {
  const estimate = rung.estimates[quantity.name];
  if (estimate === undefined) return NOTHING;
  const { of, decimals } = shownBy(quantity, display);
  const value = decimals === 0 ? grouped(of(estimate.mean)) : fixed(of(estimate.mean), decimals);
  if (estimate.interval === undefined) return { value };
  const half = (of(estimate.interval.high) - of(estimate.interval.low)) / 2;
  return { value, small: [`±${fixed(half, decimals)}`] };
}

/** The model's mean, and what was measured beside it. */
export function modelTable(rungs: readonly Rung[], { distance, height, angle }: Display): Sheet {
  const cell = (gap: Disagreement | undefined, of: (si: number) => number): Cell => {
    if (gap === undefined) return NOTHING;
    const spread = gap.sd === undefined ? '' : `, spread ${fixed(of(gap.sd), 1)}`;
    return {
      value: fixed(of(gap.measured + gap.mean), 1),
      small: [`measured ${fixed(of(gap.measured), 1)}; ${signed(of(gap.mean), 1)}${spread}`],
    };
  };
  return {
    columns: [
      { head: 'band', text: true },
      { head: 'carry', unit: distance.unit },
      { head: 'apex', unit: height.unit },
      { head: 'descent', unit: angle.unit },
    ],
    rows: rungs.map((rung) => [
      bandCell(rung),
      cell(rung.disagreement.carry, distance.of),
      cell(rung.disagreement.apex, height.of),
      cell(rung.disagreement.descentAngle, angle.of),
    ]),
  };
}

/** Best loft of each band, what the change advised or judged brings, and the windows. Bands without an answer have no row. */
export function loftTable(rungs: readonly Rung[], { distance, angle, height }: Display): Sheet {
  const between = (ends: readonly (number | undefined)[], of: (si: number) => number, decimals = 0): string =>
    ends.map((end) => (end === undefined ? '' : fixed(of(end), decimals))).join('–');
  const rows = rungs.flatMap((rung): (readonly Cell[])[] => {
    const { loft, advice, model } = rung;
    if (loft === undefined) return [];
    const { optimum, window } = loft;
    const { low, high } = optimum.window.dynamicLoft;
    const now = (value: number): string => `now ${fixed(angle.of(value), 1)}`;
    const change = loftChange(advice);
    return [
      [
        bandCell(rung),
        { value: loftWords(advice) },
        { value: fixed(angle.of(loft.nominalAdvised), 1), small: [now(loft.nominalNow)] },
        { value: change === undefined ? '–' : signed(angle.of(change.step), 1) },
        gainCell(change?.carry, distance.of),
        gainCell(change?.total, distance.of),
        {
          value: fixed(angle.of(optimum.dynamicLoft), 1),
          small: [between([low, high], angle.of, 1), now(loft.delivered)],
        },
        {
          value: window === undefined ? '–' : between(window.apex, height.of),
          small: [`now ${fixed(height.of(rung.estimates.apex?.mean ?? model.flight.apex))}`],
        },
        {
          value: window === undefined ? '–' : between(window.descent, angle.of),
          small: [`now ${fixed(angle.of(rung.estimates.descentAngle?.mean ?? model.flight.descentAngle))}`],
        },
      ],
    ];
  });
  return {
    columns: [
      { head: 'band', text: true },
      { head: 'loft', text: true },
      { head: 'nominal to try', unit: '°' },
      { head: 'step judged', unit: '°' },
      { head: 'carry', unit: `${distance.unit}, 95 %` },
      { head: 'total', unit: `${distance.unit}, 95 %` },
      { head: 'dynamic best', unit: '°, window' },
      { head: 'apex', unit: `${height.unit}, window` },
      { head: 'descent', unit: '°, window' },
    ],
    rows,
  };
}

function gainCell(gain: DistanceChange | undefined, of: (si: number) => number): Cell {
  if (gain === undefined) return NOTHING;
  const { value, low, high } = gain;
  return { value: signed(of(value), 1), small: [`${signed(of(low), 1)} to ${signed(of(high), 1)}`] };
}

/** Every change of every band with its verdict and what it brings. */
export function changeTable(rungs: readonly Rung[], display: Display): Sheet {
  const { distance } = display;
  const unit = `${distance.unit}, 95 %`;
  return {
    columns: [
      { head: 'band', text: true },
      { head: 'change', text: true },
      { head: 'verdict', text: true },
      { head: 'carry', unit },
      { head: 'total', unit },
    ],
    rows: rungs.flatMap(({ name, advice }) =>
      (advice === undefined ? [] : toChange(advice)).map((change): readonly Cell[] => [
        { value: name },
        { value: changeWords(change, display) },
        { value: verdictWords(change, advice?.maximise) },
        gainCell(change.carry, distance.of),
        gainCell(change.total, distance.of),
      ]),
    ),
  };
}

/** What each step of speed brought, and its causes. */
export function stepTable({ steps }: Ladder, display: Display): Sheet {
  const { speed, distance } = display;
  const causes = steps[0]?.parts.map(({ cause }) => cause) ?? [];
  const ranged = (
    { value, interval }: Ranged,
    of: (si: number) => number,
    figureOf: (value: number, decimals: number) => string,
    decimals: number,
  ): Cell => ({
    value: figureOf(of(value), decimals),
    ...(interval && {
      small: [`${fixed(of(interval.low), decimals)} to ${fixed(of(interval.high), decimals)}`],
    }),
  });
  return {
    columns: [
      { head: 'step', text: true },
      { head: 'speed', unit: speed.unit },
      { head: 'carry', unit: distance.unit },
      { head: 'carry per speed', unit: `${perSpeedUnit(display)}, 95 %` },
      ...causes.map((cause) => ({ head: cause, unit: distance.unit })),
    ],
    rows: steps.map((step) => [
      { value: stepName(step) },
      { value: signed(speed.of(step.speedGain), 1) },
      { value: signed(distance.of(step.carryGain), 1) },
      ranged(step.carryPerSpeed, (value) => perSpeed(value, display), fixed, 2),
      ...step.parts.map(({ carry }) => ranged(carry, distance.of, signed, 1)),
    ]),
  };
}
