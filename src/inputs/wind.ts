import type { Length, Speed } from '../units/index.js';
import { METRES, MPH, RATIO } from '../units/unit.js';
import { type Declared, type Fields, optional, quantity, type VariantField } from './field.js';
import { frozen } from './frozen.js';

/** How wind speed changes with height above the ground. */
export type WindProfile =
  /** The same at every height. */
  | { readonly kind: 'uniform' }
  /**
   * Neutral logarithmic law u(z) = u_ref ln((z − d)/z0) / ln((z_ref − d)/z0), zero below d + z0.
   */
  | {
      readonly kind: 'log';
      /** Roughness length z0 [m], 1e-5 to 5; for example 0.03 on an open links. */
      readonly roughness: Length;
      /** Displacement height d [m], 0 to 50; default 0. */
      readonly displacement?: Length;
      /** Height z_ref at which the wind was measured [m], 0.5 to 200; default 10. */
      readonly referenceHeight?: Length;
    }
  /** Power law u(z) = u_ref (z/z_ref)^α, zero at and below the ground. */
  | {
      readonly kind: 'power';
      /** Exponent α, 0 to 1; for example 1/7 over open land. */
      readonly exponent: number;
      /** Height z_ref at which the wind was measured [m], 0.5 to 200; default 10. */
      readonly referenceHeight?: Length;
    };

/** A steady horizontal wind. */
export interface Wind {
  /** Component down the target line [m/s]: + tailwind, − headwind; −60 to 60. */
  readonly along: Speed;
  /** Component across the target line [m/s]: + blows toward the right; −60 to 60. */
  readonly across: Speed;
  /** Change with height; default uniform. */
  readonly profile?: WindProfile;
}

type Shape<Kind extends WindProfile['kind']> = Omit<Extract<WindProfile, { readonly kind: Kind }>, 'kind'>;

/** Fastest wind accepted [m/s]; nobody plays golf in a hurricane. @internal */
export const FASTEST_WIND = 60;

const referenceHeight = /* @__PURE__ */ frozen(() =>
  optional(quantity(METRES, 0.5, 200, 10, 'height of the wind reading')),
);

/** Declaration of {@link WindProfile}. @internal */
export const windProfileField: VariantField = /* @__PURE__ */ frozen(() => {
  const log: Declared<Shape<'log'>> = {
    roughness: quantity(METRES, 1e-5, 5, 0.03, 'roughness length'),
    displacement: optional(quantity(METRES, 0, 50, 2, 'displacement height')),
    referenceHeight,
  };
  const power: Declared<Shape<'power'>> = {
    exponent: quantity(RATIO, 0, 1, 0.143, 'exponent of the wind profile'),
    referenceHeight,
  };
  return {
    kind: 'variant',
    by: 'kind',
    cases: { uniform: {}, log: log as Fields, power: power as Fields },
    label: 'wind profile',
  };
});

/** Declaration of {@link Wind}. @internal */
export const windFields: Declared<Wind> = /* @__PURE__ */ frozen(() => ({
  along: quantity(MPH, -FASTEST_WIND, FASTEST_WIND, -4, 'wind along the target line'),
  across: quantity(MPH, -FASTEST_WIND, FASTEST_WIND, 2, 'wind across the target line'),
  profile: optional(windProfileField),
}));
