import { warningText } from 'fairflight';
import type { ShotTable } from 'fairflight/schema';
import { adviceRecord } from '../lib/advice.js';
import type { Display } from '../lib/display.js';
import { sceneWords } from '../lib/scene-options.js';
import { COLUMNS, shownBy } from '../lib/shot-quantities.js';
import { near } from '../lib/text.js';
import { calibrationRecord } from './calibration-report.js';
import type { Ladder } from './ladder.js';
import type { LoftAnswer, Rung } from './rungs.js';
import type { Ranged, Step } from './steps.js';
import { CAUTIONS, limitsOf, perSpeed, perSpeedUnit } from './words.js';

type Fields = Readonly<Record<string, unknown>>;

/** The ladder as JSON: every number under a key that says its unit. */
export function ladderRecord(ladder: Ladder, table: ShotTable, file: string, display: Display): Fields {
  const { distance, speed, angle } = display;
  const { summary, setup } = ladder;
  return {
    about: {
      what: 'One driver at several club speeds',
      file,
      comments: table.comments,
      conditions: sceneWords(setup.scene, display),
      clubhead: setup.clubhead.name,
      'nominal loft (deg)': near(angle.of(setup.clubhead.staticLoft), 2),
      hand: setup.hand,
      'best loft by': setup.maximise,
      'outliers in the means': setup.keepOutliers,
      limits: limitsOf(ladder, display),
      cautions: CAUTIONS,
    },
    input: {
      rows: table.rowsRead,
      used: table.shots.length,
      'left out': table.rowsLeftOut,
      rejected: table.rejected,
      notes: table.notes,
    },
    ...(ladder.calibration && {
      calibration: calibrationRecord(ladder.calibration, table.shots, display),
    }),
    bands: ladder.rungs.map((rung) => bandRecord(rung, display)),
    steps: ladder.steps.map((step) => stepRecord(step, display)),
    'odd shots': ladder.odd,
    'in no band': summary.unassigned,
    attainable: ladder.attainable.map((point) => ({
      [`club speed (${speed.unit})`]: near(speed.of(point.clubSpeed), 1),
      'attack angle (deg)': near(angle.of(point.attackAngle), 1),
      [`carry (${distance.unit})`]: near(distance.of(point.carry), 1),
    })),
    remarks: summary.remarks,
  };
}

function bandRecord(rung: Rung, display: Display): Fields {
  const { distance, angle, height } = display;
  const { carry, total, flight } = rung.model;
  return {
    name: rung.name,
    shots: rung.shots.length,
    used: rung.used,
    measured: estimatesRecord(rung, display),
    model: {
      [`carry (${distance.unit})`]: near(distance.of(carry), 1),
      [`total (${distance.unit})`]: near(distance.of(total), 1),
      [`apex (${height.unit})`]: near(height.of(flight.apex), 1),
      'descent angle (deg)': near(angle.of(flight.descentAngle), 1),
      'model less measured': disagreementRecord(rung, display),
    },
    ...(rung.loft && { 'best loft': loftRecord(rung.loft, display) }),
    ...(rung.advice && { advice: adviceRecord(rung.advice, display) }),
  };
}

function estimatesRecord({ estimates }: Rung, display: Display): Fields {
  return Object.fromEntries(
    COLUMNS.flatMap((quantity) => {
      const estimate = estimates[quantity.name];
      if (estimate === undefined) return [];
      const { count, mean, interval, sd } = estimate;
      const { unit, of, decimals } = shownBy(quantity, display);
      const label = unit === '' ? quantity.label : `${quantity.label} (${unit === '°' ? 'deg' : unit})`;
      const value = (si: number): number => near(of(si), decimals + 1);
      const ends = interval && { low: value(interval.low), high: value(interval.high) };
      return [[label, { count, mean: value(mean), ...ends, ...(sd !== undefined && { sd: value(sd) }) }]];
    }),
  );
}

function disagreementRecord({ disagreement }: Rung, { distance, angle, height }: Display): Fields {
  const entries = [
    [`carry (${distance.unit})`, disagreement.carry, distance.of],
    [`apex (${height.unit})`, disagreement.apex, height.of],
    ['descent angle (deg)', disagreement.descentAngle, angle.of],
  ] as const;
  return Object.fromEntries(
    entries.flatMap(([label, gap, of]) => {
      if (gap === undefined) return [];
      const { count, mean, sd } = gap;
      return [[label, { count, mean: near(of(mean), 1), ...(sd !== undefined && { sd: near(of(sd), 1) }) }]];
    }),
  );
}

function loftRecord(answer: LoftAnswer, { distance, angle, height, spin, spoken }: Display): Fields {
  const { optimum, window } = answer;
  const { low, high } = optimum.window.dynamicLoft;
  const degrees = (value: number): number => near(angle.of(value), 1);
  const length = (value: number): number => near(distance.of(value), 1);
  return {
    'dynamic loft now (deg)': degrees(answer.delivered),
    'best dynamic loft (deg)': degrees(optimum.dynamicLoft),
    'window (deg)': {
      ...(low !== undefined && { low: degrees(low) }),
      ...(high !== undefined && { high: degrees(high) }),
    },
    'nominal loft now (deg)': degrees(answer.nominalNow),
    'nominal loft advised (deg)': degrees(answer.nominalAdvised),
    [`carry (${distance.unit})`]: length(optimum.shot.carry),
    [`total (${distance.unit})`]: length(optimum.shot.total),
    'launch angle (deg)': degrees(optimum.shot.launch.launchAngle),
    'spin (rpm)': near(spin.of(optimum.shot.launch.spinRate), 0),
    'held by': optimum.heldBy,
    ...(window && {
      flight: {
        [`apex window (${height.unit})`]: window.apex.map((value) => near(height.of(value), 0)),
        'descent window (deg)': window.descent.map(degrees),
      },
    }),
    warnings: optimum.warnings.map((warning) => warningText(warning, { units: spoken })),
  };
}

function stepRecord(step: Step, display: Display): Fields {
  const { distance, speed } = display;
  return {
    from: step.from,
    to: step.to,
    [`club speed (${speed.unit})`]: near(speed.of(step.speedGain), 2),
    [`carry (${distance.unit})`]: near(distance.of(step.carryGain), 1),
    [`carry per speed (${perSpeedUnit(display)})`]: rangedRecord(
      step.carryPerSpeed,
      (value) => perSpeed(value, display),
      2,
    ),
    [`carry from ball speed (${distance.unit})`]: near(distance.of(step.fromBallSpeed.value), 1),
    [`parts of the carry (${distance.unit})`]: Object.fromEntries(
      step.parts.map(({ cause, carry }) => [cause, rangedRecord(carry, distance.of, 1)]),
    ),
  };
}

function rangedRecord({ value, interval }: Ranged, of: (si: number) => number, decimals: number): Fields {
  return {
    value: near(of(value), decimals),
    ...(interval && { low: near(of(interval.low), decimals), high: near(of(interval.high), decimals) }),
  };
}
