import { type FlightColumns, flightColumns } from '../flight/fly-many.js';
import type { Declared } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import {
  type CarryMap,
  type MapAsked,
  type MapCells,
  type MapOptions,
  type MapQuestion,
  mapOf,
  mapOptionFields,
  readMap,
  totals,
} from '../optimum/map.js';
import type { Scene } from '../scene/scene.js';
import type { Card } from './card.js';
import { flyLeft, flyRun, mostFlights, noteEndings, prepareFlights } from './flown.js';
import { FLIGHT_QUANTITIES } from './fly-columns.js';
import type { Quantity } from './kernel-text.js';

/** Options of {@link Gpu.carryMap}. */
export type GpuMapOptions = Omit<MapOptions, 'tolerance'>;

/** A card flies in single precision, whatever the tolerance. */
const optionFields: Declared<GpuMapOptions> = /* @__PURE__ */ frozen(() => {
  const { tolerance: _, ...others } = mapOptionFields;
  return others;
});

const MAP_QUANTITIES = ['carry', 'apex', 'descentAngle', 'flags'] as const satisfies readonly Quantity[];

/** Flies a map on a card; see {@link Gpu.carryMap}. @internal */
export async function carryMapOn(
  card: Card,
  question: MapQuestion,
  scene: Scene = {},
  options: GpuMapOptions = {},
): Promise<CarryMap> {
  const map = readMap(question, scene, options, optionFields);
  const { columns, rows, withRun } = map;
  const cells = columns * rows;
  const whole = withRun ? flightColumns(cells) : undefined;
  const out = whole ?? mapCells(cells);
  const quantities = withRun ? FLIGHT_QUANTITIES : MAP_QUANTITIES;
  const left: number[] = [];
  // Whole rows of the map at a time.
  const most = Math.floor(mostFlights(card, quantities.length) / columns);
  for (let row = 0; row < rows; row += most) {
    const spinRate = map.spinRate.subarray(row, row + most);
    const prepared = prepareFlights(map.scene, map.settings.timeLimit, {
      ballSpeed: { kind: 'fixed', value: map.ballSpeed },
      launchAngle: { kind: 'column', numbers: new Float32Array(map.launchAngle) },
      spinRate: { kind: 'column', numbers: new Float32Array(spinRate), repeat: columns },
    });
    const start = row * columns;
    await flyRun(card, prepared, quantities, columns * spinRate.length, (columnOf, flags) => {
      for (const name of quantities)
        if (name !== 'flags') (out as FlightColumns)[name].set(columnOf(name), start);
      noteEndings(flags, start, out, left);
    });
  }
  flyLeft({ scene: map.scene, timeLimit: map.settings.timeLimit }, left, launchesAt(map, left), {}, out);
  return mapOf(map, out, whole && totals(whole, map.scene));
}

/** The columns of a map alone: the others cost more to make than to fly. */
function mapCells(count: number): MapCells & Pick<FlightColumns, 'outsideData'> {
  return {
    ended: new Uint8Array(count),
    outsideData: new Uint8Array(count),
    carry: new Float64Array(count),
    apex: new Float64Array(count),
    descentAngle: new Float64Array(count),
  };
}

function launchesAt(
  { columns, ballSpeed, launchAngle, spinRate }: MapAsked,
  cells: readonly number[],
): Readonly<Record<'ballSpeed' | 'launchAngle' | 'spinRate', Float64Array>> {
  return {
    ballSpeed: new Float64Array(cells.length).fill(ballSpeed),
    launchAngle: Float64Array.from(cells, (cell) => launchAngle[cell % columns] as number),
    spinRate: Float64Array.from(cells, (cell) => spinRate[Math.floor(cell / columns)] as number),
  };
}
