/**
 * Fits the constants of the default coefficient model anew from the rows it rests on, and prints constants and the
 * residuals of every row; what the others would have said of each source; the band of carry that follows; and how the
 * spin decay compares.
 *
 * usage: npm run refit
 */
import { BAND_SHARES, BAND_SPEEDS, BAND_SPIN_RATIOS } from '../carry-band.js';
import { type FittedModernConstants, fittedModernConstants } from '../fitted-modern.js';
import { SPIN_DECAY } from '../spin-decay.js';
import { chiSquare, FITTED, flightMisses, missOf, refit, rms, rounded } from './fit.js';
import {
  coefficientRows,
  DOUBTFUL,
  type FlightFigure,
  flightRows,
  SOURCES,
  TOUR_SPREAD,
} from './fit-rows.js';
import { bandShares, leaveOneOut } from './leave-one-out.js';
import { bestDecay, decayChiSquare, isPatent, spinRows } from './spin-lost.js';

const { coefficientsOnly, fit } = refit();
const left = leaveOneOut();
const shown: readonly (readonly [string, FittedModernConstants])[] = [
  ['shipped', fittedModernConstants],
  ['refit', fit.constants],
  ['coefficients only', coefficientsOnly.constants],
];

heading('Constants');
line('', ...shown.map(([name]) => name), 'standard error');
for (const name of Object.keys(fittedModernConstants) as (keyof FittedModernConstants)[]) {
  const error = fit.standardErrors[name] ?? coefficientsOnly.standardErrors[name];
  const how = FITTED.includes(name) ? (error ?? Number.NaN).toFixed(4) : 'set';
  line(name, ...shown.map(([, constants]) => String(rounded(constants)[name])), how);
}

heading('Left over');
line('', ...shown.map(([name]) => name));
line(
  `chi-square per coefficient, ${coefficientRows.length} rows`,
  ...shown.map(([, c]) => chiSquare(c, coefficientRows).toFixed(2)),
);
const tourMisses = (constants: FittedModernConstants, wanted: FlightFigure): number[] =>
  flightRows
    .filter(({ source }) => source === 'Tour averages')
    .map(
      (row) =>
        flightMisses(constants, row)[row.figures.findIndex(({ figure }) => figure === wanted)] ?? Number.NaN,
    );
for (const [figure, unit] of [
  ['carry', 'yd'],
  ['apex', 'yd'],
  ['descent', '°'],
] as const) {
  line(
    `tour ${figure}, rms [${unit}], spread ${TOUR_SPREAD[figure]}`,
    ...shown.map(([, c]) => rms(tourMisses(c, figure)).toFixed(2)),
  );
}

heading('Coefficients: row, shipped less row, in spreads');
for (const row of coefficientRows) {
  const miss = missOf(fittedModernConstants, row);
  line(row.id, row.expected.toFixed(3), signed(miss, 3), signed(miss / row.spread, 2));
}

heading(`Flights: shipped less row (carry, apex yd; descent °; hang s); ${DOUBTFUL} counts a third`);
for (const row of flightRows) {
  const misses = flightMisses(fittedModernConstants, row);
  line(row.id, ...row.figures.map(({ figure }, i) => `${figure} ${signed(misses[i] ?? Number.NaN, 2)}`));
}

heading('Left out in turn: what the other sources say of each, and what all say');
line('', 'rows', 'chi², others', 'chi², all', 'mean miss');
for (const source of SOURCES) {
  const without = left.get(source) ?? fit.constants;
  const own = coefficientRows.filter((row) => row.source === source);
  const flights = flightRows.filter((row) => row.source === source);
  if (own.length > 0) {
    const mean = (of: 'drag' | 'lift'): string => {
      const rows = own.filter(({ coefficient }) => coefficient === of);
      const misses = rows.map((row) => missOf(without, row));
      return rows.length === 0 ? '' : `${of} ${signed(misses.reduce((a, b) => a + b, 0) / rows.length, 3)}`;
    };
    line(
      source,
      String(own.length),
      chiSquare(without, own).toFixed(2),
      chiSquare(fit.constants, own).toFixed(2),
      `${mean('drag')} ${mean('lift')}`.trim(),
    );
  }
  for (const wanted of ['carry', 'apex', 'descent', 'hang'] as const) {
    const of = (constants: FittedModernConstants): number[] =>
      flights.flatMap((row) =>
        flightMisses(constants, row).filter((_, i) => row.figures[i]?.figure === wanted),
      );
    const misses = of(without);
    if (misses.length === 0) continue;
    const worst = misses.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
    line(
      `${source}: ${wanted}`,
      `rms ${rms(misses).toFixed(2)}`,
      `all ${rms(of(fit.constants)).toFixed(2)}`,
      `worst ${signed(worst, 2)}`,
    );
  }
}

heading(
  'Standard error of carry over the sources [%]: ball speed down [m/s], spin ratio along; anew | shipped',
);
line('', ...BAND_SPIN_RATIOS.map(String));
bandShares([...left.values()]).forEach((row, i) => {
  const speed = BAND_SPEEDS[i] ?? Number.NaN;
  line(
    String(speed),
    ...row.map((share, j) => `${percent(share)} | ${percent(BAND_SHARES[i]?.[j] ?? Number.NaN)}`),
  );
});

const best = bestDecay();
heading(`Spin lost [%]: row, by the decay of ${SPIN_DECAY}, by the best for the patent, ${best}`);
for (const row of spinRows) {
  line(
    `${isPatent(row) ? 'US 8,016,695: ' : ''}${row.what}`,
    row.expected.toFixed(1),
    row.lost(SPIN_DECAY).toFixed(1),
    row.lost(best).toFixed(1),
  );
}
for (const [what, rows] of [
  ['chi-square per row, patent', spinRows.filter(isPatent)],
  ['chi-square per row, others', spinRows.filter((row) => !isPatent(row))],
] as const) {
  line(what, '', decayChiSquare(SPIN_DECAY, rows).toFixed(2), decayChiSquare(best, rows).toFixed(2));
}

function heading(text: string): void {
  console.log(`\n${text}`);
}

function line(name: string, ...cells: readonly string[]): void {
  console.log(
    `  ${name.padEnd(52)}${cells.map((cell) => cell.padStart(Math.max(14, cell.length + 2))).join('')}`,
  );
}

function signed(value: number, decimals: number): string {
  return `${value < 0 ? '' : '+'}${value.toFixed(decimals)}`;
}

function percent(share: number): string {
  return (100 * share).toFixed(1);
}
