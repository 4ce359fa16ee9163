import { describe, expect, it } from 'vitest';
import {
  type Delivery,
  degrees,
  type FairflightError,
  isFairflightError,
  metres,
  millimetres,
  mph,
  playShot,
} from '../../src/index.js';
import { faceMap, judgePattern, strikePattern } from '../../src/session/index.js';
import { si } from '../../src/units/index.js';
import { steadyDriver } from '../strike/helpers.js';

const drive: Delivery = { clubSpeed: mph(95), attackAngle: degrees(0), dynamicLoft: degrees(14) };

function fails(run: () => unknown): FairflightError {
  try {
    run();
  } catch (error) {
    if (isFairflightError(error)) return error;
  }
  throw new Error('no typed error');
}

describe('faceMap', () => {
  const map = faceMap(drive, {}, { columns: 11, rows: 7 });
  const index = (column: number, row: number): number => row * map.toe.length + column;

  it('every entry is what playShot gives, within the integration tolerance', () => {
    for (const [column, row] of [
      [0, 0],
      [10, 2],
      [3, 6],
      [5, 3],
    ] as const) {
      const toe = map.toe[column] ?? millimetres(0);
      const high = map.high[row] ?? millimetres(0);
      const shot = playShot({ ...drive, strikeOffset: { toe, high } });
      const i = index(column, row);
      expect(map.carry[i]).toBeCloseTo(shot.carry, 4);
      expect(map.total[i]).toBeCloseTo(shot.total, 3);
      expect(map.side[i]).toBeCloseTo(shot.side, 3);
      expect(map.ballSpeed[i]).toBeCloseTo(shot.launch.ballSpeed, 12);
      expect(map.launchAngle[i]).toBeCloseTo(shot.launch.launchAngle, 12);
      expect(map.launchDirection[i]).toBeCloseTo(shot.launch.launchDirection ?? 0, 12);
      expect(map.backspin[i]).toBeCloseTo(shot.strike?.backspin ?? 0, 10);
      expect(map.sidespin[i]).toBeCloseTo(shot.strike?.sidespin ?? 0, 10);
    }
  });

  it('a square delivery of a head without toe bias gives a map that mirrors at the centre line', () => {
    for (let row = 0; row < 7; row++) {
      for (let column = 0; column < 5; column++) {
        expect(map.carry[index(column, row)]).toBeCloseTo(map.carry[index(10 - column, row)] ?? 0, 6);
        expect(map.side[index(column, row)]).toBeCloseTo(-(map.side[index(10 - column, row)] ?? 0), 6);
      }
    }
  });

  it('a left-handed map mirrors left and right', () => {
    const open = { ...drive, faceAngle: degrees(2) };
    const right = faceMap(open, {}, { columns: 5, rows: 3 });
    const left = faceMap({ ...drive, faceAngle: degrees(-2), hand: 'left' }, {}, { columns: 5, rows: 3 });
    right.carry.forEach((carry, i) => {
      expect(left.carry[i]).toBeCloseTo(carry, 6);
      expect(left.side[i]).toBeCloseTo(-(right.side[i] ?? 0), 6);
    });
  });

  it('with this bulge gear effect brings toe and heel strikes back near the line (Tutelman 2009: 3 yd beyond at 6 mm)', () => {
    const toe = map.toe.length - 2;
    // The head of constant grip: one that grips more at 95 mph finishes 3.3 yd to the right (see the rows of the validation).
    const round = faceMap(drive, {}, { clubhead: steadyDriver, columns: 11, rows: 7 });
    expect(round.launchDirection[index(toe, 3)]).toBeGreaterThan(degrees(3));
    expect(Math.abs(round.side[index(toe, 3)] ?? 0)).toBeLessThan(3);
    const { bulge: _b, roll: _r, ...flatHead } = steadyDriver;
    const straight = faceMap(drive, {}, { clubhead: flatHead, columns: 11, rows: 7 });
    // Without bulge the gear spin takes the ball far across: that is what bulge is for.
    expect(straight.side[index(toe, 3)]).toBeLessThan(-20);
  });

  it('carry is longest near the centre and falls toward the edge', () => {
    expect(Math.abs(map.longest.toe)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(map.longest.high)).toBeLessThanOrEqual(0.01);
    expect(map.longest.carry).toBeGreaterThanOrEqual(map.centre.carry);
    expect(map.carry[index(0, 3)]).toBeLessThan(map.centre.carry);
  });

  it('is plain data', () => {
    expect(JSON.parse(JSON.stringify(map)).carry).toHaveLength(77);
    expect(structuredClone(map)).toEqual(map);
  });

  it('typed errors', () => {
    expect(fails(() => faceMap(drive, {}, { columns: 4 })).field).toBe('options.columns');
    expect(fails(() => faceMap(drive, {}, { toe: si<never>(25) })).field).toBe('options.toe');
    expect(fails(() => faceMap({ ...drive, clubSpeed: si<never>(95) })).field).toBe('delivery.clubSpeed');
    expect(fails(() => faceMap(drive, {}, { head: 1 } as never)).field).toBe('options.head');
    const cliff = { ground: { elevation: metres(300) } };
    expect(fails(() => faceMap(drive, cliff)).message).toMatch(/does not land/);
  });
});

describe('strikePattern', () => {
  it('mean and covariance', () => {
    const pattern = strikePattern([
      { toe: millimetres(10), high: millimetres(0) },
      { toe: millimetres(14), high: millimetres(2) },
      { toe: millimetres(12), high: millimetres(4) },
    ]);
    expect(pattern.centre.toe * 1000).toBeCloseTo(12, 9);
    expect(pattern.centre.high * 1000).toBeCloseTo(2, 9);
    expect(pattern.spread.toe * 1000).toBeCloseTo(2, 9);
    expect(pattern.covariance[0][1] * 1e6).toBeCloseTo(2, 9);
    expect(strikePattern([{ toe: si(0.01), high: si(0) }]).spread.toe).toBe(0);
  });

  it('typed errors', () => {
    expect(fails(() => strikePattern([])).field).toBe('strikes');
    expect(fails(() => strikePattern([{ toe: si(0.5), high: si(0) }])).field).toBe('strikes[0].toe');
  });
});

describe('judgePattern', () => {
  const around = (toe: number, high: number) =>
    [
      [-3, -2],
      [3, 2],
      [0, 3],
      [-2, 0],
      [2, -3],
    ].map(([t = 0, h = 0]) => ({ toe: millimetres(toe + t), high: millimetres(high + h) }));

  it('a pattern toward the toe gains most by standing closer, whatever the hand', () => {
    for (const hand of ['right', 'left'] as const) {
      const { moves, carry, centredCarry } = judgePattern(around(18, 0), { ...drive, hand });
      expect(moves[0]?.move).toBe('stance');
      expect(moves[0]?.change).toBeCloseTo(-0.018, 2);
      expect(carry + (moves[0]?.gain ?? 0)).toBeGreaterThan(carry);
      expect(centredCarry).toBeGreaterThan(carry);
    }
    expect(judgePattern(around(-18, 0), drive).moves[0]?.change).toBeGreaterThan(0);
  });

  it('a low pattern gains by a higher tee, a high one by a lower tee', () => {
    const tee = (high: number) =>
      judgePattern(around(0, high), drive).moves.find((m) => m.move === 'tee-height');
    expect(tee(-14)?.change).toBeGreaterThan(0);
    expect(tee(-14)?.gain).toBeGreaterThan(2);
    expect(tee(13)?.change).toBeLessThan(0);
  });

  it('moves never lose: each is the best of its kind, the present included', () => {
    for (const move of judgePattern(around(6, -4), drive).moves) expect(move.gain).toBeGreaterThan(-0.01);
  });
});
