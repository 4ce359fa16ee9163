import { requireOneOf, requireRecord, requireWithin } from '../errors.js';
import type { ScatterTrend } from '../session/index.js';
import type { Delivery } from '../strike/index.js';
import { type Angle, type Length, type Speed, si, toMph } from '../units/index.js';
import type { DeliverySd, Spread } from './spread.js';

/** How scatter changes as a player swings faster or slower than now. */
export type ScatterLaw =
  /** The same degrees and millimetres at every speed: lateral scatter grows with distance only. */
  | { readonly kind: 'constant' }
  /** Grows by a share with each mph, compounding; 0.03 is 3 % a mph. */
  | {
      readonly kind: 'growing';
      /** Growth of the scatter of path and face. */
      readonly directionPerMph?: number;
      /** Growth of the scatter of the strike on the face. */
      readonly strikePerMph?: number;
    }
  /** The player's own trend across speed bands, from {@link scatterTrend}; it is taken for path and face alone. */
  | { readonly kind: 'measured'; readonly trend: ScatterTrend };

/** A spread that has standard deviations to scale: normal or Student t. */
export type ScalableSpread = Exclude<Spread<Delivery>, { readonly kind: 'own' }>;

/** Share by which direction and strike scatter grow a mph. @throws FairflightError @internal */
export function growthOf(law: ScatterLaw): { readonly direction: number; readonly strike: number } {
  requireOneOf('law.kind', law.kind, ['constant', 'growing', 'measured'] as const);
  if (law.kind === 'constant') return { direction: 0, strike: 0 };
  const share = (field: string, value: number): number => requireWithin(field, value, -0.5, 1, 'a mph');
  if (law.kind === 'measured') {
    return { direction: share('law.trend.growthPerMph', law.trend.growthPerMph), strike: 0 };
  }
  requireRecord('law', law, ['kind', 'directionPerMph', 'strikePerMph']);
  return {
    direction: share('law.directionPerMph', law.directionPerMph ?? 0),
    strike: share('law.strikePerMph', law.strikePerMph ?? 0),
  };
}

/** Factors on direction and strike scatter at another club speed. @internal */
export function factorsAt(law: ScatterLaw, from: Speed, to: Speed): { direction: number; strike: number } {
  const growth = growthOf(law);
  const steps = toMph(si<Speed>(to - from));
  return { direction: (1 + growth.direction) ** steps, strike: (1 + growth.strike) ** steps };
}

/** The spread with scatter of path and face, and of the strike, multiplied. @internal */
export function scaledSpread(spread: ScalableSpread, direction: number, strike: number): ScalableSpread {
  const { clubPath, faceAngle, toe, high } = spread.sd;
  const sd: DeliverySd = {
    ...spread.sd,
    ...(clubPath !== undefined && { clubPath: si<Angle>(clubPath * direction) }),
    ...(faceAngle !== undefined && { faceAngle: si<Angle>(faceAngle * direction) }),
    ...(toe !== undefined && { toe: si<Length>(toe * strike) }),
    ...(high !== undefined && { high: si<Length>(high * strike) }),
  };
  return { ...spread, sd };
}
