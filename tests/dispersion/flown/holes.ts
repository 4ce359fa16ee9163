import type { FasterQuestion, Hazard, HazardStrip, Hole } from '../../../src/dispersion/index.js';
import { stream } from '../../../src/numerics/index.js';
import { degrees, type Length, millimetres, mph, si, yards } from '../../../src/units/index.js';

/** An invented golfer, whose drives carry some 215 yards. */
export const golfer: Pick<FasterQuestion, 'delivery' | 'spread'> = {
  delivery: { clubSpeed: mph(95), attackAngle: degrees(1), dynamicLoft: degrees(15) },
  spread: {
    kind: 'student-t',
    sd: {
      clubSpeed: mph(1.2),
      faceAngle: degrees(2),
      clubPath: degrees(2),
      dynamicLoft: degrees(1),
      toe: millimetres(7),
      high: millimetres(6),
    },
  },
};

export interface NamedHole {
  readonly name: string;
  readonly hole: Hole;
}

const strip = (kind: Hazard['kind'], from: number, to: number): HazardStrip => ({
  kind,
  alongFrom: yards(from),
  alongTo: yards(to),
});

function beside(kind: Hazard['kind'], yardsOut: number): Hazard[] {
  return [
    { kind, acrossFrom: yards(yardsOut) },
    { kind, acrossTo: yards(-yardsOut) },
  ];
}

/** Holes with a stream across the fairway: just out of reach, just in reach, and one that more speed carries. */
export const streams: readonly NamedHole[] = [
  ['a stream from 225 to 245 yards', [strip('penalty-area', 225, 245)]],
  ['a stream from 240 to 255 yards, trees', [strip('penalty-area', 240, 255), ...beside('trees', 30)]],
  ['a stream from 255 to 262 yards', [strip('penalty-area', 255, 262)]],
].map(([name, hazards]) => ({
  name: name as string,
  hole: { length: yards(420), fairway: { width: yards(32) }, hazards: hazards as Hazard[] },
}));

/** Holes drawn at random, some with streams, sand, a pond as a polygon, trees or boundaries. */
export function drawnHoles(count: number): NamedHole[] {
  return Array.from({ length: count }, (_, i) => {
    const random = stream(2024, i);
    const between = (low: number, high: number): number => low + (high - low) * random.uniform();
    const or = <T>(share: number, make: () => T[]): T[] => (random.uniform() < share ? make() : []);
    const pond = (x: number, z: number, r: number): Hazard => ({
      kind: 'penalty-area',
      polygon: Array.from({ length: 7 }, (__, k) => ({
        x: yards(x + r * Math.cos((k * 2 * Math.PI) / 7)) as Length,
        z: yards(z + r * Math.sin((k * 2 * Math.PI) / 7)) as Length,
      })),
    });
    const hazards: Hazard[] = [
      ...or(0.5, () => {
        const from = between(200, 270);
        return [strip('penalty-area', from, from + between(5, 25))];
      }),
      ...or(0.5, () => [pond(between(200, 270), between(-30, 30), between(8, 20))]),
      ...or(0.5, () => {
        const from = between(200, 260);
        return [{ ...strip('sand', from, from + between(8, 20)), acrossFrom: yards(between(-20, 5)) }];
      }),
      ...or(0.6, () => beside('trees', between(24, 40))),
      ...or(0.3, () => beside('out-of-bounds', between(35, 60))),
    ];
    const bend = or(0.3, () => [{ at: yards(between(200, 260)), angle: degrees(between(-50, 50)) }])[0];
    return {
      name: `drawn hole ${i + 1}`,
      hole: {
        length: si<Length>(yards(between(330, 520))),
        fairway: { width: yards(between(22, 45)), ...(bend !== undefined && { bend }) },
        hazards,
      },
    };
  });
}
