// Written by kernel-template.ts (npm run generate); edit that, not this. Unrolled because loops over stages cost three times as much.
// biome-ignore-all lint: generated
// biome-ignore-all format: generated
/* eslint-disable */

/** The flight ended on the ground. */
export const LANDED = 0;
/** The flight reached the time limit. */
export const TIME_LIMIT = 1;
/** The compiled law does not reach here, or the case is one for the general engine. */
export const OUTSIDE = 2;

const MAX_ATTEMPTS = 20000;

/**
 * One flight in uniform wind with a compiled coefficient law: parameters in `p`, constants of the method in `k`, tables `st` (8 numbers a cell of S)
 * and `rt` (4 a cell of Re), results in `out`, nodes in `track` (11 numbers each) where that has room. Returns LANDED, TIME_LIMIT or OUTSIDE; allocates nothing.
 */
export function flyKernel(p: Float64Array, k: Float64Array, st: Float64Array, rt: Float64Array, out: Float64Array, track: Float64Array): number {
  const a0 = p[0]!;
  const b0 = p[1]!;
  const c0 = p[2]!;
  const w0 = p[3]!;
  const g2 = p[4]!;
  const g3 = p[5]!;
  const drag = p[6]!;
  const lift = p[7]!;
  const decay = p[8]!;
  const rInv = p[9]!;
  const n1 = p[10]!;
  const n2 = p[11]!;
  const n3 = p[12]!;
  const nw = p[13]!;
  const e2 = p[14]!;
  const e3y = p[15]!;
  const height0 = p[16]!;
  const firstStep = p[17]!;
  const across = p[18]!;
  const sLow = p[19]!;
  const sHigh = p[20]!;
  const rLow = p[21]!;
  const rHigh = p[22]!;
  const perTolerance = p[23]!;
  const timeLimit = p[24]!;
  const restepApex = p[25]!;
  const K0 = k[0]!;
  const K1 = k[1]!;
  const K2 = k[2]!;
  const K3 = k[3]!;
  const K4 = k[4]!;
  const K5 = k[5]!;
  const K6 = k[6]!;
  const K7 = k[7]!;
  const K8 = k[8]!;
  const K9 = k[9]!;
  const K10 = k[10]!;
  const K11 = k[11]!;
  const K12 = k[12]!;
  const K13 = k[13]!;
  const K14 = k[14]!;
  const K15 = k[15]!;
  const K16 = k[16]!;
  const K17 = k[17]!;
  const K18 = k[18]!;
  const K19 = k[19]!;
  const K20 = k[20]!;
  const K21 = k[21]!;
  const K22 = k[22]!;
  const K23 = k[23]!;
  const K24 = k[24]!;
  const K25 = k[25]!;
  const K26 = k[26]!;
  const K27 = k[27]!;
  const K28 = k[28]!;
  const K29 = k[29]!;
  const K30 = k[30]!;
  const K31 = k[31]!;
  const K32 = k[32]!;
  const K33 = k[33]!;
  const K34 = k[34]!;
  const K35 = k[35]!;
  const K36 = k[36]!;
  const K37 = k[37]!;
  const K38 = k[38]!;
  const K39 = k[39]!;
  const K40 = k[40]!;
  const K41 = k[41]!;
  const K42 = k[42]!;
  const K43 = k[43]!;
  const K44 = k[44]!;
  const K45 = k[45]!;
  const K46 = k[46]!;
  const K47 = k[47]!;
  const K48 = k[48]!;
  const K49 = k[49]!;
  const K50 = k[50]!;
  const K51 = k[51]!;
  const K52 = k[52]!;
  const K53 = k[53]!;
  const K54 = k[54]!;
  const K55 = k[55]!;
  const K56 = k[56]!;
  const K57 = k[57]!;
  const K58 = k[58]!;
  const K59 = k[59]!;
  const K60 = k[60]!;
  const K61 = k[61]!;
  const K62 = k[62]!;
  const K63 = k[63]!;
  const K64 = k[64]!;
  const K65 = k[65]!;
  const K66 = k[66]!;
  const K67 = k[67]!;
  const K68 = k[68]!;
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
    const mm0 = ((a * a) + (b * b));
    const uu0 = (mm0 + (c * c));
    const m0 = Math.sqrt(mm0);
    const u0 = Math.sqrt(uu0);
    const r0 = 1 / ((mm0 * uu0));
    const x0 = (((w * mm0) * (across * m0 + total * u0)) * r0);
    const du0 = (drag * u0);
    const lu0 = ((lift * (uu0 * uu0)) * (r0 * m0));
    const z0 = u0 * rInv;
    if (!(x0 >= sLow && x0 < sHigh && z0 >= rLow && z0 < rHigh)) return OUTSIDE;
    const xi0 = x0 & 2047, zi0 = z0 & 1023, xt0 = x0 - xi0, zt0 = z0 - zi0, xk0 = xi0 << 3, zk0 = zi0 << 2;
    const xq0 = xt0 * xt0, zq0 = zt0 * zt0;
    const cl0 = (st[xk0]! + xt0 * st[xk0 + 1]!) + xq0 * (st[xk0 + 2]! + xt0 * st[xk0 + 3]!);
    const cd0 = (st[xk0 + 4]! + xt0 * st[xk0 + 5]! + (rt[zk0]! + zt0 * rt[zk0 + 1]! + zq0 * (rt[zk0 + 2]! + zt0 * rt[zk0 + 3]!))) + xq0 * (st[xk0 + 6]! + xt0 * st[xk0 + 7]!);
    const D0 = (du0 * cd0);
    const L0 = (lu0 * cl0);
    const ka0 = ((D0 * a) - (L0 * b));
    const kb0 = ((L0 * a) + ((D0 * b) - g2));
    const kc0 = ((D0 * c) - g3);
    const kw0 = ((decay * u0) * w);
    if (u0 < slowest) slowest = u0;
    if (u0 > fastest) fastest = u0;
    if (x0 < leastSpin) leastSpin = x0;
    if (x0 > mostSpin) mostSpin = x0;
    const fall = n1 * ka0 + n2 * kb0 + n3 * kc0;
    let da = ka0, db = kb0, dc = kc0;
    if (apexInside) {
      apexInside = false;
      const V0 = (e2 * pb + e3y * pc) * ph, V1 = (vy) * ph, F0 = 0.5 * (e2 * pkb + e3y * pkc) * ph * ph, F1 = 0.5 * (e2 * kb0 + e3y * kc0) * ph * ph, d = y - (e2 * pB + e3y * pC);
      const c3 = 10 * d - 6 * V0 - 4 * V1 - 3 * F0 + F1, c4 = -15 * d + 8 * V0 + 7 * V1 + 3 * F0 - 2 * F1, c5 = 6 * d - 3 * V0 - 3 * V1 - F0 + F1;
      let x = V0 / (Math.sqrt(Math.max(0, F0 * F0 - V0 * (V1 - V0 - 2 * F0))) - F0);
      for (let i = 0; i < 2; i++) x -= (V0 + x * (2 * F0 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5)))) / (2 * F0 + x * (6 * c3 + x * (12 * c4 + x * 20 * c5)));
      const x3 = x * x * x, q1 = x3 * (10 + x * (6 * x - 15)), q2 = ph * (x + x3 * (x * (8 - 3 * x) - 6)), q3 = ph * x3 * (x * (7 - 3 * x) - 4);
      const q4 = 0.5 * ph * ph * (x * x + x3 * (x * (3 - x) - 3)), q5 = 0.5 * ph * ph * x3 * (1 + x * (x - 2));
      const topB = pB + (B - pB) * q1 + pb * q2 + b * q3 + pkb * q4 + kb0 * q5, topC = pC + (C - pC) * q1 + pc * q2 + c * q3 + pkc * q4 + kc0 * q5, top = e2 * topB + e3y * topC;
      if (top > apex) { apex = top; apexT = t - ph + x * ph; apexA = pA + (A - pA) * q1 + pa * q2 + a * q3 + pka * q4 + ka0 * q5; apexB = topB; apexC = topC; }
    }
    let h = t + next > timeLimit ? timeLimit - t : next, toGround = false;
    if (!landed && !ended && (aimed || height < 0)) {
      const V0 = (pClimb) * ph, V1 = (climb) * ph, F0 = 0.5 * (pFall) * ph * ph, F1 = 0.5 * (fall) * ph * ph, d = height - (pHeight);
      const c3 = 10 * d - 6 * V0 - 4 * V1 - 3 * F0 + F1, c4 = -15 * d + 8 * V0 + 7 * V1 + 3 * F0 - 2 * F1, c5 = 6 * d - 3 * V0 - 3 * V1 - F0 + F1;
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
        const x3 = x * x * x, q1 = x3 * (10 + x * (6 * x - 15)), q2 = ph * (x + x3 * (x * (8 - 3 * x) - 6)), q3 = ph * x3 * (x * (7 - 3 * x) - 4);
        const q4 = 0.5 * ph * ph * (x * x + x3 * (x * (3 - x) - 3)), q5 = 0.5 * ph * ph * x3 * (1 + x * (x - 2));
        const xx = x * x, s1 = 30 * xx * (1 - x) * (1 - x) / ph, s2 = 1 + xx * (x * (32 - 15 * x) - 18), s3 = xx * (x * (28 - 15 * x) - 12);
        const s4 = ph * x * (1 + x * (x * (6 - 2.5 * x) - 4.5)), s5 = ph * xx * (1.5 + x * (2.5 * x - 4));
        const r1 = 60 * x * (1 - x) * (1 - 2 * x) / (ph * ph), r2 = x * (x * (96 - 60 * x) - 36) / ph, r3 = x * (x * (84 - 60 * x) - 24) / ph;
        const r4 = 1 + x * (x * (18 - 10 * x) - 9), r5 = x * (3 + x * (10 * x - 12));
        const endA = pA + (A - pA) * q1 + pa * q2 + a * q3 + pka * q4 + ka0 * q5, endB = pB + (B - pB) * q1 + pb * q2 + b * q3 + pkb * q4 + kb0 * q5, endC = pC + (C - pC) * q1 + pc * q2 + c * q3 + pkc * q4 + kc0 * q5;
        const enda = (A - pA) * s1 + pa * s2 + a * s3 + pka * s4 + ka0 * s5, endb = (B - pB) * s1 + pb * s2 + b * s3 + pkb * s4 + kb0 * s5, endc = (C - pC) * s1 + pc * s2 + c * s3 + pkc * s4 + kc0 * s5;
        da = (A - pA) * r1 + pa * r2 + a * r3 + pka * r4 + ka0 * r5; db = (B - pB) * r1 + pb * r2 + b * r3 + pkb * r4 + kb0 * r5; dc = (C - pC) * r1 + pc * r2 + c * r3 + pkc * r4 + kc0 * r5;
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
      if (11 * nodes + 11 <= track.length) {
        const at = 11 * nodes;
        track[at + 0] = t; track[at + 1] = a; track[at + 2] = b; track[at + 3] = c; track[at + 4] = w; track[at + 5] = A; track[at + 6] = B; track[at + 7] = C; track[at + 8] = da; track[at + 9] = db; track[at + 10] = dc;
      }
      nodes++;
      y = e2 * B + e3y * C;
      if (y > apex) { apex = y; apexA = A; apexB = B; apexC = C; apexT = t; }
      const evaluations = nodes + 11 * attempts;
      out[0] = a;
      out[1] = b;
      out[2] = c;
      out[3] = w;
      out[4] = A;
      out[5] = B;
      out[6] = C;
      out[7] = t;
      out[8] = apex;
      out[9] = apexA;
      out[10] = apexB;
      out[11] = apexC;
      out[12] = apexT;
      out[13] = slowest;
      out[14] = fastest;
      out[15] = leastSpin;
      out[16] = mostSpin;
      out[17] = evaluations;
      out[18] = nodes;
      return landed ? LANDED : TIME_LIMIT;
    }
    // A node under the ground, to be stepped back from, is none of the flight.
    if (!(toGround && h < 0)) {
      if (11 * nodes + 11 <= track.length) {
        const at = 11 * nodes;
        track[at + 0] = t; track[at + 1] = a; track[at + 2] = b; track[at + 3] = c; track[at + 4] = w; track[at + 5] = A; track[at + 6] = B; track[at + 7] = C; track[at + 8] = da; track[at + 9] = db; track[at + 10] = dc;
      }
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
      const hw1 = (h * K0);
      const a1 = (a + (hw1 * ka0));
      const b1 = (b + (hw1 * kb0));
      const c1 = (c + (hw1 * kc0));
      const w1 = (w + (hw1 * kw0));
      const mm1 = ((a1 * a1) + (b1 * b1));
      const uu1 = (mm1 + (c1 * c1));
      const m1 = Math.sqrt(mm1);
      const u1 = Math.sqrt(uu1);
      const r1 = 1 / ((mm1 * uu1));
      const x1 = (((w1 * mm1) * (across * m1 + total * u1)) * r1);
      const du1 = (drag * u1);
      const lu1 = ((lift * (uu1 * uu1)) * (r1 * m1));
      const z1 = u1 * rInv;
      if (!(x1 >= sLow && x1 < sHigh && z1 >= rLow && z1 < rHigh)) return OUTSIDE;
      const xi1 = x1 & 2047, zi1 = z1 & 1023, xt1 = x1 - xi1, zt1 = z1 - zi1, xk1 = xi1 << 3, zk1 = zi1 << 2;
      const xq1 = xt1 * xt1, zq1 = zt1 * zt1;
      const cl1 = (st[xk1]! + xt1 * st[xk1 + 1]!) + xq1 * (st[xk1 + 2]! + xt1 * st[xk1 + 3]!);
      const cd1 = (st[xk1 + 4]! + xt1 * st[xk1 + 5]! + (rt[zk1]! + zt1 * rt[zk1 + 1]! + zq1 * (rt[zk1 + 2]! + zt1 * rt[zk1 + 3]!))) + xq1 * (st[xk1 + 6]! + xt1 * st[xk1 + 7]!);
      const D1 = (du1 * cd1);
      const L1 = (lu1 * cl1);
      const ka1 = ((D1 * a1) - (L1 * b1));
      const kb1 = ((L1 * a1) + ((D1 * b1) - g2));
      const kc1 = ((D1 * c1) - g3);
      const kw1 = ((decay * u1) * w1);
      const hw2 = (h * K2);
      const a2 = ((a + (h * (K1 * ka0))) + (hw2 * ka1));
      const b2 = ((b + (h * (K1 * kb0))) + (hw2 * kb1));
      const c2 = ((c + (h * (K1 * kc0))) + (hw2 * kc1));
      const w2 = ((w + (h * (K1 * kw0))) + (hw2 * kw1));
      const mm2 = ((a2 * a2) + (b2 * b2));
      const uu2 = (mm2 + (c2 * c2));
      const m2 = Math.sqrt(mm2);
      const u2 = Math.sqrt(uu2);
      const r2 = 1 / ((mm2 * uu2));
      const x2 = (((w2 * mm2) * (across * m2 + total * u2)) * r2);
      const du2 = (drag * u2);
      const lu2 = ((lift * (uu2 * uu2)) * (r2 * m2));
      const z2 = u2 * rInv;
      if (!(x2 >= sLow && x2 < sHigh && z2 >= rLow && z2 < rHigh)) return OUTSIDE;
      const xi2 = x2 & 2047, zi2 = z2 & 1023, xt2 = x2 - xi2, zt2 = z2 - zi2, xk2 = xi2 << 3, zk2 = zi2 << 2;
      const xq2 = xt2 * xt2, zq2 = zt2 * zt2;
      const cl2 = (st[xk2]! + xt2 * st[xk2 + 1]!) + xq2 * (st[xk2 + 2]! + xt2 * st[xk2 + 3]!);
      const cd2 = (st[xk2 + 4]! + xt2 * st[xk2 + 5]! + (rt[zk2]! + zt2 * rt[zk2 + 1]! + zq2 * (rt[zk2 + 2]! + zt2 * rt[zk2 + 3]!))) + xq2 * (st[xk2 + 6]! + xt2 * st[xk2 + 7]!);
      const D2 = (du2 * cd2);
      const L2 = (lu2 * cl2);
      const ka2 = ((D2 * a2) - (L2 * b2));
      const kb2 = ((L2 * a2) + ((D2 * b2) - g2));
      const kc2 = ((D2 * c2) - g3);
      const kw2 = ((decay * u2) * w2);
      const hw3 = (h * K4);
      const a3 = ((a + (h * (K3 * ka0))) + (hw3 * ka2));
      const b3 = ((b + (h * (K3 * kb0))) + (hw3 * kb2));
      const c3 = ((c + (h * (K3 * kc0))) + (hw3 * kc2));
      const w3 = ((w + (h * (K3 * kw0))) + (hw3 * kw2));
      const mm3 = ((a3 * a3) + (b3 * b3));
      const uu3 = (mm3 + (c3 * c3));
      const m3 = Math.sqrt(mm3);
      const u3 = Math.sqrt(uu3);
      const r3 = 1 / ((mm3 * uu3));
      const x3 = (((w3 * mm3) * (across * m3 + total * u3)) * r3);
      const du3 = (drag * u3);
      const lu3 = ((lift * (uu3 * uu3)) * (r3 * m3));
      const z3 = u3 * rInv;
      if (!(x3 >= sLow && x3 < sHigh && z3 >= rLow && z3 < rHigh)) return OUTSIDE;
      const xi3 = x3 & 2047, zi3 = z3 & 1023, xt3 = x3 - xi3, zt3 = z3 - zi3, xk3 = xi3 << 3, zk3 = zi3 << 2;
      const xq3 = xt3 * xt3, zq3 = zt3 * zt3;
      const cl3 = (st[xk3]! + xt3 * st[xk3 + 1]!) + xq3 * (st[xk3 + 2]! + xt3 * st[xk3 + 3]!);
      const cd3 = (st[xk3 + 4]! + xt3 * st[xk3 + 5]! + (rt[zk3]! + zt3 * rt[zk3 + 1]! + zq3 * (rt[zk3 + 2]! + zt3 * rt[zk3 + 3]!))) + xq3 * (st[xk3 + 6]! + xt3 * st[xk3 + 7]!);
      const D3 = (du3 * cd3);
      const L3 = (lu3 * cl3);
      const ka3 = ((D3 * a3) - (L3 * b3));
      const kb3 = ((L3 * a3) + ((D3 * b3) - g2));
      const kc3 = ((D3 * c3) - g3);
      const kw3 = ((decay * u3) * w3);
      const hw4 = (h * K7);
      const a4 = ((a + (h * ((K5 * ka0) + (K6 * ka2)))) + (hw4 * ka3));
      const b4 = ((b + (h * ((K5 * kb0) + (K6 * kb2)))) + (hw4 * kb3));
      const c4 = ((c + (h * ((K5 * kc0) + (K6 * kc2)))) + (hw4 * kc3));
      const w4 = ((w + (h * ((K5 * kw0) + (K6 * kw2)))) + (hw4 * kw3));
      const mm4 = ((a4 * a4) + (b4 * b4));
      const uu4 = (mm4 + (c4 * c4));
      const m4 = Math.sqrt(mm4);
      const u4 = Math.sqrt(uu4);
      const r4 = 1 / ((mm4 * uu4));
      const x4 = (((w4 * mm4) * (across * m4 + total * u4)) * r4);
      const du4 = (drag * u4);
      const lu4 = ((lift * (uu4 * uu4)) * (r4 * m4));
      const z4 = u4 * rInv;
      if (!(x4 >= sLow && x4 < sHigh && z4 >= rLow && z4 < rHigh)) return OUTSIDE;
      const xi4 = x4 & 2047, zi4 = z4 & 1023, xt4 = x4 - xi4, zt4 = z4 - zi4, xk4 = xi4 << 3, zk4 = zi4 << 2;
      const xq4 = xt4 * xt4, zq4 = zt4 * zt4;
      const cl4 = (st[xk4]! + xt4 * st[xk4 + 1]!) + xq4 * (st[xk4 + 2]! + xt4 * st[xk4 + 3]!);
      const cd4 = (st[xk4 + 4]! + xt4 * st[xk4 + 5]! + (rt[zk4]! + zt4 * rt[zk4 + 1]! + zq4 * (rt[zk4 + 2]! + zt4 * rt[zk4 + 3]!))) + xq4 * (st[xk4 + 6]! + xt4 * st[xk4 + 7]!);
      const D4 = (du4 * cd4);
      const L4 = (lu4 * cl4);
      const ka4 = ((D4 * a4) - (L4 * b4));
      const kb4 = ((L4 * a4) + ((D4 * b4) - g2));
      const kc4 = ((D4 * c4) - g3);
      const kw4 = ((decay * u4) * w4);
      const hw5 = (h * K10);
      const a5 = ((a + (h * ((K8 * ka0) + (K9 * ka3)))) + (hw5 * ka4));
      const b5 = ((b + (h * ((K8 * kb0) + (K9 * kb3)))) + (hw5 * kb4));
      const c5 = ((c + (h * ((K8 * kc0) + (K9 * kc3)))) + (hw5 * kc4));
      const w5 = ((w + (h * ((K8 * kw0) + (K9 * kw3)))) + (hw5 * kw4));
      const mm5 = ((a5 * a5) + (b5 * b5));
      const uu5 = (mm5 + (c5 * c5));
      const m5 = Math.sqrt(mm5);
      const u5 = Math.sqrt(uu5);
      const r5 = 1 / ((mm5 * uu5));
      const x5 = (((w5 * mm5) * (across * m5 + total * u5)) * r5);
      const du5 = (drag * u5);
      const lu5 = ((lift * (uu5 * uu5)) * (r5 * m5));
      const z5 = u5 * rInv;
      if (!(x5 >= sLow && x5 < sHigh && z5 >= rLow && z5 < rHigh)) return OUTSIDE;
      const xi5 = x5 & 2047, zi5 = z5 & 1023, xt5 = x5 - xi5, zt5 = z5 - zi5, xk5 = xi5 << 3, zk5 = zi5 << 2;
      const xq5 = xt5 * xt5, zq5 = zt5 * zt5;
      const cl5 = (st[xk5]! + xt5 * st[xk5 + 1]!) + xq5 * (st[xk5 + 2]! + xt5 * st[xk5 + 3]!);
      const cd5 = (st[xk5 + 4]! + xt5 * st[xk5 + 5]! + (rt[zk5]! + zt5 * rt[zk5 + 1]! + zq5 * (rt[zk5 + 2]! + zt5 * rt[zk5 + 3]!))) + xq5 * (st[xk5 + 6]! + xt5 * st[xk5 + 7]!);
      const D5 = (du5 * cd5);
      const L5 = (lu5 * cl5);
      const ka5 = ((D5 * a5) - (L5 * b5));
      const kb5 = ((L5 * a5) + ((D5 * b5) - g2));
      const kc5 = ((D5 * c5) - g3);
      const kw5 = ((decay * u5) * w5);
      const hw6 = (h * K14);
      const a6 = ((a + (h * (((K11 * ka0) + (K12 * ka3)) + (K13 * ka4)))) + (hw6 * ka5));
      const b6 = ((b + (h * (((K11 * kb0) + (K12 * kb3)) + (K13 * kb4)))) + (hw6 * kb5));
      const c6 = ((c + (h * (((K11 * kc0) + (K12 * kc3)) + (K13 * kc4)))) + (hw6 * kc5));
      const w6 = ((w + (h * (((K11 * kw0) + (K12 * kw3)) + (K13 * kw4)))) + (hw6 * kw5));
      const mm6 = ((a6 * a6) + (b6 * b6));
      const uu6 = (mm6 + (c6 * c6));
      const m6 = Math.sqrt(mm6);
      const u6 = Math.sqrt(uu6);
      const r6 = 1 / ((mm6 * uu6));
      const x6 = (((w6 * mm6) * (across * m6 + total * u6)) * r6);
      const du6 = (drag * u6);
      const lu6 = ((lift * (uu6 * uu6)) * (r6 * m6));
      const z6 = u6 * rInv;
      if (!(x6 >= sLow && x6 < sHigh && z6 >= rLow && z6 < rHigh)) return OUTSIDE;
      const xi6 = x6 & 2047, zi6 = z6 & 1023, xt6 = x6 - xi6, zt6 = z6 - zi6, xk6 = xi6 << 3, zk6 = zi6 << 2;
      const xq6 = xt6 * xt6, zq6 = zt6 * zt6;
      const cl6 = (st[xk6]! + xt6 * st[xk6 + 1]!) + xq6 * (st[xk6 + 2]! + xt6 * st[xk6 + 3]!);
      const cd6 = (st[xk6 + 4]! + xt6 * st[xk6 + 5]! + (rt[zk6]! + zt6 * rt[zk6 + 1]! + zq6 * (rt[zk6 + 2]! + zt6 * rt[zk6 + 3]!))) + xq6 * (st[xk6 + 6]! + xt6 * st[xk6 + 7]!);
      const D6 = (du6 * cd6);
      const L6 = (lu6 * cl6);
      const ka6 = ((D6 * a6) - (L6 * b6));
      const kb6 = ((L6 * a6) + ((D6 * b6) - g2));
      const kc6 = ((D6 * c6) - g3);
      const kw6 = ((decay * u6) * w6);
      const hw7 = (h * K19);
      const a7 = ((a + (h * ((((K15 * ka0) + (K16 * ka3)) + (K17 * ka4)) + (K18 * ka5)))) + (hw7 * ka6));
      const b7 = ((b + (h * ((((K15 * kb0) + (K16 * kb3)) + (K17 * kb4)) + (K18 * kb5)))) + (hw7 * kb6));
      const c7 = ((c + (h * ((((K15 * kc0) + (K16 * kc3)) + (K17 * kc4)) + (K18 * kc5)))) + (hw7 * kc6));
      const w7 = ((w + (h * ((((K15 * kw0) + (K16 * kw3)) + (K17 * kw4)) + (K18 * kw5)))) + (hw7 * kw6));
      const mm7 = ((a7 * a7) + (b7 * b7));
      const uu7 = (mm7 + (c7 * c7));
      const m7 = Math.sqrt(mm7);
      const u7 = Math.sqrt(uu7);
      const r7 = 1 / ((mm7 * uu7));
      const x7 = (((w7 * mm7) * (across * m7 + total * u7)) * r7);
      const du7 = (drag * u7);
      const lu7 = ((lift * (uu7 * uu7)) * (r7 * m7));
      const z7 = u7 * rInv;
      if (!(x7 >= sLow && x7 < sHigh && z7 >= rLow && z7 < rHigh)) return OUTSIDE;
      const xi7 = x7 & 2047, zi7 = z7 & 1023, xt7 = x7 - xi7, zt7 = z7 - zi7, xk7 = xi7 << 3, zk7 = zi7 << 2;
      const xq7 = xt7 * xt7, zq7 = zt7 * zt7;
      const cl7 = (st[xk7]! + xt7 * st[xk7 + 1]!) + xq7 * (st[xk7 + 2]! + xt7 * st[xk7 + 3]!);
      const cd7 = (st[xk7 + 4]! + xt7 * st[xk7 + 5]! + (rt[zk7]! + zt7 * rt[zk7 + 1]! + zq7 * (rt[zk7 + 2]! + zt7 * rt[zk7 + 3]!))) + xq7 * (st[xk7 + 6]! + xt7 * st[xk7 + 7]!);
      const D7 = (du7 * cd7);
      const L7 = (lu7 * cl7);
      const ka7 = ((D7 * a7) - (L7 * b7));
      const kb7 = ((L7 * a7) + ((D7 * b7) - g2));
      const kc7 = ((D7 * c7) - g3);
      const kw7 = ((decay * u7) * w7);
      const hw8 = (h * K25);
      const a8 = ((a + (h * (((((K20 * ka0) + (K21 * ka3)) + (K22 * ka4)) + (K23 * ka5)) + (K24 * ka6)))) + (hw8 * ka7));
      const b8 = ((b + (h * (((((K20 * kb0) + (K21 * kb3)) + (K22 * kb4)) + (K23 * kb5)) + (K24 * kb6)))) + (hw8 * kb7));
      const c8 = ((c + (h * (((((K20 * kc0) + (K21 * kc3)) + (K22 * kc4)) + (K23 * kc5)) + (K24 * kc6)))) + (hw8 * kc7));
      const w8 = ((w + (h * (((((K20 * kw0) + (K21 * kw3)) + (K22 * kw4)) + (K23 * kw5)) + (K24 * kw6)))) + (hw8 * kw7));
      const mm8 = ((a8 * a8) + (b8 * b8));
      const uu8 = (mm8 + (c8 * c8));
      const m8 = Math.sqrt(mm8);
      const u8 = Math.sqrt(uu8);
      const r8 = 1 / ((mm8 * uu8));
      const x8 = (((w8 * mm8) * (across * m8 + total * u8)) * r8);
      const du8 = (drag * u8);
      const lu8 = ((lift * (uu8 * uu8)) * (r8 * m8));
      const z8 = u8 * rInv;
      if (!(x8 >= sLow && x8 < sHigh && z8 >= rLow && z8 < rHigh)) return OUTSIDE;
      const xi8 = x8 & 2047, zi8 = z8 & 1023, xt8 = x8 - xi8, zt8 = z8 - zi8, xk8 = xi8 << 3, zk8 = zi8 << 2;
      const xq8 = xt8 * xt8, zq8 = zt8 * zt8;
      const cl8 = (st[xk8]! + xt8 * st[xk8 + 1]!) + xq8 * (st[xk8 + 2]! + xt8 * st[xk8 + 3]!);
      const cd8 = (st[xk8 + 4]! + xt8 * st[xk8 + 5]! + (rt[zk8]! + zt8 * rt[zk8 + 1]! + zq8 * (rt[zk8 + 2]! + zt8 * rt[zk8 + 3]!))) + xq8 * (st[xk8 + 6]! + xt8 * st[xk8 + 7]!);
      const D8 = (du8 * cd8);
      const L8 = (lu8 * cl8);
      const ka8 = ((D8 * a8) - (L8 * b8));
      const kb8 = ((L8 * a8) + ((D8 * b8) - g2));
      const kc8 = ((D8 * c8) - g3);
      const kw8 = ((decay * u8) * w8);
      const hw9 = (h * K32);
      const a9 = ((a + (h * ((((((K26 * ka0) + (K27 * ka3)) + (K28 * ka4)) + (K29 * ka5)) + (K30 * ka6)) + (K31 * ka7)))) + (hw9 * ka8));
      const b9 = ((b + (h * ((((((K26 * kb0) + (K27 * kb3)) + (K28 * kb4)) + (K29 * kb5)) + (K30 * kb6)) + (K31 * kb7)))) + (hw9 * kb8));
      const c9 = ((c + (h * ((((((K26 * kc0) + (K27 * kc3)) + (K28 * kc4)) + (K29 * kc5)) + (K30 * kc6)) + (K31 * kc7)))) + (hw9 * kc8));
      const w9 = ((w + (h * ((((((K26 * kw0) + (K27 * kw3)) + (K28 * kw4)) + (K29 * kw5)) + (K30 * kw6)) + (K31 * kw7)))) + (hw9 * kw8));
      const mm9 = ((a9 * a9) + (b9 * b9));
      const uu9 = (mm9 + (c9 * c9));
      const m9 = Math.sqrt(mm9);
      const u9 = Math.sqrt(uu9);
      const r9 = 1 / ((mm9 * uu9));
      const x9 = (((w9 * mm9) * (across * m9 + total * u9)) * r9);
      const du9 = (drag * u9);
      const lu9 = ((lift * (uu9 * uu9)) * (r9 * m9));
      const z9 = u9 * rInv;
      if (!(x9 >= sLow && x9 < sHigh && z9 >= rLow && z9 < rHigh)) return OUTSIDE;
      const xi9 = x9 & 2047, zi9 = z9 & 1023, xt9 = x9 - xi9, zt9 = z9 - zi9, xk9 = xi9 << 3, zk9 = zi9 << 2;
      const xq9 = xt9 * xt9, zq9 = zt9 * zt9;
      const cl9 = (st[xk9]! + xt9 * st[xk9 + 1]!) + xq9 * (st[xk9 + 2]! + xt9 * st[xk9 + 3]!);
      const cd9 = (st[xk9 + 4]! + xt9 * st[xk9 + 5]! + (rt[zk9]! + zt9 * rt[zk9 + 1]! + zq9 * (rt[zk9 + 2]! + zt9 * rt[zk9 + 3]!))) + xq9 * (st[xk9 + 6]! + xt9 * st[xk9 + 7]!);
      const D9 = (du9 * cd9);
      const L9 = (lu9 * cl9);
      const ka9 = ((D9 * a9) - (L9 * b9));
      const kb9 = ((L9 * a9) + ((D9 * b9) - g2));
      const kc9 = ((D9 * c9) - g3);
      const kw9 = ((decay * u9) * w9);
      const hw10 = (h * K40);
      const a10 = ((a + (h * (((((((K33 * ka0) + (K34 * ka3)) + (K35 * ka4)) + (K36 * ka5)) + (K37 * ka6)) + (K38 * ka7)) + (K39 * ka8)))) + (hw10 * ka9));
      const b10 = ((b + (h * (((((((K33 * kb0) + (K34 * kb3)) + (K35 * kb4)) + (K36 * kb5)) + (K37 * kb6)) + (K38 * kb7)) + (K39 * kb8)))) + (hw10 * kb9));
      const c10 = ((c + (h * (((((((K33 * kc0) + (K34 * kc3)) + (K35 * kc4)) + (K36 * kc5)) + (K37 * kc6)) + (K38 * kc7)) + (K39 * kc8)))) + (hw10 * kc9));
      const w10 = ((w + (h * (((((((K33 * kw0) + (K34 * kw3)) + (K35 * kw4)) + (K36 * kw5)) + (K37 * kw6)) + (K38 * kw7)) + (K39 * kw8)))) + (hw10 * kw9));
      const mm10 = ((a10 * a10) + (b10 * b10));
      const uu10 = (mm10 + (c10 * c10));
      const m10 = Math.sqrt(mm10);
      const u10 = Math.sqrt(uu10);
      const r10 = 1 / ((mm10 * uu10));
      const x10 = (((w10 * mm10) * (across * m10 + total * u10)) * r10);
      const du10 = (drag * u10);
      const lu10 = ((lift * (uu10 * uu10)) * (r10 * m10));
      const z10 = u10 * rInv;
      if (!(x10 >= sLow && x10 < sHigh && z10 >= rLow && z10 < rHigh)) return OUTSIDE;
      const xi10 = x10 & 2047, zi10 = z10 & 1023, xt10 = x10 - xi10, zt10 = z10 - zi10, xk10 = xi10 << 3, zk10 = zi10 << 2;
      const xq10 = xt10 * xt10, zq10 = zt10 * zt10;
      const cl10 = (st[xk10]! + xt10 * st[xk10 + 1]!) + xq10 * (st[xk10 + 2]! + xt10 * st[xk10 + 3]!);
      const cd10 = (st[xk10 + 4]! + xt10 * st[xk10 + 5]! + (rt[zk10]! + zt10 * rt[zk10 + 1]! + zq10 * (rt[zk10 + 2]! + zt10 * rt[zk10 + 3]!))) + xq10 * (st[xk10 + 6]! + xt10 * st[xk10 + 7]!);
      const D10 = (du10 * cd10);
      const L10 = (lu10 * cl10);
      const ka10 = ((D10 * a10) - (L10 * b10));
      const kb10 = ((L10 * a10) + ((D10 * b10) - g2));
      const kc10 = ((D10 * c10) - g3);
      const kw10 = ((decay * u10) * w10);
      const hw11 = (h * K49);
      const a11 = ((a + (h * ((((((((K41 * ka0) + (K42 * ka3)) + (K43 * ka4)) + (K44 * ka5)) + (K45 * ka6)) + (K46 * ka7)) + (K47 * ka8)) + (K48 * ka9)))) + (hw11 * ka10));
      const b11 = ((b + (h * ((((((((K41 * kb0) + (K42 * kb3)) + (K43 * kb4)) + (K44 * kb5)) + (K45 * kb6)) + (K46 * kb7)) + (K47 * kb8)) + (K48 * kb9)))) + (hw11 * kb10));
      const c11 = ((c + (h * ((((((((K41 * kc0) + (K42 * kc3)) + (K43 * kc4)) + (K44 * kc5)) + (K45 * kc6)) + (K46 * kc7)) + (K47 * kc8)) + (K48 * kc9)))) + (hw11 * kc10));
      const w11 = ((w + (h * ((((((((K41 * kw0) + (K42 * kw3)) + (K43 * kw4)) + (K44 * kw5)) + (K45 * kw6)) + (K46 * kw7)) + (K47 * kw8)) + (K48 * kw9)))) + (hw11 * kw10));
      const mm11 = ((a11 * a11) + (b11 * b11));
      const uu11 = (mm11 + (c11 * c11));
      const m11 = Math.sqrt(mm11);
      const u11 = Math.sqrt(uu11);
      const r11 = 1 / ((mm11 * uu11));
      const x11 = (((w11 * mm11) * (across * m11 + total * u11)) * r11);
      const du11 = (drag * u11);
      const lu11 = ((lift * (uu11 * uu11)) * (r11 * m11));
      const z11 = u11 * rInv;
      if (!(x11 >= sLow && x11 < sHigh && z11 >= rLow && z11 < rHigh)) return OUTSIDE;
      const xi11 = x11 & 2047, zi11 = z11 & 1023, xt11 = x11 - xi11, zt11 = z11 - zi11, xk11 = xi11 << 3, zk11 = zi11 << 2;
      const xq11 = xt11 * xt11, zq11 = zt11 * zt11;
      const cl11 = (st[xk11]! + xt11 * st[xk11 + 1]!) + xq11 * (st[xk11 + 2]! + xt11 * st[xk11 + 3]!);
      const cd11 = (st[xk11 + 4]! + xt11 * st[xk11 + 5]! + (rt[zk11]! + zt11 * rt[zk11 + 1]! + zq11 * (rt[zk11 + 2]! + zt11 * rt[zk11 + 3]!))) + xq11 * (st[xk11 + 6]! + xt11 * st[xk11 + 7]!);
      const D11 = (du11 * cd11);
      const L11 = (lu11 * cl11);
      const ka11 = ((D11 * a11) - (L11 * b11));
      const kb11 = ((L11 * a11) + ((D11 * b11) - g2));
      const kc11 = ((D11 * c11) - g3);
      const kw11 = ((decay * u11) * w11);
      const sa = ((((((((K50 * ka0) + (K51 * ka5)) + (K52 * ka6)) + (K53 * ka7)) + (K54 * ka8)) + (K55 * ka9)) + (K56 * ka10)) + (K57 * ka11));
      const an = (a + (h * sa));
      const sb = ((((((((K50 * kb0) + (K51 * kb5)) + (K52 * kb6)) + (K53 * kb7)) + (K54 * kb8)) + (K55 * kb9)) + (K56 * kb10)) + (K57 * kb11));
      const bn = (b + (h * sb));
      const sc = ((((((((K50 * kc0) + (K51 * kc5)) + (K52 * kc6)) + (K53 * kc7)) + (K54 * kc8)) + (K55 * kc9)) + (K56 * kc10)) + (K57 * kc11));
      const cn = (c + (h * sc));
      const sw = ((((((((K50 * kw0) + (K51 * kw5)) + (K52 * kw6)) + (K53 * kw7)) + (K54 * kw8)) + (K55 * kw9)) + (K56 * kw10)) + (K57 * kw11));
      const wn = (w + (h * sw));
      const An = (A + (h * ((((((((K50 * a) + (K51 * a5)) + (K52 * a6)) + (K53 * a7)) + (K54 * a8)) + (K55 * a9)) + (K56 * a10)) + (K57 * a11))));
      const Bn = (B + (h * ((((((((K50 * b) + (K51 * b5)) + (K52 * b6)) + (K53 * b7)) + (K54 * b8)) + (K55 * b9)) + (K56 * b10)) + (K57 * b11))));
      const Cn = (C + (h * ((((((((K50 * c) + (K51 * c5)) + (K52 * c6)) + (K53 * c7)) + (K54 * c8)) + (K55 * c9)) + (K56 * c10)) + (K57 * c11))));
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
        const fa = (perTolerance * ((((((((K58 * ka0) + (K59 * ka5)) + (K60 * ka6)) + (K61 * ka7)) + (K62 * ka8)) + (K63 * ka9)) + (K64 * ka10)) + (K65 * ka11)));
        const fb = (perTolerance * ((((((((K58 * kb0) + (K59 * kb5)) + (K60 * kb6)) + (K61 * kb7)) + (K62 * kb8)) + (K63 * kb9)) + (K64 * kb10)) + (K65 * kb11)));
        const fc = (perTolerance * ((((((((K58 * kc0) + (K59 * kc5)) + (K60 * kc6)) + (K61 * kc7)) + (K62 * kc8)) + (K63 * kc9)) + (K64 * kc10)) + (K65 * kc11)));
        const e5 = (((fa * fa) + (fb * fb)) + (fc * fc));
        const ta = (perTolerance * (sa - (((K66 * ka0) + (K67 * ka8)) + (K68 * ka11))));
        const tb = (perTolerance * (sb - (((K66 * kb0) + (K67 * kb8)) + (K68 * kb11))));
        const tc = (perTolerance * (sc - (((K66 * kc0) + (K67 * kc8)) + (K68 * kc11))));
        const e3 = (((ta * ta) + (tb * tb)) + (tc * tc));
        const error = Math.max((h * e5) / (Math.sqrt(((3 * (e5 + (0.01 * e3))) + 1e-300))), ((h * h) * e3) / ((20 * perTolerance)));
        const wanted = 0.9 / (Math.sqrt(Math.sqrt(Math.sqrt((error + 1e-12)))));
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
            const V0 = vy * h, V1 = vyn * h, F0 = 0.5 * ay * h * h, d = yn - y - V0 - F0, s = V1 - V0 - 2 * F0, c3 = 4 * d - s, c4 = s - 3 * d, guess = V0 / (Math.sqrt(Math.max(0, F0 * F0 - V0 * (V1 - V0 - 2 * F0))) - F0);
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
