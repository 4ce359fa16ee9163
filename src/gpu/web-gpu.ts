/** The parts of WebGPU used here; the language's own types do not carry it. */

/** A buffer on the card. @internal */
export interface CardBuffer {
  readonly size: number;
  readonly mapAsync: (mode: number, offset: number, size: number) => Promise<void>;
  readonly getMappedRange: (offset: number, size: number) => ArrayBuffer;
  readonly unmap: () => void;
  readonly destroy: () => void;
}

/** A compiled kernel. @internal */
export interface CardPipeline {
  readonly getBindGroupLayout: (index: number) => object;
}

interface ComputePass {
  readonly setPipeline: (pipeline: CardPipeline) => void;
  readonly setBindGroup: (index: number, group: object) => void;
  readonly dispatchWorkgroups: (x: number) => void;
  readonly end: () => void;
}

interface CommandEncoder {
  readonly beginComputePass: () => ComputePass;
  readonly copyBufferToBuffer: (
    from: CardBuffer,
    at: number,
    to: CardBuffer,
    into: number,
    size: number,
  ) => void;
  readonly clearBuffer: (buffer: CardBuffer) => void;
  readonly finish: () => object;
}

/** A card that has been opened. @internal */
export interface CardDevice {
  readonly limits: {
    readonly maxStorageBufferBindingSize: number;
    readonly maxBufferSize: number;
    readonly maxComputeWorkgroupsPerDimension: number;
  };
  readonly queue: {
    readonly writeBuffer: (buffer: CardBuffer, offset: number, data: ArrayBufferView) => void;
    readonly submit: (commands: readonly object[]) => void;
    readonly onSubmittedWorkDone: () => Promise<void>;
  };
  readonly lost: Promise<{ readonly message: string }>;
  readonly createBuffer: (descriptor: { readonly size: number; readonly usage: number }) => CardBuffer;
  readonly createShaderModule: (descriptor: { readonly code: string }) => object;
  readonly createComputePipelineAsync: (descriptor: {
    readonly layout: 'auto';
    readonly compute: { readonly module: object; readonly entryPoint: string };
  }) => Promise<CardPipeline>;
  readonly createBindGroup: (descriptor: {
    readonly layout: object;
    readonly entries: readonly {
      readonly binding: number;
      readonly resource: { readonly buffer: CardBuffer };
    }[];
  }) => object;
  readonly createCommandEncoder: () => CommandEncoder;
  readonly destroy: () => void;
}

interface Adapter {
  readonly info?: {
    readonly device?: string;
    readonly vendor?: string;
    readonly architecture?: string;
    readonly description?: string;
  };
  readonly limits: CardDevice['limits'];
  readonly requestDevice: (descriptor: {
    readonly requiredLimits: Readonly<Record<string, number>>;
  }) => Promise<CardDevice>;
}

interface WebGpu {
  readonly requestAdapter: (options: { readonly powerPreference: string }) => Promise<Adapter | null>;
}

/** A card and what it calls itself. @internal */
export interface OpenCard {
  readonly name: string;
  readonly device: CardDevice;
  /** What the card came from. */
  readonly api: WebGpu;
}

/** Usage of buffers, by the numbers of the standard. @internal */
export const USAGE = { mapRead: 1, copySource: 4, copyTarget: 8, uniform: 64, storage: 128 } as const;
/** Mode of mapping, likewise. @internal */
export const MAP_READ = 1;

/** The package that brings WebGPU to Node, an optional peer; not a literal, so that no bundler asks for it. */
const PEER: string = 'webgpu';

async function webGpu(): Promise<WebGpu | undefined> {
  const { navigator } = globalThis as { readonly navigator?: { readonly gpu?: WebGpu } };
  if (navigator?.gpu !== undefined) return navigator.gpu;
  if (
    (globalThis as { readonly process?: { readonly versions?: { readonly node?: string } } }).process
      ?.versions?.node === undefined
  )
    return undefined;
  const { create } = (await import(/* @vite-ignore */ /* webpackIgnore: true */ PEER)) as {
    readonly create: (options: readonly string[]) => WebGpu;
  };
  return create([]);
}

/** The limits asked for: all the card has, since a batch is as large as a buffer may be. */
const LIMITS = ['maxStorageBufferBindingSize', 'maxBufferSize'] as const;

/** Opens the card; undefined where there is none. @internal */
export async function openCard(): Promise<OpenCard | undefined> {
  try {
    const api = await webGpu();
    const adapter = await api?.requestAdapter({ powerPreference: 'high-performance' });
    if (api === undefined || adapter === undefined || adapter === null) return undefined;
    const requiredLimits = Object.fromEntries(LIMITS.map((name) => [name, adapter.limits[name]]));
    const device = await adapter.requestDevice({ requiredLimits });
    const { device: model, description, vendor, architecture } = adapter.info ?? {};
    const words = [model, description, vendor, architecture].filter(
      (word) => word !== undefined && word !== '',
    );
    return { name: words.slice(0, 2).join(', ') || 'WebGPU', device, api };
  } catch {
    return undefined;
  }
}
