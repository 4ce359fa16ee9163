import { isRecord } from '../errors.js';
import { readColumn } from '../inputs/columns.js';
import { type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import { RATIO, SECONDS } from '../units/unit.js';

/** A track whose nodes are known to make a path. @internal */
export interface ReadTrack {
  readonly time: Float64Array;
  readonly state: Float64Array;
  readonly acceleration: Float64Array;
}

/** The columns of a track. @internal */
export const trackFields: Readonly<Record<keyof ReadTrack, QuantityField>> = /* @__PURE__ */ frozen(() => {
  // So wide that no computed path leaves it (places within 100 km), and that nothing interpolated between overflows.
  const number = quantity(RATIO, -1e5, 1e5, 1, 'number');
  return {
    time: quantity(SECONDS, 0, 1200, 6, 'time'),
    state: number,
    acceleration: number,
  };
});
/** Steps of time are this long or 0 [s]; what divides by a shorter one might overflow. */
const SHORTEST_STEP = 1e-15;

/**
 * Reads the tracks of a flight, or of a shot: a record that has been through a file, or somebody's hands, ends in an
 * error and not in NaN. What else the record holds plays no part in its path.
 * @throws FairflightError naming the place, as `shot.run.track.time[3]`
 * @internal
 */
export function readTracks(of: unknown): { readonly flight: ReadTrack; readonly run: ReadTrack | undefined } {
  if (!isRecord(of)) throw refuseType('of', 'a flight or a shot', of);
  if (!Object.hasOwn(of, 'flight')) {
    if (!Object.hasOwn(of, 'track')) throw refusal('of', 'of must be a flight or a shot', { value: of });
    return { flight: readTrack(of, 'flight'), run: undefined };
  }
  const { flight, run } = of;
  return {
    flight: readTrack(flight, 'shot.flight'),
    run: run === undefined ? undefined : readTrack(run, 'shot.run'),
  };
}

function readTrack(of: unknown, path: string): ReadTrack {
  if (!isRecord(of)) throw refuseType(path, 'an object', of);
  const { track } = of;
  if (!isRecord(track)) throw refuseType(`${path}.track`, 'an object', track);
  const { time: times, state, acceleration } = track;
  const time = readColumn(trackFields.time, times, `${path}.track.time`);
  if (time.length === 0) {
    throw refusal(`${path}.track.time`, `${path}.track.time must have a node`, { value: 0 });
  }
  for (let n = 1; n < time.length; n++) {
    const step = (time[n] as number) - (time[n - 1] as number);
    if (step === 0 || step >= SHORTEST_STEP) continue;
    throw refusal(`${path}.track.time[${n}]`, `${path}.track.time must not go back, it does at node ${n}`, {
      value: time[n],
    });
  }
  const numbers = (name: 'state' | 'acceleration', value: unknown, each: number): Float64Array => {
    const column = readColumn(trackFields[name], value, `${path}.track.${name}`);
    if (column.length === each * time.length) return column;
    throw refusal(
      `${path}.track.${name}`,
      `${path}.track.${name} must have ${each} numbers for each of its ${time.length} times, it has ${column.length}`,
      { value: column.length },
    );
  };
  return { time, state: numbers('state', state, 7), acceleration: numbers('acceleration', acceleration, 3) };
}
