import { open } from 'node:fs/promises';
import { rowStatuses, type SweepAbout, type SweepRows } from '../../sweep/index.js';
import { peer } from '../peers.js';
import { ABOUT_KEY, type Encoder, type Format, STATUS_COLUMN } from './format.js';

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
 * the sweep says of itself, each field's metadata its unit.
 * @internal
 */
export const arrow: Format = {
  encoder: async (about) => arrowEncoder(about, await library()),
  about: async (path) => {
    const { Footer } = (await library()).file;
    const file = await open(path);
    try {
      const { size } = await file.stat();
      const read = async (position: number, length: number): Promise<Buffer> =>
        (await file.read(Buffer.alloc(length), 0, length, position)).buffer;
      if (size < HEAD.length + 10) return undefined;
      const end = await read(size - 10, 10);
      const length = end.readInt32LE(0);
      if (!end.subarray(4).equals(MAGIC) || length <= 0 || length > size - 10 - HEAD.length) return undefined;
      const footer = Footer.decode(await read(size - 10 - length, length));
      const text = footer.schema.metadata.get(ABOUT_KEY);
      return text === undefined ? undefined : (JSON.parse(text) as SweepAbout);
    } finally {
      await file.close();
    }
  },
};

function arrowEncoder(about: SweepAbout, { arrow: lib, file }: Library): Encoder {
  const fields = [
    ...about.columns.map(
      ({ name, unit, role }) =>
        new lib.Field(
          name,
          new lib.Float64(),
          false,
          new Map([
            ['unit', unit],
            ['role', role],
          ]),
        ),
    ),
    new lib.Field(STATUS_COLUMN, new lib.Utf8(), false),
  ];
  const schema = new lib.Schema(fields, new Map([[ABOUT_KEY, JSON.stringify(about)]]));

  /** A stream of one batch, split into the message of the schema and that of the batch. */
  const messages = (
    rows: Pick<SweepRows, 'values' | 'status' | 'count'>,
  ): readonly [Uint8Array, Uint8Array] => {
    const { values, status, count } = rows;
    const children = [
      ...values.map((data) => lib.makeData({ type: new lib.Float64(), data, nullCount: 0 })),
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
      return { bytes, note: { message: messageLength(bytes), length: bytes.length } };
    },
    tail: (chunks) => {
      const blocks = chunks.map(({ offset, note }) => {
        const { message, length } = note as { readonly message: number; readonly length: number };
        return new file.FileBlock(message, length - message, offset);
      });
      const footer = file.Footer.encode(new file.Footer(schema, lib.MetadataVersion.V5, blocks, []));
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
