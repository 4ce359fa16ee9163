import {
  LANDED,
  MOST_GROWTH,
  MOST_SHRINKING,
  ON_GROUND_WITHIN,
  OUTSIDE,
  SAFETY,
  TIME_LIMIT,
} from '../../flight/engine/step-decisions.js';
import { DECISIONS_WGSL, RATES_WGSL } from '../../flight/engine/step-wgsl.generated.js';
import { float } from './number.js';
import { QUINTIC_WGSL } from './quintic.js';
import { stepText } from './step.js';

/**
 * Error of the velocity a step may make [m/s]: single precision rounds a drive to some 0.05 mm, and finer steps add to that.
 * Calibrated by bench/gpu: the errors in docs/gpu.md.
 */
const STEP_ERROR = 1e-5;
/** A step that errs by more than so many times that is taken again. */
const REFUSED_FROM = 4;
/** First step, times the root of the speed [s √(m/s)]. */
const FIRST_STEP = 2;
/**
 * Share of the height above the foot of a wind profile that one step may pass, and the least such height [m]: the profiles rise from
 * nothing with a kink that the error estimate of a longer step does not see.
 */
const SHARE_OF_HEIGHT = 1;
const LEAST_HEIGHT = 0.02;
/** Steps tried before a flight is left to the processor; an ordinary one takes 12. */
const MOST_STEPS = 400;

/**
 * One flight: the batch kernel's control flow with an error estimate that chooses the next step and seldom refuses one,
 * since all flights of a group wait for the longest. Decisions between steps are those of the other kernels. What they
 * leave to the general engine is left to the processor here.
 * @internal
 */
export function flightText(sheared: boolean): string {
  return `
struct End {
  ended: u32, outsideData: u32, time: f32, apex: f32, apexAt: f32, spin: f32,
  position: vec3f, velocity: vec3f, axis: vec3f,
}

var<private> outside: bool;
var<private> drag: f32;
var<private> lift: f32;
var<private> decay: f32;
var<private> cellsPerSpeed: f32;
var<private> gravity2: f32;
var<private> gravity3: f32;
var<private> wind: vec3f;

${RATES_WGSL}
${DECISIONS_WGSL}
${QUINTIC_WGSL}

fn ratesAt(s: vec4f, height: f32) -> vec4f {
  return rates(${sheared ? 'vec4f(s.xyz - wind * windRatio(height), s.w)' : 's'});
}

/** 1 for a Reynolds number and 2 for a spin ratio outside the data of the model. */
fn outsideData(s: vec4f, height: f32) -> u32 {
  let v = ${sheared ? 's.xyz - wind * windRatio(height)' : 's.xyz'};
  let u = length(v);
  let ratio = s.w * select(1.0, length(v.xy) / u, ACROSS) / u;
  let re = cellsPerSpeed * u;
  return select(0u, 1u, re < scene.valid.x || re > scene.valid.y) | select(0u, 2u, ratio < scene.valid.z || ratio > scene.valid.w);
}

${startText(sheared)}
${loopText(sheared)}
${END}
`;
}

/** Axes, state and rates at the start; a flight that cannot begin here is left to the processor. */
function startText(sheared: boolean): string {
  return `
fn flight(p: Problem) -> End {
  let level = length(p.axis.xz);
  let axis1 = select(vec3f(1.0, 0.0, 0.0), vec3f(p.axis.z, 0.0, -p.axis.x) / level, level > 1e-6);
  let axis2 = cross(p.axis, axis1);
  let frame = mat3x3f(axis1, axis2, p.axis);
  let up = vec3f(0.0, axis2.y, p.axis.y);
  let normal = up - scene.ground.x * vec3f(axis1.x, axis2.x, p.axis.x) - scene.ground.y * vec3f(axis1.z, axis2.z, p.axis.z);
  let sloped = scene.ground.x != 0.0 || scene.ground.y != 0.0;
  let blown = vec3f(p.wind.x, 0.0, p.wind.y);
  let drift = ${sheared ? 'vec3f()' : 'blown'};
  let normalWind = -dot(scene.ground.xy, drift.xz);
  wind = blown * frame;
  drag = -p.drag; lift = select(p.lift, 0.0, p.spin == 0.0); decay = -p.decay; cellsPerSpeed = p.reynoldsPerSpeed;
  gravity2 = scene.ground.z * up.y; gravity3 = scene.ground.z * up.z;
  outside = false;

  var s = vec4f((p.velocity - drift) * frame, scene.ball.y * p.spin);
  var d = vec3f();
  var t = 0.0;
  var height = -p.elevation;
  var climb = dot(normal, s.xyz) + normalWind;
  var above = height > 0.0 || (height == 0.0 && climb > 0.0);
  var apex = 0.0;
  var apexPlace = vec3f();
  var ended = ${OUTSIDE}u;
  // A ball that spins about its own path has no direction for lift to act in.
  let air = s.xyz${sheared ? ' - wind * windRatio(height)' : ''};
  var end = End();
  end.ended = ended;
  if (!(above || climb > 0.0) || dot(air.xy, air.xy) <= 1e-9 * dot(air, air)) { return end; }

  var k1 = ratesAt(s, height);
  var bits = outsideData(s, height);
  let timeLimit = scene.ground.w;
  var next = ${float(FIRST_STEP)} / sqrt(length(air) + 1.0);
  var h = next;
  var aimed = false;
  var toGround = false;
  var fall = dot(normal, k1.xyz);`;
}

/** Step after step, until the ball is down, the time is over, or the processor has to fly it. */
function loopText(sheared: boolean): string {
  return `
  for (var attempt = 0u; attempt <= ${MOST_STEPS}u; attempt++) {
    if (!toGround) {
      if (t >= timeLimit) { ended = ${TIME_LIMIT}u; t = timeLimit; break; }
      h = withoutTurning(withinTime(next, t, timeLimit), dot(s.xyz, s.xyz), dot(k1.xyz, k1.xyz));
      h = seenRising(h, dot(up, s.xyz), dot(up, k1.xyz));
      ${sheared ? `h = min(h, (${float(SHARE_OF_HEIGHT)} * max(abs(height - scene.profile.w), ${float(LEAST_HEIGHT)})) / (abs(climb) + 1.0));` : ''}
      aimed = false;
      if (above && nearsGround(h, climb, fall)) {
        let toGo = timeToGround(height, climb, fall);
        if (toGo > 0.0 && t + toGo < timeLimit) {
          aimed = aimsAtGround(h, toGo);
          h = stepTowardsGround(h, toGo);
        }
      }
    }
    ${stepText(sheared)}
    let newClimb = dot(normal, sn.xyz) + normalWind;
    if (outside) { break; }
    if (toGround) {
      if (!(newClimb < 0.0)) { break; }
      let miss = newHeight / newClimb;
      if (abs(miss) > ${float(ON_GROUND_WITHIN)}) { h -= miss; continue; }
      t += h - miss;
      d += moved - miss * (sn.xyz - 0.5 * miss * kn.xyz);
      s = sn - miss * kn;
      ended = ${LANDED}u;
      break;
    }
    let factor = clamp(${float(SAFETY)} * pow(max(missed, 1e-9) * ${float(1 / STEP_ERROR)}, -0.2), ${float(MOST_SHRINKING)}, ${float(MOST_GROWTH)});
    next = h * factor;
    if (!(missed < ${float(REFUSED_FROM * STEP_ERROR)})) { continue; }
    if (above && hidesLanding(height, climb, dot(up, s.xyz), newHeight, newClimb, aimed, sloped)) { break; }
    if (!above && newHeight <= 0.0 && newClimb <= 0.0) { break; }
    if (passesTop(dot(up, s.xyz), dot(up, sn.xyz))) {
      let q = quintic(h, dot(up, d), dot(up, s.xyz), dot(up, k1.xyz), dot(up, d + moved), dot(up, sn.xyz), dot(up, kn.xyz));
      let x = topOfQuintic(q, dot(up, sn.xyz) * h);
      let top = quinticValue(q, x);
      if (top > apex) {
        apex = top;
        apexPlace = frame * (d + onQuintic(x, h, moved, s.xyz, sn.xyz, k1.xyz, kn.xyz)) + (t + x * h) * drift;
      }
    }
    bits |= outsideData(sn, newHeight);
    var miss = 0.0;
    if (above && (newHeight < 0.0 || (aimed && t + h < timeLimit))) {
      let q = quintic(h, height, climb, fall, newHeight, newClimb, dot(normal, kn.xyz));
      let x = rootOfQuintic(q, newHeight, newClimb * h);
      if (!believesRoot(x)) { break; }
      miss = (x - 1.0) * h;
      if (landsOnQuintic(miss, h, false)) {
        d += onQuintic(x, h, moved, s.xyz, sn.xyz, k1.xyz, kn.xyz);
        s = vec4f(velocityOnQuintic(x, h, moved, s.xyz, sn.xyz, k1.xyz, kn.xyz), sn.w + miss * kn.w);
        t += h + miss;
        ended = ${LANDED}u;
        break;
      }
      toGround = stepsOntoGround(newHeight, miss, next);
    }
    d += moved; s = sn; k1 = kn; t += h;
    height = newHeight; climb = newClimb; fall = dot(normal, kn.xyz);
    above = above || height > 0.0;
    if (toGround) { h = miss; }
  }`;
}

/** What is known of the flight, in the world. */
const END: string = `
  end.ended = select(ended, ${OUTSIDE}u, outside || (ended == ${LANDED}u && t > timeLimit));
  end.outsideData = bits;
  end.time = max(t, 0.0);
  end.position = frame * d + t * drift;
  end.velocity = frame * s.xyz + drift;
  end.spin = s.w / scene.ball.y;
  end.axis = p.axis;
  if (end.position.y > apex) { apex = end.position.y; apexPlace = end.position; }
  end.apex = apex;
  end.apexAt = length(apexPlace.xz);
  return end;
}`;
