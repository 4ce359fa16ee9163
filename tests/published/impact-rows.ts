import {
  type Clubhead,
  clubheads,
  degrees,
  metresPerSecond,
  millimetres,
  mph,
  strike,
  toDegrees,
  toMph,
  toRpm,
} from '../../src/index.js';
import { driverWith, flat, loftForLaunch, strikeB } from '../strike/helpers.js';
import averages from './data/impact-averages.json' with { type: 'json' };
import effects from './data/impact-effects.json' with { type: 'json' };

/** One published or quoted number beside the model's. */
export interface ImpactRow {
  readonly set: string;
  readonly quantity: string;
  readonly unit: string;
  readonly published: number;
  readonly model: number;
  readonly source: string;
}

const AVERAGES_SOURCE: Record<string, string> = {
  published: 'R&A and USGA, Overall Distance Standard; attack angle 0 assumed',
  'from memory': 'common practice, no source (from memory)',
};

/** Launch averages: the loft is solved for the quoted launch angle, ball speed and spin are then the model's own. */
export function averageRows(): ImpactRow[] {
  return averages.rows.flatMap((row) => {
    const head = clubheads[row.clubhead as keyof typeof clubheads];
    const loft = loftForLaunch(mph(row.clubSpeed), row.attackAngle, row.launchAngle, head);
    const hit = strike(
      {
        clubSpeed: mph(row.clubSpeed),
        attackAngle: degrees(row.attackAngle),
        dynamicLoft: degrees(loft),
      },
      head,
    );
    const source = AVERAGES_SOURCE[row.source] ?? row.source;
    return [
      {
        set: row.set,
        quantity: 'ball speed',
        unit: 'mph',
        published: row.ballSpeed,
        model: toMph(hit.launch.ballSpeed),
        source,
      },
      {
        set: row.set,
        quantity: 'spin rate',
        unit: 'rpm',
        published: row.spinRate,
        model: toRpm(hit.launch.spinRate),
        source,
      },
    ];
  });
}

/** A driver strike that sends the ball off at 67 m/s, `toe` mm toward the toe. */
function ball67(head: Clubhead, toe: number): number {
  const speed = 46;
  const hit = strike(
    {
      clubSpeed: metresPerSecond(speed),
      attackAngle: degrees(0),
      dynamicLoft: degrees(11),
      strikeOffset: { toe: millimetres(toe), high: millimetres(0) },
    },
    head,
  );
  return (toRpm(hit.sidespin) * 67) / hit.launch.ballSpeed;
}

function faceShare(head: Clubhead, speed: number, attack: number, loft: number): number {
  const open = 1;
  const hit = strike(
    {
      clubSpeed: mph(speed),
      attackAngle: degrees(attack),
      dynamicLoft: degrees(loft),
      faceAngle: degrees(open),
    },
    head,
  );
  return toDegrees(hit.launch.launchDirection ?? degrees(0)) / open;
}

function effect(id: string): number {
  const driver = clubheads.driver;
  const deep33 = driverWith({ centreOfGravity: { ...driver.centreOfGravity, depth: millimetres(33) } });
  switch (id) {
    case 'high-launch':
      return toDegrees(strikeB(0, 15).launch.launchAngle) - toDegrees(strikeB(0, 0).launch.launchAngle);
    case 'high-backspin':
      return toRpm(strikeB(0, 15).backspin) - toRpm(strikeB(0, 0).backspin);
    case 'toe-gear-flat':
      return -ball67(flat(deep33), 6.35) / 6.35;
    case 'toe-gear-net':
      return -ball67(driver, 6.35) / 6.35;
    case 'share-driver-upper':
      return faceShare(driver, 113, -1.3, 12.9);
    case 'share-wedge':
      return faceShare(clubheads.wedge, 83, -5, 34.7);
    case 'centre-lower': {
      const lower = driverWith({
        centreOfGravity: { ...driver.centreOfGravity, high: millimetres(-2.54) },
      });
      const at = (head: Clubhead) =>
        toRpm(
          strike({ clubSpeed: mph(100), attackAngle: degrees(0), dynamicLoft: degrees(12.9) }, head).backspin,
        );
      return at(lower) - at(driver);
    }
    default:
      throw new Error(`no model value for ${id}`);
  }
}

/** An effect size with the band the model must stay in. */
export interface EffectRow extends ImpactRow {
  readonly tolerance: number;
  readonly why: string;
}

/** Effect sizes, each computed with the generic driver unless it says otherwise. */
export function effectRows(): EffectRow[] {
  return effects.rows.map((row) => ({
    set: 'effect size',
    quantity: row.effect,
    unit: row.unit,
    published: row.published,
    model: effect(row.id),
    source: row.source,
    tolerance: row.tolerance,
    why: row.why,
  }));
}
