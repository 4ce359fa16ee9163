import { open } from 'node:fs/promises';
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
import { bytesAt, UNSEALED } from './seal.js';

const MAGIC = Buffer.from('ARROW1');
/** The magic number, padded to eight bytes. */
const HEAD = Buffer.from('ARROW1\0\0');
/** Continuation marker and length 0: the end of the stream inside the file. */
const END_OF_STREAM = Buffer.from([0xff, 0xff, 0xff, 0xff, 0, 0, 0, 0]);

interface Library {
  readonly arrow: typeof import('apache-arrow');
  readonly file: typeof import('apache-arrow/ipc/metadata/file');
}

async function library(): Promise<Library> {
  return peer('apache-arrow', 'Arrow', async () => ({
    arrow: await import('apache-arrow'),
    file: await import('apache-arrow/ipc/metadata/file'),
  }));
}

/**
 * Arrow IPC file, also known as Feather version 2: one record batch a chunk. The schema's metadata carries everything
 * the sweep says of itself, each field's metadata its name, unit and role.
 * @internal
 */
export const arrow: Format = {
  encoder: async (about) => arrowEncoder(about, await library()),
  about: async (path) => {
    const { Footer } = (await library()).file;
    const file = await open(path);
    try {
      const { size } = await file.stat();
      if (size < HEAD.length + 10) return undefined;
      const end = await bytesAt(file, size - 10, 10);
      const length = end.readInt32LE(0);
      if (!end.subarray(4).equals(MAGIC) || length <= 0 || length > size - 10 - HEAD.length) return undefined;
      const footer = Footer.decode(await bytesAt(file, size - 10 - length, length));
      const { metadata } = footer.schema;
      const [about, warnings] = [metadata.get(ABOUT_KEY), metadata.get(WARNINGS_KEY)];
      if (about === undefined || warnings === undefined) return undefined;
      return { about: JSON.parse(about) as SweepAbout, warnings: JSON.parse(warnings) as WarningCounts };
    } finally {
      await file.close();
    }
  },
};

function arrowEncoder(about: SweepAbout, { arrow: lib, file }: Library): Encoder {
  const fields = [
    ...about.columns.map(
      ({ name, column, unit, role }) =>
        new lib.Field(
          column,
          new lib.Float64(),
          true,
          new Map<string, string>([
            ['name', name],
            ['unit', unit],
            ['role', role],
          ]),
        ),
    ),
    new lib.Field(STATUS_COLUMN, new lib.Utf8(), false),
  ];
  const text = JSON.stringify(about);
  const schema = new lib.Schema(fields, new Map([[ABOUT_KEY, text]]));
  // The checksum stands first: what comes first is written last, close to the end of the file.
  const schemaAtEnd = (chunks: readonly PlacedChunk[]): InstanceType<typeof lib.Schema> =>
    new lib.Schema(
      fields,
      new Map([
        [CHECKSUM_KEY, UNSEALED],
        [WARNINGS_KEY, JSON.stringify(warningsOf(chunks))],
        [ABOUT_KEY, text],
      ]),
    );

  /** A stream of one batch, split into the message of the schema and that of the batch. */
  const messages = (
    rows: Pick<SweepRows, 'values' | 'status' | 'count'>,
  ): readonly [Uint8Array, Uint8Array] => {
    const { values, status, count } = rows;
    const children = [
      ...values.map((data) => lib.makeData({ type: new lib.Float64(), ...withNulls(data) })),
      lib.makeData({ type: new lib.Utf8(), ...textOf(status), nullCount: 0 }),
    ];
    const data = lib.makeData({ type: new lib.Struct(fields), children, length: count, nullCount: 0 });
    const batch = new lib.RecordBatch(schema, data);
    const stream = lib.RecordBatchStreamWriter.writeAll([batch]).toUint8Array(true);
    const end = messageLength(stream);
    return [stream.subarray(0, end), stream.subarray(end, stream.length - END_OF_STREAM.length)];
  };

  return {
    head: () => {
      const empty = {
        values: about.columns.map(() => new Float64Array(0)),
        status: new Uint8Array(0),
        count: 0,
      };
      return Buffer.concat([HEAD, messages(empty)[0]]);
    },
    chunk: (rows) => {
      const [, bytes] = messages(rows);
      const note = { message: messageLength(bytes), length: bytes.length };
      return { bytes, warningCounts: rows.warningCounts, note };
    },
    tail: (chunks) => {
      const blocks = chunks.map(({ offset, note }) => {
        const { message, length } = note as { readonly message: number; readonly length: number };
        return new file.FileBlock(message, length - message, offset);
      });
      const footer = file.Footer.encode(
        new file.Footer(schemaAtEnd(chunks), lib.MetadataVersion.V5, blocks, []),
      );
      const length = Buffer.alloc(4);
      length.writeInt32LE(footer.length);
      return Buffer.concat([END_OF_STREAM, footer, length, MAGIC]);
    },
  };
}

/** Length of the message that begins a stream: marker, length, and as many bytes as that says. */
function messageLength(stream: Uint8Array): number {
  return 8 + new DataView(stream.buffer, stream.byteOffset).getInt32(4, true);
}

/** A column with a bit for each number that is there; in the place of a missing one stands 0. */
function withNulls(values: Float64Array): {
  readonly data: Float64Array;
  readonly nullCount: number;
  readonly nullBitmap?: Uint8Array;
} {
  if (!values.some(Number.isNaN)) return { data: values, nullCount: 0 };
  const nullBitmap = new Uint8Array(Math.ceil(values.length / 8));
  let nullCount = 0;
  const data = values.map((value, i) => {
    if (Number.isNaN(value)) {
      nullCount++;
      return 0;
    }
    nullBitmap[i >> 3] = (nullBitmap[i >> 3] as number) | (1 << (i & 7));
    return value;
  });
  return { data, nullCount, nullBitmap };
}

const NAMES = rowStatuses.map((name) => Buffer.from(name));

/** A column of names, as Arrow lays out text: the letters one after another, and where each name begins. */
function textOf(status: Uint8Array): { readonly data: Uint8Array; readonly valueOffsets: Int32Array } {
  const valueOffsets = new Int32Array(status.length + 1);
  status.forEach((code, i) => {
    valueOffsets[i + 1] = (valueOffsets[i] as number) + (NAMES[code] as Buffer).length;
  });
  const data = new Uint8Array(valueOffsets[status.length] as number);
  status.forEach((code, i) => {
    data.set(NAMES[code] as Buffer, valueOffsets[i]);
  });
  return { data, valueOffsets };
}
