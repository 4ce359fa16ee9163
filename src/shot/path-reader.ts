import { quinticHermite, quinticSlope, quinticValue } from '../numerics/quintic-hermite.js';
import type { ReadTrack } from './read-track.js';

/** Numbers a node in the state of a track. */
const STATES = 7;

/** Reads a path from its nodes, forward from the last place read, or from the start again. @internal */
export interface PathReader {
  /** Time at which the path ends [s]. */
  readonly end: number;
  /** Time read last [s]. */
  time: number;
  /** Position, velocity and spin rate there; overwritten by the next. */
  readonly state: Float64Array;
  /** Goes to a time. */
  readonly moveTo: (time: number) => void;
  /** Length of the track over the ground [m]. */
  readonly length: () => number;
  /** Goes to a distance along the track over the ground [m]. */
  readonly moveAlong: (distance: number) => void;
}

/** Nodes and weights of Gauss and Legendre's quadrature with five points, on [0, 1]. */
const PLACES = [0.04691007703066802, 0.23076534494715845, 0.5, 0.7692346550528415, 0.953089922969332];
const WEIGHTS = [
  0.11846344252809454, 0.2393143352496832, 0.28444444444444444, 0.2393143352496832, 0.11846344252809454,
];

/** Makes a reader for the track of a flight and that of the run that follows it. @internal */
export function createPathReader(flight: ReadTrack, run: ReadTrack | undefined): PathReader {
  const track = run === undefined ? flight : joined(flight, run);
  const { time: times, state: nodes, acceleration } = track;
  const pieces = times.length - 1;
  const flightPieces = flight.time.length - 1;
  const quintics = [new Float64Array(6), new Float64Array(6), new Float64Array(6)] as const;
  const state = new Float64Array(STATES);
  const piece = { index: -1, start: 0, span: 0 };
  let lengths: Float64Array | undefined;

  const node = (n: number, i: number): number => nodes[STATES * n + i] as number;

  function load(index: number): void {
    if (index === piece.index) return;
    piece.index = index;
    piece.start = times[index] as number;
    piece.span = (times[index + 1] as number) - piece.start;
    for (const i of [0, 1, 2] as const) {
      const a0 = acceleration[3 * index + i] as number;
      const a1 = acceleration[3 * index + 3 + i] as number;
      const [y0, v0] = [node(index, i), node(index, i + 3)];
      quinticHermite(piece.span, y0, v0, a0, node(index + 1, i), node(index + 1, i + 3), a1, quintics[i]);
    }
  }

  /** Reads a node itself, so that ends and contacts carry no rounding of an interpolation. */
  function readNode(n: number): void {
    for (let i = 0; i < STATES; i++) state[i] = node(n, i);
  }

  function read(x: number): void {
    for (const i of [0, 1, 2] as const) {
      state[i] = quinticValue(quintics[i], x);
      state[i + 3] = quinticSlope(quintics[i], x) / piece.span;
    }
    const w0 = node(piece.index, 6);
    const w1 = node(piece.index + 1, 6);
    // In the air spin decays by a nearly constant share per second; the turf takes it by nearly constant amounts.
    const decays = piece.index < flightPieces && w0 > 0 && w1 > 0;
    state[6] = decays ? w0 ** (1 - x) * w1 ** x : w0 + x * (w1 - w0);
  }

  /** Speed over the ground at a fraction of the piece [m/s]. */
  function groundSpeed(x: number): number {
    const vx = quinticSlope(quintics[0], x);
    const vz = quinticSlope(quintics[2], x);
    return Math.sqrt(vx * vx + vz * vz) / piece.span;
  }

  /** Track over the ground from the start of the piece to a fraction of it [m]. */
  function groundLength(x: number): number {
    let sum = 0;
    for (let i = 0; i < 5; i++) sum += (WEIGHTS[i] as number) * groundSpeed(x * (PLACES[i] as number));
    return sum * x * piece.span;
  }

  /** Track over the ground to the start of each piece, and to the end [m]. */
  function lengthsTo(): Float64Array {
    const to = new Float64Array(pieces + 1);
    for (let n = 0; n < pieces; n++) {
      load(n);
      to[n + 1] = (to[n] as number) + (piece.span > 0 ? groundLength(1) : 0);
    }
    return to;
  }

  const reader: PathReader = {
    end: times[pieces] as number,
    time: 0,
    state,
    moveTo: (time) => {
      reader.time = time;
      if (time >= reader.end) {
        // Of several nodes at the end the last is that of rest.
        readNode(pieces);
        return;
      }
      let n = piece.index >= 0 && time > piece.start ? piece.index : 0;
      while (n < pieces - 1 && (times[n + 1] as number) < time) n++;
      if (time === times[n]) readNode(n);
      else if (time === times[n + 1]) readNode(n + 1);
      else {
        load(n);
        read((time - piece.start) / piece.span);
      }
    },
    length: () => {
      lengths ??= lengthsTo();
      return lengths[pieces] as number;
    },
    moveAlong: (distance) => {
      lengths ??= lengthsTo();
      let n = piece.index >= 0 && distance >= (lengths[piece.index] as number) ? piece.index : 0;
      while (n < pieces - 1 && (lengths[n + 1] as number) < distance) n++;
      const wanted = distance - (lengths[n] as number);
      if (!(wanted > 0)) {
        reader.time = times[n] as number;
        readNode(n);
        return;
      }
      load(n);
      const x = inverse(groundLength, groundSpeed, wanted, piece.span);
      reader.time = piece.start + x * piece.span;
      read(x);
    },
  };
  return reader;
}

/** Fraction of a piece after which the track over the ground has the wanted length: Newton's method in a bracket. */
function inverse(
  length: (x: number) => number,
  speed: (x: number) => number,
  wanted: number,
  span: number,
): number {
  let low = 0;
  let high = 1;
  let x = 0.5;
  for (let i = 0; i < 50; i++) {
    const miss = length(x) - wanted;
    if (Math.abs(miss) < 1e-6) break;
    if (miss > 0) high = x;
    else low = x;
    const newton = x - miss / (speed(x) * span);
    x = newton > low && newton < high ? newton : 0.5 * (low + high);
  }
  return x;
}

/** The nodes of a flight, then those of its run, on one clock. */
function joined(flight: ReadTrack, run: ReadTrack): ReadTrack {
  const landing = flight.time[flight.time.length - 1] as number;
  return {
    time: both(
      flight.time,
      run.time.map((t) => landing + t),
    ),
    state: both(flight.state, run.state),
    acceleration: both(flight.acceleration, run.acceleration),
  };
}

function both(a: Float64Array, b: Float64Array): Float64Array {
  const all = new Float64Array(a.length + b.length);
  all.set(a);
  all.set(b, a.length);
  return all;
}
