import type {
  CalibratedValue,
  Calibration,
  CalibrationResidual,
  CalibrationTarget,
  MeasuredShot,
} from 'fairflight/session';
import type { Display } from '../lib/display.js';
import { htmlTable, kept, list } from '../lib/page.js';
import { quantityNamed, shownBy } from '../lib/shot-quantities.js';
import { terminalTable } from '../lib/table.js';
import { counted, escaped, fixed, listed, near, signed } from '../lib/text.js';

const NAMES: Readonly<Record<CalibrationTarget, string>> = {
  restitution: 'restitution',
  tangentialRestitution: 'tangential restitution',
  dragScale: 'drag scale',
  liftScale: 'lift scale',
};

/** What was fitted, and what could not be. */
function intro({ values, notFitted }: Calibration): string {
  const names = (chosen: readonly { readonly target: CalibrationTarget }[]): string =>
    listed(chosen.map(({ target }) => NAMES[target]));
  const reasons = [...new Set(notFitted.map(({ reason }) => reason))];
  const not = reasons.map(
    (reason) => ` Not fitted: ${names(notFitted.filter((each) => each.reason === reason))} (${reason}).`,
  );
  return `Fitted to these shots: ${names(values)}; the rest of this report uses what came out.${not.join('')}`;
}

const RESIDUAL_NOTE =
  'Measured less predicted, each shot by a fit that did not see it (five folds): typical size (median) and bias (median). Strike readings are predicted from the club and the other readings of the same shot; flights from the launch as measured.';
/** Stands where the model is set beside what it was fitted to. */
export const CALIBRATED_NOTE =
  'The model is the calibrated one and these shots are among those it was fitted to; see the calibration for how it does on shots it did not see.';
/** A difference of this many standard errors is called clear. */
const CLEAR = 2;
/** A typical error that changes by less than this share is called the same. */
const SAME = 0.1;

interface Row {
  readonly label: string;
  readonly unit: string;
  readonly shots: number;
  readonly of: (si: number) => number;
  readonly decimals: number;
  readonly residual: CalibrationResidual;
}

function residualRows({ residuals }: Calibration, display: Display): readonly Row[] {
  return residuals.map((residual): Row => {
    const quantity = quantityNamed(residual.quantity);
    const { unit, of } = shownBy(quantity, display);
    const decimals = { spin: 0, angle: 2 }[quantity.kind as string] ?? 1;
    return { label: quantity.label, unit, shots: residual.count, of, decimals, residual };
  });
}

/** What the fit says, in sentences. */
function findings({ values, residuals }: Calibration): readonly string[] {
  const clear = values.filter(
    ({ value, before, standardError }) => Math.abs(value - before) > CLEAR * standardError,
  );
  const named = (chosen: readonly CalibrationResidual[]): string =>
    listed(chosen.map(({ quantity }) => quantityNamed(quantity).label));
  const change = ({ typicalBefore, typicalAfter }: CalibrationResidual): number =>
    typicalAfter / typicalBefore - 1;
  const groups = [
    ['smaller', residuals.filter((each) => change(each) < -SAME)],
    ['about the same', residuals.filter((each) => Math.abs(change(each)) <= SAME)],
    ['larger', residuals.filter((each) => change(each) > SAME)],
  ] as const;
  const parts = groups.flatMap(([word, chosen]) =>
    chosen.length === 0 ? [] : [`${word} for ${named(chosen)}`],
  );
  return [
    clear.length === 0
      ? 'No fitted value differs from the one before by more than two standard errors: these shots give no reason to depart from the generic head and ball.'
      : `More than two standard errors from the value before: ${listed(clear.map(({ target }) => NAMES[target]))}.${clear.length < values.length ? ' The others may be as they were.' : ''}`,
    `On shots the fit did not see, the typical error is ${parts.join('; ')} (a change below a tenth counts as the same).`,
  ];
}

function unfit({ misreads, leftOut }: Calibration, shots: readonly MeasuredShot[]): readonly string[] {
  const where = (shot: number): string => {
    const line = shots[shot]?.line;
    return line === undefined ? `shot ${shot + 1}` : `line ${line}`;
  };
  const reasons = new Map<string, number>();
  for (const { stage, reason } of leftOut) {
    const key = `${stage}: ${reason}`;
    reasons.set(key, (reasons.get(key) ?? 0) + 1);
  }
  return [
    misreads.length === 0
      ? 'Every shot fits well enough to be used.'
      : `Left out of the fit, as misreads or strikes too far off centre: ${listed(misreads.map(({ shot, stage, probability }) => `${where(shot)} (its ${stage}, probability ${fixed(probability, 2)})`))}.`,
    ...[...reasons].map(([reason, count]) => `${counted(count, 'shot')} not used for the ${reason}.`),
  ];
}

function remark({ atBound, mostlyPrior }: CalibratedValue): string {
  return [atBound ? 'on its bound' : '', mostlyPrior ? 'mostly assumed' : '']
    .filter((each) => each !== '')
    .join(', ');
}

/** The calibration as lines for the terminal. */
export function calibrationLines(
  calibration: Calibration,
  shots: readonly MeasuredShot[],
  display: Display,
): readonly string[] {
  const values = calibration.values.map((each) => [
    NAMES[each.target],
    fixed(each.before, 3),
    `${fixed(each.value, 3)} ±${fixed(each.standardError, 3)}`,
    remark(each),
  ]);
  const rows = residualRows(calibration, display).map(
    ({ label, unit, shots: count, of, decimals, residual }) => [
      `${label} (${unit})`,
      String(count),
      `${fixed(of(residual.typicalBefore), decimals)} → ${fixed(of(residual.typicalAfter), decimals)}`,
      `${signed(of(residual.biasBefore), decimals)} → ${signed(of(residual.biasAfter), decimals)}`,
    ],
  );
  return [
    'CALIBRATION TO THESE SHOTS: value ± standard error',
    `  ${intro(calibration)}`,
    terminalTable(['', 'before', 'fitted', ''], values),
    `  ${RESIDUAL_NOTE}`,
    terminalTable(['unseen shots', 'shots', 'typical, before → after', 'bias, before → after'], rows),
    ...findings(calibration).map((each) => `  ${each}`),
    ...unfit(calibration, shots).map((each) => `  ${each}`),
    '  What these data cannot tell apart:',
    ...calibration.limits.map((each) => `  - ${each}`),
  ];
}

/** The calibration as a section of the page. */
export function calibrationSection(
  calibration: Calibration,
  shots: readonly MeasuredShot[],
  display: Display,
): string {
  const values = htmlTable(
    [
      { head: 'fitted', text: true },
      { head: 'before' },
      { head: 'value' },
      { head: 'standard error' },
      { head: '', text: true },
    ],
    calibration.values.map((each) => [
      NAMES[each.target],
      fixed(each.before, 3),
      fixed(each.value, 3),
      `±${fixed(each.standardError, 3)}`,
      remark(each),
    ]),
  );
  const residuals = htmlTable(
    [
      { head: 'unseen shots', text: true },
      { head: 'shots' },
      { head: 'typical', unit: 'before' },
      { head: 'typical', unit: 'after' },
      { head: 'bias', unit: 'before' },
      { head: 'bias', unit: 'after' },
    ],
    residualRows(calibration, display).map(({ label, unit, shots: count, of, decimals, residual }) => [
      escaped(unit === '°' ? `${label}, °` : `${label}, ${unit}`),
      String(count),
      fixed(of(residual.typicalBefore), decimals),
      fixed(of(residual.typicalAfter), decimals),
      signed(of(residual.biasBefore), decimals),
      signed(of(residual.biasAfter), decimals),
    ]),
  );
  return kept(
    'Calibrated to these shots',
    intro(calibration),
    [
      values,
      residuals,
      `<p class="note">${escaped(RESIDUAL_NOTE)}</p>`,
      list([...findings(calibration), ...unfit(calibration, shots)]),
      `<h3>What these data cannot tell apart</h3>${list(calibration.limits)}`,
    ].join(''),
  );
}

/** The calibration as JSON. */
export function calibrationRecord(
  calibration: Calibration,
  shots: readonly MeasuredShot[],
  display: Display,
): unknown {
  const place = (shot: number): { shot: number; line?: number } => {
    const line = shots[shot]?.line;
    return { shot: shot + 1, ...(line !== undefined && { line }) };
  };
  return {
    'fitted values': Object.fromEntries(
      calibration.values.map(({ target, before, value, standardError, atBound, mostlyPrior }) => [
        NAMES[target],
        {
          before: near(before, 4),
          value: near(value, 4),
          'standard error': near(standardError, 4),
          'on its bound': atBound,
          'mostly assumed': mostlyPrior,
        },
      ]),
    ),
    'not fitted': calibration.notFitted.map(({ target, usable, reason }) => ({
      value: NAMES[target],
      'usable shots': usable,
      reason,
    })),
    correlation: calibration.correlation.map((row) => row.map((value) => near(value, 3))),
    'residuals on unseen shots': Object.fromEntries(
      residualRows(calibration, display).map(({ label, unit, shots: count, of, decimals, residual }) => {
        const value = (si: number): number => near(of(si), decimals + 1);
        return [
          `${label} (${unit === '°' ? 'deg' : unit})`,
          {
            shots: count,
            'typical before': value(residual.typicalBefore),
            'typical after': value(residual.typicalAfter),
            'bias before': value(residual.biasBefore),
            'bias after': value(residual.biasAfter),
          },
        ];
      }),
    ),
    how: RESIDUAL_NOTE,
    findings: findings(calibration),
    misreads: calibration.misreads.map(({ shot, stage, probability }) => ({
      ...place(shot),
      stage,
      probability: near(probability, 3),
    })),
    'left out': calibration.leftOut.map(({ shot, stage, reason }) => ({ ...place(shot), stage, reason })),
    'cannot tell apart': calibration.limits,
  };
}
