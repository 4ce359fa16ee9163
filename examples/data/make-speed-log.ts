/**
 * Makes speed-log-demo.csv: twelve weeks of an invented player who trains for speed, one session of driver shots a
 * week. Days differ, speed grows by some 4 mph and levels off, and direction scatters a little more at the end.
 *
 * Each shot is a delivery with scatter, played through the library with a ball of its own drag, then read by an
 * imagined device with noise. Nothing here is a measurement, and nothing may be concluded from it about training.
 *
 * Run from the repository root: `npx tsx examples/data/make-speed-log.ts`
 */
import { clubheads, playShot } from 'fairflight';
import { degrees, millimetres, mph, toDegrees, toMph, toRpm, toYards } from 'fairflight/units';
import { draggier, normalNoise, writeInvented, written } from './invented.js';

const FIRST_DAY = Date.UTC(2026, 0, 8);
const DAY = 86_400_000;
/** Days after the first, and shots hit; one week was missed. */
const SESSIONS = [
  [0, 9],
  [7, 10],
  [13, 8],
  [21, 10],
  [28, 11],
  [35, 9],
  [49, 10],
  [55, 10],
  [63, 8],
  [70, 11],
  [77, 10],
  [84, 9],
] as const;
const NOMINAL_LOFT = 10.5;
const HEADER =
  'date,club,club speed (mph),attack angle (deg),loft (deg),ball speed (mph),launch angle (deg),launch direction (deg),spin (rpm),spin axis (deg),carry (yd),side (yd),remark';

const normal = normalNoise(71_193);
const rows: string[] = [];
for (const [day, shots] of SESSIONS) {
  const progress = 1 - Math.exp(-day / 34);
  const today = 92.4 + 4.6 * progress + normal(0.55);
  for (let i = 1; i <= shots; i++) {
    const misread = day === 28 && i === 6;
    const clubSpeed = today + normal(1.1);
    const attack = 0.8 + normal(0.8);
    const shot = playShot(
      {
        clubSpeed: mph(clubSpeed),
        attackAngle: degrees(attack),
        clubPath: degrees(1 + normal(1.3)),
        faceAngle: degrees(0.6 + normal(1.5 + 0.5 * progress)),
        dynamicLoft: degrees(NOMINAL_LOFT + 4.2 + normal(0.8)),
        strikeOffset: {
          toe: millimetres(1 + normal(7 + 1.5 * progress)),
          high: millimetres(1 + normal(5)),
        },
      },
      { aerodynamics: draggier },
      { clubhead: clubheads.driver },
    );
    const { launch, flight } = shot;
    rows.push(
      [
        new Date(FIRST_DAY + day * DAY).toISOString().slice(0, 10),
        'driver',
        written(clubSpeed + normal(0.4) + (misread ? 11.5 : 0), 1),
        written(attack + normal(0.3), 1),
        NOMINAL_LOFT,
        written(toMph(launch.ballSpeed) + normal(0.3), 1),
        written(toDegrees(launch.launchAngle) + normal(0.15), 1),
        written(toDegrees(launch.launchDirection ?? degrees(0)) + normal(0.15), 1),
        written(toRpm(launch.spinRate) + normal(60), 0),
        written(toDegrees(launch.spinAxisTilt ?? degrees(0)) + normal(0.8), 1),
        written(toYards(flight.carry) * (1 + normal(0.006)), 1),
        written(toYards(flight.side) + normal(0.6), 1),
        misread ? 'the club speed looked wrong' : '',
      ].join(','),
    );
  }
}

writeInvented(
  'speed-log-demo.csv',
  [
    'INVENTED DATA. Juno Tallowby and the Greymarl range do not exist; no shot here was ever hit, nobody trained.',
    'Made by examples/data/make-speed-log.ts from the library itself plus noise. One driver, 12 sessions in 12 weeks.',
  ],
  HEADER,
  rows,
);
