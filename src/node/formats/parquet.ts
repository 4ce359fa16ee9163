import { rowStatuses, type SweepAbout, type SweepRows } from '../../sweep/index.js';
import { peer } from '../peers.js';
import {
  ABOUT_KEY,
  CHECKSUM_KEY,
  type Encoder,
  type Format,
  type PlacedChunk,
  STATUS_COLUMN,
  WARNINGS_KEY,
  type WarningCounts,
  warningsOf,
} from './format.js';
import { UNSEALED } from './seal.js';

type Writer = typeof import('hyparquet-writer');
type ParquetWriter = InstanceType<Writer['ParquetWriter']>;
type RowGroup = ParquetWriter['row_groups'][number];

/**
 * Parquet: one row group a chunk. Everything the sweep says of itself is in the file's key-value metadata; name, unit and
 * role of a column are in the column's own.
 * @internal
 */
export const parquet: Format = {
  encoder: async (about) =>
    parquetEncoder(
      about,
      await peer('hyparquet-writer', 'writing Parquet', () => import('hyparquet-writer')),
    ),
  about: async (path) => {
    const { asyncBufferFromFile, parquetMetadataAsync } = await peer(
      'hyparquet',
      'reading what a Parquet file says of itself',
      () => import('hyparquet'),
    );
    const { key_value_metadata } = await parquetMetadataAsync(await asyncBufferFromFile(path));
    const valueAt = (wanted: string): string | undefined =>
      key_value_metadata?.find(({ key }) => key === wanted)?.value;
    const [about, warnings] = [valueAt(ABOUT_KEY), valueAt(WARNINGS_KEY)];
    if (about === undefined || warnings === undefined) return undefined;
    return { about: JSON.parse(about) as SweepAbout, warnings: JSON.parse(warnings) as WarningCounts };
  },
};

function parquetEncoder(about: SweepAbout, { ByteWriter, ParquetWriter }: Writer): Encoder {
  const schema = [
    { name: 'root', num_children: about.columns.length + 1 },
    ...about.columns.map(({ column }) => ({
      name: column,
      type: 'DOUBLE' as const,
      repetition_type: 'OPTIONAL' as const,
    })),
    {
      name: STATUS_COLUMN,
      type: 'BYTE_ARRAY' as const,
      converted_type: 'UTF8' as const,
      repetition_type: 'REQUIRED' as const,
    },
  ];
  const described = about.columns.map(({ name, unit, role }) => [
    { key: 'name', value: name },
    { key: 'unit', value: unit },
    { key: 'role', value: role },
  ]);
  /** A writer whose next byte lies at `offset` of the file, and what it has written. */
  const writerAt = (
    offset: number,
    chunks: readonly PlacedChunk[],
  ): readonly [ParquetWriter, () => Uint8Array] => {
    const bytes = new ByteWriter();
    const writer = new ParquetWriter({
      writer: bytes,
      schema,
      codec: 'SNAPPY',
      kvMetadata: [
        { key: ABOUT_KEY, value: JSON.stringify(about) },
        { key: WARNINGS_KEY, value: JSON.stringify(warningsOf(chunks)) },
        { key: CHECKSUM_KEY, value: UNSEALED },
      ],
      createdBy: `${about.library} version ${about.version}`,
    });
    // Its constructor has put the file's magic number there.
    bytes.index = 0;
    bytes.offset = offset;
    return [writer, () => new Uint8Array(bytes.buffer, 0, bytes.index)];
  };
  return {
    head: () => Buffer.from('PAR1'),
    chunk: (rows) => {
      const [writer, written] = writerAt(0, []);
      writer.write({ columnData: columnsOf(rows), rowGroupSize: rows.count });
      return { bytes: written(), warningCounts: rows.warningCounts, note: writer.row_groups[0] };
    },
    tail: (chunks, offset) => {
      const [writer, written] = writerAt(offset, chunks);
      writer.row_groups = chunks.map((chunk) => placed(chunk, described));
      writer.num_rows = BigInt(about.rows);
      writer.finish();
      return written();
    },
  };
}

function columnsOf({
  about,
  values,
  status,
  count,
}: SweepRows): Parameters<ParquetWriter['write']>[0]['columnData'] {
  // Indexes of pages would have to be kept until the end of the file; a row group is small enough to do without.
  const plain = { offsetIndex: false } as const;
  return [
    // Computed numbers hardly repeat: looking for a dictionary would cost more than the flight and save nothing.
    ...about.columns.map(({ column }, j) => ({
      name: column,
      data: withNulls(values[j] as Float64Array),
      encoding: 'PLAIN' as const,
      ...plain,
    })),
    {
      name: STATUS_COLUMN,
      data: Array.from({ length: count }, (_, i) => rowStatuses[status[i] as number]),
      ...plain,
    },
  ];
}

/** The numbers as they are, or, where one is missing, a list that holds null in its place. */
function withNulls(values: Float64Array): Float64Array | (number | null)[] {
  return values.some(Number.isNaN)
    ? Array.from(values, (value) => (Number.isNaN(value) ? null : value))
    : values;
}

type KeyValues = readonly { readonly key: string; readonly value: string }[];

/** A row group's metadata with its positions counted from the start of the file, and what its columns are. */
function placed({ offset, note }: PlacedChunk, described: readonly KeyValues[]): RowGroup {
  const group = note as RowGroup;
  const shift = BigInt(offset);
  return {
    ...group,
    columns: group.columns.map((column, j) => {
      const { meta_data } = column;
      const about = described[j];
      if (meta_data === undefined) return column;
      const { data_page_offset, dictionary_page_offset } = meta_data;
      return {
        ...column,
        file_offset: column.file_offset + shift,
        meta_data: {
          ...meta_data,
          ...(about !== undefined && { key_value_metadata: [...about] }),
          data_page_offset: data_page_offset + shift,
          ...(dictionary_page_offset !== undefined && {
            dictionary_page_offset: dictionary_page_offset + shift,
          }),
        },
      };
    }),
  };
}
