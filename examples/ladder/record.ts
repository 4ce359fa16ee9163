import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { sceneWords } from '../lib/scene-options.js';
import { COLUMNS, shownBy } from '../lib/shot-quantities.js';
import { calibrationRecord } from './calibration-report.js';
import type { Ladder } from './ladder.js';
import type { Rung } from './rungs.js';
import type { Ranged } from './steps.js';
import { CAUTIONS, limitsOf, perSpeed, perSpeedUnit } from './words.js';

/** The ladder as JSON: every number under a key that says its unit. */
export function ladderRecord(ladder: Ladder, table: ShotTable, file: string, display: Display): unknown {
  const { distance, speed, angle, height } = display;
  const near = (value: number, decimals: number): number => Number(value.toFixed(decimals));
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
      limits: limitsOf(ladder),
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
    bands: ladder.rungs.map((rung) => ({
      name: rung.name,
      shots: rung.shots.length,
      used: rung.used,
      measured: estimates(rung),
      model: {
        [`carry (${distance.unit})`]: near(distance.of(rung.model.carry), 1),
        [`total (${distance.unit})`]: near(distance.of(rung.model.total), 1),
        [`apex (${height.unit})`]: near(height.of(rung.model.flight.apex), 1),
        'descent angle (deg)': near(angle.of(rung.model.flight.descentAngle), 1),
        'model less measured': disagreements(rung),
      },
      ...(rung.loft && { 'best loft': loft(rung.loft) }),
    })),
    steps: ladder.steps.map((step) => ({
      from: step.from,
      to: step.to,
      [`club speed (${speed.unit})`]: near(speed.of(step.speedGain), 2),
      [`carry (${distance.unit})`]: near(distance.of(step.carryGain), 1),
      [`carry per speed (${perSpeedUnit(display)})`]: ranged(
        step.carryPerSpeed,
        (value) => perSpeed(value, display),
        2,
      ),
      [`carry from ball speed (${distance.unit})`]: near(distance.of(step.fromBallSpeed.value), 1),
      [`parts of the carry (${distance.unit})`]: Object.fromEntries(
        step.parts.map(({ cause, carry }) => [cause, ranged(carry, distance.of, 1)]),
      ),
    })),
    'odd shots': ladder.odd,
    'in no band': summary.unassigned,
    attainable: ladder.attainable.map((point) => ({
      [`club speed (${speed.unit})`]: near(speed.of(point.clubSpeed), 1),
      'attack angle (deg)': near(angle.of(point.attackAngle), 1),
      [`carry (${distance.unit})`]: near(distance.of(point.carry), 1),
    })),
    remarks: summary.remarks,
  };

  function ranged(
    { value, interval }: Ranged,
    of: (si: number) => number,
    decimals: number,
  ): Record<string, number> {
    return {
      value: near(of(value), decimals),
      ...(interval && { low: near(of(interval.low), decimals), high: near(of(interval.high), decimals) }),
    };
  }

  function estimates(rung: Rung): Record<string, unknown> {
    return Object.fromEntries(
      COLUMNS.flatMap((quantity) => {
        const estimate = rung.estimates[quantity.name];
        if (estimate === undefined) return [];
        const { unit, of, decimals } = shownBy(quantity, display);
        const label = unit === '' ? quantity.label : `${quantity.label} (${unit === '°' ? 'deg' : unit})`;
        const value = (si: number): number => near(of(si), decimals + 1);
        return [
          [
            label,
            {
              count: estimate.count,
              mean: value(estimate.mean),
              ...(estimate.interval && {
                low: value(estimate.interval.low),
                high: value(estimate.interval.high),
              }),
              ...(estimate.sd !== undefined && { sd: value(estimate.sd) }),
            },
          ],
        ];
      }),
    );
  }

  function disagreements({ disagreement }: Rung): Record<string, unknown> {
    const entries = [
      [`carry (${distance.unit})`, disagreement.carry, distance.of],
      [`apex (${height.unit})`, disagreement.apex, height.of],
      ['descent angle (deg)', disagreement.descentAngle, angle.of],
    ] as const;
    return Object.fromEntries(
      entries.flatMap(([label, gap, of]) =>
        gap === undefined
          ? []
          : [
              [
                label,
                {
                  count: gap.count,
                  mean: near(of(gap.mean), 1),
                  ...(gap.sd !== undefined && { sd: near(of(gap.sd), 1) }),
                },
              ],
            ],
      ),
    );
  }

  function loft(answer: NonNullable<Rung['loft']>): Record<string, unknown> {
    const { optimum, window } = answer;
    const { low, high } = optimum.window.dynamicLoft;
    return {
      verdict: answer.verdict,
      'dynamic loft now (deg)': near(angle.of(answer.delivered), 1),
      'best dynamic loft (deg)': near(angle.of(optimum.dynamicLoft), 1),
      'window (deg)': {
        ...(low !== undefined && { low: near(angle.of(low), 1) }),
        ...(high !== undefined && { high: near(angle.of(high), 1) }),
      },
      'nominal loft now (deg)': near(angle.of(answer.nominalNow), 1),
      'nominal loft advised (deg)': near(angle.of(answer.nominalBest), 1),
      [`carry (${distance.unit})`]: near(distance.of(optimum.shot.carry), 1),
      [`total (${distance.unit})`]: near(distance.of(optimum.shot.total), 1),
      'launch angle (deg)': near(angle.of(optimum.shot.launch.launchAngle), 1),
      'spin (rpm)': near(display.spin.of(optimum.shot.launch.spinRate), 0),
      [`carry left on the table (${distance.unit})`]: {
        all: near(distance.of(answer.carryLeft.all), 1),
        'from loft': near(distance.of(answer.carryLeft.loft), 1),
        'from the strike': near(distance.of(answer.carryLeft.strike), 1),
      },
      [`total left on the table (${distance.unit})`]: near(distance.of(answer.totalLeft), 1),
      'held by': optimum.heldBy,
      ...(window && {
        flight: {
          verdict: window.verdict,
          [`apex window (${height.unit})`]: window.apex.map((value) => near(height.of(value), 0)),
          'descent window (deg)': window.descent.map((value) => near(angle.of(value), 1)),
        },
      }),
      warnings: optimum.warnings.map(({ message }) => message),
    };
  }
}
