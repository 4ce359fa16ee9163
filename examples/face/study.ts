import { sort } from 'd3-array';
import {
  type Clubhead,
  type Delivery,
  type LocatedStrike,
  locateStrike,
  playShot,
  type Scene,
  type Shot,
  type StrikeOffset,
  type StrikeQuality,
  strikeQuality,
} from 'fairflight';
import {
  type ChangeRanking,
  type FaceMap,
  faceMap,
  judgePattern,
  type MeasuredShot,
  type PatternReport,
} from 'fairflight/session';
import { type Angle, degrees, type Length, millimetres, mph, type Speed, si } from 'fairflight/units';
import { adviceOn } from '../lib/advice.js';
import type { Progress } from '../lib/progress.js';

/** One strike on the face. */
export interface FaceStrike {
  /** Number of the shot, counted from 1. */
  readonly shot: number;
  readonly offset: StrikeOffset;
  /** Present when the strike was worked out from ball and club readings. */
  readonly located?: LocatedStrike;
  readonly quality?: StrikeQuality;
}

/** A strike of the usual delivery, and what it loses against the place where it carries furthest. */
export interface LosingStrike extends FaceStrike {
  readonly carryLost: Length;
}

/** A shot that has no place on the map, and why. */
export interface Unplaced {
  readonly shot: number;
  readonly why: string;
}

/** Strikes from which the map is made, and those left out. */
export interface Placed {
  /** Shots that the strikes belong to; none where only strikes were given. */
  readonly shots: readonly MeasuredShot[];
  readonly strikes: readonly FaceStrike[];
  readonly unplaced: readonly Unplaced[];
}

/** What a strike off centre does. */
export interface OffCentre {
  readonly name: string;
  readonly shot: Shot;
}

/** Everything the page shows. */
export interface FaceStudy extends Placed {
  readonly strikes: readonly LosingStrike[];
  readonly clubhead: Clubhead;
  readonly scene: Scene;
  readonly hand: 'right' | 'left';
  readonly delivery: Delivery;
  readonly map: FaceMap;
  readonly report?: PatternReport;
  /** What could be changed by the readings; absent where there are none, or no strike explains them. */
  readonly advice?: ChangeRanking;
  readonly offCentre: readonly OffCentre[];
}

/** What the user said about the usual delivery; what is missing comes from the shots, else from a usual driver swing. */
export interface GivenDelivery {
  readonly clubSpeed?: Speed;
  readonly attackAngle?: Angle;
  readonly clubPath?: Angle;
  readonly faceAngle?: Angle;
  readonly dynamicLoft?: Angle;
}

/** Half widths of the map. */
export const REACH: Readonly<Record<keyof StrikeOffset, Length>> = {
  toe: millimetres(32),
  high: millimetres(18),
};

/** Finds where each shot was struck, from its readings or from what was measured on the face. `progress` counts shots. */
export function placed(
  shots: readonly MeasuredShot[],
  measured: readonly (StrikeOffset | undefined)[],
  clubhead: Clubhead,
  scene: Scene,
  hand: 'right' | 'left',
  progress: Progress,
): Placed {
  const strikes: FaceStrike[] = [];
  const unplaced: Unplaced[] = [];
  shots.forEach((shot, i) => {
    progress.tick(i);
    const number = i + 1;
    const quality = qualityOf(shot, clubhead, scene);
    if (quality?.misread !== undefined) {
      unplaced.push({ shot: number, why: quality.misread.message });
      return;
    }
    const rest = quality === undefined ? {} : { quality };
    const onFace = measured[i];
    if (onFace !== undefined) {
      strikes.push({ shot: number, offset: onFace, ...rest });
      return;
    }
    const estimate = locateStrike(shot, { clubhead, hand, ...(scene.ball && { ball: scene.ball }) });
    if (estimate.outcome === 'inconsistent') unplaced.push({ shot: number, why: estimate.message });
    else if (estimate.alternatives.length > 0 || estimate.identifiability.toe.weak) {
      unplaced.push({ shot: number, why: estimate.findings.join(' ') });
    } else strikes.push({ shot: number, offset: estimate.strikeOffset, located: estimate, ...rest });
  });
  return { shots, strikes, unplaced };
}

function qualityOf(shot: MeasuredShot, clubhead: Clubhead, scene: Scene): StrikeQuality | undefined {
  const { clubSpeed, ballSpeed, attackAngle, dynamicLoft, launchAngle, spinRate, carry } = shot;
  if (clubSpeed === undefined || ballSpeed === undefined) return undefined;
  if (launchAngle === undefined && (attackAngle === undefined || dynamicLoft === undefined)) return undefined;
  const readings = {
    clubSpeed,
    ballSpeed,
    ...(attackAngle !== undefined && { attackAngle }),
    ...(dynamicLoft !== undefined && { dynamicLoft }),
    ...(launchAngle !== undefined && { launchAngle }),
    ...(spinRate !== undefined && { spinRate }),
    ...(carry !== undefined && { carry }),
  };
  return strikeQuality(readings, scene, { clubhead });
}

/** Works everything out. */
export function studyOf(
  { shots, strikes, unplaced }: Placed,
  given: GivenDelivery,
  clubhead: Clubhead,
  scene: Scene,
  hand: 'right' | 'left',
): FaceStudy {
  const delivery: Delivery = { ...usualDelivery(strikes, clubhead), ...given, hand };
  const at = (name: string, toe: number, high: number): OffCentre => {
    const strikeOffset = { toe: millimetres(toe), high: millimetres(high) };
    return { name, shot: playShot({ ...delivery, strikeOffset }, scene, { clubhead }) };
  };
  const advice = adviceOn(shots, scene, { clubhead });
  const map = faceMap(delivery, scene, { ...REACH, clubhead, columns: 33, rows: 19 });
  // The grid comes within a few centimetres of the place where it carries furthest.
  const lost = (offset: StrikeOffset): Length =>
    si(
      Math.max(
        0,
        map.longest.carry - playShot({ ...delivery, strikeOffset: offset }, scene, { clubhead }).carry,
      ),
    );
  return {
    shots,
    strikes: strikes.map((strike) => ({ ...strike, carryLost: lost(strike.offset) })),
    unplaced,
    ...(advice && { advice }),
    clubhead,
    scene,
    hand,
    delivery,
    map,
    ...(strikes.length > 0 && {
      report: judgePattern(
        strikes.map(({ offset }) => offset),
        delivery,
        scene,
        { clubhead },
      ),
    }),
    offCentre: [
      at('centre', 0, 0),
      at('10 mm toward the toe', 10, 0),
      at('20 mm toward the toe', 20, 0),
      at('10 mm toward the heel', -10, 0),
      at('20 mm toward the heel', -20, 0),
      at('10 mm high', 0, 10),
      at('10 mm low', 0, -10),
    ],
  };
}

/** The middle of the located deliveries. */
function usualDelivery(strikes: readonly FaceStrike[], clubhead: Clubhead): Delivery {
  const all = strikes.flatMap(({ located }) => (located === undefined ? [] : [located.delivery]));
  const middle = <Q extends number>(of: (delivery: Delivery) => Q | undefined, otherwise: Q): Q => {
    const values = sort(all.flatMap((delivery) => of(delivery) ?? []));
    return values[Math.floor(values.length / 2)] ?? otherwise;
  };
  return {
    clubSpeed: middle((d) => d.clubSpeed, mph(95)),
    attackAngle: middle((d) => d.attackAngle, degrees(0)),
    clubPath: middle((d) => d.clubPath, degrees(0)),
    faceAngle: middle((d) => d.faceAngle, degrees(0)),
    dynamicLoft: middle((d) => d.dynamicLoft, si<Angle>(clubhead.staticLoft + degrees(3))),
  };
}
