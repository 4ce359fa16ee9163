/**
 * The quintic through the six data of a step, as x runs from 0 to 1 over its length `h`: where it has its top, where it
 * falls through 0 near the end, and positions and velocities on it. Two steps of Newton's method, as the other kernels
 * take for the top, reach the rounding of single precision for both. @internal
 */
export const QUINTIC_WGSL: string = `
struct Quintic { y0: f32, V0: f32, F0: f32, c3: f32, c4: f32, c5: f32 }

fn quintic(h: f32, y0: f32, v0: f32, f0: f32, y1: f32, v1: f32, f1: f32) -> Quintic {
  let V0 = v0 * h; let V1 = v1 * h; let F0 = 0.5 * f0 * h * h; let F1 = 0.5 * f1 * h * h; let d = y1 - y0;
  return Quintic(y0, V0, F0, 10.0 * d - 6.0 * V0 - 4.0 * V1 - 3.0 * F0 + F1, -15.0 * d + 8.0 * V0 + 7.0 * V1 + 3.0 * F0 - 2.0 * F1, 6.0 * d - 3.0 * V0 - 3.0 * V1 - F0 + F1);
}

fn quinticValue(q: Quintic, x: f32) -> f32 { return q.y0 + x * (q.V0 + x * (q.F0 + x * (q.c3 + x * (q.c4 + x * q.c5)))); }
fn quinticSlope(q: Quintic, x: f32) -> f32 { return q.V0 + x * (2.0 * q.F0 + x * (3.0 * q.c3 + x * (4.0 * q.c4 + x * 5.0 * q.c5))); }
fn quinticBend(q: Quintic, x: f32) -> f32 { return 2.0 * q.F0 + x * (6.0 * q.c3 + x * (12.0 * q.c4 + x * 20.0 * q.c5)); }

fn topOfQuintic(q: Quintic, V1: f32) -> f32 {
  var x = q.V0 / (sqrt(max(0.0, q.F0 * q.F0 - q.V0 * (V1 - q.V0 - 2.0 * q.F0))) - q.F0);
  x -= quinticSlope(q, x) / quinticBend(q, x);
  return x - quinticSlope(q, x) / quinticBend(q, x);
}

fn rootOfQuintic(q: Quintic, y1: f32, V1: f32) -> f32 {
  var x = 1.0 - y1 / V1;
  x -= quinticValue(q, x) / quinticSlope(q, x);
  x -= quinticValue(q, x) / quinticSlope(q, x);
  return x - quinticValue(q, x) / quinticSlope(q, x);
}

fn onQuintic(x: f32, h: f32, moved: vec3f, v0: vec3f, v1: vec3f, k0: vec3f, k1: vec3f) -> vec3f {
  let x3 = x * x * x;
  return moved * (x3 * (10.0 + x * (6.0 * x - 15.0)))
    + v0 * (h * (x + x3 * (x * (8.0 - 3.0 * x) - 6.0))) + v1 * (h * x3 * (x * (7.0 - 3.0 * x) - 4.0))
    + k0 * (0.5 * h * h * (x * x + x3 * (x * (3.0 - x) - 3.0))) + k1 * (0.5 * h * h * x3 * (1.0 + x * (x - 2.0)));
}

fn velocityOnQuintic(x: f32, h: f32, moved: vec3f, v0: vec3f, v1: vec3f, k0: vec3f, k1: vec3f) -> vec3f {
  let xx = x * x;
  return moved * (30.0 * xx * (1.0 - x) * (1.0 - x) / h)
    + v0 * (1.0 + xx * (x * (32.0 - 15.0 * x) - 18.0)) + v1 * (xx * (x * (28.0 - 15.0 * x) - 12.0))
    + k0 * (h * x * (1.0 + x * (x * (6.0 - 2.5 * x) - 4.5))) + k1 * (h * xx * (1.5 + x * (2.5 * x - 4.0)));
}
`;
