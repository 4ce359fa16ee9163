import { describe, expect, it } from 'vitest';
import { axes, frame, line, spread, svg } from '../../examples/lib/chart.js';
import { filledContours } from '../../examples/lib/contours.js';
import {
  BLUE,
  channels,
  filledColour,
  GREEN,
  ORANGE,
  orderedColours,
  PURPLE,
  VERMILION,
} from '../../examples/lib/palette.js';
import { escaped, fixed, grouped, signed } from '../../examples/lib/text.js';

type Triple = readonly [number, number, number];

/** sRGB to linear light, IEC 61966-2-1 (1999). */
function linear(colour: string): Triple {
  const [r = 0, g = 0, b = 0] = channels(colour).map((value) => {
    const v = value / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  });
  return [r, g, b];
}

/** CIE 1976 L*a*b* under D65 (CIE 15:2004). */
function lab([r, g, b]: Triple): Triple {
  const x = (0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047;
  const y = 0.2126729 * r + 0.7151522 * g + 0.072175 * b;
  const z = (0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883;
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  return [116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))];
}

/** Severity-1 matrices of Machado, Oliveira and Fernandes 2009, IEEE TVCG 15(6), 1291, on linear light (from memory). */
const VISION: Readonly<Record<string, readonly [Triple, Triple, Triple]>> = {
  common: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

function seen(colour: string, [m0, m1, m2]: readonly [Triple, Triple, Triple]): Triple {
  const [r, g, b] = linear(colour);
  const row = ([a, c, d]: Triple): number => Math.min(1, Math.max(0, a * r + c * g + d * b));
  return lab([row(m0), row(m1), row(m2)]);
}

const distance = (a: Triple, b: Triple): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe.each(Object.entries(VISION))('the palette with %s', (_name, matrix) => {
  it('keeps the bands of a ladder apart', () => {
    for (const count of [2, 3, 5, 6]) {
      const labs = orderedColours(count).map((colour) => seen(colour, matrix));
      for (const [i, one] of labs.entries()) {
        // A difference of 10 in CIE 1976 is plain to see side by side; lines are labelled as well.
        for (const other of labs.slice(i + 1)) expect(distance(one, other)).toBeGreaterThan(10);
      }
      const lightness = labs.map(([value]) => value);
      expect([...lightness].sort((a, b) => a - b)).toEqual(lightness);
    }
  });
  it('keeps the named colours apart', () => {
    const labs = [BLUE, VERMILION, GREEN, ORANGE, PURPLE].map((colour) => seen(colour, matrix));
    for (const [i, one] of labs.entries()) {
      for (const other of labs.slice(i + 1)) expect(distance(one, other)).toBeGreaterThan(10);
    }
  });
  it('makes contours darker as values rise', () => {
    const lightness = [0, 0.2, 0.4, 0.6, 0.8, 1].map((share) => seen(filledColour(share), matrix)[0]);
    expect([...lightness].sort((a, b) => b - a)).toEqual(lightness);
  });
});

describe('the chart kit', () => {
  const f = frame({
    width: 200,
    height: 100,
    x: { label: 'carry (yd)', domain: [0, 100] },
    y: { label: 'height <ft>', domain: [0, 10] },
    margin: { left: 50, right: 0, top: 0, bottom: 40 },
  });
  it('maps units to pixels, y upward', () => {
    expect([f.x(0), f.x(100), f.y(0), f.y(10)]).toEqual([50, 200, 60, 0]);
    expect(
      line(
        f,
        [
          [0, 0],
          [100, 10],
        ],
        { colour: '#000000' },
      ),
    ).toContain('M50,60L200,0');
  });
  it('names both axes and escapes text', () => {
    const drawn = svg(f, 'a "test"', axes(f));
    expect(drawn).toContain('carry (yd)');
    expect(drawn).toContain('height &lt;ft&gt;');
    expect(drawn).toContain('aria-label="a &quot;test&quot;"');
  });
  it('puts a contour of a plane where the plane has that value', () => {
    const columns = 11;
    const rows = 6;
    const values = Array.from({ length: columns * rows }, (_, i) => i % columns);
    const drawn = filledContours(f, { columns, rows, values }, [5], () => '#fff', String);
    // The plane rises from 0 to 10 over the width, so 5 lies in the middle: x = 50 + 150/2.
    expect(drawn).toMatch(/125\.0,/);
  });
  it('moves labels apart and keeps their order', () => {
    const places = spread([10, 11, 12, 50], 10);
    const gaps = [...places].sort((a, b) => a - b).map((place, i, all) => place - (all[i - 1] ?? -100));
    expect(Math.min(...gaps)).toBeGreaterThan(9.99);
    expect(places[3]).toBe(50);
    expect(places[1]).toBeCloseTo(11, 6);
  });
});

describe('numbers as text', () => {
  it('has a true minus, no minus zero, and a dash for nothing', () => {
    expect([fixed(-1.26, 1), fixed(-0.04, 1), fixed(undefined), fixed(Number.NaN)]).toEqual([
      '−1.3',
      '0.0',
      '–',
      '–',
    ]);
    expect([signed(1.24, 1), signed(0.04, 1), signed(-2)]).toEqual(['+1.2', '0.0', '−2']);
    expect([grouped(1234567), grouped(999)]).toEqual(['1\u00a0234\u00a0567', '999']);
    expect(escaped('<a href="x">&</a>')).toBe('&lt;a href=&quot;x&quot;&gt;&amp;&lt;/a&gt;');
  });
});
