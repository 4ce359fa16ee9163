import { drawConditions, drawLaunches } from '../../bench/gpu/draws.js';
import {
  type ConditionColumns,
  degrees,
  type LaunchColumns,
  type MapQuestion,
  metres,
  metresPerSecond,
  rpm,
  type Scene,
} from '../../src/index.js';
import { scaledModel } from '../../src/models.js';
import type { Design } from '../../src/sweep/index.js';

/** Flights that both the card and the processor fly. */
export interface Case {
  readonly name: string;
  readonly launches: LaunchColumns;
  readonly scene: Scene;
  readonly conditions?: ConditionColumns;
}

const breeze = { along: metresPerSecond(6), across: metresPerSecond(-4) };

export const cases: readonly Case[] = [
  { name: 'calm', launches: drawLaunches(256), scene: {} },
  {
    name: 'conditions by the row',
    launches: drawLaunches(256),
    scene: {},
    conditions: {
      ...drawConditions(256),
      dragScale: new Array(256).fill(1.1),
      liftScale: new Array(256).fill(0.9),
    },
  },
  {
    name: 'a slope and a raised green',
    launches: drawLaunches(128),
    scene: { ground: { elevation: metres(2), slope: degrees(3), crossSlope: degrees(-2) }, wind: breeze },
  },
  {
    name: 'a logarithmic wind',
    launches: drawLaunches(128),
    scene: {
      wind: { ...breeze, profile: { kind: 'log', roughness: metres(0.03), displacement: metres(0.2) } },
    },
  },
  {
    name: 'a wind by a power law',
    launches: drawLaunches(128),
    scene: { wind: { ...breeze, profile: { kind: 'power', exponent: 0.15, referenceHeight: metres(5) } } },
  },
  {
    name: 'a ball from its table',
    launches: drawLaunches(128),
    scene: { aerodynamics: scaledModel('fitted-modern', { drag: 0.95, lift: 1.05 }) },
  },
  {
    name: 'no spin, rifle spin, straight up, along the ground and into it',
    launches: {
      ballSpeed: [60, 60, 60, 30, 50, 50, 3, 1],
      launchAngle: [0.2, 0.2, 0, Math.PI / 2, 0, -0.1, 0.5, 1.2],
      spinRate: [0, 300, 0, 200, 300, 200, 0, 100],
      rifleSpin: [0, 100, 200, 0, 0, 0, 0, 0],
      launchDirection: [0, 3, -3, 1, 0, 0, 0, 0],
      spinAxisTilt: [0, 3, -3, 1, 0, 0, 0, 0],
    },
    scene: {},
  },
];

export const question: MapQuestion = {
  ballSpeed: metresPerSecond(60),
  launchAngle: { min: degrees(3), max: degrees(35) },
  spinRate: { min: rpm(500), max: rpm(9000) },
};
export const mapSize = { columns: 12, rows: 20, withRun: true };

export const design: Design = {
  kind: 'sobol',
  count: 3000,
  seed: 7,
  factors: [
    { name: 'launch.ballSpeed', from: metresPerSecond(40), to: metresPerSecond(70) },
    { name: 'launch.launchAngle', from: degrees(-1), to: degrees(23) },
    { name: 'launch.spinRate', from: rpm(2000), to: rpm(8000) },
    { name: 'wind.along', from: metresPerSecond(-5), to: metresPerSecond(5) },
  ],
};
export const histogram = { from: 60, to: 220, bins: 16 };
