import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  bestLaunch,
  bestLoft,
  type Clubhead,
  clubheads,
  isFairflightError,
  type MaximisedDistance,
  type Scene,
  speedForCarry,
  type TurfName,
} from '../../src/index.js';
import { inferDynamicLoft } from '../../src/session/index.js';
import { anyOf } from '../even.js';

const between = (min: number, max: number) => anyOf(min, max) as fc.Arbitrary<never>;

const scene: fc.Arbitrary<Scene> = fc.record(
  {
    wind: fc.record({ along: between(-30, 30), across: between(-30, 30) }),
    ground: fc.record({
      elevation: between(-50, 50),
      slope: between(-0.3, 0.3),
      crossSlope: between(-0.3, 0.3),
    }),
    turf: fc.constantFrom<TurfName>('baked', 'firm', 'normal', 'soft', 'wet'),
    aerodynamics: fc.constantFrom('fitted-modern', 'smits-smith-1994'),
  },
  { requiredKeys: [] },
);
const common = {
  maximise: fc.constantFrom('carry' as const, 'total' as const),
  scene,
  clubhead: fc.constantFrom(...Object.values(clubheads)),
};

const options = ({
  maximise,
  clubhead,
}: {
  readonly maximise: MaximisedDistance;
  readonly clubhead: Clubhead;
}) => ({
  maximise,
  clubhead,
});

/** Every number in a record and in what it holds. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

/** The answer is finite, or a refusal that names a field. */
function expectSound(ask: () => unknown): void {
  let answer: unknown;
  try {
    answer = ask();
  } catch (error) {
    if (!isFairflightError(error)) throw error;
    expect(error.field).toBeDefined();
    return;
  }
  expect(numbersIn(answer).every(Number.isFinite)).toBe(true);
}

test('the best loft is finite or refused by name', () => {
  const question = fc.record({ ...common, clubSpeed: between(1, 90), attackAngle: between(-0.6, 0.6) });
  fc.assert(
    fc.property(question, (q) =>
      expectSound(() =>
        bestLoft({ clubSpeed: q.clubSpeed, attackAngle: q.attackAngle }, q.scene, options(q)),
      ),
    ),
    { numRuns: 60, endOnFailure: true },
  );
});

test('the best launch is finite or refused by name', () => {
  const question = fc.record({ ...common, ballSpeed: between(1, 110), attackAngle: between(-0.6, 0.6) });
  fc.assert(
    fc.property(question, (q) =>
      expectSound(() =>
        bestLaunch({ ballSpeed: q.ballSpeed, attackAngle: q.attackAngle }, q.scene, options(q)),
      ),
    ),
    { numRuns: 60, endOnFailure: true },
  );
});

test('the speed for a carry is finite or refused by name', () => {
  const { maximise: _, ...rest } = common;
  const question = fc.record({ ...rest, carry: between(1, 400), dynamicLoft: between(-0.1, 1.4) });
  fc.assert(
    fc.property(question, (q) =>
      expectSound(() =>
        speedForCarry(q.carry, q.scene, { clubhead: q.clubhead, dynamicLoft: q.dynamicLoft }),
      ),
    ),
    { numRuns: 100, endOnFailure: true },
  );
});

test('the loft delivered is finite or refused by name', () => {
  const measured = fc.record({
    launchAngle: between(-0.5, 1.5),
    attackAngle: between(-0.6, 0.6),
    clubSpeed: between(1, 90),
    spinRate: between(0, 2100),
  });
  fc.assert(
    fc.property(measured, common.clubhead, (m, head) =>
      expectSound(() => inferDynamicLoft(m, { clubhead: head })),
    ),
    { numRuns: 500 },
  );
});
