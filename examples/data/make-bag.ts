/**
 * Makes bag-demo.csv: eight clubs of an invented player, six to nine shots each, hit on one day in still air at 14 °C.
 *
 * Launches are invented outright, flown through the library with a ball of its own drag, then read by an imagined
 * device with noise. Nothing here is a measurement, and nothing may be concluded from it about real clubs.
 *
 * Run from the repository root: `npx tsx examples/data/make-bag.ts`
 */
import { airAt, playShot } from 'fairflight';
import { celsius, degrees, mph, rpm, toDegrees, toFeet, toYards } from 'fairflight/units';
import { draggier, normalNoise, writeInvented, written } from './invented.js';

interface Club {
  readonly name: string;
  readonly shots: number;
  readonly ballSpeed: number;
  readonly launchAngle: number;
  readonly spin: number;
}
const BAG: readonly Club[] = [
  { name: 'driver', shots: 9, ballSpeed: 139, launchAngle: 13.8, spin: 2750 },
  { name: '3 wood', shots: 7, ballSpeed: 132, launchAngle: 10.9, spin: 3650 },
  { name: 'hybrid', shots: 7, ballSpeed: 125, launchAngle: 12.2, spin: 4300 },
  { name: '5 iron', shots: 7, ballSpeed: 117, launchAngle: 13.6, spin: 5200 },
  { name: '7 iron', shots: 8, ballSpeed: 108, launchAngle: 17.4, spin: 6600 },
  { name: '9 iron', shots: 6, ballSpeed: 97, launchAngle: 22.3, spin: 8100 },
  { name: 'pitching wedge', shots: 7, ballSpeed: 90, launchAngle: 25.8, spin: 8700 },
  { name: 'sand wedge', shots: 6, ballSpeed: 78, launchAngle: 30.6, spin: 9300 },
];
const HEADER =
  'club,ball speed (mph),launch angle (deg),launch direction (deg),spin (rpm),spin axis (deg),carry (yd),total (yd),apex (ft),side (yd)';

const normal = normalNoise(880_417);
const air = airAt({ temperature: celsius(14) });
const rows = BAG.flatMap(({ name, shots, ballSpeed, launchAngle, spin }) =>
  Array.from({ length: shots }, () => {
    const launch = {
      ballSpeed: mph(ballSpeed * (1 + normal(0.013))),
      launchAngle: degrees(launchAngle + normal(1)),
      launchDirection: degrees(0.4 + normal(1.9)),
      spinRate: rpm(spin * (1 + normal(0.06))),
      spinAxisTilt: degrees(0.5 + normal(4)),
    };
    const { carry, total, flight } = playShot(launch, { air, aerodynamics: draggier });
    return [
      name,
      written((launch.ballSpeed / mph(1)) * (1 + normal(0.002)), 1),
      written(toDegrees(launch.launchAngle) + normal(0.15), 1),
      written(toDegrees(launch.launchDirection) + normal(0.15), 1),
      written((launch.spinRate / rpm(1)) * (1 + normal(0.015)), 0),
      written(toDegrees(launch.spinAxisTilt) + normal(0.8), 1),
      written(toYards(carry) * (1 + normal(0.006)), 1),
      written(toYards(total) * (1 + normal(0.01)), 1),
      written(toFeet(flight.apex) * (1 + normal(0.015)), 1),
      written(toYards(flight.side) + normal(0.5), 1),
    ].join(',');
  }),
);

writeInvented(
  'bag-demo.csv',
  [
    'INVENTED DATA. Perrin Vantongue and the Low Saltmarsh course do not exist; no shot here was ever hit.',
    'Made by examples/data/make-bag.ts from the library itself plus noise: eight clubs in still air at sea level, 14 C.',
  ],
  HEADER,
  rows,
);
