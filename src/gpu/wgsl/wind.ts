import { LOWEST_HEIGHT } from '../../air/wind-ratio.js';
import type { WindProfile } from '../../inputs/wind.js';
import { float } from './number.js';

/**
 * Wind at a height over that at the reference height, as `windRatio` states it; `scene.profile` holds roughness or
 * exponent, displacement, and one over the law at the reference height. @internal
 */
export function windText(kind: WindProfile['kind']): string {
  switch (kind) {
    case 'uniform':
      return 'fn windRatio(height: f32) -> f32 { return 1.0; }';
    case 'log':
      return `
fn windRatio(height: f32) -> f32 {
  let above = height - scene.profile.y;
  return select(log(max(above, scene.profile.x) / scene.profile.x) * scene.profile.z, 0.0, above <= scene.profile.x);
}`;
    case 'power':
      return `
fn windRatio(height: f32) -> f32 {
  let high = pow(max(height, ${float(LOWEST_HEIGHT)}), scene.profile.x) * scene.profile.z;
  return high * clamp(height / ${float(LOWEST_HEIGHT)}, 0.0, 1.0);
}`;
  }
}
