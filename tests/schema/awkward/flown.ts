import { fly } from '../../../src/flight/index.js';
import { degrees, metresPerSecond, mph, rpm, toDegrees } from '../../../src/units/index.js';

/** A shot in the units of one system: mph, yards, feet, degrees, rpm, seconds. */
export interface Shown {
  readonly club: number;
  readonly ball: number;
  readonly smash: number;
  readonly launch: number;
  readonly direction: number;
  readonly spin: number;
  readonly tilt: number;
  readonly attack: number;
  readonly carry: number;
  readonly apex: number;
  readonly descent: number;
  readonly side: number;
  readonly hang: number;
}

type Struck = Pick<Shown, 'club' | 'smash' | 'launch' | 'spin' | 'attack' | 'direction' | 'tilt'>;

/** Completes a struck shot by a flight in 2 m/s of headwind, by the Smits and Smith 1994 ball. */
export function flyOrThrow(struck: Struck): Shown {
  const ball = struck.club * struck.smash;
  const flight = fly(
    {
      ballSpeed: mph(ball),
      launchAngle: degrees(struck.launch),
      launchDirection: degrees(struck.direction),
      spinRate: rpm(struck.spin),
      spinAxisTilt: degrees(struck.tilt),
    },
    {
      aerodynamics: 'smits-smith-1994',
      wind: { along: metresPerSecond(-2), across: metresPerSecond(1) },
    },
  );
  if (flight.ended !== 'landed') throw new Error('the shot does not land');
  return {
    ...struck,
    ball,
    carry: flight.carry / 0.9144,
    apex: flight.apex / 0.3048,
    descent: toDegrees(flight.descentAngle),
    side: flight.side / 0.9144,
    hang: flight.hangTime,
  };
}

/** How a number is written. */
export type Write = (shot: Shown) => string;
/** Columns of a table: header and what stands below it. */
export type Columns = readonly (readonly [header: string, write: Write])[];

const fixed =
  (of: (shot: Shown) => number, decimals: number): Write =>
  (shot) =>
    of(shot).toFixed(decimals);

/** Ways to write each number. */
export const IN: Readonly<
  Record<
    | 'clubMph'
    | 'clubKph'
    | 'clubMs'
    | 'ballMph'
    | 'ballKph'
    | 'ballMs'
    | 'smash'
    | 'launch'
    | 'launchRad'
    | 'direction'
    | 'spin'
    | 'tilt'
    | 'attack'
    | 'carryYd'
    | 'carryM'
    | 'carryFt'
    | 'apexFt'
    | 'apexYd'
    | 'apexM'
    | 'descent'
    | 'sideYd'
    | 'sideM'
    | 'hang',
    Write
  >
> = {
  clubMph: fixed(({ club }) => club, 1),
  clubKph: fixed(({ club }) => club * 1.609344, 1),
  clubMs: fixed(({ club }) => club * 0.44704, 2),
  ballMph: fixed(({ ball }) => ball, 1),
  ballKph: fixed(({ ball }) => ball * 1.609344, 1),
  ballMs: fixed(({ ball }) => ball * 0.44704, 2),
  smash: fixed(({ smash }) => smash, 2),
  launch: fixed(({ launch }) => launch, 1),
  launchRad: fixed(({ launch }) => (launch * Math.PI) / 180, 4),
  direction: fixed(({ direction }) => direction, 1),
  spin: fixed(({ spin }) => spin, 0),
  tilt: fixed(({ tilt }) => tilt, 1),
  attack: fixed(({ attack }) => attack, 1),
  carryYd: fixed(({ carry }) => carry, 1),
  carryM: fixed(({ carry }) => carry * 0.9144, 1),
  carryFt: fixed(({ carry }) => carry * 3, 0),
  apexFt: fixed(({ apex }) => apex, 0),
  apexYd: fixed(({ apex }) => apex / 3, 1),
  apexM: fixed(({ apex }) => apex * 0.3048, 1),
  descent: fixed(({ descent }) => descent, 1),
  sideYd: fixed(({ side }) => side, 1),
  sideM: fixed(({ side }) => side * 0.9144, 1),
  hang: fixed(({ hang }) => hang, 2),
};

/** A table as text. */
export function table(columns: Columns, shots: readonly Shown[], separator = ','): string {
  const quote = (text: string): string =>
    text.includes(separator) || text.includes('"') ? `"${text.replaceAll('"', '""')}"` : text;
  const head = columns.map(([header]) => quote(header)).join(separator);
  const rows = shots.map((shot) => columns.map(([, write]) => quote(write(shot))).join(separator));
  return [head, ...rows, ''].join('\n');
}
