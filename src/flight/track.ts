import { FairflightError, requireWithin } from '../errors.js';
import { quinticHermite, quinticSlope, quinticValue } from '../numerics/quintic-hermite.js';
import { si } from '../units/index.js';
import type { BallState, Flight } from './flight.js';

/**
 * State of the ball at a time of a flight, on the quintics through the integration's nodes (error under 1 mm at the
 * default tolerance; tested).
 * @param time - seconds since launch, 0 to the flight's hang time
 * @throws {@link FairflightError} `outside-range` for another time
 */
export function stateAt(flight: Flight, time: number): BallState {
  requireWithin('time', time, 0, flight.hangTime, 's');
  const { time: times } = flight.track;
  let node = 0;
  while (node < times.length - 2 && (times[node + 1] as number) < time) node++;
  return interpolate(flight, node, time);
}

/**
 * The path as `count` states evenly spaced in time, launch and landing included.
 * @param count - a whole number from 2 to 1,000,000
 * @throws {@link FairflightError} `outside-range` for a smaller or larger one, `invalid-input` for a fraction
 */
export function pathOf(flight: Flight, count: number): readonly BallState[] {
  requireWithin('count', count, 2, 1e6, '');
  if (!Number.isInteger(count)) {
    throw new FairflightError('invalid-input', `count must be a whole number, got ${count}`, {
      field: 'count',
      value: count,
    });
  }
  const { time: times } = flight.track;
  const end = flight.hangTime;
  const path: BallState[] = [];
  for (let i = 0, node = 0; i < count; i++) {
    const time = i === count - 1 ? end : (i / (count - 1)) * end;
    while (node < times.length - 2 && (times[node + 1] as number) < time) node++;
    path.push(interpolate(flight, node, time));
  }
  return path;
}

function interpolate(flight: Flight, node: number, time: number): BallState {
  const { time: times, state, acceleration } = flight.track;
  const t0 = times[node] as number;
  const t1 = times[node + 1] ?? t0;
  const h = t1 - t0;
  const next = h > 0 ? node + 1 : node;
  const x = h > 0 ? (time - t0) / h : 0;
  const quintic = new Float64Array(6);
  const at = (of: number, i: number): number => state[7 * of + i] as number;
  const axis = (i: number): { p: number; v: number } => {
    if (h === 0) return { p: at(node, i), v: at(node, i + 3) };
    const a0 = acceleration[3 * node + i] as number;
    const a1 = acceleration[3 * next + i] as number;
    quinticHermite(h, at(node, i), at(node, i + 3), a0, at(next, i), at(next, i + 3), a1, quintic);
    return { p: quinticValue(quintic, x), v: quinticSlope(quintic, x) / h };
  };
  const [dx, dy, dz] = [axis(0), axis(1), axis(2)];
  const w0 = at(node, 6);
  const w1 = at(next, 6);
  return {
    time: si(time),
    position: { x: dx.p, y: dy.p, z: dz.p },
    velocity: { x: dx.v, y: dy.v, z: dz.v },
    speed: si(Math.hypot(dx.v, dy.v, dz.v)),
    // Spin decays by a nearly constant share per second, so it is interpolated geometrically.
    spinRate: si(w0 > 0 && w1 > 0 ? w0 * (w1 / w0) ** x : w0 + x * (w1 - w0)),
  };
}
