/**
 * Spin decay constant K in dω/dt = −K (ρ/1.225) (U/r) ω. Dimensionless.
 *
 * Smits and Smith (1994), Science and Golf II, give dω/dt = −R1 ω U/r with R1 = 2e-5; the constant is from memory.
 * Corroborated by Dewhurst (2015), The Science of the Perfect Swing, chapter 2, which converts the same paper to
 * 0.0004 rpm/s for each mph and rpm, that is K = 1.9e-5. The factor ρ/1.225 is added here, because the torque of the
 * air is proportional to its density; it is in neither source.
 *
 * US patent 8,016,695 (second-hand) has less spin lost by a driver (3.1, 8.8 and 12.8 % after 1, 3 and 5 s; here 5.7, 12.9
 * and 17.5 %) and as much by irons (9.0 to 9.7 % after 3 s; here 8.2 to 9.9 %). One constant that suits it best, 1.55e-5,
 * makes its irons and every other source worse, so this one stands: `npm run refit` prints both.
 */
export const SPIN_DECAY = 2e-5;
