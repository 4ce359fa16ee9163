import type { Source, ValidRange } from '../source.js';

/**
 * A coefficient model: drag and lift of a spinning ball as functions of two numbers, and the decay of its spin.
 *
 * Conventions: drag = ½ ρ A CD U² against the air-relative velocity **U**; lift = ½ ρ A CL U² along ω × **U**;
 * A = π r². Reynolds number Re = ρ U 2r / μ. Spin ratio S = r ω / U. Coefficients must be finite for every
 * Re ≥ 0 and S ≥ 0, also outside the validity range: each model states how it extrapolates.
 */
export interface AerodynamicModel {
  /** Short id, unique among the models, echoed in results. */
  readonly id: string;
  /** One line for people. */
  readonly label: string;
  /** Origin of the coefficients. */
  readonly source: Source;
  /** Where the source has data, 0 to 1e12 each end. Outside it results carry a warning. */
  readonly validity: { readonly reynolds: ValidRange; readonly spinRatio: ValidRange };
  /** How the coefficients behave outside the validity range, in words. */
  readonly extrapolation: string;
  /**
   * Which spin enters S and makes lift: only the component across the air-relative velocity (physically, the part
   * along it makes no lift), or the total spin rate, as some published models state their law.
   */
  readonly spinEntering: 'across' | 'total';
  /** Drag coefficient. @param reynolds - Re @param spinRatio - S */
  readonly dragCoefficient: (reynolds: number, spinRatio: number) => number;
  /** Lift coefficient; negative values mean reversed lift. @param reynolds - Re @param spinRatio - S */
  readonly liftCoefficient: (reynolds: number, spinRatio: number) => number;
  /**
   * Spin decay constant K in dω/dt = −K (ρ/1.225) (U/r) ω. Dimensionless, 0 to 0.001.
   */
  readonly spinDecay: number;
}

/** What people read of a model, and no flight does. @internal */
export type ModelWords = Pick<AerodynamicModel, 'label' | 'source' | 'extrapolation'>;

/** What a flight needs of a model. @internal */
export type CoefficientLaw = Omit<AerodynamicModel, keyof ModelWords>;
