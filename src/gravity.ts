/** Standard gravity [m/s²], exact (3rd CGPM 1901; BIPM SI Brochure, 9th ed. 2019). */
export const STANDARD_GRAVITY = 9.80665;
