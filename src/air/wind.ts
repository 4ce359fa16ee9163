import type { Length, Speed } from '../units/index.js';

/** How wind speed changes with height above the ground. */
export type WindProfile =
  /** The same at every height. */
  | { readonly kind: 'uniform' }
  /**
   * Neutral logarithmic law u(z) = u_ref ln((z − d)/z0) / ln((z_ref − d)/z0), zero below d + z0.
   */
  | {
      readonly kind: 'log';
      /** Roughness length z0 [m], for example 0.03 on an open links. */
      readonly roughness: Length;
      /** Displacement height d [m]; default 0. */
      readonly displacement?: Length;
      /** Height z_ref at which the wind was measured [m]; default 10. */
      readonly referenceHeight?: Length;
    }
  /** Power law u(z) = u_ref (z/z_ref)^α, zero at and below the ground. */
  | {
      readonly kind: 'power';
      /** Exponent α, for example 1/7 over open land. */
      readonly exponent: number;
      /** Height z_ref at which the wind was measured [m]; default 10. */
      readonly referenceHeight?: Length;
    };

/** A steady horizontal wind. */
export interface Wind {
  /** Component down the target line [m/s]: + tailwind, − headwind. */
  readonly along: Speed;
  /** Component across the target line [m/s]: + blows toward the right. */
  readonly across: Speed;
  /** Change with height; default uniform. */
  readonly profile?: WindProfile;
}
