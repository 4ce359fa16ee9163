import { FairflightError, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import type { BallState, Flight } from '../flight/index.js';
import { type Length, si } from '../units/index.js';
import { createPathReader, type PathReader } from './path-reader.js';
import type { Shot } from './shot.js';

/**
 * How a path is sampled, both ends included: `count` points evenly spaced in time, 2 to 1,000,000; or points evenly
 * spaced along the track over the ground, at most `spacing` apart [m], 0.01 to 1000.
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

const FORMS = ['states', 'xyz', 'xyzt'] as const;
const MOST_POINTS = 1e6;

/**
 * State of the ball at a time of a flight, or of a whole shot with its bounces and its roll, on the quintics through the
 * nodes of its track (error under 1 mm at the default tolerance; tested). At a contact it is the state before.
 *
 * Spin in the run: that of the bounce model while hopping; while rolling the rate that goes with the speed.
 * @param of - a flight, from launch to landing, or a shot, to rest
 * @param time - seconds since launch, 0 to the end of the path
 * @throws {@link FairflightError} `invalid-input`, or `outside-range` for another time
 * @example stateAt(playShot(delivery), 3).position.y
 */
export function stateAt(of: Flight | Shot, time: number): BallState {
  const reader = readerOf(of);
  requireWithin('time', time, 0, reader.end, 's');
  reader.moveTo(time);
  return stateFrom(reader);
}

/**
 * The path of a flight, or of a whole shot with its bounces and its roll. It begins at the ball's start, and a ball on
 * the ground is on the ground plane to the last bit. Where contacts matter as points of their own, they are
 * `shot.run.bounces`.
 * @param of - a flight, from launch to landing, or a shot, to rest
 * @param options - `count` or `spacing`, and the form of the points
 * @throws {@link FairflightError} `invalid-input` or `outside-range`, naming the field
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
  requireRecord('options', options, ['count', 'spacing', 'as']);
  const form = requireOneOf('options.as', options.as ?? 'states', FORMS);
  const { count, moveTo } = samplesOf(reader, options);
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
  { count, spacing }: PathOptions,
): { readonly count: number; readonly moveTo: (i: number) => void } {
  if ((count === undefined) === (spacing === undefined)) {
    throw new FairflightError('invalid-input', 'options must have count or spacing, and not both', {
      field: 'options',
      value: { count, spacing },
    });
  }
  if (count !== undefined) {
    requireWithin('options.count', count, 2, MOST_POINTS, '');
    if (!Number.isInteger(count)) {
      throw new FairflightError('invalid-input', `options.count must be a whole number, got ${count}`, {
        field: 'options.count',
        value: count,
      });
    }
    const moveTo = (i: number): void =>
      reader.moveTo(i < count - 1 ? (i / (count - 1)) * reader.end : reader.end);
    return { count, moveTo };
  }
  requireWithin('options.spacing', spacing, 0.01, 1000, 'm');
  const length = reader.length();
  const intervals = Math.max(1, Math.ceil(length / spacing));
  requireWithin('points of the path', intervals + 1, 2, MOST_POINTS, '', 'ask for a wider spacing');
  const moveTo = (i: number): void => {
    if (i < intervals) reader.moveAlong((i / intervals) * length);
    else reader.moveTo(reader.end);
  };
  return { count: intervals + 1, moveTo };
}

function readerOf(of: Flight | Shot): PathReader {
  if (typeof of === 'object' && of !== null) {
    if ('flight' in of) return createPathReader(of.flight, of.run);
    if ('track' in of) return createPathReader(of, undefined);
  }
  throw new FairflightError('invalid-input', 'of must be a flight or a shot', { field: 'of', value: of });
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
