/**
 * The ball or the reading: when a device reads a launch and a model flies it, how much of what is uncertain about the
 * distance hangs on the ball model, on the readings, on the air and on the turf?
 *
 * `npm run doubt` fits the ball to bundled invented shots; `npm run doubt -- my-shots.csv` to yours.
 */

import { calibrate } from 'fairflight/session';
import {
  columnOf,
  type FactorName,
  type IndexDesign,
  type RandomFactor,
  sobolIndicesOf,
  sweep,
} from 'fairflight/sweep';
import { celsius, degrees, metresPerSecond, mph, rpm, toYards } from 'fairflight/units';
import { runCommand, UsageError } from './lib/command.js';
import { writeNamed } from './lib/files.js';
import { codeAfterReading, READING_OPTIONS, readingFrom, readShotFile } from './lib/reading.js';
import { fileFrom, fileName, REPORT_OPTIONS } from './lib/report.js';
import { demo, subjectOf } from './lib/subject.js';
import { terminalTable } from './lib/table.js';
import { say, shownJson } from './lib/terminal.js';
import { fixed } from './lib/text.js';

const DEMO = demo('speed-ladder-demo.csv', 'Imo Feldspar', import.meta.url);
/** The launch that was read. */
const READ = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) };

/** One reading error of a usual radar [share or rad], as a standard deviation. */
const reading = (name: FactorName, deviation: number): RandomFactor => ({
  names: [name],
  mean: [0],
  covariance: [[deviation ** 2]],
});

await runCommand(
  {
    name: 'doubt',
    usage: '[shots.csv] [options]',
    options: {
      out: { type: 'string', value: 'DIR', help: 'folder for the shares as JSON (default: printed only)' },
      replace: REPORT_OPTIONS.replace,
      player: REPORT_OPTIONS.player,
      ...READING_OPTIONS,
    },
  },
  (given) => {
    const file = fileFrom(given, DEMO);
    const table = readShotFile(file.path, readingFrom(given));
    const { shots } = table;
    const [ball] = calibrate(shots, {}, { what: ['dragScale', 'liftScale'] }).factors;
    if (ball === undefined)
      throw new UsageError('these shots cannot be fitted: they need ball speed, launch, spin and carry');
    const groups: readonly (readonly [string, RandomFactor])[] = [
      ['ball model: drag and lift, fitted', ball],
      ['ball model: spin decay, half to twice', { name: 'aerodynamics.spinDecay', from: 1e-5, to: 4e-5 }],
      ['reading: ball speed, ±0.5 %', reading('readingError.ballSpeed', 0.005)],
      ['reading: launch angle, ±0.3°', reading('readingError.launchAngle', degrees(0.3))],
      ['reading: spin, ±3 %', reading('readingError.spinRate', 0.03)],
      ['air: temperature, ±3 °C', { name: 'air.temperature', from: celsius(17), to: celsius(23) }],
      ['air: wind along, ±1 m/s', { name: 'wind.along', from: metresPerSecond(-1), to: metresPerSecond(1) }],
      ['turf: tilt, 14° to 22°', { name: 'turf.bounce.tilt', from: degrees(14), to: degrees(22) }],
      ['turf: restitution, 0.10 to 0.20', { name: 'turf.bounce.restitution', from: 0.1, to: 0.2 }],
    ];
    const design: IndexDesign = {
      kind: 'sobol-indices',
      base: 1024,
      seed: 1,
      factors: groups.map(([, factor]) => factor),
    };
    const flown = sweep(design, {}, { from: READ, outputs: ['carry', 'total'] });
    const outputs = (['carry', 'total'] as const).map((name) =>
      sobolIndicesOf(design, columnOf(flown, name)),
    );
    const rows = groups.map(([label], j) => [
      label,
      ...outputs.map(({ factors }) => fixed(Math.max(0, factors[j]?.total ?? 0), 2)),
    ]);
    const spread = outputs.map(({ variance }) => `± ${fixed(toYards(Math.sqrt(variance) as never), 1)} yd`);
    const text = [
      'WHAT HANGS ON WHAT: shares of the variance (total Sobol indices) of a drive read at 150 mph, 12°, 2600 rpm',
      terminalTable(['', 'carry', 'total'], [...rows, ['standard deviation', ...spread]]),
      '',
      `${flown.count} flights; ${flown.warningCounts.reduce((sum, n) => sum + n, 0)} warnings. Fit: ${shots.length} shots.`,
      'The share of a group that is fitted together is that of all of it. Shares belong to these spreads: those of the',
      'readings, the air and the turf are assumptions.',
    ];
    say(`${[...table.comments.slice(0, 1), ...text].join('\n')}\n`);
    const out = given.text('out');
    if (out !== undefined) {
      const shares = groups.map(([group], j) => ({
        group,
        carry: outputs[0]?.factors[j]?.total,
        total: outputs[1]?.factors[j]?.total,
      }));
      const name = fileName('doubt', subjectOf(given, file, table));
      writeNamed(out, name, { '.json': shownJson(shares) }, given.flag('replace'));
    }
    return codeAfterReading('doubt', table);
  },
);
