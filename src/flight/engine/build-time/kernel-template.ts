import { NEAR_KINK, WIND_HEAD } from '../shear.js';
import { constant, decide } from './decisions.js';
import { namesGiven, namesRead } from './expression.js';
import { javascriptBlock, javascriptLines, namedWeights } from './javascript-step.js';
import { KERNEL_PARAMETERS, KERNEL_RESULTS, TRACK_FIELDS } from './kernel-layout.js';
import {
  crestOfStep,
  onQuintic,
  QUINTIC_WEIGHTS,
  quintic,
  rootOfQuintic,
  SLOPE_WEIGHTS,
  slopeOnQuintic,
  topOfQuintic,
} from './kernel-quintics.js';
import {
  displacementEnd,
  errorNorms,
  firstStage,
  LATER_STAGES,
  laterStage,
  velocityEnd,
} from './step-formulas.js';

const FIELDS = TRACK_FIELDS.length;

/** Appends the node to the track, where that has room. */
const KEEP_NODE = `
if (${FIELDS} * nodes + ${FIELDS} <= track.length) {
  const at = ${FIELDS} * nodes;
  ${TRACK_FIELDS.map((name, i) => `track[at + ${i}] = ${name};`).join(' ')}
}
nodes++;`;

/** Parameters and constants by their names, and where the flight stands: at its start. */
const START = (): string => `
${KERNEL_PARAMETERS.map((name, i) => `const ${name} = p[${i}]!;`).join('\n')}
const sheared = wind1 !== 0 || wind2 !== 0 || wind3 !== 0, wt = wind.cells, above32 = wind.above, bits = wind.bits;
${WIND_HEAD.map((name, i) => `const ${name} = wt[${i}]!;`).join('\n')}
const near = ${NEAR_KINK} * (kink - displaced);
${namedWeights().join('\n')}
const total = 1 - across, sloped = normal1 !== 0 || normalWind !== 0 || normal2 !== up2 || normal3 !== up3;
let a = a0, b = b0, c = c0, w = w0, A = 0, B = 0, C = 0, t = 0;
let height = height0, climb = normal1 * a + normal2 * b + normal3 * c + normalWind, y = 0, vy = up2 * b + up3 * c;
// The node before this one, and the step between them.
let pa = 0, pb = 0, pc = 0, pA = 0, pB = 0, pC = 0, pka = 0, pkb = 0, pkc = 0, pHeight = 0, pClimb = 0, pFall = 0, ph = 0;
let next = firstStep, aimed = false, aloft = false, landed = false, ended = false, apexInside = false;
let apex = 0, apexA = 0, apexB = 0, apexC = 0, apexT = 0;
let slowest = 1e300, fastest = 0, leastSpin = 1e300, mostSpin = 0;
let attempts = 0, nodes = 0;`;

/** At a node: derivatives, ranges seen, and the top of the step before where that passed one. */
const AT_NODE = (): string => `
if (sheared) aloft = ${decide('isAloft', 'height', 'climb', 'kink', 'near')};
${javascriptLines(firstStage()).join('\n')}
if (u0 < slowest) slowest = u0;
if (u0 > fastest) fastest = u0;
if (x0 < leastSpin) leastSpin = x0;
if (x0 > mostSpin) mostSpin = x0;
const fall = normal1 * ka0 + normal2 * kb0 + normal3 * kc0;
let da = ka0, db = kb0, dc = kc0;
if (apexInside) {
  apexInside = false;
  ${quintic('up2 * pB + up3 * pC', 'up2 * pb + up3 * pc', 'up2 * pkb + up3 * pkc', 'y', 'vy', 'up2 * kb0 + up3 * kc0')}
  ${topOfQuintic()}
  ${QUINTIC_WEIGHTS}
  const topB = ${onQuintic('B', 'b')}, topC = ${onQuintic('C', 'c')}, top = up2 * topB + up3 * topC;
  if (top > apex) { apex = top; apexT = t - ph + x * ph; apexA = ${onQuintic('A', 'a')}; apexB = topB; apexC = topC; }
}`;

/** Where the step before was aimed at the ground, or went through it: lands on its quintic, or steps onto the ground. */
const MEET_GROUND = (): string => `
let h = ${decide('withinTime', 'next', 't', 'timeLimit')}, toGround = false;
if (!landed && !ended && (aimed || height < 0)) {
  ${quintic('pHeight', 'pClimb', 'pFall', 'height', 'climb', 'fall')}
  ${rootOfQuintic('pHeight', 'height')}
  const miss = (x - 1) * ph;
  if (!${decide('believesRoot', 'x')}) return OUTSIDE;
  if ${decide('landsOnQuintic', 'miss', 'ph', 'restepApex !== 0')} {
    ${QUINTIC_WEIGHTS}
    ${SLOPE_WEIGHTS}
    const endA = ${onQuintic('A', 'a')}, endB = ${onQuintic('B', 'b')}, endC = ${onQuintic('C', 'c')};
    const enda = ${slopeOnQuintic('A', 'a')}, endb = ${slopeOnQuintic('B', 'b')}, endc = ${slopeOnQuintic('C', 'c')};
    const gone = miss / ph;
    da += gone * (ka0 - pka); db += gone * (kb0 - pkb); dc += gone * (kc0 - pkc);
    A = endA; B = endB; C = endC; a = enda; b = endb; c = endc; w += miss * kw0; t += miss;
    height = 0; landed = true;
  } else if ${decide('stepsOntoGround', 'height', 'miss', 'next')} { toGround = true; h = miss; }
}`;

/** The end of the flight, on the ground or at the time limit. */
const END = `
if (landed) {
  // A step onto the ground misses it by microseconds: second-order Taylor over that time.
  const dt = -height / climb;
  A += dt * (a + 0.5 * dt * ka0); B += dt * (b + 0.5 * dt * kb0); C += dt * (c + 0.5 * dt * kc0);
  a += dt * ka0; b += dt * kb0; c += dt * kc0; w += dt * kw0; t += dt;
  if (t > timeLimit) return OUTSIDE;
}
// A node under the ground, to be stepped back from, is none of the flight.
if (!(toGround && h < 0)) {
  ${KEEP_NODE}
}
if (landed || ended) {
  y = up2 * B + up3 * C;
  if (y > apex) { apex = y; apexA = A; apexB = B; apexC = C; apexT = t; }
  ${KERNEL_RESULTS.map((name, i) => `out[${i}] = ${name};`).join('\n')}
  return landed ? LANDED : TIME_LIMIT;
}`;

/** Above the kink of a wind that changes with height: no step passes too many lengths of the law, nor the kink. */
const TOWARDS_KINK_FROM_ABOVE = (): string => `
const above = height - displaced;
if (climb > 0) h = Math.min(h, ${decide('timeToGrade', 'above', 'climb')});
if (climb < 0 || ${decide('nearsGround', 'h', 'climb', 'fall')}) {
  const drop = height - ${decide('lowestTarget', 'kink', 'displaced', 'above')}, toGo = climb < 0 ? ${decide('timeToFall', 'drop', 'climb', 'fall')} : ${decide('timeToGround', 'drop', 'climb', 'fall')};
  if (toGo > 0) h = ${decide('stepTowardsKink', 'h', 'toGo')};
}`;

/** Where an attempt went through the kink: it is made again, to end there. */
const MEET_KINK = (): string => `
if (sheared) {
  const past = heightN - kink;
  if (aloft ? past < -near : past > near) {
    const shorter = h - past / climbN;
    if (!(shorter > 0 && shorter < h)) return OUTSIDE;
    h = shorter; aimed = false;
    continue;
  }
  // A ball that tops out just under the kink may have passed it in between.
  if (!aloft && climb > 0 && climbN <= 0 && ${decide('mayPass', 'kink - height', 'climb', 'fall')}) return OUTSIDE;
}`;

/** The size of the next step. */
const CHOOSE_STEP = (): string => `
aimed = false;
const ay = up2 * kb0 + up3 * kc0, whole = h;
if (!toGround) {
  const kk = ka0 * ka0 + kb0 * kb0 + kc0 * kc0;
  h = ${decide('withoutTurning', 'h', 'uu0', 'kk')};
  h = ${decide('seenRising', 'h', 'vy', 'ay')};
  if (aloft) {
    ${TOWARDS_KINK_FROM_ABOVE()}
  } else if (sheared && ${decide('risesTo', 'kink - height', 'climb', 'fall')}) {
    h = Math.min(h, ${decide('timeToRise', 'kink - height', 'climb', 'fall')});
  } else if ${decide('nearsGround', 'h', 'climb', 'fall')} {
    const toGo = ${decide('timeToGround', 'height', 'climb', 'fall')};
    if (toGo > 0 && t + toGo < timeLimit) {
      aimed = ${decide('aimsAtGround', 'h', 'toGo')};
      h = ${decide('stepTowardsGround', 'h', 'toGo')};
    }
  }
}
// A step cut short for the wind's law says nothing of how far the next may go.
let cut = sheared && h < whole;`;

/** Judges an attempt in the air; sets the size of the step after it. */
const JUDGE = (): string => `
${javascriptLines(errorNorms()).join('\n')}
const factor = ${decide('stepFactor', 'wanted * ease')}, ease2 = ease * ease, most = ease2 * ease2 * ease2 * ease2;
if (!(error <= most)) {
  if (!(error > most)) return OUTSIDE;
  h *= factor; aimed = cut = false;
  continue;
}
${MEET_KINK()}
if ${decide('hidesLanding', 'height', 'climb', 'vy', 'heightN', 'climbN', 'aimed', 'sloped')} return OUTSIDE;
next = cut ? Math.max(next, h * factor) : h * factor;
if ${decide('passesTop', 'vy', 'vyn')} {
  if (restepApex !== 0) {
    ${crestOfStep()}
    if ${decide('endsAtTop', 'at')} { h *= at; aimed = false; cut = true; continue; }
  }
  apexInside = true;
}`;

/** The later stages, each a block that leaves behind what the stages after it and the end of the step read. */
function stageBlocks(): string[] {
  const stages = LATER_STAGES.map(laterStage);
  const end = [...velocityEnd(), ...displacementEnd(), ...errorNorms()];
  return stages.flatMap((stage, n) => {
    const read = new Set([...stages.slice(n + 1).flat(), ...end].flatMap(namesRead));
    return javascriptBlock(
      stage,
      stage.flatMap(namesGiven).filter((name) => read.has(name)),
    );
  });
}

/** Tries steps until one is kept, ending at the top and on the ground where they are to go there. */
const STEP = (): string => `
for (;;) {
  attempts++;
  if ${decide('givesUp', 'attempts', 'h')} return OUTSIDE;
  let span = h, grade = 0, ease = 1;
  if (aloft) {
    const above = height - displaced;
    grade = ${decide('gradeOfStep', 'above', 'h * (climb + 0.5 * h * fall)')};
    span = ${decide('spanOfStep', 'h', 'grade')};
    ease = ${decide('easeOfStep', 'grade')};
  }
  ${stageBlocks().join('\n')}
  ${javascriptLines([...velocityEnd(), ...displacementEnd()]).join('\n')}
  const yn = up2 * Bn + up3 * Cn, vyn = up2 * bn + up3 * cn;
  const heightN = height + normal1 * (An - A) + normal2 * (Bn - B) + normal3 * (Cn - C) + normalWind * h;
  const climbN = normal1 * an + normal2 * bn + normal3 * cn + normalWind;
  if (toGround) {
    if (!(climbN < 0)) return OUTSIDE;
    const miss = heightN / climbN;
    if (Math.abs(miss) > ${constant('ON_GROUND_WITHIN')}) { h -= miss; continue; }
    landed = true;
  } else {
    ${JUDGE()}
  }
  pa = a; pb = b; pc = c; pA = A; pB = B; pC = C; ph = h;
  a = an; b = bn; c = cn; w = wn; A = An; B = Bn; C = Cn;
  pHeight = height; pClimb = climb; height = heightN; climb = climbN;
  break;
}
t += ph;
pka = ka0; pkb = kb0; pkc = kc0; pFall = fall;
y = up2 * B + up3 * C; vy = up2 * b + up3 * c;
if (t >= timeLimit && !landed && height >= 0) { ended = true; t = timeLimit; }`;

/** The whole text of the scalar kernel. */
export function kernelText(): string {
  const endings = (['LANDED', 'TIME_LIMIT', 'OUTSIDE'] as const).map(
    (name) => `const ${name} = ${constant(name)};`,
  );
  return `// Written by build-time/kernel-template.ts (npm run generate); edit that, not this: not in version control.
// Unrolled because loops over stages cost three times as much.

import type { WindTable } from './shear.js';

${endings.join(' ')}

/** Numbers in a flight's parameters and results, and in a node of its track. */
export const PARAMETERS = ${KERNEL_PARAMETERS.length};
export const RESULTS = ${KERNEL_RESULTS.length};
export const NODE_NUMBERS = ${FIELDS};
/** Results that the batch gives as well; the number of nodes comes next. */
export const BATCH_RESULTS = ${KERNEL_RESULTS.indexOf('nodes')};

/**
 * One flight with a compiled coefficient law: parameters in \`p\`, constants of the method in \`k\`, tables
 * \`st\` (a cell of S), \`rt\` (a cell of Re) and \`wind\` (where it changes with height), results in \`out\` (until then the climb at each stage of a step), nodes in \`track\` (${FIELDS} numbers each) where
 * that has room. Returns LANDED, TIME_LIMIT or OUTSIDE; allocates nothing.
 */
export function flyKernel(p: Float64Array, k: Float64Array, st: Float64Array, rt: Float64Array, wind: WindTable, out: Float64Array, track: Float64Array): number {
${START()}
for (;;) {
${AT_NODE()}
${MEET_GROUND()}
${END}
${CHOOSE_STEP()}
${STEP()}
}
}
`;
}
