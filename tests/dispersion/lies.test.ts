import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { strokesSettings } from '../../src/dispersion/expected-strokes.js';
import { scoreOf } from '../../src/dispersion/hole-strokes.js';
import {
  type DispersionOptions,
  disperse,
  type Fairway,
  type FairwayStrip,
  type GroundPoint,
  type Hazard,
  type HazardKind,
  type HazardStrip,
  type Hole,
  type Polygon,
  type ShotLie,
  strokesOnHole,
} from '../../src/dispersion/index.js';
import { isInside, lastCrossing } from '../../src/dispersion/polygon.js';
import { lieOf } from '../../src/dispersion/shot-lie.js';
import { playShot } from '../../src/shot/index.js';
import { type Angle, degrees, type Length, millimetres, mph, rpm, si, yards } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { even } from '../even.js';

const professional = strokesSettings({});
const metres = (min: number, max: number): fc.Arbitrary<Length> => even(min, max).map((x) => si<Length>(x));
const point: fc.Arbitrary<GroundPoint> = fc.record({ x: even(0, 400), z: even(-120, 120) });
const kind = fc.constantFrom<HazardKind>('sand', 'trees', 'penalty-area', 'out-of-bounds');
const box = (fromX: number, toX: number, fromZ: number, toZ: number): Polygon => [
  { x: fromX, z: fromZ },
  { x: toX, z: fromZ },
  { x: toX, z: toZ },
  { x: fromX, z: toZ },
];
const strip: fc.Arbitrary<Required<Omit<HazardStrip, 'polygon'>>> = fc
  .tuple(kind, metres(20, 300), metres(5, 100), metres(-100, 90), metres(5, 60))
  .map(([each, alongFrom, long, acrossFrom, wide]) => ({
    kind: each,
    alongFrom,
    alongTo: si<Length>(alongFrom + long),
    acrossFrom,
    acrossTo: si<Length>(acrossFrom + wide),
  }));
const grass = fc.record({ width: metres(10, 60), from: metres(50, 150), to: metres(200, 380) });
const bend = fc.record({ at: metres(100, 300), angle: even(-1.5, 1.5).map((x) => si<Angle>(x)) });

const mirrored = ({ x, z }: GroundPoint): GroundPoint => ({ x, z: -z });
const mirroredStrip = ({ acrossFrom, acrossTo, ...rest }: HazardStrip): HazardStrip => ({
  ...rest,
  ...(acrossTo !== undefined && { acrossFrom: si<Length>(-acrossTo) }),
  ...(acrossFrom !== undefined && { acrossTo: si<Length>(-acrossFrom) }),
});

describe('the lie of a shot', () => {
  it('is the same for a polygon as for the strip it draws', () => {
    fc.assert(
      fc.property(
        grass,
        fc.array(strip, { maxLength: 4 }),
        point,
        point,
        (fairway, strips, landing, rest) => {
          const { width, from, to } = fairway;
          const drawn: Fairway = { polygon: box(from, to, -width / 2, width / 2) };
          const hazards = strips.map(
            (each): Hazard => ({
              kind: each.kind,
              polygon: box(each.alongFrom, each.alongTo, each.acrossFrom, each.acrossTo),
            }),
          );
          const lie = lieOf(landing, rest, { fairway, hazards: strips }, false);
          expect(lieOf(landing, rest, { fairway: drawn, hazards }, false)).toBe(lie);
        },
      ),
    );
  });

  it('and its strokes are the same in the mirror', () => {
    const fairway = fc
      .tuple(grass, fc.option(bend, { nil: undefined }))
      .map(([strip, turn]): FairwayStrip => ({ ...strip, ...(turn && { bend: turn }) }));
    const outline = fc.record({ kind, polygon: fc.array(point, { minLength: 3, maxLength: 7 }) });
    fc.assert(
      fc.property(
        fairway,
        fc.array(strip, { maxLength: 3 }),
        fc.array(outline, { maxLength: 3 }),
        point,
        point,
        (grown, strips, outlines, landing, rest) => {
          const hole: Hole = { length: si(390), fairway: grown, hazards: [...strips, ...outlines] };
          const { bend: turn, ...straight } = grown;
          const other: Hole = {
            length: si(390),
            fairway: { ...straight, ...(turn && { bend: { at: turn.at, angle: si<Angle>(-turn.angle) } }) },
            hazards: [
              ...strips.map(mirroredStrip),
              ...outlines.map((each) => ({ ...each, polygon: each.polygon.map(mirrored) })),
            ],
          };
          const here = scoreOf(landing, rest, hole, professional);
          const there = scoreOf(mirrored(landing), mirrored(rest), other, professional);
          expect(there.ending).toBe(here.ending);
          expect(there.strokes).toBeCloseTo(here.strokes, 9);
        },
      ),
    );
  });

  it('takes the worse of two hazards', () => {
    const everywhere = (...kinds: readonly HazardKind[]): ShotLie => {
      const ball = { x: 200, z: 0 };
      const hazards = kinds.map((each) => ({ kind: each }));
      return lieOf(ball, ball, { fairway: { width: yards(30) }, hazards }, true);
    };
    expect(everywhere()).toBe('green');
    expect(everywhere('sand', 'trees')).toBe('green');
    expect(everywhere('sand', 'penalty-area', 'trees')).toBe('penalty-area');
    expect(everywhere('penalty-area', 'out-of-bounds')).toBe('out-of-bounds');
  });
});

describe('a polygon', () => {
  it('holds by the even-odd rule: not the middle of a five-pointed star', () => {
    const star = [0, 2, 4, 1, 3].map((k) => ({
      x: 100 + 10 * Math.cos((k * 2 * Math.PI) / 5),
      z: 10 * Math.sin((k * 2 * Math.PI) / 5),
    }));
    expect(isInside({ x: 100, z: 0 }, star)).toBe(false);
    expect(isInside({ x: 108, z: 0 }, star)).toBe(true);
    expect(isInside({ x: 92, z: 0 }, star)).toBe(false);
  });

  it('is crossed where a way goes in, the last time if more than once', () => {
    const pond = box(200, 230, -20, 20);
    const at = lastCrossing({ x: 0, z: 0 }, { x: 220, z: 11 }, pond);
    expect(at.x).toBeCloseTo(200, 9);
    expect(at.z).toBeCloseTo(10, 9);
    const beside = lastCrossing({ x: 210, z: 30 }, { x: 210, z: 10 }, pond);
    expect(beside).toEqual({ x: 210, z: 20 });
    // An edge that would go on into the ground is not crossed there.
    const bay = [
      ...box(200, 230, -20, 20).slice(0, 3),
      { x: 215, z: 20 },
      { x: 215, z: 0 },
      { x: 200, z: 0 },
    ];
    for (const outline of [bay, [...bay].reverse()]) {
      const { x, z } = lastCrossing({ x: 210, z: -40 }, { x: 225, z: 10 }, outline);
      expect(x).toBeCloseTo(216, 9);
      expect(z).toBeCloseTo(-20, 9);
    }
    const two = [
      ...box(100, 110, -20, 20),
      { x: 100, z: -20 },
      ...box(200, 230, -20, 20),
      { x: 200, z: -20 },
    ];
    expect(lastCrossing({ x: 0, z: 0 }, { x: 220, z: 0 }, two).x).toBeCloseTo(200, 9);
    expect(lastCrossing({ x: 210, z: 1 }, { x: 211, z: 1 }, pond)).toEqual({ x: 210, z: 1 });
  });

  it('costs as much as the strip it draws where that lies across the hole', () => {
    const fairway = { width: yards(30) };
    const stream = { kind: 'penalty-area', alongFrom: yards(220), alongTo: yards(240) } as const;
    const drawn: Hazard = {
      kind: 'penalty-area',
      polygon: box(yards(220), yards(240), yards(-300), yards(300)),
    };
    const strokes = (hazard: Hazard): number => {
      const ball = { x: yards(230), z: yards(14) };
      const hole = { length: yards(400), fairway, hazards: [hazard] };
      return scoreOf(ball, ball, hole, professional).strokes;
    };
    expect(strokes(drawn)).toBeCloseTo(strokes(stream), 9);
  });

  it('is refused with fewer than three corners, one that is none, or measures of a strip beside it', () => {
    const pond = box(200, 230, -20, 20);
    const field = (options: object): string | undefined =>
      caught(() =>
        disperse(
          { launch: { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) }, spread: aimOnly },
          {},
          options,
        ),
      ).field;
    expect(field({ fairway: { polygon: pond.slice(2) } })).toBe('options.fairway.polygon');
    expect(field({ fairway: { polygon: [...pond, { x: Number.NaN, z: 0 }] } })).toBe(
      'options.fairway.polygon[4].x',
    );
    expect(field({ fairway: { polygon: pond, width: yards(30) } })).toBe('options.fairway.width');
    expect(field({ fairway: {} })).toBe('options.fairway.width');
    const hazard = { kind: 'sand', polygon: pond };
    expect(field({ hazards: [hazard] })).toBe('options.hazards');
    expect(field({ fairway: { polygon: pond }, hazards: [hazard, { ...hazard, alongTo: yards(3) }] })).toBe(
      'options.hazards[1].alongTo',
    );
  });
});

const aimOnly = { kind: 'normal', sd: { launchDirection: degrees(4) } } as const;

describe('disperse with an aim and lies', () => {
  const launch = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) };
  const fairway = { width: yards(32) };
  const ask = (options: DispersionOptions): ReturnType<typeof disperse> =>
    disperse({ launch, spread: aimOnly }, {}, { shots: 128, seed: 2, ...options });

  it('turns every shot, as launching in that direction does in still air', () => {
    const aimed = ask({ aim: degrees(5), fairway });
    const launched = disperse(
      { launch: { ...launch, launchDirection: degrees(5) }, spread: aimOnly },
      {},
      { shots: 128, seed: 2, fairway },
    );
    for (const name of ['landingX', 'landingZ', 'restX', 'restZ', 'carry', 'total'] as const) {
      aimed.columns[name].forEach((value, i) => {
        expect(Math.abs(value - (launched.columns[name][i] ?? 0))).toBeLessThan(1e-3);
      });
    }
    const still = disperse(
      { launch, spread: { kind: 'normal', sd: {} } },
      {},
      { shots: 64, aim: degrees(5) },
    ).columns;
    const { flight, run } = playShot({ ...launch, launchDirection: degrees(5) });
    expect(still.landingX[0]).toBeCloseTo(flight.landing.position.x, 6);
    expect(still.landingZ[0]).toBeCloseTo(flight.landing.position.z, 6);
    expect(still.restX[0]).toBeCloseTo(run?.restsAt.x ?? 0, 6);
    expect(still.restZ[0]).toBeCloseTo(run?.restsAt.z ?? 0, 6);
    expect(aimed.columns.lie).toEqual(launched.columns.lie);
    expect(aimed.side.mean.value).toBeGreaterThan(10);
  });

  it('gives each shot the lie that strokesOnHole counts', () => {
    const hazards: readonly Hazard[] = [
      { kind: 'trees', acrossTo: yards(-30) },
      { kind: 'penalty-area', polygon: box(yards(180), yards(260), yards(18), yards(40)) },
      {
        kind: 'sand',
        alongFrom: yards(230),
        alongTo: yards(250),
        acrossFrom: yards(-20),
        acrossTo: yards(-5),
      },
    ];
    const delivery = { clubSpeed: mph(95), attackAngle: degrees(1), dynamicLoft: degrees(15) };
    const spread = {
      kind: 'student-t',
      sd: { faceAngle: degrees(3), clubPath: degrees(3), toe: millimetres(8) },
    } as const;
    const options = { shots: 256, aim: degrees(2) };
    const { columns, fairway: share } = disperse({ delivery, spread }, {}, { ...options, fairway, hazards });
    const hole: Hole = { length: yards(420), fairway, hazards };
    const { endings } = strokesOnHole({ delivery, spread, hole }, {}, options);
    const counted = (lie: ShotLie): number =>
      (columns.lie ?? []).filter((each) => each === lie).length / columns.shot.length;
    for (const [lie, { share: expected }] of Object.entries(endings)) {
      expect(counted(lie as ShotLie), lie).toBeCloseTo(expected, 12);
    }
    expect(share).toEqual(endings.fairway);
    expect(counted('penalty-area')).toBeGreaterThan(0);
    expect(counted('recovery')).toBeGreaterThan(0);
  });

  it('gives no lie where no fairway says what is short grass', () => {
    expect('lie' in ask({}).columns).toBe(false);
  });
});
