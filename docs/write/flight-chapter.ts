import { tunnelTable } from '../../src/aerodynamics/bearman-harvey-1976.js';
import { BAND_SHARES, BAND_SPEEDS, BAND_SPIN_RATIOS } from '../../src/aerodynamics/carry-band.js';
import { fittedModernConstants } from '../../src/aerodynamics/index.js';
import { SPIN_DECAY } from '../../src/aerodynamics/spin-decay.js';
import { BEYOND, TEST_RANGE_TABLE } from '../../src/aerodynamics/test-range-line.js';
import { LOWEST_HEIGHT, REFERENCE_HEIGHT } from '../../src/air/wind-ratio.js';
import { FLIGHT_TIME_LIMIT } from '../../src/flight/fly.js';
import { SPIN_DECAY_DENSITY } from '../../src/flight/problem.js';
import { STANDARD_GRAVITY } from '../../src/gravity.js';
import { type AerodynamicModelId, aerodynamicModels, balls, defaultAir } from '../../src/index.js';
import { membersOf, summaryOf } from './doc-comments.js';
import { figure, formulas, paragraph, table } from './markdown.js';

/** The chapter of docs/models.md on the flight: all that is needed to compute one. */

/** Where the laws of the air stand in words, beside the code that computes them: file and name. */
export const airLaws = [
  ['air/density.ts', 'saturationPressure'],
  ['air/density.ts', 'vapourFraction'],
  ['air/density.ts', 'compressibility'],
  ['air/density.ts', 'moistAirDensity'],
  ['air/viscosity.ts', 'airViscosity'],
  ['air/standard-atmosphere.ts', 'geopotentialAltitude'],
  ['air/standard-atmosphere.ts', 'standardAtmosphere'],
] as const;

/** The same of the coefficient laws but the default's, by the id of the model. */
export const coefficientLaws: Readonly<
  Record<Exclude<AerodynamicModelId, 'fitted-modern'>, readonly [file: string, name: string]>
> = {
  'lieberman-2001': ['aerodynamics/lieberman-2001.ts', 'lieberman2001'],
  'naruo-2004': ['aerodynamics/naruo-2004.ts', 'naruo2004'],
  'smits-smith-1994': ['aerodynamics/smits-smith-1994.ts', 'smitsSmith1994'],
  'bearman-harvey-1976': ['aerodynamics/bearman-harvey-1976.ts', 'bearmanHarvey1976'],
  'penner-bearman-harvey': ['aerodynamics/penner-bearman-harvey.ts', 'pennerBearmanHarvey'],
  'test-range-line': ['aerodynamics/test-range-line.ts', 'testRangeLine'],
  'davies-1949': ['aerodynamics/davies-1949.ts', 'davies1949'],
};

const FITTED = 'aerodynamics/fitted-modern.ts';

/** The law of the default ball with its constants, and how far the sources leave its carry open. */
function defaultBall(): string[] {
  const constants: Readonly<Record<string, number>> = { ...fittedModernConstants };
  return [
    '### The default ball',
    `\`fitted-modern\`. ${summaryOf(FITTED, 'fittedLift')}`,
    `${summaryOf(FITTED, 'fittedDrag')} *Outside the data:* ${aerodynamicModels['fitted-modern'].extrapolation}`,
    table(
      ['constant', 'value', 'what it is'],
      membersOf(FITTED, 'FittedModernConstants').map(([name, what]) => [
        `\`${name}\``,
        String(constants[name]),
        what,
      ]),
    ),
    paragraph(`How far the sources leave its carry open: standard error, in per cent of the carry, from leaving out one source at
      a time (\`npm run refit\`). \`flight.carryBand\` is this share of the carry, straight between the nodes; beyond them it
      is left out.`),
    table(
      ['ball speed', ...BAND_SPIN_RATIOS.map((spinRatio) => `S ${spinRatio}`)],
      BAND_SHARES.map((shares, i) => [
        `${BAND_SPEEDS[i]} m/s`,
        ...shares.map((share) => (100 * share).toFixed(1)),
      ]),
    ),
  ];
}

function otherLaws(): string[] {
  const { airSpeeds, spins, drag, lift } = tunnelTable();
  const tunnel = (values: readonly (readonly number[])[]): string =>
    table(
      ['rpm', ...airSpeeds.map((speed) => `${speed} m/s`)],
      spins.map((rpm, column) => [String(rpm), ...values.map((row) => (row[column] as number).toFixed(4))]),
    );
  return [
    '### The other coefficient laws',
    ...Object.entries(coefficientLaws).map(([id, [file, name]]) => {
      const model = aerodynamicModels[id as keyof typeof coefficientLaws];
      return `- \`${id}\`. ${summaryOf(file, name)} *Outside the data:* ${model.extrapolation}`;
    }),
    paragraph(`The points of \`test-range-line\`; CD is the magnitude times the cosine of the angle, CL times its sine. At S 0 CD is
      that of the first point and CL is 0. The last point stands at S ${BEYOND.upTo}: CD and CL of the point before it and
      ${BEYOND.drag} and ${BEYOND.lift} for each unit of S on from there.`),
    table(
      ['S', 'magnitude', 'angle'],
      TEST_RANGE_TABLE.map(([s, magnitude, angle]) => [String(s), String(magnitude), `${angle}°`]),
    ),
    paragraph(`The table of \`bearman-harvey-1976\`, drag first, then lift. The cubic between two nodes meets the slopes at both. At
      an inner node between intervals of widths h0, h1 and secants s0, s1 the slope is 0 where s0 s1 ≤ 0, else
      3 (h0 + h1)/((2 h1 + h0)/s0 + (h1 + 2 h0)/s1). At an end, h0 and s0 of the interval there and h1 and s1 of the next,
      it is ((2 h0 + h1) s0 − h0 s1)/(h0 + h1); 0 where that has not the sign of s0; 3 s0 where s0 and s1 differ in sign and it
      is larger than that. SciPy's \`PchipInterpolator\` is the same.`),
    tunnel(drag),
    tunnel(lift),
  ];
}

const start = formulas(`
d = (cos α cos δ, sin α, cos α sin δ)             direction of launch
k = (−sin δ, 0, cos δ)                            level, to the right of it
l = k × d
Ω = s cos τ k − s sin τ l + q d                   spin vector
p = 0,  v = V d,  ω = |Ω|,  n = Ω/|Ω|             n = (0, 0, 1) for a ball without spin`);

const motion = formulas(`
h = py − elevation − px tan(slope) − pz tan(cross slope)           height above the ground
U = v − f(h) (along, 0, across)                                    velocity relative to the air
S = r ω |n × U|/|U|²,   Re = ρ |U| 2r/μ
dp/dt = v
dv/dt = −c CD |U| U + c CL |U|² (n × U)/|n × U| − (0, g, 0),       c = ρ π r²/(2 m)
dω/dt = −K (ρ/${SPIN_DECAY_DENSITY}) (|U|/r) ω`);

const wind = formulas(`
uniform      f = 1
log          f = ln((h − D)/z0)/ln((H − D)/z0) where h − D > z0, else 0
power        f = (h/H)^a where h ≥ ${LOWEST_HEIGHT} m; (h/${LOWEST_HEIGHT}) (${LOWEST_HEIGHT}/H)^a where 0 < h < ${LOWEST_HEIGHT} m; else 0`);

/** Renders the chapter. */
export function flightChapter(): string[] {
  const { mass, radius, inertia } = balls.conforming;
  return [
    '## Flight',
    '### Start',
    paragraph(`The state is position p, velocity v and spin rate ω; the spin axis n stays fixed in space. The launch gives ball
      speed V, launch angle α, launch direction δ, spin rate s, spin axis tilt τ and rifle spin q. Those that may be left out
      are 0.`),
    start,
    '### Equations of motion',
    motion,
    paragraph(`There is no lift where ω or n × U is 0, and no force of the air where U is 0. A model of the user's may have the whole
      spin enter S, which is then r ω/|U|; all built-in models take the part across U as here. Gravity g is
      ${STANDARD_GRAVITY} m/s². The ball has m = ${figure(mass)} kg, r = ${figure(radius)} m and the inertia
      I = ${figure(inertia)} kg m², (2/5) m r². K is ${figure(SPIN_DECAY)} in every built-in model. CD and CL follow below.`),
    '### Wind',
    paragraph(`\`along\` and \`across\` are the components of the wind at the reference height H, ${REFERENCE_HEIGHT} m unless given.
      f is its profile, with roughness z0 and displacement D (0 unless given), or with the exponent a; uniform unless given.`),
    wind,
    '### Air',
    paragraph(`Density ρ and viscosity μ are the same at every height of a flight. The default, 20 °C, 1013.25 hPa and half saturated,
      has ρ = ${figure(defaultAir.density)} kg/m³ and μ = ${figure(defaultAir.viscosity)} Pa s. From temperature T in kelvin
      (t = T − 273.15), pressure p in pascal and humidity from 0 to 1 they follow by these formulas. \`airAtAltitude\` takes p
      from the standard atmosphere at the geopotential altitude, and where no temperature is given, 20 °C less 0.0065 K for
      each metre of it; where no humidity is given, 0.5.`),
    airLaws.map(([file, name]) => `- \`${name}\`: ${summaryOf(file, name)}`).join('\n'),
    '### Landing, apex and other ends',
    paragraph(`A ball is above the ground once h > 0; at the start also where h is 0 and rises, which is to say dh/dt > 0, or dh/dt = 0
      and d²h/dt² > 0. In this order:`),
    [
      '1. At the start, h = 0 but not above: the flight has ended, `topped`.',
      '2. At the start, h < 0 and dh/dt ≤ 0: it has ended, `below-ground`.',
      '3. Otherwise the ball flies. From h < 0 it must come above first; where dh/dt falls to 0 before that, the flight ends there, `below-ground`.',
      '4. Above the ground, the first time at which h falls to 0 ends it, `landed`.',
      `5. After ${FLIGHT_TIME_LIMIT} s, or the time limit given, it ends where the ball is then, \`time-limit\`.`,
    ].join('\n'),
    paragraph(`Carry is hypot(px, pz) at the end, side pz, curve pz cos δ − px sin δ, descent angle atan2(−vy, hypot(vx, vz)), hang
      time t. The apex is the greatest py of the flight, 0 at least, and \`apexAt\` is hypot(px, pz) there. The library's own
      integration adds under 0.1 mm to the landing point of an ordinary flight.`),
    ...defaultBall(),
    ...otherLaws(),
  ];
}
