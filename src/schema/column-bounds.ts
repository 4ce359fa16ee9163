import { frozen } from '../inputs/frozen.js';
import { degrees, feet, mph, rpm, seconds, yards } from '../units/index.js';
import type { NumberName } from './column-names.js';
import { SMASH_LIMIT } from './shot-checks.js';

/** Bounds of a column, inside the range its quantity is declared with. */
export interface ColumnBounds {
  /** What a reading of a golf shot can be at all [SI]; beyond it lies a misread. No judgement of the shot. */
  readonly possible: readonly [minimum: number, maximum: number];
  /** What a full swing usually gives [SI]; serves only to guess which unit was meant. */
  readonly usual: readonly [minimum: number, maximum: number];
}

/** Columns whose bounds are narrower than what the library computes with; common practice, no source. */
export const columnBounds: Readonly<Partial<Record<NumberName, ColumnBounds>>> = /* @__PURE__ */ frozen(
  () => ({
    clubSpeed: { possible: [mph(10), mph(170)], usual: [mph(55), mph(145)] },
    attackAngle: { possible: [degrees(-30), degrees(30)], usual: [degrees(-10), degrees(10)] },
    clubPath: { possible: [degrees(-45), degrees(45)], usual: [degrees(-12), degrees(12)] },
    faceAngle: { possible: [degrees(-45), degrees(45)], usual: [degrees(-12), degrees(12)] },
    dynamicLoft: { possible: [degrees(-10), degrees(80)], usual: [degrees(5), degrees(55)] },
    nominalLoft: { possible: [degrees(3), degrees(75)], usual: [degrees(6), degrees(64)] },
    ballSpeed: { possible: [mph(5), mph(245)], usual: [mph(70), mph(215)] },
    launchAngle: { possible: [degrees(-30), degrees(80)], usual: [degrees(4), degrees(50)] },
    launchDirection: { possible: [degrees(-60), degrees(60)], usual: [degrees(-15), degrees(15)] },
    spinRate: { possible: [0, rpm(16_000)], usual: [rpm(1200), rpm(12_000)] },
    spinAxisTilt: { possible: [degrees(-180), degrees(180)], usual: [degrees(-35), degrees(35)] },
    carry: { possible: [0, yards(500)], usual: [yards(60), yards(360)] },
    total: { possible: [0, yards(600)], usual: [yards(60), yards(400)] },
    apex: { possible: [0, feet(650)], usual: [feet(20), feet(160)] },
    descentAngle: { possible: [0, degrees(90)], usual: [degrees(10), degrees(60)] },
    side: { possible: [yards(-250), yards(250)], usual: [yards(-60), yards(60)] },
    curve: { possible: [yards(-250), yards(250)], usual: [yards(-60), yards(60)] },
    hangTime: { possible: [seconds(0.05), seconds(15)], usual: [seconds(2), seconds(9)] },
    smashFactor: { possible: [0.5, SMASH_LIMIT], usual: [1, 1.56] },
    backspin: { possible: [rpm(-16_000), rpm(16_000)], usual: [rpm(1200), rpm(12_000)] },
    sidespin: { possible: [rpm(-16_000), rpm(16_000)], usual: [rpm(-2500), rpm(2500)] },
  }),
);
