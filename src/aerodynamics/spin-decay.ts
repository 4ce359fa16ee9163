/**
 * Spin decay constant K in dω/dt = −K (ρ/1.225) (U/r) ω. Dimensionless.
 *
 * Smits and Smith (1994), Science and Golf II, give dω/dt = −R1 ω U/r with R1 = 2e-5; the constant is from memory.
 * Corroborated by Dewhurst (2015), The Science of the Perfect Swing, chapter 2, which converts the same paper to
 * 0.0004 rpm/s for each mph and rpm, that is K = 1.9e-5. The factor ρ/1.225 is added here, because the torque of the
 * air is proportional to its density; it is in neither source.
 */
export const SPIN_DECAY = 2e-5;
