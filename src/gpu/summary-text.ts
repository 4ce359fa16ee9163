import { LANDED, OUTSIDE } from '../flight/engine/step-decisions.js';
import { GROUP, QUANTITIES, type Quantity } from './kernel-text.js';

/** Where a summary's counts lie among its results: flights left, flights at the time limit, then the rows left. @internal */
export const LEFT_COUNT = 0;
/** @internal */
export const TIME_LIMIT_COUNT = 1;
/** @internal */
export const LEFT_ROWS = 2;
/** Rows left that a run has room for. @internal */
export const LEFT_ROOM = 4096;
/** Where the counts of the histograms begin. @internal */
export const HISTOGRAMS: number = LEFT_ROWS + LEFT_ROOM;
/** Numbers of a quantity in a group's part: sum and sum of squares from the pivot, least, greatest. @internal */
export const MOMENTS = 4;

/** Where a kernel that summarises finds its numbers: a pivot for each quantity, then origin and scale of its histogram. @internal */
export interface SummaryPlan {
  readonly quantities: readonly Quantity[];
  /** Cells of each histogram, the one below and the one above it included; 0 for none. */
  readonly cells: readonly number[];
  /** Where in `numbers` the floats begin. */
  readonly floatsAt: number;
}

/** First cell of each histogram, from {@link HISTOGRAMS} on, and at last the number of all. @internal */
export function cellOffsets(cells: readonly number[]): readonly number[] {
  const offsets = [0];
  for (const count of cells) offsets.push((offsets.at(-1) ?? 0) + count);
  return offsets;
}

/** A kernel that flies many rows an invocation and writes, for each group, what the flights that landed add up to. @internal */
export function summaryText(flights: string, { quantities, cells, floatsAt }: SummaryPlan): string {
  const offsets = cellOffsets(cells);
  const number = (k: number, n: number): string => `bitcast<f32>(numbers[${floatsAt + 3 * k + n}u])`;
  const notes = quantities.map((name, k) => {
    const count = cells[k] ?? 0;
    const cell = `clamp(i32(floor((value - ${number(k, 1)}) * ${number(k, 2)})), -1, ${count - 2}) + 1`;
    const histogram =
      count === 0 ? '' : `atomicAdd(&results[${HISTOGRAMS + (offsets[k] ?? 0)}u + u32(${cell})], 1u);`;
    return `{
        let value = ${QUANTITIES[name]};
        let far = value - ${number(k, 0)};
        moments${k} = joined(moments${k}, vec4f(far, far * far, value, value));
        ${histogram}
      }`;
  });
  const width = MOMENTS * quantities.length + 1;
  const ends = quantities.map(
    (_, k) => `
  part[local] = moments${k};
  workgroupBarrier();
  for (var half = ${GROUP / 2}u; half > 0u; half >>= 1u) {
    if (local < half) { part[local] = joined(part[local], part[local + half]); }
    workgroupBarrier();
  }
  if (local < ${MOMENTS}u) { atomicStore(&results[own + 1u + ${MOMENTS * k}u + local], bitcast<u32>(part[0][local])); }
  workgroupBarrier();`,
  );
  return `${flights}
@group(0) @binding(2) var<storage, read_write> results: array<atomic<u32>>;
@group(0) @binding(4) var<storage, read> numbers: array<u32>;

var<workgroup> part: array<vec4f, ${GROUP}>;
var<workgroup> landed: atomic<u32>;

fn joined(a: vec4f, b: vec4f) -> vec4f { return vec4f(a.xy + b.xy, min(a.z, b.z), max(a.w, b.w)); }

@compute @workgroup_size(${GROUP})
fn main(@builtin(workgroup_id) group: vec3u, @builtin(local_invocation_index) local: u32) {
  ${quantities.map((_, k) => `var moments${k} = vec4f(0.0, 0.0, 3.4e38, -3.4e38);`).join('\n  ')}
  var downs = 0u;
  for (var round = 0u; round < scene.counts.z; round++) {
    let flight0 = (group.x * scene.counts.z + round) * ${GROUP}u + local;
    if (flight0 >= scene.counts.x) { continue; }
    let row = scene.counts.y + flight0;
    let p = problemOf(row);
    let end = flight(p);
    if (end.ended == ${LANDED}u) {
      downs++;
      ${notes.join('\n      ')}
    } else if (end.ended == ${OUTSIDE}u) {
      let n = atomicAdd(&results[${LEFT_COUNT}], 1u);
      if (n < ${LEFT_ROOM}u) { atomicStore(&results[${LEFT_ROWS}u + n], row); }
    } else {
      atomicAdd(&results[${TIME_LIMIT_COUNT}], 1u);
    }
  }
  atomicAdd(&landed, downs);
  let own = ${HISTOGRAMS + (offsets.at(-1) ?? 0)}u + ${width}u * group.x;
  workgroupBarrier();
  if (local == 0u) { atomicStore(&results[own], atomicLoad(&landed)); }
  ${ends.join('\n')}
}
`;
}
