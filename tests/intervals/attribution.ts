import type { Stream } from '../../src/numerics/index.js';
import { attributeChange, type ChangeAttribution, type MeasuredShot } from '../../src/session/index.js';
import { degrees, mph, rpm, si } from '../../src/units/index.js';
import { holds, type Outcome, type Study } from './study.js';

interface Usual {
  readonly ball: number;
  readonly angle: number;
  readonly spin: number;
  readonly tilt: number;
}
const BEFORE: Usual = { ball: 145, angle: 12, spin: 2700, tilt: 0 };
const AFTER: Usual = { ball: 148, angle: 12.5, spin: 2600, tilt: 3 };

/** Invented drives about a usual one; of `mishits`, one in ten loses 10 to 30 % of its ball speed. */
function group(random: Stream, count: number, usual: Usual, mishits: boolean): MeasuredShot[] {
  const { normal, uniform } = random;
  return Array.from({ length: count }, (): MeasuredShot => {
    const loss = 0.1 + 0.2 * uniform();
    const kept = uniform() < 0.1 && mishits ? 1 - loss : 1;
    return {
      ballSpeed: si(kept * mph(usual.ball + 2 * normal())),
      launchAngle: degrees(usual.angle + normal()),
      launchDirection: degrees(2 * normal()),
      spinRate: rpm(usual.spin + 200 * normal()),
      spinAxisTilt: degrees(usual.tilt + 3 * normal()),
    };
  });
}

type Figures = Record<string, { readonly value: number; readonly low: number; readonly high: number }>;

function figuresOf({ carry }: ChangeAttribution): Figures {
  const { ballSpeed, launch, spinRate, spinAxis } = carry.causes;
  return { modelled: carry.modelled, ballSpeed, launch, spinRate, spinAxis };
}

/** The shares of groups so large that their scatter says no more. */
function truthOf(mishits: boolean, random: Stream): Figures {
  const many = 2000;
  return figuresOf(
    attributeChange(
      { before: group(random, many, BEFORE, mishits), after: group(random, many, AFTER, mishits) },
      {},
      { resamples: 100, pairs: many },
    ),
  );
}

/** Studies of `attributeChange`. */
export function attributionStudies(streamOf: (index: number) => Stream): readonly Study[] {
  const truths = new Map<boolean, Figures>();
  const truth = (mishits: boolean): Figures => {
    const known = truths.get(mishits) ?? truthOf(mishits, streamOf(Number(mishits)));
    truths.set(mishits, known);
    return known;
  };
  const kinds = [
    { count: 5, mishits: false },
    { count: 15, mishits: false },
    { count: 15, mishits: true },
  ];
  return kinds.map(
    ({ count, mishits }): Study => ({
      call: 'attributeChange',
      conditions: `${count} shots before and after, ${mishits ? 'one in ten a mishit' : 'normal'}`,
      stated: !mishits,
      draws: 1000,
      draw: (random) => {
        const found = figuresOf(
          attributeChange(
            { before: group(random, count, BEFORE, mishits), after: group(random, count, AFTER, mishits) },
            {},
            { resamples: 400, seed: random.integer(2 ** 30) },
          ),
        );
        return Object.fromEntries(
          Object.entries(found).map(([name, interval]): [string, Outcome[]] => [
            `change of carry, ${name === 'modelled' ? 'whole' : `by ${name}`}`,
            [holds(interval, truth(mishits)[name]?.value ?? Number.NaN)],
          ]),
        );
      },
    }),
  );
}
