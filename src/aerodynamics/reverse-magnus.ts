import type { CoefficientLaw, ModelWords } from './model.js';

/** Reynolds numbers between which lift comes in. */
const REYNOLDS_STEP = [50_000, 75_000] as const;
/** Spin ratios between which the effect goes out. */
const SPIN_FADE = [0.2, 0.25] as const;

/** 0 below `from`, 1 above `to`, in between 6t⁵ − 15t⁴ + 10t³: two derivatives vanish at both ends. */
function smoothStep(x: number, [from, to]: readonly [number, number]): number {
  const t = Math.min(Math.max((x - from) / (to - from), 0), 1);
  return t * t * t * (t * (6 * t - 15) + 10);
}

/**
 * The same law, its lift multiplied by a smooth step from 0 at Re 50,000 to 1 at Re 75,000 where S is under 0.20,
 * fading out by S 0.25. @internal
 */
export function reverseMagnusLaw(law: CoefficientLaw): CoefficientLaw {
  return Object.freeze({
    ...law,
    id: `${law.id}+reverse-magnus`,
    liftCoefficient: (reynolds: number, spinRatio: number) => {
      const lost = (1 - smoothStep(reynolds, REYNOLDS_STEP)) * (1 - smoothStep(spinRatio, SPIN_FADE));
      return law.liftCoefficient(reynolds, spinRatio) * (1 - lost);
    },
  });
}

/** The words on it, from those on the model it is made from. @internal */
export function reverseMagnusWords({ label, source, extrapolation }: ModelWords): ModelWords {
  return {
    label: `${label}, without lift in the drag crisis`,
    source,
    extrapolation: `${extrapolation} Lift is multiplied by a smooth step from 0 at Re 50,000 to 1 at Re 75,000 where S is under 0.20, fading out by S 0.25.`,
  };
}
