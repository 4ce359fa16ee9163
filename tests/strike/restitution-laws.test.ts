import { describe, expect, it } from 'vitest';
import { balls } from '../../src/ball/index.js';
import { type Clubhead, clubheads } from '../../src/clubhead/index.js';
import { squareStrike } from '../../src/strike/impact.js';
import { createStriker } from '../../src/strike/striker.js';
import { metres } from '../../src/units/index.js';

/** A head whose restitution depends on the place alone, and whose grip sets in with the obliquity. */
const law = { kind: 'oblique', limit: 0.4, onset: 0.3, scale: 0.15 } as const;
const { bulge: _, roll: __, ...iron } = clubheads.midIron;
const head = {
  ...iron,
  centreOfGravity: { depth: metres(0), high: metres(0), toe: metres(0) },
  restitution: { ...iron.restitution, slope: 0, atReference: 0.8, atEdge: 0.6, edgeDistance: metres(0.02) },
  tangentialRestitution: law,
} as unknown as Clubhead;
const striker = createStriker({ clubhead: head, ball: balls.conforming });

function struck(change: object) {
  const result = striker.strike({ ...squareStrike(36, -0.06, 0.5), ...change });
  if (typeof result === 'string') throw new Error(result);
  return result;
}

describe('normal restitution off centre', () => {
  it.each([
    [0, 0, 0.8],
    [0.01, 0, 0.75],
    [0, 0.01, 0.75],
    [0.006, 0.008, 0.75],
    [0.02, 0, 0.6],
    [0.026, 0, 0.6],
    [0.024, -0.032, 0.6],
  ])('falls with the square of the distance as far as the edge, and no further: %f, %f', (toe, high, e) => {
    expect(struck({ toe, high }).restitution).toBeCloseTo(e, 12);
  });
});

describe('tangential restitution of an oblique law', () => {
  const expected = (obliquity: number): number =>
    obliquity > law.onset ? law.limit * (1 - Math.exp((law.onset - obliquity) / law.scale)) : 0;

  it.each([
    [0, 0],
    [0, 0.25],
    [0.2, 0],
    [-0.15, 0.2],
    [0.1, -0.3],
  ])(
    'goes by the whole angle between head and face, across the plane too: path %f, face %f',
    (clubPath, faceAngle) => {
      // Centred and without closure, the obliquity of the impact is the spin loft.
      const { spinLoft, tangentialRestitution } = struck({ clubPath, faceAngle });
      expect(tangentialRestitution).toBeCloseTo(expected(spinLoft), 12);
    },
  );

  it('is 0 up to the onset and grows from there', () => {
    const at = (obliquity: number): number =>
      struck({ attackAngle: 0, dynamicLoft: obliquity }).tangentialRestitution;
    expect([at(0.1), at(0.2), at(0.3 - 1e-9)]).toEqual([0, 0, 0]);
    expect(at(0.301)).toBeGreaterThan(0);
    expect(at(0.4)).toBeCloseTo(expected(0.4), 12);
    expect(at(1.2)).toBeLessThan(law.limit);
  });
});
