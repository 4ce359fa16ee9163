import { airAtAltitude } from '../../src/air/index.js';
import { bestLoft } from '../../src/optimum/index.js';
import type { Scene } from '../../src/scene/index.js';
import type { MeasuredShot } from '../../src/session/index.js';
import { strike } from '../../src/strike/index.js';
import { type AngularSpeed, celsius, degrees, metres, mph, type Speed, si } from '../../src/units/index.js';

/** What a fitter or coach would change. */
export type Expected = 'more loft' | 'less loft' | 'hitting up' | 'strike';

/** A player of our invention, and what a fitter would say to these shots. */
export interface AdvicePlayer {
  readonly who: string;
  /** Club speed [mph], attack angle and dynamic loft [°]; `fits` for the loft that is best at this attack angle. */
  readonly speed: number;
  readonly attack: number;
  readonly loft: number | 'fits';
  /** Ball speed and spin over those of a centred strike; default 0.985 and 1. */
  readonly share?: number;
  readonly spin?: number;
  readonly where?: string;
  readonly scene?: Scene;
  readonly maximise?: 'total';
  readonly expected: readonly Expected[];
  readonly why: string;
  /** Why the library says something else; absent where it says the same. */
  readonly differs?: string;
}

/** Drives of a player, fourteen of them, wobbling about the model's own strike. */
export function drivesOf({ speed, attack, loft, share = 0.985, spin = 1 }: AdvicePlayer): MeasuredShot[] {
  const wobble = (i: number, k: number): number => Math.sin(1.7 * i * (k + 1) + k * k);
  const swing = { clubSpeed: mph(speed), attackAngle: degrees(attack) };
  const dynamicLoft = loft === 'fits' ? bestLoft(swing).dynamicLoft : degrees(loft);
  const { launch } = strike({ ...swing, dynamicLoft });
  return Array.from({ length: 14 }, (_, i) => ({
    clubSpeed: mph(speed + 1.2 * wobble(i, 1)),
    attackAngle: degrees(attack + wobble(i, 2)),
    ballSpeed: si<Speed>(launch.ballSpeed * share * (1 + 0.012 * wobble(i, 3))),
    launchAngle: si(launch.launchAngle + degrees(1.2 * wobble(i, 4))),
    spinRate: si<AngularSpeed>(launch.spinRate * spin * (1 + 0.08 * wobble(i, 5))),
  }));
}

/** The twelve, slowest first. What a fitter expects is common practice, without a source that could be checked. */
export const players: readonly AdvicePlayer[] = [
  {
    who: 'Senior',
    speed: 60,
    attack: -1,
    loft: 13,
    expected: ['more loft', 'hitting up'],
    why: 'A slow ball falls out of the air: it wants to leave at 15° and more.',
    differs:
      'loft alone. With two degrees more of it, hitting up brings a yard: it takes away spin, which a slow ball needs to stay up.',
  },
  {
    who: 'Club player who hits down',
    speed: 78,
    attack: -3,
    loft: 12,
    expected: ['more loft', 'hitting up'],
    why: 'Launches low; teed higher and hit on the way up it flies further.',
    differs:
      'loft alone, for the same reason as the senior. Once the loft fits, hitting up is worth having, as the steep player shows.',
  },
  {
    who: 'Steep player, loft fitted',
    speed: 94,
    attack: -5,
    loft: 'fits',
    expected: ['hitting up'],
    why: 'No loft mends a swing that comes down; the swing does.',
  },
  {
    who: 'Low-spin ball or head',
    speed: 95,
    attack: 0,
    loft: 13,
    spin: 0.62,
    expected: ['more loft'],
    why: 'The ball drops early. More loft brings launch and spin; the strike is sound.',
  },
  {
    who: 'Links player',
    speed: 95,
    attack: 0,
    loft: 17,
    where: 'firm turf, for total',
    scene: { turf: 'firm' },
    maximise: 'total',
    expected: ['less loft'],
    why: 'On firm ground a lower ball runs.',
    differs:
      'hitting up as well, since less spin runs further on firm ground. A fitter would change the loft first and look again.',
  },
  {
    who: 'Mountain player',
    speed: 98,
    attack: 0,
    loft: 11,
    where: '2,200 m, 20 °C',
    scene: { air: airAtAltitude({ altitude: metres(2200), temperature: celsius(20) }) },
    expected: ['more loft', 'hitting up'],
    why: 'Thin air gives less lift: launch it higher than at the sea.',
    differs:
      'loft alone. This ball leaves too low and with too little spin for thin air, and hitting up would take more of it.',
  },
  {
    who: 'Strikes off the centre',
    speed: 100,
    attack: 2,
    loft: 'fits',
    share: 0.93,
    expected: ['strike'],
    why: 'Ball speed is what is lost: a smash factor of 1.38 where 1.48 is there to be had.',
    differs:
      'the strike first, and hitting up as well, by less. A coach would mend the strike alone and look again.',
  },
  {
    who: 'Into the wind',
    speed: 105,
    attack: 0,
    loft: 18,
    where: 'headwind of 9 m/s',
    scene: { wind: { along: si<Speed>(-9), across: si<Speed>(0) } },
    expected: ['less loft'],
    why: 'A high, spinning ball balloons.',
    differs:
      'hitting up as well, which takes spin off too. Whoever meets this wind on one day only changes neither.',
  },
  {
    who: 'Too much loft',
    speed: 108,
    attack: 3,
    loft: 19,
    expected: ['less loft'],
    why: 'Launches far above 14° with spin to spare.',
  },
  {
    who: 'Tour player',
    speed: 113,
    attack: -1.3,
    loft: 12.8,
    expected: [],
    why: 'Left alone: a flat strike is what this player keeps in play.',
    differs:
      'hitting up is worth 4 yd. That counts distance alone: with a hole given, strokes are counted too.',
  },
  {
    who: 'Fast and steep',
    speed: 125,
    attack: -3,
    loft: 'fits',
    expected: ['hitting up'],
    why: 'At this speed every degree up is worth yards.',
  },
  {
    who: 'Long driver',
    speed: 138,
    attack: 6,
    loft: 'fits',
    expected: [],
    why: 'Already hits up with little spin.',
  },
];
