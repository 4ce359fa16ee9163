/**
 * Makes face-map-demo.csv: one driver hit 26 times by an invented player at an invented place, mostly low and toward
 * the toe. Each shot is a delivery with scatter, played through the library, then read by an imagined device with noise
 * of its own; one ball speed is misread. Nothing here is a measurement, and nothing may be concluded from it about real
 * players, clubs or balls.
 *
 * Run from the repository root: `npx tsx examples/data/make-face-demo.ts`
 */
import { playShot } from 'fairflight';
import { degrees, millimetres, mph, toDegrees, toMph, toRpm, toYards } from 'fairflight/units';
import { normalNoise, writeInvented, written } from './invented.js';

const SHOTS = 26;
const MISREAD = 17;
const NOMINAL_LOFT = 10.5;
const HEADER =
  'shot,club,club speed (mph),attack angle (deg),club path (deg),face angle (deg),dynamic loft (deg),loft (deg),ball speed (mph),launch angle (deg),launch direction (deg),spin (rpm),spin axis (deg),carry (yd),side (yd)';

const normal = normalNoise(20_260_611);
const rows = Array.from({ length: SHOTS }, (_, i) => {
  const speed = 91 + normal(1.1);
  const attack = -0.8 + normal(0.9);
  const path = 0.8 + normal(1.3);
  const face = 0.6 + normal(1.4);
  const loft = 13.6 + normal(0.8);
  const { launch, flight } = playShot({
    clubSpeed: mph(speed),
    attackAngle: degrees(attack),
    clubPath: degrees(path),
    faceAngle: degrees(face),
    dynamicLoft: degrees(loft),
    strikeOffset: { toe: millimetres(13 + normal(7)), high: millimetres(-6 + normal(5)) },
  });
  return [
    i + 1,
    'driver',
    written(speed + normal(0.5), 1),
    written(attack + normal(0.4), 1),
    written(path + normal(0.4), 1),
    written(face + normal(0.4), 1),
    written(loft + normal(0.4), 1),
    NOMINAL_LOFT,
    written(toMph(launch.ballSpeed) + normal(0.4) + (i + 1 === MISREAD ? 16 : 0), 1),
    written(toDegrees(launch.launchAngle) + normal(0.2), 1),
    written(toDegrees(launch.launchDirection ?? degrees(0)) + normal(0.2), 1),
    written(toRpm(launch.spinRate) + normal(60), 0),
    written(toDegrees(launch.spinAxisTilt ?? degrees(0)) + normal(1), 1),
    written(toYards(flight.carry) * (1 + normal(0.008)), 1),
    written(toYards(flight.side) + normal(0.7), 1),
  ].join(',');
});

writeInvented(
  'face-map-demo.csv',
  [
    'INVENTED DATA. Tamsin Quillfeather and the Hollowmere practice ground do not exist; no shot here was ever hit.',
    'Made by examples/data/make-face-demo.ts from the library itself plus noise. One driver, 10.5 degrees.',
  ],
  HEADER,
  rows,
);
