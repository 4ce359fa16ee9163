import type { CompiledLaw } from '../aerodynamics/compiled-law.js';
import { fittedLaw } from '../aerodynamics/fitted-modern.js';
import type { FlightProblem } from '../flight/problem.js';
import { flightText } from './wgsl/flight.js';
import { fittedLawText, tableLawText } from './wgsl/law.js';
import { type InputKind, problemText } from './wgsl/problem.js';
import { TRIGONOMETRY_WGSL } from './wgsl/trigonometry.js';
import { windText } from './wgsl/wind.js';

/** What of a flight a kernel can write, the flags a whole number, each other one of single precision. @internal */
export const QUANTITIES = {
  flags: 'end.ended | (end.outsideData << 2u)',
  x: 'end.position.x',
  y: 'end.position.y',
  z: 'end.position.z',
  vx: 'end.velocity.x',
  vy: 'end.velocity.y',
  vz: 'end.velocity.z',
  landingSpin: 'end.spin',
  hangTime: 'end.time',
  apex: 'end.apex',
  apexAt: 'end.apexAt',
  spinAxisX: 'end.axis.x',
  spinAxisY: 'end.axis.y',
  spinAxisZ: 'end.axis.z',
  carry: 'length(end.position.xz)',
  side: 'end.position.z',
  curve: 'end.position.z * p.direction.y - end.position.x * p.direction.x',
  descentAngle: 'arcTangent(-end.velocity.y, length(end.velocity.xz))',
} as const;

/** Name of such a number. @internal */
export type Quantity = keyof typeof QUANTITIES;

/** Flights of a group, which run together. @internal */
export const GROUP = 64;

/** How a kernel finds what a scene's ball and wind do. @internal */
export function flightsText(
  problem: FlightProblem,
  law: CompiledLaw | undefined,
  kinds: readonly InputKind[],
): string {
  const profile = problem.profile?.kind ?? 'uniform';
  return [
    problemText(kinds, problem.model.spinEntering === 'across'),
    TRIGONOMETRY_WGSL,
    law === undefined ? fittedLawText() : tableLawText(law.reynoldsForm),
    windText(profile),
    flightText(profile !== 'uniform'),
  ].join('\n');
}

/** The law a kernel has to read from a table; undefined for the default, which is written out. @internal */
export function isWrittenOut(problem: FlightProblem): boolean {
  return problem.model === fittedLaw;
}

/** A kernel that writes a column of every quantity. @internal */
export function columnsText(flights: string, quantities: readonly Quantity[]): string {
  const lines = quantities.map(
    (name, k) =>
      `results[${k}u * scene.counts.x + i] = ${name === 'flags' ? QUANTITIES.flags : `bitcast<u32>(${QUANTITIES[name]})`};`,
  );
  return `${flights}
@group(0) @binding(2) var<storage, read_write> results: array<u32>;

@compute @workgroup_size(${GROUP})
fn main(@builtin(global_invocation_id) at: vec3u) {
  let i = at.x;
  if (i >= scene.counts.x) { return; }
  let p = problemOf(i);
  let end = flight(p);
  ${lines.join('\n  ')}
}
`;
}
