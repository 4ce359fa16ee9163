import fc from 'fast-check';
import { expect, test } from 'vitest';
import { loadBatchKernel } from '../../src/batch.js';
import { disperse } from '../../src/dispersion/index.js';
import {
  bestLoft,
  degrees,
  type FlightColumns,
  flightEndings,
  fly,
  flyMany,
  metres,
  mph,
  playShot,
  rpm,
  toMetres,
} from '../../src/index.js';
import { flyReference } from '../../src/reference.js';
import { resolveScene } from '../../src/scene/scene.js';
import { shotSettings } from '../../src/shot/shot-options.js';
import { createWalk } from '../../src/shot/walk.js';
import { even } from '../even.js';

const top = { ballSpeed: mph(160), launchAngle: degrees(-3), spinRate: rpm(2600) };

test('a topped shot has no carry, no run and no hop, and says so in words', () => {
  fc.assert(
    fc.property(even(20, 190), even(-20, -0.01), even(0, 6000), (speed, angle, spin) => {
      const shot = playShot({ ballSpeed: mph(speed), launchAngle: degrees(angle), spinRate: rpm(spin) });
      expect(shot.flight.ended).toBe('topped');
      expect('run' in shot).toBe(false);
      expect([shot.carry, shot.total, shot.side]).toEqual([0, 0, 0]);
      expect(shot.warnings.filter(({ quantity }) => quantity === 'ended')).toHaveLength(1);
    }),
    { numRuns: 50 },
  );
});

test('every engine calls it so', async () => {
  const kernel = await loadBatchKernel();
  const columns = {
    ballSpeed: Float64Array.of(top.ballSpeed, top.ballSpeed, 60),
    launchAngle: Float64Array.of(top.launchAngle, 0.2, 0.2),
    spinRate: Float64Array.of(top.spinRate, top.spinRate, 0),
  };
  const endings = ({ ended }: FlightColumns) => [...ended].map((code) => flightEndings[code]);
  const ended = ['topped', 'landed', 'landed'];
  expect(endings(flyMany(columns))).toEqual(ended);
  expect(endings(flyMany(columns, {}, { kernel }))).toEqual(ended);
  expect(flyReference(top).ended).toBe('topped');
  expect(fly(top, {}, { tolerance: metres(1e-8) }).ended).toBe('topped');
});

test('no search and no cloud gains by it', () => {
  const walk = createWalk(resolveScene({}), shotSettings({}));
  expect(walk.play(top, true)).toMatchObject({ landed: false, total: 0 });
  const best = bestLoft(
    { clubSpeed: mph(60), attackAngle: degrees(-8) },
    {},
    { maximise: 'total', minimumDescentAngle: degrees(0) },
  );
  expect(best.shot.flight.ended).toBe('landed');
  // A cloud in which about a third of the shots is topped: they rest where they lay.
  const cloud = disperse(
    {
      launch: { ...top, launchAngle: degrees(1) },
      spread: { kind: 'normal', sd: { launchAngle: degrees(2) } },
    },
    {},
    { shots: 512 },
  );
  const still = cloud.columns.total.filter((total) => total === 0).length;
  expect(still / cloud.shots).toBeGreaterThan(0.25);
  expect(toMetres(Math.max(...cloud.columns.total) as never)).toBeGreaterThan(150);
  expect(cloud.warnings.find(({ warning }) => warning.quantity === 'ended')?.shots).toBe(still);
});

test('half a metre up on a tee it is an ordinary flight, with a run', () => {
  const shot = playShot(top, { ground: { elevation: metres(-0.5) } });
  expect(shot.flight.ended).toBe('landed');
  expect(shot.run?.distance).toBeGreaterThan(0);
});
