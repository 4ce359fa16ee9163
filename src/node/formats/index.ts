import { extname } from 'node:path';
import { requireOneOf } from '../../errors.js';
import { refusal } from '../../sweep/checks.js';
import { arrow } from './arrow.js';
import { csv } from './csv.js';
import type { Format, SweepFormat } from './format.js';
import { parquet } from './parquet.js';

/** @internal */
export const FORMATS: Readonly<Record<SweepFormat, Format>> = { csv, parquet, arrow };

const ENDINGS: Readonly<Record<string, SweepFormat>> = {
  '.csv': 'csv',
  '.parquet': 'parquet',
  '.arrow': 'arrow',
  '.feather': 'arrow',
};

/** The format asked for, or the one the file's ending stands for. @throws `FairflightError` `invalid-input` @internal */
export function formatOf(path: string, asked: SweepFormat | undefined): SweepFormat {
  if (asked !== undefined) return requireOneOf('options.format', asked, ['csv', 'parquet', 'arrow']);
  const format = ENDINGS[extname(path).toLowerCase()];
  if (format !== undefined) return format;
  throw refusal('path', `path must end in ${Object.keys(ENDINGS).join(', ')}, got ${JSON.stringify(path)}`, {
    value: path,
    hint: 'or name the format in options.format',
  });
}
