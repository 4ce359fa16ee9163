/**
 * Fits the constants of the default coefficient model anew from the rows it rests on, and prints constants, residuals
 * of every row and root mean squares beside those of the constants it ships with.
 *
 * usage: npm run refit
 *
 * The rows: eight test-range points (drag and lift coefficient) and sixteen tour averages (carry, apex, descent angle),
 * all from memory; see the `about` blocks in tests/published/data. Centre and step of the drag crisis are not fitted,
 * because no row says anything about them; they come from Lyu, Kensrud and Smith (2020).
 */
import { type FittedModernConstants, fittedModernConstants } from '../index.js';
import {
  costOf,
  doubtfulRow,
  fittedNames,
  type Residuals,
  refit,
  residualsOf,
  rms,
  spread,
} from './aerodynamics-fit.js';

const whole = refit(1);
const light = refit(1 / 3);
const shown: readonly (readonly [title: string, constants: FittedModernConstants])[] = [
  ['shipped', fittedModernConstants],
  ['refit', whole.constants],
  ['light', light.constants],
];

console.log('Constants of the default coefficient model');
console.log(`  refit: every row whole; light: ${doubtfulRow} counts a third, as it contradicts the others.`);
console.log(
  `  Spreads: carry ${spread.carry} yd, apex ${spread.apex} yd, descent ${spread.descent}°, drag and lift ${spread.drag}.\n`,
);
console.log(
  line('', ...shown.map(([title]) => title), 'standard error', 'shipped − refit, in standard errors'),
);
fittedNames.forEach((name, i) => {
  const error = whole.standardErrors[i] ?? Number.NaN;
  const off = (fittedModernConstants[name] - whole.constants[name]) / error;
  console.log(
    line(name, ...shown.map(([, constants]) => digits(constants[name])), digits(error), off.toFixed(2)),
  );
});

console.log('\nLeft over, root mean square');
console.log(line('', ...shown.map(([title]) => title)));
const left = shown.map(([, constants]) => residualsOf(constants));
for (const [what, unit, of] of [
  ['carry', 'yd', (r: Residuals) => r.flights.map((f) => f.carry)],
  ['apex', 'yd', (r: Residuals) => r.flights.map((f) => f.apex)],
  ['descent', '°', (r: Residuals) => r.flights.map((f) => f.descent)],
  ['drag', '', (r: Residuals) => r.points.map((p) => p.drag)],
  ['lift', '', (r: Residuals) => r.points.map((p) => p.lift)],
] as const) {
  const decimals = unit === '' ? 4 : 2;
  console.log(
    line(unit === '' ? what : `${what} [${unit}]`, ...left.map((r) => rms(of(r)).toFixed(decimals))),
  );
}
console.log(line('sum of squares', ...left.map((r) => costOf(r).toFixed(1))));

const [shippedLeft, refitLeft] = left as [Residuals, Residuals];
console.log('\nModel minus row: shipped | refit');
console.log(line('', 'carry [yd]', 'apex [yd]', 'descent [°]'));
shippedLeft.flights.forEach((row, i) => {
  const other = refitLeft.flights[i] ?? row;
  const both = (a: number, b: number) => `${signed(a, 1)} | ${signed(b, 1)}`;
  console.log(
    line(row.id, both(row.carry, other.carry), both(row.apex, other.apex), both(row.descent, other.descent)),
  );
});
console.log(line('', 'drag', 'lift'));
shippedLeft.points.forEach((row, i) => {
  const other = refitLeft.points[i] ?? row;
  const both = (a: number, b: number) => `${signed(a, 3)} | ${signed(b, 3)}`;
  console.log(
    line(`Re ${row.reynolds}, S ${row.spinRatio}`, both(row.drag, other.drag), both(row.lift, other.lift)),
  );
});

const moved = shippedLeft.flights.map((row, i) => Math.abs(row.carry - (refitLeft.flights[i] ?? row).carry));
console.log(`\nBetween shipped and refit no carry moves by more than ${Math.max(...moved).toFixed(2)} yd.`);

function line(name: string, ...cells: readonly string[]): string {
  return name.padEnd(24) + cells.map((cell) => cell.padStart(Math.max(16, cell.length + 2))).join('');
}

function digits(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toFixed(4);
}

function signed(value: number, decimals: number): string {
  return `${value < 0 ? '' : '+'}${value.toFixed(decimals)}`.padStart(decimals + 4);
}
