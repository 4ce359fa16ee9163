import type { BallState, Flight } from '../flight/index.js';
import { choice, count, type Declared, optional, type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readQuantity, readRecord } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { type Length, si } from '../units/index.js';
import { METRES, SECONDS } from '../units/unit.js';
import { createPathReader, type PathReader } from './path-reader.js';
import { readTracks } from './read-track.js';
import type { Shot } from './shot.js';

/**
 * How a path is sampled, both ends included: `count` points evenly spaced in time, 2 to 1,000,000; or points evenly
 * spaced along the track over the ground, at most `spacing` apart [m], 0.01 to 1,000.
 */
export type PathSamples =
  | { readonly count: number; readonly spacing?: undefined }
  | { readonly spacing: Length; readonly count?: undefined };

/** Options of {@link pathOf}. */
export type PathOptions = PathSamples & {
  /**
   * `states` (default): a {@link BallState} each. `xyz`: one flat `Float32Array` with three numbers a point, metres, as a
   * drawing takes it. `xyzt`: four, the time in seconds last.
   */
  readonly as?: 'states' | 'xyz' | 'xyzt';
};

const MOST_POINTS = 1e6;

interface AnyPathOptions {
  readonly count?: number;
  readonly spacing?: Length;
  readonly as?: 'states' | 'xyz' | 'xyzt';
}

/** Declaration of {@link PathOptions}. @internal */
export const pathOptionFields: Declared<AnyPathOptions> = /* @__PURE__ */ frozen(() => ({
  count: optional(count(2, MOST_POINTS, 100, 'number of points')),
  spacing: optional(quantity(METRES, 0.01, 1000, 1, 'spacing of the points')),
  as: optional(choice(['states', 'xyz', 'xyzt'], 'form of the points')),
}));

/** Time on a path whose end is not known yet. @internal */
export const timeField: QuantityField = /* @__PURE__ */ frozen(() => quantity(SECONDS, 0, 600, 3, 'time'));

/**
 * State of the ball at a time of a flight, or of a whole shot with its bounces and its roll, on the quintics through the
 * nodes of its track (error under 1 mm at the default tolerance; tested). At a contact it is the state before, at the end
 * the last one.
 *
 * Spin in the run: that of the bounce model while hopping; while rolling the rate that goes with the speed.
 * @param of - a flight, from launch to landing, or a shot, to rest
 * @param time - seconds since launch, 0 to the end of the path
 * @throws `FairflightError` `invalid-input`, or `outside-range` for another time
 * @example stateAt(playShot(delivery), 3).position.y
 */
export function stateAt(of: Flight | Shot, time: number): BallState {
  const reader = readerOf(of);
  const read = readQuantity({ ...timeField, max: reader.end }, time, 'time');
  reader.moveTo(Math.min(read, reader.end));
  return stateFrom(reader);
}

/**
 * The path of a flight, or of a whole shot with its bounces and its roll. It begins at the ball's start, and a ball on
 * the ground is on the ground plane to the last bit. Where contacts matter as points of their own, they are
 * `shot.run.bounces`.
 * @param of - a flight, from launch to landing, or a shot, to rest
 * @param options - `count` or `spacing`, and the form of the points
 * @throws `FairflightError` `invalid-input` or `outside-range`, naming the field
 * @example pathOf(playShot(delivery), { spacing: metres(1), as: 'xyz' })
 */
export function pathOf(
  of: Flight | Shot,
  options: PathOptions & { readonly as: 'xyz' | 'xyzt' },
): Float32Array;
export function pathOf(
  of: Flight | Shot,
  options: PathOptions & { readonly as?: 'states' },
): readonly BallState[];
export function pathOf(of: Flight | Shot, options: PathOptions): readonly BallState[] | Float32Array {
  const reader = readerOf(of);
  const { as: form = 'states', ...samples } = readRecord(pathOptionFields, options, 'options');
  const { count, moveTo } = samplesOf(reader, samples);
  if (form === 'states') {
    const states: BallState[] = [];
    for (let i = 0; i < count; i++) {
      moveTo(i);
      states.push(stateFrom(reader));
    }
    return states;
  }
  const size = form === 'xyz' ? 3 : 4;
  const flat = new Float32Array(size * count);
  for (let i = 0; i < count; i++) {
    moveTo(i);
    flat[size * i] = reader.state[0] as number;
    flat[size * i + 1] = reader.state[1] as number;
    flat[size * i + 2] = reader.state[2] as number;
    if (size === 4) flat[size * i + 3] = reader.time;
  }
  return flat;
}

/** How many samples, and how to bring the reader to each, in order. */
function samplesOf(
  reader: PathReader,
  { count, spacing }: Omit<AnyPathOptions, 'as'>,
): { readonly count: number; readonly moveTo: (i: number) => void } {
  if (count !== undefined && spacing === undefined) {
    const moveTo = (i: number): void =>
      reader.moveTo(i < count - 1 ? (i / (count - 1)) * reader.end : reader.end);
    return { count, moveTo };
  }
  if (count !== undefined || spacing === undefined) {
    throw refusal('options', 'options must have count or spacing, and not both', {
      value: { count, spacing },
    });
  }
  const length = reader.length();
  const intervals = Math.max(1, Math.ceil(length / spacing));
  if (intervals >= MOST_POINTS) {
    throw refusal(
      'options.spacing',
      `options.spacing of ${spacing} m makes ${intervals + 1} points of this path; ${MOST_POINTS} are the most`,
      { value: spacing, unit: 'm', hint: 'ask for a wider spacing' },
      'outside-range',
    );
  }
  const moveTo = (i: number): void => {
    if (i < intervals) reader.moveAlong((i / intervals) * length);
    else reader.moveTo(reader.end);
  };
  return { count: intervals + 1, moveTo };
}

function readerOf(of: Flight | Shot): PathReader {
  const { flight, run } = readTracks(of);
  return createPathReader(flight, run);
}

function stateFrom({ time, state }: PathReader): BallState {
  const [x, y, z, vx, vy, vz, spin] = state as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return {
    time: si(time),
    position: { x, y, z },
    velocity: { x: vx, y: vy, z: vz },
    speed: si(Math.hypot(vx, vy, vz)),
    spinRate: si(spin),
  };
}
