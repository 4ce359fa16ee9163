import { refusal } from '../inputs/refuse.js';
import type { Wind } from '../inputs/wind.js';
import { REFERENCE_HEIGHT, windRatio } from './wind-ratio.js';

/** Height that no shot passes by much [m]. */
const ALOFT = 100;
/** Fastest wind at that height [m/s]: a jet stream, which no course has over it. */
const FASTEST_ALOFT = 120;

/**
 * Refuses a wind whose profile makes no sense: one measured where its law gives none, or one that grows to speeds no
 * wind has, as when a steep law is measured next to the ground.
 * @throws FairflightError naming the field below `path`
 * @internal
 */
export function requireSoundProfile({ along, across, profile }: Wind, path: string): void {
  if (profile === undefined || profile.kind === 'uniform') return;
  const reference = profile.referenceHeight ?? REFERENCE_HEIGHT;
  const field = `${path}.profile.referenceHeight`;
  if (profile.kind === 'log') {
    const foot = (profile.displacement ?? 0) + profile.roughness;
    if (reference <= foot) {
      throw refusal(
        field,
        `${field} must be above displacement + roughness = ${foot} m, where the law gives no wind, got ${reference}`,
        { value: reference, unit: 'm' },
      );
    }
  }
  const aloft = Math.hypot(along, across) * windRatio(profile, ALOFT);
  if (!(aloft <= FASTEST_ALOFT)) {
    throw refusal(
      field,
      `${field} of ${reference} m makes the wind ${aloft.toFixed(0)} m/s at ${ALOFT} m of height; at most ${FASTEST_ALOFT} m/s`,
      { value: reference, unit: 'm', hint: 'measure it higher up, or take a gentler profile' },
      'outside-range',
    );
  }
}
