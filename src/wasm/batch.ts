/**
 * Many flights through the compiled law, four at a time: the control flow of kernel-template.ts, one lane at a time,
 * around the step of step.generated.ts. AssemblyScript; built by npm run generate.
 */
import {
  ACROSS, AIMED, APEX, APEX_A, APEX_B, APEX_C, APEX_INSIDE, APEX_T, ATTEMPTS, CELLS_PER_SPEED, CLIMB, DECAY, DRAG, END_X, END_Z, ERROR, FALL, GRAVITY2, GRAVITY3, H, HEIGHT,
  HIGH_X, HIGH_Z, INPUTS, LEAST_X, LEAST_Z, LIFT, LOW_X, LOW_Z, MODE, MOST_X, MOST_Z, NEW_CLIMB, NEW_HEIGHT, NEW_RATE, NEW_STATE, NEXT, NORMAL1, NORMAL2, NORMAL3,
  NORMAL_WIND, PER_TOLERANCE, RATE, REGISTER, RESULTS, REYNOLDS_NOWHERE, REYNOLDS_NUMBERS, REYNOLDS_IN_BOTH, SPIN_NUMBERS, STATE, T, UP2, UP3, WANTED,
} from './lanes.generated';
import { CHUNK, FLIGHTS, REGISTERS, REYNOLDS_TABLE, RESULTS_AT, SPIN_TABLE } from './layout';
import {
  LANDED, MOST_ROOT_STEPS, ON_GROUND_WITHIN, OUTSIDE, ROOT_WITHIN, TIME_LIMIT, TOP_STEPS_ON_QUINTIC,
  aimsAtGround, believesRoot, endsAtTop, givesUp, hidesLanding, landsOnQuintic, nearsGround, passesTop, seenRising, stepFactor, stepTowardsGround, stepsOntoGround, timeToGround, withinTime, withoutTurning,
} from '../flight/engine/step-decisions';
import { setForm, step } from './step.generated';

const IN_AIR: f64 = 0, TO_APEX: f64 = 1, TO_GROUND: f64 = 2;

let timeLimit: f64 = 60, restepApex: bool = false;
let acrossOnly: bool = true, sLow: f64 = 0, sHigh: f64 = 0, rLow: f64 = 0, rHigh: f64 = 0, form: i32 = 0;
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
export function configure(limit: f64, perTol: f64, restep: bool, across: bool, low: f64, high: f64, reLow: f64, reHigh: f64, reynoldsForm: i32): void {
  timeLimit = limit; restepApex = restep; acrossOnly = across;
  sLow = low; sHigh = high; rLow = reLow; rHigh = reHigh;
  form = reynoldsForm; setForm(reynoldsForm);
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
    for (let i: usize = 0; i < 4; i++) set(STATE + i, l, load<f64>(p + (i << 3)));
    for (let i: usize = 4; i < 7; i++) set(STATE + i, l, 0);
    for (let i: usize = 0; i < 6; i++) set(GRAVITY2 + i, l, load<f64>(p + ((4 + i) << 3)));
    for (let i: usize = 0; i < 6; i++) set(NORMAL1 + i, l, load<f64>(p + ((10 + i) << 3)));
    set(HEIGHT, l, load<f64>(p + (16 << 3)));
    set(NEXT, l, load<f64>(p + (17 << 3)));
    const a = get(STATE, l), b = get(STATE + 1, l), c = get(STATE + 2, l);
    set(CLIMB, l, get(NORMAL1, l) * a + get(NORMAL2, l) * b + get(NORMAL3, l) * c + get(NORMAL_WIND, l));
    set(T, l, 0); set(APEX, l, 0); set(APEX_A, l, 0); set(APEX_B, l, 0); set(APEX_C, l, 0); set(APEX_T, l, 0);
    set(ATTEMPTS, l, 0); set(MODE, l, IN_AIR); set(AIMED, l, 0); set(APEX_INSIDE, l, 0);
    if (!startDerivative(l)) { live++; finish(lane, l, OUTSIDE, false); continue; }
    live++;
    set(FALL, l, get(NORMAL1, l) * get(RATE, l) + get(NORMAL2, l) * get(RATE + 1, l) + get(NORMAL3, l) * get(RATE + 2, l));
    choose(lane, l, false, 0);
    return;
  }
}

/** Derivative at the start of a flight, in plain numbers. False outside the compiled law. */
function startDerivative(l: usize): bool {
  const a = get(STATE, l), b = get(STATE + 1, l), c = get(STATE + 2, l), w = get(STATE + 3, l);
  const mm = a * a + b * b, uu = mm + c * c, m = sqrt(mm), u = sqrt(uu), r = 1 / (mm * uu);
  const x = w * mm * (acrossOnly ? m : u) * r, z = u * get(CELLS_PER_SPEED, l);
  if (!(x >= sLow && x < sHigh && z >= rLow && z < rHigh)) return false;
  set(LEAST_X, l, x); set(MOST_X, l, x); set(LEAST_Z, l, z); set(MOST_Z, l, z);
  const xf = floor(x), t = x - xf, p = SPIN_TABLE + <usize>xf * (SPIN_NUMBERS * 8);
  let cl = cubicAt(p, t), cd = cubicAt(p + 8, t);
  if (form != REYNOLDS_NOWHERE) {
    const zf = floor(z), s = z - zf, q = REYNOLDS_TABLE + <usize>zf * (REYNOLDS_NUMBERS * 8);
    const times = form == REYNOLDS_IN_BOTH;
    cl += times ? cubicAt(q, s) * cubicAt(p + 64, t) : cubicAt(q, s);
    cd += times ? cubicAt(q + 8, s) * cubicAt(p + 72, t) : cubicAt(q + 8, s);
  }
  const du = get(DRAG, l) * u * cd, lu = get(LIFT, l) * (uu * uu) * (r * m) * cl;
  set(RATE, l, du * a - lu * b);
  set(RATE + 1, l, lu * a + (du * b - get(GRAVITY2, l)));
  set(RATE + 2, l, du * c - get(GRAVITY3, l));
  set(RATE + 3, l, get(DECAY, l) * u * w);
  return true;
}

// @ts-ignore: decorator
@inline function cubicAt(p: usize, t: f64): f64 { return load<f64>(p) + t * load<f64>(p, 16) + t * t * (load<f64>(p, 32) + t * load<f64>(p, 48)); }

/** Takes the outcome of the last attempt of a lane. */
function advance(lane: i32, l: usize): void {
  const h = get(H, l), attempts = get(ATTEMPTS, l) + 1;
  set(ATTEMPTS, l, attempts);
  const error = get(ERROR, l);
  const inside = get(LOW_X, l) >= sLow && get(HIGH_X, l) < sHigh && get(LOW_Z, l) >= rLow && get(HIGH_Z, l) < rHigh && error == error;
  if (!inside || givesUp(attempts, h)) { finish(lane, l, OUTSIDE, true); return; }
  const mode = get(MODE, l);
  const up2 = get(UP2, l), up3 = get(UP3, l);
  const bn = get(NEW_STATE + 1, l), cn = get(NEW_STATE + 2, l), Bn = get(NEW_STATE + 5, l), Cn = get(NEW_STATE + 6, l);
  const vyn = up2 * bn + up3 * cn;
  const height = get(HEIGHT, l), climb = get(CLIMB, l), normalWind = get(NORMAL_WIND, l), normal1 = get(NORMAL1, l), normal2 = get(NORMAL2, l), normal3 = get(NORMAL3, l);
  const heightN = height + normal1 * (get(NEW_STATE + 4, l) - get(STATE + 4, l)) + normal2 * (Bn - get(STATE + 5, l)) + normal3 * (Cn - get(STATE + 6, l)) + normalWind * h;
  const climbN = normal1 * get(NEW_STATE, l) + normal2 * bn + normal3 * cn + normalWind;
  set(NEW_HEIGHT, l, heightN); set(NEW_CLIMB, l, climbN);
  if (mode == TO_GROUND) {
    if (!(climbN < 0)) { finish(lane, l, OUTSIDE, true); return; }
    const miss = heightN / climbN;
    if (abs(miss) > ON_GROUND_WITHIN) { set(H, l, h - miss); return; }
    accept(lane, l, h, true);
    return;
  }
  const factor = stepFactor(get(WANTED, l));
  if (!(error <= 1)) { set(H, l, h * factor); set(AIMED, l, 0); set(MODE, l, IN_AIR); return; }
  const vy = up2 * get(STATE + 1, l) + up3 * get(STATE + 2, l);
  const sloped = normal1 != 0 || normalWind != 0 || normal2 != up2 || normal3 != up3;
  if (hidesLanding(height, climb, vy, heightN, climbN, get(AIMED, l) != 0, sloped)) { finish(lane, l, OUTSIDE, true); return; }
  set(NEXT, l, mode == TO_APEX ? max(get(NEXT, l), h * factor) : h * factor);
  set(MODE, l, IN_AIR);
  if (passesTop(vy, vyn)) {
    if (restepApex) {
      const at = crest(vy * h, 0.5 * (up2 * get(RATE + 1, l) + up3 * get(RATE + 2, l)) * h * h, vyn * h);
      if (endsAtTop(at)) { set(H, l, h * at); set(AIMED, l, 0); set(MODE, l, TO_APEX); return; }
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
  set(LEAST_X, l, min(x, get(LEAST_X, l))); set(MOST_X, l, max(x, get(MOST_X, l)));
  set(LEAST_Z, l, min(z, get(LEAST_Z, l))); set(MOST_Z, l, max(z, get(MOST_Z, l)));
  const t = get(T, l) + h, height = get(NEW_HEIGHT, l), climb = get(NEW_CLIMB, l);
  set(T, l, t);
  if (get(APEX_INSIDE, l) != 0) { set(APEX_INSIDE, l, 0); takeApex(l, h, t); }
  const pFall = get(FALL, l), fall = get(NORMAL1, l) * get(NEW_RATE, l) + get(NORMAL2, l) * get(NEW_RATE + 1, l) + get(NORMAL3, l) * get(NEW_RATE + 2, l);
  let toGround = landed, miss: f64 = 0;
  if (!landed && (height < 0 || (get(AIMED, l) != 0 && t < timeLimit))) {
    const at = rootOfQuintic(h, get(HEIGHT, l), get(CLIMB, l), pFall, height, climb, fall);
    if (!believesRoot(at)) { move(l, height, climb, fall); finish(lane, l, OUTSIDE, true); return; }
    miss = (at - 1) * h;
    if (landsOnQuintic(miss, h, restepApex)) {
      landInside(l, h, at, miss);
      set(T, l, t + miss);
      finish(lane, l, LANDED, true);
      return;
    }
    toGround = stepsOntoGround(height, miss, get(NEXT, l));
  }
  move(l, height, climb, fall);
  if (landed) { drift(l); finish(lane, l, LANDED, true); return; }
  choose(lane, l, toGround, miss);
}

/** Makes the end of a step the node a lane stands at. Written out: a loop would find each address anew. */
function move(l: usize, height: f64, climb: f64, fall: f64): void {
  copy(STATE, NEW_STATE, l); copy(STATE + 1, NEW_STATE + 1, l); copy(STATE + 2, NEW_STATE + 2, l); copy(STATE + 3, NEW_STATE + 3, l);
  copy(STATE + 4, NEW_STATE + 4, l); copy(STATE + 5, NEW_STATE + 5, l); copy(STATE + 6, NEW_STATE + 6, l);
  copy(RATE, NEW_RATE, l); copy(RATE + 1, NEW_RATE + 1, l); copy(RATE + 2, NEW_RATE + 2, l); copy(RATE + 3, NEW_RATE + 3, l);
  set(HEIGHT, l, height); set(CLIMB, l, climb); set(FALL, l, fall);
}

/** Notes the top of the quintic over a step that ends at time t. */
function takeApex(l: usize, h: f64, t: f64): void {
  const up2 = get(UP2, l), up3 = get(UP3, l);
  const x = topOfQuintic(h, up(l, STATE + 4, up2, up3), up(l, STATE, up2, up3), up(l, RATE, up2, up3), up(l, NEW_STATE + 4, up2, up3), up(l, NEW_STATE, up2, up3), up(l, NEW_RATE, up2, up3));
  setWeights(h, x);
  const B = onQuintic(l, 1), C = onQuintic(l, 2), top = up2 * B + up3 * C;
  if (top > get(APEX, l)) { set(APEX, l, top); set(APEX_T, l, t - h + x * h); set(APEX_A, l, onQuintic(l, 0)); set(APEX_B, l, B); set(APEX_C, l, C); }
}

/** Puts a lane where the quintics through both ends of its step meet the ground, `miss` after the end. */
function landInside(l: usize, h: f64, x: f64, miss: f64): void {
  setWeights(h, x);
  const A = onQuintic(l, 0), B = onQuintic(l, 1), C = onQuintic(l, 2);
  const xx = x * x, s1 = 30 * xx * (1 - x) * (1 - x) / h, s2 = 1 + xx * (x * (32 - 15 * x) - 18), s3 = xx * (x * (28 - 15 * x) - 12);
  const s4 = h * x * (1 + x * (x * (6 - 2.5 * x) - 4.5)), s5 = h * xx * (1.5 + x * (2.5 * x - 4));
  const a = slope(l, 0, s1, s2, s3, s4, s5), b = slope(l, 1, s1, s2, s3, s4, s5), c = slope(l, 2, s1, s2, s3, s4, s5);
  set(STATE, l, a); set(STATE + 1, l, b); set(STATE + 2, l, c); set(STATE + 3, l, get(NEW_STATE + 3, l) + miss * get(NEW_RATE + 3, l));
  set(STATE + 4, l, A); set(STATE + 5, l, B); set(STATE + 6, l, C);
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
  const p = get(STATE + 4 + i, l);
  return p + (get(NEW_STATE + 4 + i, l) - p) * q1 + get(STATE + i, l) * q2 + get(NEW_STATE + i, l) * q3 + get(RATE + i, l) * q4 + get(NEW_RATE + i, l) * q5;
}

/** Its slope by weights of its own: velocity component `i`. */
// @ts-ignore: decorator
@inline function slope(l: usize, i: usize, s1: f64, s2: f64, s3: f64, s4: f64, s5: f64): f64 {
  return (get(NEW_STATE + 4 + i, l) - get(STATE + 4 + i, l)) * s1 + get(STATE + i, l) * s2 + get(NEW_STATE + i, l) * s3 + get(RATE + i, l) * s4 + get(NEW_RATE + i, l) * s5;
}

/** Upward part of a triple of lane variables. */
// @ts-ignore: decorator
@inline function up(l: usize, v: usize, up2: f64, up3: f64): f64 { return up2 * get(v + 1, l) + up3 * get(v + 2, l); }

/** Sets the size of the step from a node: onto the ground, `miss` away, or the one wanted, shortened to aim at the ground. */
function choose(lane: i32, l: usize, toGround: bool, miss: f64): void {
  const height = get(HEIGHT, l), climb = get(CLIMB, l), fall = get(FALL, l), t = get(T, l), wanted = get(NEXT, l);
  set(AIMED, l, 0);
  if (toGround) { set(MODE, l, TO_GROUND); set(H, l, miss); return; }
  if (t >= timeLimit) { set(T, l, timeLimit); finish(lane, l, TIME_LIMIT, true); return; }
  let h = withinTime(wanted, t, timeLimit);
  const a = get(STATE, l), b = get(STATE + 1, l), c = get(STATE + 2, l), ka = get(RATE, l), kb = get(RATE + 1, l), kc = get(RATE + 2, l);
  const uu = a * a + b * b + c * c, kk = ka * ka + kb * kb + kc * kc;
  h = withoutTurning(h, uu, kk);
  const vy = up(l, STATE, get(UP2, l), get(UP3, l)), ay = up(l, RATE, get(UP2, l), get(UP3, l));
  h = seenRising(h, vy, ay);
  if (nearsGround(h, climb, fall)) {
    const toGo = timeToGround(height, climb, fall);
    if (toGo > 0 && t + toGo < timeLimit) {
      if (aimsAtGround(h, toGo)) set(AIMED, l, 1);
      h = stepTowardsGround(h, toGo);
    }
  }
  set(H, l, h);
}

/** A step onto the ground misses it by microseconds: second-order Taylor over that time. */
function drift(l: usize): void {
  const dt = -get(HEIGHT, l) / get(CLIMB, l);
  for (let i: usize = 0; i < 3; i++) {
    set(STATE + 4 + i, l, get(STATE + 4 + i, l) + dt * (get(STATE + i, l) + 0.5 * dt * get(RATE + i, l)));
    set(STATE + i, l, get(STATE + i, l) + dt * get(RATE + i, l));
  }
  set(STATE + 3, l, get(STATE + 3, l) + dt * get(RATE + 3, l));
  set(T, l, get(T, l) + dt);
}

/** Writes a flight's results and refills the lane. */
function finish(lane: i32, l: usize, status: f64, refill: bool): void {
  if (status == LANDED && get(T, l) > timeLimit) status = OUTSIDE;
  const out = RESULTS_AT + <usize>unchecked(flightOf[lane]) * <usize>(RESULTS * 8);
  if (status != OUTSIDE) {
    const y = get(UP2, l) * get(STATE + 5, l) + get(UP3, l) * get(STATE + 6, l);
    if (y > get(APEX, l)) { set(APEX, l, y); for (let i: usize = 0; i < 3; i++) set(APEX_A + i, l, get(STATE + 4 + i, l)); set(APEX_T, l, get(T, l)); }
  }
  for (let i: usize = 0; i < 7; i++) store<f64>(out + (i << 3), get(STATE + i, l));
  store<f64>(out + 56, get(T, l));
  for (let i: usize = 0; i < 5; i++) store<f64>(out + ((8 + i) << 3), get(APEX + i, l));
  const cells = get(CELLS_PER_SPEED, l);
  store<f64>(out + (13 << 3), get(LEAST_Z, l) / cells); store<f64>(out + (14 << 3), get(MOST_Z, l) / cells);
  store<f64>(out + (15 << 3), get(LEAST_X, l)); store<f64>(out + (16 << 3), get(MOST_X, l));
  store<f64>(out + <usize>(RESULTS - 1) * 8, status);
  live--;
  if (refill) fill(lane);
}

function crest(V0: f64, F0: f64, V1: f64): f64 { return V0 / (sqrt(max(0, F0 * F0 - V0 * (V1 - V0 - 2 * F0))) - F0); }

function topOfQuintic(h: f64, y0: f64, v0: f64, f0: f64, y1: f64, v1: f64, f1: f64): f64 {
  const V0 = v0 * h, V1 = v1 * h, F0 = 0.5 * f0 * h * h, F1 = 0.5 * f1 * h * h, d = y1 - y0;
  const c3 = 10 * d - 6 * V0 - 4 * V1 - 3 * F0 + F1, c4 = -15 * d + 8 * V0 + 7 * V1 + 3 * F0 - 2 * F1, c5 = 6 * d - 3 * V0 - 3 * V1 - F0 + F1;
  let x = crest(V0, F0, V1);
  for (let i: i32 = 0; i < <i32>TOP_STEPS_ON_QUINTIC; i++) x -= (V0 + x * (2 * F0 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5)))) / (2 * F0 + x * (6 * c3 + x * (12 * c4 + x * 20 * c5)));
  return x;
}

function rootOfQuintic(h: f64, y0: f64, v0: f64, f0: f64, y1: f64, v1: f64, f1: f64): f64 {
  const V0 = v0 * h, V1 = v1 * h, F0 = 0.5 * f0 * h * h, F1 = 0.5 * f1 * h * h, d = y1 - y0;
  const c3 = 10 * d - 6 * V0 - 4 * V1 - 3 * F0 + F1, c4 = -15 * d + 8 * V0 + 7 * V1 + 3 * F0 - 2 * F1, c5 = 6 * d - 3 * V0 - 3 * V1 - F0 + F1;
  let x = 1 - y1 / V1;
  for (let i: i32 = 0; i < <i32>MOST_ROOT_STEPS; i++) {
    const slope = V0 + x * (2 * F0 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5)));
    if (!(slope < 0)) return -1;
    const delta = (y0 + x * (V0 + x * (F0 + x * (c3 + x * (c4 + x * c5))))) / slope;
    x -= delta;
    if (abs(delta) < ROOT_WITHIN) return x;
  }
  return x;
}
