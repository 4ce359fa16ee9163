import type { QuantityName, SessionSummary } from 'fairflight/session';
import type { Display } from '../lib/display.js';
import { quantityNamed, shownBy } from '../lib/shot-quantities.js';
import { fixed, grouped } from '../lib/text.js';
import type { TrainingLog } from './log.js';

type Band = SessionSummary['bands'][number];

/** A column of the table of sessions. */
export interface SessionColumn {
  readonly head: string;
  readonly unit: string;
  readonly of: (band: Band) => { readonly mean: string; readonly sd: string | undefined } | undefined;
}

const SHOWN: readonly QuantityName[] = [
  'clubSpeed',
  'ballSpeed',
  'smashFactor',
  'launchAngle',
  'launchDirection',
  'spinRate',
  'carry',
  'side',
];

/** Columns for what was measured in any session: mean and standard deviation from shot to shot. */
export function sessionColumns({ sessions }: TrainingLog, display: Display): readonly SessionColumn[] {
  return SHOWN.filter((name) => sessions.some(({ quantities }) => quantities[name] !== undefined)).map(
    (name) => {
      const quantity = quantityNamed(name);
      const { unit, of, decimals } = shownBy(quantity, display);
      const shown = (value: number): string =>
        decimals === 0 ? grouped(of(value)) : fixed(of(value), decimals);
      return {
        head: quantity.short ?? (name === 'launchDirection' ? 'direction' : quantity.label),
        unit,
        of: ({ quantities }) => {
          const estimate = quantities[name];
          if (estimate === undefined) return undefined;
          return {
            mean: shown(estimate.mean),
            sd: estimate.sd === undefined ? undefined : shown(estimate.sd),
          };
        },
      };
    },
  );
}
