/**
 * Many flights through the compiled law, four at a time: the control flow of kernel-template.ts, one lane at a time,
 * around the step of step.generated.ts. AssemblyScript; built by npm run generate.
 */
import {
  A_, ACROSS, CONTROL, DECAY, DRAG, END_X, END_Z, ERROR, G2, G3, H, HIGH_X, HIGH_Z, K, KN, LIFT, LOW_X, LOW_Z, NEW, PER_TOLERANCE, REGISTER, RINV, WANTED,
} from './lanes.generated';
import { CHUNK, FLIGHTS, INPUTS, REGISTERS, REYNOLDS_TABLE, RESULTS, RESULTS_AT, SPIN_TABLE } from './layout';
import { step } from './step.generated';

// Lane variables of the control flow's own.
const N1: usize = CONTROL, N2: usize = CONTROL + 1, N3: usize = CONTROL + 2, NW: usize = CONTROL + 3, E2: usize = CONTROL + 4, E3Y: usize = CONTROL + 5;
const T: usize = CONTROL + 6, NEXT: usize = CONTROL + 7, HEIGHT: usize = CONTROL + 8, CLIMB: usize = CONTROL + 9, FALL: usize = CONTROL + 10;
const KEPT: usize = CONTROL + 11 /* 7 */, KEPTK: usize = CONTROL + 18 /* 4 */, KEPTH: usize = CONTROL + 22, KEPTX: usize = CONTROL + 23, KEPTZ: usize = CONTROL + 24;
const APEX: usize = CONTROL + 25, APEXA: usize = CONTROL + 26, APEXB: usize = CONTROL + 27, APEXC: usize = CONTROL + 28, APEXT: usize = CONTROL + 29;
const ATTEMPTS: usize = CONTROL + 30, MODE: usize = CONTROL + 31, AIMED: usize = CONTROL + 32, APEX_INSIDE: usize = CONTROL + 33, NEXTH: usize = CONTROL + 34, NEXTC: usize = CONTROL + 35;

const NORMAL: f64 = 0, TO_APEX: f64 = 1, TO_GROUND: f64 = 2;
const LANDED: f64 = 0, TIME_LIMIT: f64 = 1, OUTSIDE: f64 = 2;
const MAX_ATTEMPTS: f64 = 20000;

let timeLimit: f64 = 60, restepApex: bool = false;
let acrossOnly: bool = true, sLow: f64 = 0, sHigh: f64 = 0, rLow: f64 = 0, rHigh: f64 = 0;
let next: i32 = 0, count: i32 = 0, live: i32 = 0;
const flightOf = new StaticArray<i32>(4);

// @ts-ignore: decorator
@inline function get(v: usize, l: usize): f64 { return load<f64>(l + (v << 4)); }
// @ts-ignore: decorator
@inline function set(v: usize, l: usize, x: f64): void { store<f64>(l + (v << 4), x); }
// @ts-ignore: decorator
@inline function copy(to: usize, from: usize, l: usize): void { set(to, l, get(from, l)); }

// @ts-ignore: decorator
@inline function laneAt(lane: i32): usize { return REGISTERS + <usize>(lane >> 1) * REGISTER + (<usize>(lane & 1) << 3); }

/** Addresses for the host. */
export function spinTable(): usize { return SPIN_TABLE; }
export function reynoldsTable(): usize { return REYNOLDS_TABLE; }
export function inputs(): usize { return FLIGHTS; }
export function results(): usize { return RESULTS_AT; }
export function chunk(): i32 { return CHUNK; }

/** Sets what all flights of a batch share. */
export function configure(limit: f64, perTol: f64, restep: bool, across: bool, low: f64, high: f64, reLow: f64, reHigh: f64): void {
  timeLimit = limit; restepApex = restep; acrossOnly = across;
  sLow = low; sHigh = high; rLow = reLow; rHigh = reHigh;
  for (let lane: i32 = 0; lane < 4; lane++) {
    store<i64>(laneAt(lane) + (ACROSS << 4), across ? -1 : 0);
    set(PER_TOLERANCE, laneAt(lane), perTol);
  }
}

/** Flies the first `n` flights of the chunk. */
export function run(n: i32): void {
  next = 0; count = n; live = 0;
  for (let lane: i32 = 0; lane < 4; lane++) fill(lane);
  while (live > 0) {
    step();
    for (let lane: i32 = 0; lane < 4; lane++) if (unchecked(flightOf[lane]) >= 0) advance(lane, laneAt(lane));
  }
}

/** Loads the next flight into a lane; an idle lane repeats its last one, with steps of nothing. */
function fill(lane: i32): void {
  const l = laneAt(lane);
  for (;;) {
    if (next >= count) { unchecked(flightOf[lane] = -1); set(H, l, 0); return; }
    const flight = next++;
    unchecked(flightOf[lane] = flight);
    const p = FLIGHTS + <usize>flight * <usize>(INPUTS * 8);
    for (let i: usize = 0; i < 4; i++) set(A_ + i, l, load<f64>(p + (i << 3)));
    for (let i: usize = 4; i < 7; i++) set(A_ + i, l, 0);
    for (let i: usize = 0; i < 6; i++) set(G2 + i, l, load<f64>(p + ((4 + i) << 3)));
    for (let i: usize = 0; i < 6; i++) set(N1 + i, l, load<f64>(p + ((10 + i) << 3)));
    set(HEIGHT, l, load<f64>(p + (16 << 3)));
    set(NEXT, l, load<f64>(p + (17 << 3)));
    const a = get(A_, l), b = get(A_ + 1, l), c = get(A_ + 2, l);
    set(CLIMB, l, get(N1, l) * a + get(N2, l) * b + get(N3, l) * c + get(NW, l));
    set(T, l, 0); set(APEX, l, 0); set(APEXA, l, 0); set(APEXB, l, 0); set(APEXC, l, 0); set(APEXT, l, 0);
    set(ATTEMPTS, l, 0); set(MODE, l, NORMAL); set(AIMED, l, 0); set(APEX_INSIDE, l, 0);
    if (!startDerivative(l)) { live++; finish(lane, l, OUTSIDE, false); continue; }
    live++;
    set(FALL, l, get(N1, l) * get(K, l) + get(N2, l) * get(K + 1, l) + get(N3, l) * get(K + 2, l));
    choose(lane, l, false, 0);
    return;
  }
}

/** Derivative at the start of a flight, in plain numbers. False outside the compiled law. */
function startDerivative(l: usize): bool {
  const a = get(A_, l), b = get(A_ + 1, l), c = get(A_ + 2, l), w = get(A_ + 3, l);
  const mm = a * a + b * b, uu = mm + c * c, m = sqrt(mm), u = sqrt(uu), r = 1 / (mm * uu);
  const x = w * mm * (acrossOnly ? m : u) * r, z = u * get(RINV, l);
  if (!(x >= sLow && x < sHigh && z >= rLow && z < rHigh)) return false;
  const xf = floor(x), zf = floor(z), t = x - xf, s = z - zf, p = SPIN_TABLE + (<usize>xf << 6), q = REYNOLDS_TABLE + (<usize>zf << 5);
  const cl = cubicAt(p, t), cd = cubicAt(p + 32, t) + cubicAt(q, s);
  const du = get(DRAG, l) * u * cd, lu = get(LIFT, l) * (uu * uu) * (r * m) * cl;
  set(K, l, du * a - lu * b);
  set(K + 1, l, lu * a + (du * b - get(G2, l)));
  set(K + 2, l, du * c - get(G3, l));
  set(K + 3, l, get(DECAY, l) * u * w);
  return true;
}

// @ts-ignore: decorator
@inline function cubicAt(p: usize, t: f64): f64 { return load<f64>(p) + t * load<f64>(p, 8) + t * t * (load<f64>(p, 16) + t * load<f64>(p, 24)); }

/** Takes the outcome of the last attempt of a lane. */
function advance(lane: i32, l: usize): void {
  const h = get(H, l), attempts = get(ATTEMPTS, l) + 1;
  set(ATTEMPTS, l, attempts);
  const error = get(ERROR, l);
  const inside = get(LOW_X, l) >= sLow && get(HIGH_X, l) < sHigh && get(LOW_Z, l) >= rLow && get(HIGH_Z, l) < rHigh && error == error;
  if (!inside || attempts > MAX_ATTEMPTS || h * h < 1e-24) { finish(lane, l, OUTSIDE, true); return; }
  const mode = get(MODE, l);
  const e2 = get(E2, l), e3y = get(E3Y, l);
  const bn = get(NEW + 1, l), cn = get(NEW + 2, l), Bn = get(NEW + 5, l), Cn = get(NEW + 6, l);
  const vyn = e2 * bn + e3y * cn;
  if (mode == TO_APEX) {
    const kh = get(KEPTH, l), vy = e2 * get(A_ + 1, l) + e3y * get(A_ + 2, l), ay = e2 * get(K + 1, l) + e3y * get(K + 2, l);
    const full = 2 * (e2 * get(KEPT + 1, l) + e3y * get(KEPT + 2, l) - vy) / kh - ay, toTop = -vyn / (ay + (full - ay) * (h / kh));
    const top = e2 * Bn + e3y * Cn + 0.5 * vyn * toTop;
    if (top > get(APEX, l)) {
      set(APEX, l, top); set(APEXT, l, get(T, l) + h + toTop);
      for (let i: usize = 0; i < 3; i++) set(APEXA + i, l, get(NEW + 4 + i, l) + toTop * get(NEW + i, l));
    }
    set(MODE, l, NORMAL);
    for (let i: usize = 0; i < 7; i++) copy(NEW + i, KEPT + i, l);
    for (let i: usize = 0; i < 4; i++) copy(KN + i, KEPTK + i, l);
    copy(END_X, KEPTX, l); copy(END_Z, KEPTZ, l);
    accept(lane, l, kh, false);
    return;
  }
  const height = get(HEIGHT, l), climb = get(CLIMB, l), nw = get(NW, l), n1 = get(N1, l), n2 = get(N2, l), n3 = get(N3, l);
  const heightN = height + n1 * (get(NEW + 4, l) - get(A_ + 4, l)) + n2 * (Bn - get(A_ + 5, l)) + n3 * (Cn - get(A_ + 6, l)) + nw * h;
  const climbN = n1 * get(NEW, l) + n2 * bn + n3 * cn + nw;
  set(NEXTH, l, heightN); set(NEXTC, l, climbN);
  if (mode == TO_GROUND) {
    if (!(climbN < 0)) { finish(lane, l, OUTSIDE, true); return; }
    const miss = heightN / climbN;
    if (miss * miss > 1e-8) { set(H, l, h - miss); return; }
    accept(lane, l, h, true);
    return;
  }
  const factor = min(3, max(0.3, get(WANTED, l)));
  if (!(error <= 1)) { set(H, l, h * (error > 1 ? factor : 0.3)); set(AIMED, l, 0); return; }
  const vy = e2 * get(A_ + 1, l) + e3y * get(A_ + 2, l);
  if (heightN < 0) {
    const sloped = n1 != 0 || nw != 0 || n2 != e2 || n3 != e3y;
    if ((height <= 0 && get(AIMED, l) == 0) || (sloped && vy > 0)) { finish(lane, l, OUTSIDE, true); return; }
  } else if (climb < 0 && climbN > 0) { finish(lane, l, OUTSIDE, true); return; }
  set(NEXT, l, h * factor);
  if (vy > 0 && vyn <= 0) {
    if (restepApex) {
      for (let i: usize = 0; i < 7; i++) copy(KEPT + i, NEW + i, l);
      for (let i: usize = 0; i < 4; i++) copy(KEPTK + i, KN + i, l);
      copy(KEPTX, END_X, l); copy(KEPTZ, END_Z, l);
      set(KEPTH, l, h);
      const y = e2 * get(A_ + 5, l) + e3y * get(A_ + 6, l), ay = e2 * get(K + 1, l) + e3y * get(K + 2, l);
      set(H, l, h * topOfQuartic(h, y, vy, ay, e2 * Bn + e3y * Cn, vyn));
      set(MODE, l, TO_APEX);
      return;
    }
    set(APEX_INSIDE, l, 1);
  }
  accept(lane, l, h, false);
}

/**
 * Takes the events inside the step just made; then moves the lane to its end and chooses the next, or lands it on the
 * quintic through both ends when the ground is that near.
 */
function accept(lane: i32, l: usize, h: f64, landed: bool): void {
  const x = get(END_X, l), z = get(END_Z, l);
  if (!(x >= sLow && x < sHigh && z >= rLow && z < rHigh)) { finish(lane, l, OUTSIDE, true); return; }
  const t = get(T, l) + h, height = get(NEXTH, l), climb = get(NEXTC, l);
  set(T, l, t);
  if (get(APEX_INSIDE, l) != 0) { set(APEX_INSIDE, l, 0); takeApex(l, h, t); }
  const pFall = get(FALL, l), fall = get(N1, l) * get(KN, l) + get(N2, l) * get(KN + 1, l) + get(N3, l) * get(KN + 2, l);
  let toGround = landed, miss: f64 = 0;
  if (!landed && (height < 0 || (get(AIMED, l) != 0 && t < timeLimit))) {
    const at = rootOfQuintic(h, get(HEIGHT, l), get(CLIMB, l), pFall, height, climb, fall);
    if (!(at > 0 && at < 1.5)) { move(l, height, climb, fall); finish(lane, l, OUTSIDE, true); return; }
    miss = (at - 1) * h;
    const reach: f64 = restepApex ? 0.0016 : 0.01;
    if (miss * miss < reach * h * h) {
      landInside(l, h, at, miss);
      set(T, l, t + miss);
      finish(lane, l, LANDED, true);
      return;
    }
    toGround = height < 0 || miss < 0.3 * get(NEXT, l);
  }
  move(l, height, climb, fall);
  if (landed) { drift(l); finish(lane, l, LANDED, true); return; }
  choose(lane, l, toGround, miss);
}

/** Makes the end of a step the node a lane stands at. Written out: a loop would find each address anew. */
function move(l: usize, height: f64, climb: f64, fall: f64): void {
  copy(A_, NEW, l); copy(A_ + 1, NEW + 1, l); copy(A_ + 2, NEW + 2, l); copy(A_ + 3, NEW + 3, l);
  copy(A_ + 4, NEW + 4, l); copy(A_ + 5, NEW + 5, l); copy(A_ + 6, NEW + 6, l);
  copy(K, KN, l); copy(K + 1, KN + 1, l); copy(K + 2, KN + 2, l); copy(K + 3, KN + 3, l);
  set(HEIGHT, l, height); set(CLIMB, l, climb); set(FALL, l, fall);
}

/** Notes the top of the quintic over a step that ends at time t. */
function takeApex(l: usize, h: f64, t: f64): void {
  const e2 = get(E2, l), e3y = get(E3Y, l);
  const x = topOfQuintic(h, up(l, A_ + 4, e2, e3y), up(l, A_, e2, e3y), up(l, K, e2, e3y), up(l, NEW + 4, e2, e3y), up(l, NEW, e2, e3y), up(l, KN, e2, e3y));
  setWeights(h, x);
  const B = onQuintic(l, 1), C = onQuintic(l, 2), top = e2 * B + e3y * C;
  if (top > get(APEX, l)) { set(APEX, l, top); set(APEXT, l, t - h + x * h); set(APEXA, l, onQuintic(l, 0)); set(APEXB, l, B); set(APEXC, l, C); }
}

/** Puts a lane where the quintics through both ends of its step meet the ground, `miss` after the end. */
function landInside(l: usize, h: f64, x: f64, miss: f64): void {
  setWeights(h, x);
  const A = onQuintic(l, 0), B = onQuintic(l, 1), C = onQuintic(l, 2);
  const xx = x * x, s1 = 30 * xx * (1 - x) * (1 - x) / h, s2 = 1 + xx * (x * (32 - 15 * x) - 18), s3 = xx * (x * (28 - 15 * x) - 12);
  const s4 = h * x * (1 + x * (x * (6 - 2.5 * x) - 4.5)), s5 = h * xx * (1.5 + x * (2.5 * x - 4));
  const a = slope(l, 0, s1, s2, s3, s4, s5), b = slope(l, 1, s1, s2, s3, s4, s5), c = slope(l, 2, s1, s2, s3, s4, s5);
  set(A_, l, a); set(A_ + 1, l, b); set(A_ + 2, l, c); set(A_ + 3, l, get(NEW + 3, l) + miss * get(KN + 3, l));
  set(A_ + 4, l, A); set(A_ + 5, l, B); set(A_ + 6, l, C);
}

let q1: f64 = 0, q2: f64 = 0, q3: f64 = 0, q4: f64 = 0, q5: f64 = 0;

/** Weights of the five data besides the first value at x on a quintic over a step. */
function setWeights(h: f64, x: f64): void {
  const x3 = x * x * x;
  q1 = x3 * (10 + x * (6 * x - 15)); q2 = h * (x + x3 * (x * (8 - 3 * x) - 6)); q3 = h * x3 * (x * (7 - 3 * x) - 4);
  q4 = 0.5 * h * h * (x * x + x3 * (x * (3 - x) - 3)); q5 = 0.5 * h * h * x3 * (1 + x * (x - 2));
}

/** Displacement component `i` at those weights. */
// @ts-ignore: decorator
@inline function onQuintic(l: usize, i: usize): f64 {
  const p = get(A_ + 4 + i, l);
  return p + (get(NEW + 4 + i, l) - p) * q1 + get(A_ + i, l) * q2 + get(NEW + i, l) * q3 + get(K + i, l) * q4 + get(KN + i, l) * q5;
}

/** Its slope by weights of its own: velocity component `i`. */
// @ts-ignore: decorator
@inline function slope(l: usize, i: usize, s1: f64, s2: f64, s3: f64, s4: f64, s5: f64): f64 {
  return (get(NEW + 4 + i, l) - get(A_ + 4 + i, l)) * s1 + get(A_ + i, l) * s2 + get(NEW + i, l) * s3 + get(K + i, l) * s4 + get(KN + i, l) * s5;
}

/** Upward part of a triple of lane variables. */
// @ts-ignore: decorator
@inline function up(l: usize, v: usize, e2: f64, e3y: f64): f64 { return e2 * get(v + 1, l) + e3y * get(v + 2, l); }

/** Sets the size of the step from a node: onto the ground, `miss` away, or the one wanted, shortened to aim at the ground. */
function choose(lane: i32, l: usize, toGround: bool, miss: f64): void {
  const height = get(HEIGHT, l), climb = get(CLIMB, l), fall = get(FALL, l), t = get(T, l), wanted = get(NEXT, l);
  set(AIMED, l, 0);
  if (toGround) { set(MODE, l, TO_GROUND); set(H, l, miss); return; }
  if (t >= timeLimit) { set(T, l, timeLimit); finish(lane, l, TIME_LIMIT, true); return; }
  let h = t + wanted > timeLimit ? timeLimit - t : wanted;
  // Within a step that turns the air velocity over, S may go through a peak that no stage meets.
  const a = get(A_, l), b = get(A_ + 1, l), c = get(A_ + 2, l), ka = get(K, l), kb = get(K + 1, l), kc = get(K + 2, l);
  const uu = a * a + b * b + c * c, kk = ka * ka + kb * kb + kc * kc;
  if (h * h * kk > uu) h = sqrt(uu / kk);
  // A ball that is lifted out of its fall must be seen rising, or its apex goes unnoticed within one step.
  const vy = up(l, A_, get(E2, l), get(E3Y, l)), ay = up(l, K, get(E2, l), get(E3Y, l));
  if (vy <= 0 && ay > 0) h = min(h, max(-1.5 * vy / ay, 0.1 * h));
  // Still climbing after three such steps: the ground is further away than that. Else the last step is aimed there.
  if (fall < 0 && climb + 3 * h * fall < 0) {
    const toGo = (climb + sqrt(climb * climb - 2 * fall * height)) / -fall;
    if (toGo > 0 && t + toGo < timeLimit) {
      if (toGo < 1.1 * h) { h = toGo; set(AIMED, l, 1); } else if (toGo < 2 * h) h = 0.5 * toGo;
    }
  }
  set(H, l, h);
}

/** A step onto the ground misses it by microseconds: second-order Taylor over that time. */
function drift(l: usize): void {
  const dt = -get(HEIGHT, l) / get(CLIMB, l);
  for (let i: usize = 0; i < 3; i++) {
    set(A_ + 4 + i, l, get(A_ + 4 + i, l) + dt * (get(A_ + i, l) + 0.5 * dt * get(K + i, l)));
    set(A_ + i, l, get(A_ + i, l) + dt * get(K + i, l));
  }
  set(A_ + 3, l, get(A_ + 3, l) + dt * get(K + 3, l));
  set(T, l, get(T, l) + dt);
}

/** Writes a flight's results and refills the lane. */
function finish(lane: i32, l: usize, status: f64, refill: bool): void {
  if (status == LANDED && get(T, l) > timeLimit) status = OUTSIDE;
  const out = RESULTS_AT + <usize>unchecked(flightOf[lane]) * <usize>(RESULTS * 8);
  if (status != OUTSIDE) {
    const y = get(E2, l) * get(A_ + 5, l) + get(E3Y, l) * get(A_ + 6, l);
    if (y > get(APEX, l)) { set(APEX, l, y); for (let i: usize = 0; i < 3; i++) set(APEXA + i, l, get(A_ + 4 + i, l)); set(APEXT, l, get(T, l)); }
  }
  for (let i: usize = 0; i < 7; i++) store<f64>(out + (i << 3), get(A_ + i, l));
  store<f64>(out + 56, get(T, l));
  for (let i: usize = 0; i < 5; i++) store<f64>(out + ((8 + i) << 3), get(APEX + i, l));
  store<f64>(out + (13 << 3), status);
  live--;
  if (refill) fill(lane);
}

function crest(V0: f64, F0: f64, V1: f64): f64 { return V0 / (sqrt(max(0, F0 * F0 - V0 * (V1 - V0 - 2 * F0))) - F0); }

function topOfQuintic(h: f64, y0: f64, v0: f64, f0: f64, y1: f64, v1: f64, f1: f64): f64 {
  const V0 = v0 * h, V1 = v1 * h, F0 = 0.5 * f0 * h * h, F1 = 0.5 * f1 * h * h, d = y1 - y0;
  const c3 = 10 * d - 6 * V0 - 4 * V1 - 3 * F0 + F1, c4 = -15 * d + 8 * V0 + 7 * V1 + 3 * F0 - 2 * F1, c5 = 6 * d - 3 * V0 - 3 * V1 - F0 + F1;
  let x = crest(V0, F0, V1);
  for (let i: i32 = 0; i < 2; i++) x -= (V0 + x * (2 * F0 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5)))) / (2 * F0 + x * (6 * c3 + x * (12 * c4 + x * 20 * c5)));
  return x;
}

function rootOfQuintic(h: f64, y0: f64, v0: f64, f0: f64, y1: f64, v1: f64, f1: f64): f64 {
  const V0 = v0 * h, V1 = v1 * h, F0 = 0.5 * f0 * h * h, F1 = 0.5 * f1 * h * h, d = y1 - y0;
  const c3 = 10 * d - 6 * V0 - 4 * V1 - 3 * F0 + F1, c4 = -15 * d + 8 * V0 + 7 * V1 + 3 * F0 - 2 * F1, c5 = 6 * d - 3 * V0 - 3 * V1 - F0 + F1;
  let x = 1 - y1 / V1;
  for (let i: i32 = 0; i < 12; i++) {
    const slope = V0 + x * (2 * F0 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5)));
    if (!(slope < 0)) return -1;
    const delta = (y0 + x * (V0 + x * (F0 + x * (c3 + x * (c4 + x * c5))))) / slope;
    x -= delta;
    if (delta * delta < 1e-12) return x;
  }
  return x;
}

function topOfQuartic(h: f64, y0: f64, v0: f64, f0: f64, y1: f64, v1: f64): f64 {
  const V0 = v0 * h, V1 = v1 * h, F0 = 0.5 * f0 * h * h, d = y1 - y0 - V0 - F0, s = V1 - V0 - 2 * F0;
  const c3 = 4 * d - s, c4 = s - 3 * d;
  const guess = crest(V0, F0, V1);
  let x = guess;
  for (let i: i32 = 0; i < 4; i++) x -= (V0 + x * (2 * F0 + x * (3 * c3 + x * 4 * c4))) / (2 * F0 + x * (6 * c3 + x * 12 * c4));
  return x > 0 && x < 1 ? x : guess;
}
