import { describe, expect, it } from 'vitest';
import { type Clubhead, clubheads, degrees } from '../../src/index.js';
import { limitsOf } from '../../src/session/calibrate-limits.js';

const sentenceFor = (head: Clubhead): string =>
  limitsOf(
    [
      {
        target: 'tangentialRestitution',
        before: 0,
        value: 0,
        standardError: 0.01,
        atBound: false,
        mostlyPrior: false,
      },
    ],
    [[1]],
    head,
    [],
  ).join(' ');

describe('what tangential restitution is confused with', () => {
  it('says by how much, where this head can be struck so', () => {
    expect(sentenceFor(clubheads.driver)).toMatch(/look the same: 1 mm higher strikes are 0\.\d{3} less\./);
  });

  it('gives no figure for a head that gives no such strike, or whose grip has no say in it', () => {
    const { restitution } = clubheads.driver;
    const impossible = {
      ...clubheads.driver,
      restitution: { ...restitution, slope: -0.02, referenceSpeed: 0 as typeof restitution.referenceSpeed },
    };
    const beforeOnset = {
      ...clubheads.driver,
      tangentialRestitution: { kind: 'oblique', limit: 0.3, onset: degrees(40), scale: degrees(6) },
    } as const;
    for (const head of [impossible, beforeOnset]) {
      expect(sentenceFor(head)).toMatch(/always off look the same\. So does spin/);
      expect(sentenceFor(head)).not.toMatch(/NaN|Infinity/);
    }
  });
});
