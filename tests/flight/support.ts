import fc from 'fast-check';
import { expect } from 'vitest';
import type { Air, Launch, Scene } from '../../src/index.js';
import { degrees, fly, metres, metresPerSecond } from '../../src/index.js';
import { flyReference } from '../../src/reference.js';
import { kilogramsPerCubicMetre, pascalSeconds, radians, radiansPerSecond } from '../../src/units/index.js';
import { even } from '../even.js';

/** Air as in the peers' work item: 1.225 kg/m³, 1.81e-5 Pa s. */
export const denseAir: Air = { density: kilogramsPerCubicMetre(1.225), viscosity: pascalSeconds(1.81e-5) };
export const noAir: Air = { density: kilogramsPerCubicMetre(0), viscosity: pascalSeconds(1.81e-5) };

/** Launches over the whole domain: 12–110 m/s, spin ratio at launch up to 2.5. */
export const anyLaunch: fc.Arbitrary<Launch> = fc
  .record({
    speed: even(12, 110),
    angle: even(-5, 60),
    direction: even(-20, 20),
    spinRatio: even(0, 2.5),
    tilt: even(-60, 60),
  })
  .map(({ speed, angle, direction, spinRatio, tilt }) => ({
    ballSpeed: metresPerSecond(speed),
    launchAngle: degrees(angle),
    launchDirection: degrees(direction),
    spinRate: radiansPerSecond(Math.min(2100, (spinRatio * speed) / 0.021335)),
    spinAxisTilt: degrees(tilt),
  }));

/** Scenes over the whole domain: thin to dense air, strong winds, slopes, long drops. */
export const anyScene: fc.Arbitrary<Scene> = fc
  .record({
    density: even(0.6, 1.45),
    along: even(-20, 20),
    across: even(-20, 20),
    elevation: even(-200, 5),
    slope: even(-0.1, 0.1),
    crossSlope: even(-0.1, 0.1),
  })
  .map(({ density, along, across, elevation, slope, crossSlope }) => ({
    air: { density: kilogramsPerCubicMetre(density), viscosity: pascalSeconds(1.8e-5) },
    wind: { along: metresPerSecond(along), across: metresPerSecond(across) },
    ground: { elevation: metresOf(elevation), slope: radians(slope), crossSlope: radians(crossSlope) },
  }));

function metresOf(value: number): NonNullable<NonNullable<Scene['ground']>['elevation']> {
  return value as NonNullable<NonNullable<Scene['ground']>['elevation']>;
}

/** Distance between the ends of two flights, and of their greatest heights [m]; by default at the default tolerance. */
export function missOf(launch: Launch, scene: Scene, tolerance?: number): number {
  const own =
    tolerance === undefined ? fly(launch, scene) : fly(launch, scene, { tolerance: metres(tolerance) });
  const judge = flyReference(launch, scene);
  expect(own.ended).toBe(judge.ended);
  const a = own.landing.position;
  const b = judge.landing.position;
  return Math.max(Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z), Math.abs(own.apex - judge.apex));
}
