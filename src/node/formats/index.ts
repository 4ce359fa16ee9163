import { extname } from 'node:path';
import { describe } from '../../errors.js';
import { readChoice } from '../../inputs/read.js';
import { refusal, refuseType } from '../../inputs/refuse.js';
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
export function formatOf(
  path: string,
  asked: SweepFormat | undefined,
  field = 'options.format',
): SweepFormat {
  if (typeof path !== 'string') throw refuseType('path', 'a path', path);
  if (asked !== undefined) return readChoice(Object.keys(FORMATS) as SweepFormat[], asked, field);
  const format = ENDINGS[extname(path).toLowerCase()];
  if (format !== undefined) return format;
  throw refusal('path', `path must end in ${Object.keys(ENDINGS).join(', ')}, got ${describe(path)}`, {
    value: path,
    hint: `or name the format in ${field}`,
  });
}
