/**
 * Fits the driver's tangential restitution by club speed anew to the spin of six drives, and prints the law, what it
 * and a constant leave over of each row, and what a fit without the row would have said of it.
 *
 * usage: npm run refit:grip
 */
import { rms } from '../../aerodynamics/build-time/fit.js';
import { si, toMph } from '../../units/index.js';
import { DRIVER_GRIP } from '../driver-grip.js';
import { fitConstant, fitGrip, gripRows, missesLeftOut, missOf, spinBy } from './fit-grip.js';

const [byRows, constant] = [fitGrip(), fitConstant()];
console.log('shipped', JSON.stringify(DRIVER_GRIP));
console.log('refit  ', JSON.stringify(byRows));
console.log('constant', JSON.stringify(constant));

const leftOut = { law: missesLeftOut(fitGrip), constant: missesLeftOut(fitConstant) };
line('row', 'mph', 'rpm', 'shipped', 'error', 'left out', 'constant', 'left out');
gripRows.forEach((row, i) => {
  line(
    row.id,
    toMph(si(row.clubSpeed)).toFixed(1),
    row.spin.toFixed(0),
    spinBy(DRIVER_GRIP, row).toFixed(0),
    percent(missOf(DRIVER_GRIP, row)),
    percent(leftOut.law[i] ?? Number.NaN),
    percent(missOf(constant, row)),
    percent(leftOut.constant[i] ?? Number.NaN),
  );
});
line(
  'root mean square',
  '',
  '',
  '',
  percent(rms(gripRows.map((row) => missOf(DRIVER_GRIP, row)))),
  percent(rms(leftOut.law)),
  percent(rms(gripRows.map((row) => missOf(constant, row)))),
  percent(rms(leftOut.constant)),
);

function line(name: string, ...cells: readonly string[]): void {
  console.log(name.padEnd(26) + cells.map((cell) => cell.padStart(10)).join(''));
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
