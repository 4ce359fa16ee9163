import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import type { SweepAbout } from 'fairflight/sweep';

type Columns = ReadonlyMap<string, Float64Array>;

/** Inputs and carry of a finished sweep, whole, by their names in the library; what is missing is NaN. */
export async function readColumns(path: string, { columns, rows }: SweepAbout): Promise<Columns> {
  const wanted = columns.filter(({ name, role }) => role === 'input' || name === 'carry');
  const byColumn = new Map(wanted.map(({ column }) => [column, new Float64Array(rows)]));
  await (path.endsWith('.csv') ? readCsv(path, byColumn) : readParquet(path, byColumn));
  return new Map(wanted.map(({ name, column }) => [name, byColumn.get(column) ?? new Float64Array(0)]));
}

async function readParquet(path: string, byColumn: Columns): Promise<void> {
  const { asyncBufferFromFile, parquetRead } = await import('hyparquet');
  await parquetRead({
    file: await asyncBufferFromFile(path),
    columns: [...byColumn.keys()],
    onChunk: ({ columnName, columnData, rowStart }) => {
      const values = byColumn.get(columnName);
      Array.from(columnData as ArrayLike<number | null>).forEach((value, i) => {
        if (values !== undefined) values[rowStart + i] = value ?? Number.NaN;
      });
    },
  });
}

/** No field of these files is quoted, and what begins with # is no row. */
async function readCsv(path: string, byColumn: Columns): Promise<void> {
  let into: readonly (Float64Array | undefined)[] | undefined;
  let row = 0;
  for await (const line of createInterface({ input: createReadStream(path) })) {
    if (line.startsWith('#')) continue;
    const cells = line.split(',');
    if (into === undefined) {
      into = cells.map((name) => byColumn.get(name));
      continue;
    }
    for (const [at, values] of into.entries()) {
      if (values !== undefined) values[row] = cells[at] ? Number(cells[at]) : Number.NaN;
    }
    row += 1;
  }
}
