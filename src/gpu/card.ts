import { refusal } from '../inputs/refuse.js';
import { type CardBuffer, type CardPipeline, MAP_READ, type OpenCard, USAGE } from './web-gpu.js';

/** Numbers at a binding of their own. The same array is written once. @internal */
export interface CardTable {
  readonly binding: 3 | 4;
  readonly numbers: Float32Array | Uint32Array;
}

/** One dispatch of a kernel. @internal */
export interface CardRun {
  readonly kernel: string;
  /** The `Scene` of problem.ts. */
  readonly scene: ArrayBuffer;
  /** Columns, one after another. */
  readonly inputs: readonly ArrayBufferView[];
  /** What a kernel reads besides, each at its binding. */
  readonly tables: readonly CardTable[];
  /** Bytes of results. */
  readonly bytes: number;
  /** Whether they have to be 0 before. */
  readonly cleared?: boolean;
  readonly groups: number;
}

/** A card with what it has compiled and the buffers it keeps from run to run. @internal */
export interface Card {
  readonly name: string;
  /** Most bytes of a buffer. */
  readonly room: number;
  /** Runs a kernel and reads its results, which belong to the card and are gone when `read` returns. */
  readonly run: <T>(run: CardRun, read: (results: ArrayBuffer) => T) => Promise<T>;
  readonly close: () => void;
}

type Role = 'scene' | 'inputs' | 'results' | 'copy' | `table${number}`;

const USAGES = {
  scene: USAGE.uniform | USAGE.copyTarget,
  results: USAGE.storage | USAGE.copySource | USAGE.copyTarget,
  copy: USAGE.mapRead | USAGE.copyTarget,
} as const;

/** Makes a card of an open one. Its runs come one after another, whoever asks. @internal */
export function createCard({ name, device, api }: OpenCard): Card {
  const pipelines = new Map<string, Promise<CardPipeline>>();
  const buffers = new Map<Role, CardBuffer>();
  const written = new Map<Role, ArrayBufferView>();
  // The card goes when nobody holds what it came from.
  const held = new Set<object>([api]);
  let gone: string | undefined;
  let last: Promise<unknown> = Promise.resolve();
  void device.lost.then(({ message }) => {
    gone = message === '' ? 'it was closed' : message;
  });

  function pipeline(code: string): Promise<CardPipeline> {
    let found = pipelines.get(code);
    if (found === undefined) {
      const module = device.createShaderModule({ code });
      found = device.createComputePipelineAsync({ layout: 'auto', compute: { module, entryPoint: 'main' } });
      pipelines.set(code, found);
    }
    return found;
  }

  /** A buffer with room for so many bytes: the one of before, or a new one in powers of two. */
  function buffer(role: Role, bytes: number): CardBuffer {
    const before = buffers.get(role);
    if (before !== undefined && before.size >= bytes) return before;
    before?.destroy();
    written.delete(role);
    const usage = role in USAGES ? USAGES[role as keyof typeof USAGES] : USAGE.storage | USAGE.copyTarget;
    const size = Math.min(2 ** Math.ceil(Math.log2(Math.max(bytes, 256))), device.limits.maxBufferSize);
    const made = device.createBuffer({ size, usage });
    buffers.set(role, made);
    return made;
  }

  async function runNow<T>(run: CardRun, read: (results: ArrayBuffer) => T): Promise<T> {
    if (gone !== undefined) throw lost(gone);
    const compiled = await pipeline(run.kernel);
    const scene = buffer('scene', run.scene.byteLength);
    device.queue.writeBuffer(scene, 0, new Uint8Array(run.scene));
    const inputs = buffer(
      'inputs',
      run.inputs.reduce((sum, { byteLength }) => sum + byteLength, 0),
    );
    const bound: [number, CardBuffer][] = [[0, scene]];
    if (run.inputs.length > 0) bound.push([1, inputs]);
    let at = 0;
    for (const column of run.inputs) {
      device.queue.writeBuffer(inputs, at, column);
      at += column.byteLength;
    }
    for (const { binding, numbers } of run.tables) {
      const role: Role = `table${binding}`;
      const into = buffer(role, numbers.byteLength);
      if (written.get(role) !== numbers) device.queue.writeBuffer(into, 0, numbers);
      written.set(role, numbers);
      bound.push([binding, into]);
    }
    const results = buffer('results', run.bytes);
    const copy = buffer('copy', run.bytes);
    bound.push([2, results]);
    const group = device.createBindGroup({
      layout: compiled.getBindGroupLayout(0),
      entries: bound.map(([binding, one]) => ({ binding, resource: { buffer: one } })),
    });
    const commands = device.createCommandEncoder();
    if (run.cleared === true) commands.clearBuffer(results);
    const pass = commands.beginComputePass();
    pass.setPipeline(compiled);
    pass.setBindGroup(0, group);
    pass.dispatchWorkgroups(run.groups);
    pass.end();
    commands.copyBufferToBuffer(results, 0, copy, 0, run.bytes);
    device.queue.submit([commands.finish()]);
    try {
      await copy.mapAsync(MAP_READ, 0, run.bytes);
    } catch (error) {
      throw lost(gone ?? String(error));
    }
    try {
      return read(copy.getMappedRange(0, run.bytes));
    } finally {
      copy.unmap();
    }
  }

  return {
    name,
    room: Math.min(device.limits.maxStorageBufferBindingSize, device.limits.maxBufferSize),
    run: (run, read) => {
      const result = last.then(() => runNow(run, read));
      last = result.catch(() => undefined);
      return result;
    },
    close: () => {
      gone ??= 'it was closed';
      device.destroy();
      buffers.clear();
      pipelines.clear();
      held.clear();
    },
  };
}

function lost(why: string): Error {
  return refusal(
    'gpu',
    `the graphics card is gone: ${why}`,
    { hint: 'open it again with openGpu()' },
    'system',
  );
}
