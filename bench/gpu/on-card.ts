import { prepareFlights } from '../../src/gpu/flown.js';
import { columnsText, GROUP } from '../../src/gpu/kernel-text.js';
import { packScene, type Source } from '../../src/gpu/scene-numbers.js';
import { openCard, USAGE } from '../../src/gpu/web-gpu.js';
import { resolveScene, type Scene } from '../../src/scene/scene.js';
import { drawLaunches } from './draws.js';

/** Columns that both kernels write. */
export const WRITTEN = ['carry', 'side', 'apex', 'hangTime', 'flags'] as const;
/** Launches in the order of the file that the CUDA kernel reads. */
export const READ = ['ballSpeed', 'launchAngle', 'spinRate', 'launchDirection', 'spinAxisTilt'] as const;
/** Dispatches timed together. */
const TOGETHER = 8;

/** Seconds of one dispatch of the WGSL kernel whose results stay on the card: the best of several. */
export async function secondsOnCard(flights: number, repeats: number, given: Scene = {}): Promise<number> {
  const card = await openCard();
  if (card === undefined) throw new Error('no graphics card');
  const { device } = card;
  const launches = drawLaunches(flights);
  const sources = Object.fromEntries(
    READ.map((name): [string, Source] => [
      name,
      { kind: 'column', numbers: Float32Array.from(launches[name] ?? []) },
    ]),
  );
  const scene = resolveScene(given);
  const prepared = prepareFlights(scene, 60, sources);
  const made = (data: Uint8Array, usage: number) => {
    const buffer = device.createBuffer({ size: data.byteLength, usage: usage | USAGE.copyTarget });
    device.queue.writeBuffer(buffer, 0, data);
    return buffer;
  };
  const uniform = made(
    new Uint8Array(packScene(prepared.problem, scene, prepared.law, 60, prepared.sources, { flights })),
    USAGE.uniform,
  );
  const inputs = device.createBuffer({
    size: 4 * READ.length * flights,
    usage: USAGE.storage | USAGE.copyTarget,
  });
  prepared.sources
    .flatMap((source) => (source.kind === 'column' ? [source.numbers] : []))
    .forEach((column, k) => {
      device.queue.writeBuffer(inputs, 4 * k * flights, column);
    });
  const results = device.createBuffer({ size: 4 * WRITTEN.length * flights, usage: USAGE.storage });
  const module = device.createShaderModule({ code: columnsText(prepared.text, WRITTEN) });
  const pipeline = await device.createComputePipelineAsync({
    layout: 'auto',
    compute: { module, entryPoint: 'main' },
  });
  const tables = prepared.tables.map(({ binding, numbers }) => ({
    binding,
    resource: { buffer: made(new Uint8Array(numbers.buffer), USAGE.storage) },
  }));
  const group = device.createBindGroup({
    layout: pipeline.getBindGroupLayout(0),
    entries: [
      ...[uniform, inputs, results].map((buffer, binding) => ({ binding, resource: { buffer } })),
      ...tables,
    ],
  });
  let best = Number.POSITIVE_INFINITY;
  for (let k = 0; k < repeats; k++) {
    const commands = device.createCommandEncoder();
    for (let again = 0; again < TOGETHER; again++) {
      const pass = commands.beginComputePass();
      pass.setPipeline(pipeline);
      pass.setBindGroup(0, group);
      pass.dispatchWorkgroups(Math.ceil(flights / GROUP));
      pass.end();
    }
    await device.queue.onSubmittedWorkDone();
    const start = performance.now();
    device.queue.submit([commands.finish()]);
    await device.queue.onSubmittedWorkDone();
    best = Math.min(best, (performance.now() - start) / 1000 / TOGETHER);
  }
  device.destroy();
  return best;
}
