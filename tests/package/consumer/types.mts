import type { Flight, Launch, Speed } from 'fairflight';
import {
  degrees,
  FairflightError,
  fly,
  isFairflightError,
  mph,
  pathOf,
  playShot,
  rpm,
  toYards,
} from 'fairflight';
import * as reference from 'fairflight/reference';
import * as schema from 'fairflight/schema';
import { metresPerSecond } from 'fairflight/units';

const launch: Launch = { ballSpeed: mph(167), launchAngle: degrees(10.9), spinRate: rpm(2686) };
const flight: Flight = fly(launch);
export const carry: number = toYards(flight.carry);
export const points: number = pathOf(flight, { count: 50 }).length;
export const total: number = toYards(playShot(launch).total);
// The entries share one set of brands.
export const speed: Speed = metresPerSecond(50);
export const error: boolean = isFairflightError(new FairflightError('invalid-input', 'no'));
export const rooms: readonly object[] = [reference, schema];

// @ts-expect-error a bare number is no speed
export const bare: Launch = { ballSpeed: 150, launchAngle: degrees(10), spinRate: rpm(2500) };
// @ts-expect-error nor is an angle
export const mixed: Launch = { ballSpeed: degrees(150), launchAngle: degrees(10), spinRate: rpm(2500) };
// @ts-expect-error nor a number of another unit where yards are read
export const read: number = toYards(flight.hangTime);
// @ts-expect-error the spin must be given
export const short: Launch = { ballSpeed: mph(150), launchAngle: degrees(10) };
// @ts-expect-error a misspelt field is told
export const spelt: Launch = { ballSpeed: mph(150), launchAngle: degrees(10), spinRate: rpm(2500), spin: 3 };
// @ts-expect-error results are read-only
flight.carry = flight.side;
