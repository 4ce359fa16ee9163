/**
 * Sine, cosine and arc tangent to the last digits of single precision: those of WGSL may be wrong by 2⁻¹¹, which puts a drive
 * 30 mm off. Taylor's series after reduction: of the angle to within an eighth of a turn, of the tangent by half its angle.
 * @internal
 */
export const TRIGONOMETRY_WGSL: string = `
const HALF_PI_HIGH: f32 = 1.5703125;
const HALF_PI_LOW: f32 = 4.83826794896e-4;

fn sineCosine(angle: f32) -> vec2f {
  let quarter = round(angle * 0.636619772);
  let x = (angle - quarter * HALF_PI_HIGH) - quarter * HALF_PI_LOW;
  let q = x * x;
  let s = x + x * q * (-1.0 / 6.0 + q * (1.0 / 120.0 + q * (-1.0 / 5040.0 + q / 362880.0)));
  let c = 1.0 - q * (0.5 - q * (1.0 / 24.0 - q * (1.0 / 720.0 - q / 40320.0)));
  switch (u32(i32(quarter) & 3)) {
    case 0u: { return vec2f(s, c); }
    case 1u: { return vec2f(c, -s); }
    case 2u: { return vec2f(-s, -c); }
    default: { return vec2f(-c, s); }
  }
}

fn arcTangent(y: f32, x: f32) -> f32 {
  let high = max(abs(x), abs(y));
  if (high == 0.0) { return 0.0; }
  let tangent = min(abs(x), abs(y)) / high;
  let t = tangent / (1.0 + sqrt(1.0 + tangent * tangent));
  let q = t * t;
  var angle = 2.0 * t * (1.0 - q * (1.0 / 3.0 - q * (1.0 / 5.0 - q * (1.0 / 7.0 - q * (1.0 / 9.0 - q * (1.0 / 11.0 - q * (1.0 / 13.0 - q / 15.0)))))));
  if (abs(y) > abs(x)) { angle = 1.57079633 - angle; }
  if (x < 0.0) { angle = 3.14159265 - angle; }
  return select(angle, -angle, y < 0.0);
}
`;
