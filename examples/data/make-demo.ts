/**
 * Makes speed-ladder-demo.csv: one driver at five speeds, hit by an invented player at an invented place.
 *
 * Each shot is a delivery with scatter, played through the library, then read by an imagined device with noise of its
 * own. Drag is 2 % above the library's ball, so that model and "measurement" do not agree by construction. Nothing
 * here is a measurement, and nothing may be concluded from it about real players, clubs or balls.
 *
 * Run from the repository root: `npx tsx examples/data/make-demo.ts`
 */
import { clubheads, playShot, type Shot } from 'fairflight';
import { degrees, millimetres, mph, toDegrees, toFeet, toMph, toRpm, toYards } from 'fairflight/units';
import { draggier, normalNoise, writeInvented, written } from './invented.js';

const NOMINAL_LOFT = 9.5;
const BANDS = [
  { speed: 78, shots: 9 },
  { speed: 87, shots: 10 },
  { speed: 95, shots: 11 },
  { speed: 104, shots: 10 },
  { speed: 112, shots: 9 },
] as const;

const HEADER =
  'shot,date,club,club speed (mph),attack angle (deg),club path (deg),face angle (deg),loft (deg),ball speed (mph),launch angle (deg),launch direction (deg),spin (rpm),spin axis (deg),carry (yd),total (yd),apex (ft),descent angle (deg),side (yd),hang time (s),remark';

const normal = normalNoise(20_260_332);

/** What is odd about three of the shots. */
interface Oddity {
  readonly remark: string;
  readonly toe?: number;
  readonly high?: number;
  readonly face?: number;
  /** Added to what the device reads of the ball speed [mph]. */
  readonly misreadBy?: number;
}
const ODDITIES: Readonly<Record<string, Oddity>> = {
  '87/4': { remark: 'heel and low, came out weak', toe: -27, high: -14, face: 4 },
  '95/7': { remark: 'toe', toe: 25 },
  '104/3': { remark: '', misreadBy: 9.5 },
};

function swing(
  speed: number,
  odd: Oddity | undefined,
): { shot: Shot; clubSpeed: number; cells: readonly number[] } {
  // The faster this player swings, the more he hits up, the more open the face, and the wider the scatter.
  const effort = (speed - 95) / 17;
  const clubSpeed = speed + normal(0.9);
  const attack = 0.4 + 1.1 * effort + normal(0.7);
  const path = 1.2 - 0.8 * effort + normal(1.1);
  const face = 0.5 + 0.9 * effort + normal(1.2 + 0.4 * effort) + (odd?.face ?? 0);
  const dynamicLoft = NOMINAL_LOFT + 2.6 - 0.5 * effort + 0.5 * (attack - 0.4) + normal(0.7);
  const toe = (odd?.toe ?? normal(6.5 + 2 * effort)) + normal(1);
  const high = (odd?.high ?? 1 + normal(4.5 + effort)) + normal(1);
  const shot = playShot(
    {
      clubSpeed: mph(clubSpeed),
      attackAngle: degrees(attack),
      clubPath: degrees(path),
      faceAngle: degrees(face),
      dynamicLoft: degrees(dynamicLoft),
      strikeOffset: { toe: millimetres(toe), high: millimetres(high) },
    },
    { aerodynamics: draggier },
    { clubhead: clubheads.driver },
  );
  return { shot, clubSpeed: clubSpeed + normal(0.5), cells: [attack, path, face] };
}

const rows: string[] = [];
for (const { speed, shots } of BANDS) {
  for (let i = 1; i <= shots; i++) {
    const odd = ODDITIES[`${speed}/${i}`];
    const { shot, clubSpeed, cells } = swing(speed, odd);
    const { launch, flight } = shot;
    const [attack = 0, path = 0, face = 0] = cells;
    rows.push(
      [
        rows.length + 1,
        '2026-03-11',
        'driver',
        written(clubSpeed, 1),
        written(attack + normal(0.3), 1),
        written(path + normal(0.3), 1),
        written(face + normal(0.3), 1),
        NOMINAL_LOFT,
        written(toMph(launch.ballSpeed) + normal(0.3) + (odd?.misreadBy ?? 0), 1),
        written(toDegrees(launch.launchAngle) + normal(0.15), 1),
        written(toDegrees(launch.launchDirection ?? degrees(0)) + normal(0.15), 1),
        written(toRpm(launch.spinRate) + normal(60), 0),
        written(toDegrees(launch.spinAxisTilt ?? degrees(0)) + normal(0.8), 1),
        written(toYards(flight.carry) * (1 + normal(0.006)), 1),
        written(toYards(shot.total) * (1 + normal(0.012)), 1),
        written(toFeet(flight.apex) * (1 + normal(0.015)), 1),
        written(toDegrees(flight.descentAngle) + normal(0.4), 1),
        written(toYards(flight.side) + normal(0.6), 1),
        written(flight.hangTime + normal(0.03), 2),
        odd?.remark.includes(',') === true ? `"${odd.remark}"` : (odd?.remark ?? ''),
      ].join(','),
    );
  }
}

writeInvented(
  'speed-ladder-demo.csv',
  [
    'INVENTED DATA. Imo Feldspar and the Hollowmere practice ground do not exist; no shot here was ever hit.',
    'Made by examples/data/make-demo.ts from the library itself plus noise. One driver, 9.5 degrees, five speeds.',
  ],
  HEADER,
  rows,
);
