import { rowStatuses, type SweepAbout, type SweepRows } from '../../sweep/index.js';
import { peer } from '../peers.js';
import { ABOUT_KEY, type Encoder, type Format, type PlacedChunk, STATUS_COLUMN } from './format.js';

type Writer = typeof import('hyparquet-writer');
type ParquetWriter = InstanceType<Writer['ParquetWriter']>;
type RowGroup = ParquetWriter['row_groups'][number];

/** Parquet: one row group a chunk; everything the sweep says of itself is in the key-value metadata. @internal */
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
    try {
      const { key_value_metadata } = await parquetMetadataAsync(await asyncBufferFromFile(path));
      const found = key_value_metadata?.find(({ key }) => key === ABOUT_KEY)?.value;
      return found === undefined ? undefined : (JSON.parse(found) as SweepAbout);
    } catch {
      // No footer, or a broken one.
      return undefined;
    }
  },
};

function parquetEncoder(about: SweepAbout, { ByteWriter, ParquetWriter }: Writer): Encoder {
  const required = { repetition_type: 'REQUIRED' } as const;
  const schema = [
    { name: 'root', num_children: about.columns.length + 1 },
    ...about.columns.map(({ name }) => ({ name, type: 'DOUBLE' as const, ...required })),
    { name: STATUS_COLUMN, type: 'BYTE_ARRAY' as const, converted_type: 'UTF8' as const, ...required },
  ];
  /** A writer whose next byte lies at `offset` of the file, and what it has written. */
  const writerAt = (offset: number): readonly [ParquetWriter, () => Uint8Array] => {
    const bytes = new ByteWriter();
    const writer = new ParquetWriter({
      writer: bytes,
      schema,
      codec: 'SNAPPY',
      kvMetadata: [{ key: ABOUT_KEY, value: JSON.stringify(about) }],
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
      const [writer, written] = writerAt(0);
      writer.write({ columnData: columnsOf(rows), rowGroupSize: rows.count });
      return { bytes: written(), note: writer.row_groups[0] };
    },
    tail: (chunks, offset) => {
      const [writer, written] = writerAt(offset);
      writer.row_groups = chunks.map(placed);
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
    ...about.columns.map(({ name }, j) => ({
      name,
      data: values[j] as Float64Array,
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

/** A row group's metadata with its positions counted from the start of the file. */
function placed({ offset, note }: PlacedChunk): RowGroup {
  const group = note as RowGroup;
  const shift = BigInt(offset);
  return {
    ...group,
    columns: group.columns.map((column) => {
      const { meta_data } = column;
      if (meta_data === undefined) return column;
      const { data_page_offset, dictionary_page_offset } = meta_data;
      return {
        ...column,
        file_offset: column.file_offset + shift,
        meta_data: {
          ...meta_data,
          data_page_offset: data_page_offset + shift,
          ...(dictionary_page_offset !== undefined && {
            dictionary_page_offset: dictionary_page_offset + shift,
          }),
        },
      };
    }),
  };
}
