import { KERNEL_PARAMETERS, KERNEL_RESULTS, kernelConstants, TRACK_FIELDS } from '../kernel-layout.js';
import {
  displacementEnd,
  errorNorms,
  firstStage,
  javascript,
  LATER_STAGES,
  laterStage,
  STAGES,
  velocityEnd,
} from './kernel-source.js';

const indent = (lines: readonly string[], by: number): string =>
  lines.map((line) => ' '.repeat(by) + line).join('\n');

// What follows stands in the kernel's text and is no function there: a call would put each number on the heap.

/** The quintic over the step before, from value, slope and curvature at both nodes: V0 x + F0 x² + c3 x³ + c4 x⁴ + c5 x⁵ above the first. */
const quintic = (y0: string, v0: string, f0: string, y1: string, v1: string, f1: string): string[] => [
  `const V0 = (${v0}) * ph, V1 = (${v1}) * ph, F0 = 0.5 * (${f0}) * ph * ph, F1 = 0.5 * (${f1}) * ph * ph, d = ${y1} - (${y0});`,
  'const c3 = 10 * d - 6 * V0 - 4 * V1 - 3 * F0 + F1, c4 = -15 * d + 8 * V0 + 7 * V1 + 3 * F0 - 2 * F1, c5 = 6 * d - 3 * V0 - 3 * V1 - F0 + F1;',
];

/** Where the parabola of climb from V0 > 0 with slope 2 F0 to V1 <= 0 falls through zero: a first guess of the top. */
const CREST = 'V0 / (Math.sqrt(Math.max(0, F0 * F0 - V0 * (V1 - V0 - 2 * F0))) - F0)';

/** Weights of the five data besides the first value at x on a quintic over the step before. */
const QUINTIC_WEIGHTS = [
  'const x3 = x * x * x, q1 = x3 * (10 + x * (6 * x - 15)), q2 = ph * (x + x3 * (x * (8 - 3 * x) - 6)), q3 = ph * x3 * (x * (7 - 3 * x) - 4);',
  'const q4 = 0.5 * ph * ph * (x * x + x3 * (x * (3 - x) - 3)), q5 = 0.5 * ph * ph * x3 * (1 + x * (x - 2));',
];

/** A displacement at x of those weights, from the nodes before and after. */
const onQuintic = (A: string, a: string): string =>
  `p${A} + (${A} - p${A}) * q1 + p${a} * q2 + ${a} * q3 + pk${a} * q4 + k${a}0 * q5`;

/** Weights of its slope and of its curvature there. */
const SLOPE_WEIGHTS = [
  'const xx = x * x, s1 = 30 * xx * (1 - x) * (1 - x) / ph, s2 = 1 + xx * (x * (32 - 15 * x) - 18), s3 = xx * (x * (28 - 15 * x) - 12);',
  'const s4 = ph * x * (1 + x * (x * (6 - 2.5 * x) - 4.5)), s5 = ph * xx * (1.5 + x * (2.5 * x - 4));',
];
const CURVATURE_WEIGHTS = [
  'const r1 = 60 * x * (1 - x) * (1 - 2 * x) / (ph * ph), r2 = x * (x * (96 - 60 * x) - 36) / ph, r3 = x * (x * (84 - 60 * x) - 24) / ph;',
  'const r4 = 1 + x * (x * (18 - 10 * x) - 9), r5 = x * (3 + x * (10 * x - 12));',
];

/** Slope (weights s) or curvature (r) of a displacement at x: a velocity, an acceleration. */
const derivative = (w: 's' | 'r', A: string, a: string): string =>
  `(${A} - p${A}) * ${w}1 + p${a} * ${w}2 + ${a} * ${w}3 + pk${a} * ${w}4 + k${a}0 * ${w}5`;

/** The whole text of the scalar kernel. */
export function kernelText(): string {
  const d = javascript;
  const results = (value: (name: string) => string): string[] =>
    KERNEL_RESULTS.map((name, i) => `out[${i}] = ${value(name)};`);
  const parameters = [
    ...KERNEL_PARAMETERS.map((name, i) => `const ${name} = p[${i}]!;`),
    ...Array.from(kernelConstants(), (_, i) => `const K${i} = k[${i}]!;`),
  ];
  const fields = TRACK_FIELDS.length;
  const keepNode = [
    `if (${fields} * nodes + ${fields} <= track.length) {`,
    `  const at = ${fields} * nodes;`,
    `  ${TRACK_FIELDS.map((name, i) => `track[at + ${i}] = ${name};`).join(' ')}`,
    '}',
  ];
  return `// Written by kernel-template.ts (npm run generate); edit that, not this: not in version control. Unrolled because loops over stages cost three times as much.

/** The flight ended on the ground. */
export const LANDED = 0;
/** The flight reached the time limit. */
export const TIME_LIMIT = 1;
/** The compiled law does not reach here, or the case is one for the general engine. */
export const OUTSIDE = 2;

const MAX_ATTEMPTS = 20000;

/**
 * One flight in uniform wind with a compiled coefficient law: parameters in \`p\`, constants of the method in \`k\`, tables \`st\` (8 numbers a cell of S)
 * and \`rt\` (4 a cell of Re), results in \`out\`, nodes in \`track\` (${TRACK_FIELDS.length} numbers each) where that has room. Returns LANDED, TIME_LIMIT or OUTSIDE; allocates nothing.
 */
export function flyKernel(p: Float64Array, k: Float64Array, st: Float64Array, rt: Float64Array, out: Float64Array, track: Float64Array): number {
${indent(parameters, 2)}
  const total = 1 - across, sloped = n1 !== 0 || nw !== 0 || n2 !== e2 || n3 !== e3y;
  let a = a0, b = b0, c = c0, w = w0, A = 0, B = 0, C = 0, t = 0;
  let height = height0, climb = n1 * a + n2 * b + n3 * c + nw, y = 0, vy = e2 * b + e3y * c;
  // The node before this one, and the step between them.
  let pa = 0, pb = 0, pc = 0, pA = 0, pB = 0, pC = 0, pka = 0, pkb = 0, pkc = 0, pHeight = 0, pClimb = 0, pFall = 0, ph = 0;
  let next = firstStep, aimed = false, landed = false, ended = false, apexInside = false;
  let apex = 0, apexA = 0, apexB = 0, apexC = 0, apexT = 0;
  let slowest = 1e300, fastest = 0, leastSpin = 1e300, mostSpin = 0;
  let attempts = 0, nodes = 0;
  for (;;) {
${indent(firstStage(d), 4)}
    if (u0 < slowest) slowest = u0;
    if (u0 > fastest) fastest = u0;
    if (x0 < leastSpin) leastSpin = x0;
    if (x0 > mostSpin) mostSpin = x0;
    const fall = n1 * ka0 + n2 * kb0 + n3 * kc0;
    let da = ka0, db = kb0, dc = kc0;
    if (apexInside) {
      apexInside = false;
${indent(quintic('e2 * pB + e3y * pC', 'e2 * pb + e3y * pc', 'e2 * pkb + e3y * pkc', 'y', 'vy', 'e2 * kb0 + e3y * kc0'), 6)}
      let x = ${CREST};
      for (let i = 0; i < 2; i++) x -= (V0 + x * (2 * F0 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5)))) / (2 * F0 + x * (6 * c3 + x * (12 * c4 + x * 20 * c5)));
${indent(QUINTIC_WEIGHTS, 6)}
      const topB = ${onQuintic('B', 'b')}, topC = ${onQuintic('C', 'c')}, top = e2 * topB + e3y * topC;
      if (top > apex) { apex = top; apexT = t - ph + x * ph; apexA = ${onQuintic('A', 'a')}; apexB = topB; apexC = topC; }
    }
    let h = t + next > timeLimit ? timeLimit - t : next, toGround = false;
    if (!landed && !ended && (aimed || height < 0)) {
${indent(quintic('pHeight', 'pClimb', 'pFall', 'height', 'climb', 'fall'), 6)}
      let x = 1 - height / V1;
      for (let i = 0; i < 12; i++) {
        const slope = V0 + x * (2 * F0 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5)));
        if (!(slope < 0)) return OUTSIDE;
        const step = (pHeight + x * (V0 + x * (F0 + x * (c3 + x * (c4 + x * c5))))) / slope;
        x -= step;
        if (step * step < 1e-12) break;
      }
      const miss = (x - 1) * ph;
      if (!(x > 0 && x < 1.5)) return OUTSIDE;
      if (miss * miss < (restepApex !== 0 ? 0.0016 : 0.01) * ph * ph) {
        // Close enough to the node for the quintic through both ends to carry the rest.
${indent(QUINTIC_WEIGHTS, 8)}
${indent(SLOPE_WEIGHTS, 8)}
${indent(CURVATURE_WEIGHTS, 8)}
        const endA = ${onQuintic('A', 'a')}, endB = ${onQuintic('B', 'b')}, endC = ${onQuintic('C', 'c')};
        const enda = ${derivative('s', 'A', 'a')}, endb = ${derivative('s', 'B', 'b')}, endc = ${derivative('s', 'C', 'c')};
        da = ${derivative('r', 'A', 'a')}; db = ${derivative('r', 'B', 'b')}; dc = ${derivative('r', 'C', 'c')};
        A = endA; B = endB; C = endC; a = enda; b = endb; c = endc; w += miss * kw0; t += miss;
        height = 0; landed = true;
      } else if (height < 0 || miss < 0.3 * next) { toGround = true; h = miss; }
    }
    if (landed || ended) {
      if (landed) {
        // A step onto the ground misses it by microseconds: second-order Taylor over that time.
        const dt = -height / climb;
        A += dt * (a + 0.5 * dt * ka0); B += dt * (b + 0.5 * dt * kb0); C += dt * (c + 0.5 * dt * kc0);
        a += dt * ka0; b += dt * kb0; c += dt * kc0; w += dt * kw0; t += dt;
        if (t > timeLimit) return OUTSIDE;
      }
${indent(keepNode, 6)}
      nodes++;
      y = e2 * B + e3y * C;
      if (y > apex) { apex = y; apexA = A; apexB = B; apexC = C; apexT = t; }
      const evaluations = nodes + ${STAGES - 1} * attempts;
${indent(
  results((name) => name),
  6,
)}
      return landed ? LANDED : TIME_LIMIT;
    }
    // A node under the ground, to be stepped back from, is none of the flight.
    if (!(toGround && h < 0)) {
${indent(keepNode, 6)}
      nodes++;
    }
    aimed = false;
    const ay = e2 * kb0 + e3y * kc0;
    // Within a step that turns the air velocity over, S may go through a peak that no stage meets.
    const kk = ka0 * ka0 + kb0 * kb0 + kc0 * kc0;
    if (!toGround && h * h * kk > uu0) h = Math.sqrt(uu0 / kk);
    // A ball that is lifted out of its fall must be seen rising, or its apex goes unnoticed within one step.
    if (!toGround && vy <= 0 && ay > 0) h = Math.min(h, Math.max(-1.5 * vy / ay, 0.1 * h));
    if (!toGround && fall < 0 && climb + 3 * h * fall < 0) {
      // Time to the ground on a parabola: the last step is aimed there.
      const toGo = (climb + Math.sqrt(climb * climb - 2 * fall * height)) / -fall;
      if (toGo > 0 && t + toGo < timeLimit) {
        if (toGo < 1.1 * h) { h = toGo; aimed = true; } else if (toGo < 2 * h) h = 0.5 * toGo;
      }
    }
    let toApex = false, ka = 0, kb = 0, kc = 0, kw = 0, kA = 0, kB = 0, kC = 0, kh = 0;
    for (;;) {
      if (++attempts > MAX_ATTEMPTS || h * h < 1e-24) return OUTSIDE;
${indent(
  LATER_STAGES.flatMap((i) => laterStage(d, i)),
  6,
)}
${indent([...velocityEnd(d), ...displacementEnd(d)], 6)}
      const yn = e2 * Bn + e3y * Cn, vyn = e2 * bn + e3y * cn;
      if (toApex) {
        const full = 2 * (e2 * kb + e3y * kc - vy) / kh - ay, toTop = -vyn / (ay + (full - ay) * (h / kh)), top = yn + 0.5 * vyn * toTop;
        if (top > apex) { apex = top; apexT = t + h + toTop; apexA = An + toTop * an; apexB = Bn + toTop * bn; apexC = Cn + toTop * cn; }
        pa = a; pb = b; pc = c; pA = A; pB = B; pC = C; ph = kh;
        a = ka; b = kb; c = kc; w = kw; A = kA; B = kB; C = kC;
        break;
      }
      const heightN = height + n1 * (An - A) + n2 * (Bn - B) + n3 * (Cn - C) + nw * h;
      const climbN = n1 * an + n2 * bn + n3 * cn + nw;
      if (toGround) {
        if (!(climbN < 0)) return OUTSIDE;
        const miss = heightN / climbN;
        if (miss * miss > 1e-8) { h -= miss; continue; }
        landed = true;
      } else {
${indent(errorNorms(d), 8)}
        const factor = Math.min(3, Math.max(0.3, wanted));
        if (!(error <= 1)) { h *= error > 1 ? factor : 0.3; aimed = false; continue; }
        if (heightN < 0) {
          // Leaving the ground and returning within one step hides the landing, a slope met on the way up the apex.
          if ((height <= 0 && !aimed) || (sloped && vy > 0)) return OUTSIDE;
        } else if (climb < 0 && climbN > 0) return OUTSIDE;
        next = h * factor;
        if (vy > 0 && vyn <= 0) {
          if (restepApex !== 0) {
            toApex = true;
            ka = an; kb = bn; kc = cn; kw = wn; kA = An; kB = Bn; kC = Cn; kh = h;
            const V0 = vy * h, V1 = vyn * h, F0 = 0.5 * ay * h * h, d = yn - y - V0 - F0, s = V1 - V0 - 2 * F0, c3 = 4 * d - s, c4 = s - 3 * d, guess = ${CREST};
            let x = guess;
            for (let i = 0; i < 4; i++) x -= (V0 + x * (2 * F0 + x * (3 * c3 + x * 4 * c4))) / (2 * F0 + x * (6 * c3 + x * 12 * c4));
            h *= x > 0 && x < 1 ? x : guess;
            pHeight = height; pClimb = climb; height = heightN; climb = climbN;
            continue;
          }
          apexInside = true;
        }
      }
      pa = a; pb = b; pc = c; pA = A; pB = B; pC = C; ph = h;
      a = an; b = bn; c = cn; w = wn; A = An; B = Bn; C = Cn;
      pHeight = height; pClimb = climb; height = heightN; climb = climbN;
      break;
    }
    t += ph;
    pka = ka0; pkb = kb0; pkc = kc0; pFall = fall;
    y = e2 * B + e3y * C; vy = e2 * b + e3y * c;
    if (t >= timeLimit && !landed && height >= 0) { ended = true; t = timeLimit; }
  }
}
`;
}
