import { clubheads } from '../../src/index.js';
import type { Clubhead, TangentialRestitution } from '../../src/inputs/clubhead.js';
import { ROUNDING } from '../../src/strike/kernel/grip-or-slip.js';
import { GAIN_PER_KELVIN, REFERENCE_TEMPERATURE } from '../../src/strike/kernel/warmth.js';
import { figure, formulas, inDegrees, paragraph, table } from './markdown.js';

/** The chapter of docs/models.md on the strike: all that is needed to compute one. */

type Grip = TangentialRestitution;

/** The laws of tangential restitution. */
const GRIP_LAWS: Readonly<Record<Grip['kind'], string>> = {
  constant: 'et = value',
  oblique: 'et = limit (1 − exp(−(θ − onset)/scale)) where θ > onset, else 0',
  'by-speed': 'et = gripAt − reach tanh(fall (club speed − gripSpeed)/reach)',
};

function gripOf(grip: Grip): string {
  if (grip.kind === 'constant') return `constant: value ${figure(grip.value)}`;
  if (grip.kind === 'oblique') {
    return `oblique: limit ${figure(grip.limit)}, onset ${inDegrees(grip.onset)}°, scale ${inDegrees(grip.scale)}°`;
  }
  const { atReference, referenceSpeed, slope, reach } = grip;
  return `by-speed: gripAt ${figure(atReference)}, gripSpeed ${figure(referenceSpeed)} m/s, fall ${figure(slope)} s/m, reach ${figure(reach)}`;
}

const millimetres = (value: number | undefined): string =>
  value === undefined ? 'flat' : figure(value * 1e3);

/** What a head is made of, a row each. */
const ROWS: readonly (readonly [string, (head: Clubhead) => string])[] = [
  ['mass of the head [g]', (head) => figure(head.mass * 1e3)],
  ['mass of shaft that takes part [g]', (head) => figure(head.shaftMass * 1e3)],
  ['I0, about the face normal [g cm²]', (head) => figure(head.inertia.faceNormal * 1e7)],
  ['I1, about the up-face axis [g cm²]', (head) => figure(head.inertia.vertical * 1e7)],
  ['I2, about the heel–toe axis [g cm²]', (head) => figure(head.inertia.heelToe * 1e7)],
  ['`depth` of the centre of gravity [mm]', (head) => millimetres(head.centreOfGravity.depth)],
  ['`cgHigh` [mm]', (head) => millimetres(head.centreOfGravity.high)],
  ['`cgToe` [mm]', (head) => millimetres(head.centreOfGravity.toe)],
  ['bulge radius [mm]', (head) => millimetres(head.bulge)],
  ['roll radius [mm]', (head) => millimetres(head.roll)],
  ['`atReference`', (head) => figure(head.restitution.atReference)],
  ['`referenceSpeed` [m/s]', (head) => figure(head.restitution.referenceSpeed)],
  ['`slope` [s/m]', (head) => figure(head.restitution.slope)],
  ['`atEdge`', (head) => figure(head.restitution.atEdge)],
  ['`edgeDistance` [mm]', (head) => millimetres(head.restitution.edgeDistance)],
  ['tangential restitution', (head) => gripOf(head.tangentialRestitution)],
  ['friction μ', (head) => figure(head.friction)],
  ['static loft, plays no part', (head) => `${inDegrees(head.staticLoft)}°`],
];

const frame = formulas(`
V  = club speed (cos A cos P, sin A, cos A sin P)     velocity of the head's centre of gravity
w  = closure rate (0, 1, 0)                           rotation of the head
t0 = (cos L cos F, sin L, cos L sin F)                normal of the face centre, out toward the ball
t1 = (−sin L cos F, cos L, −sin L sin F)              up the face
t2 = (−sin F, 0, cos F)                               toward the toe, t0 × t1`);

const contact = formulas(`
n  = unit(t0 + (high/roll) t1 + (toe/bulge) t2)
rh = (depth − (toe²/bulge + high²/roll)/2) t0 + (high − cgHigh) t1 + (toe − cgToe) t2
rb = −r n
u  = −(V + w × rh)
un = u · n,   ut = u − un n`);

const restitution = formulas(`
e  = atReference − slope (−un − referenceSpeed) − (atReference − atEdge) min(1, (toe² + high²)/edgeDistance²)
θ  = atan2(|ut|, −un)                                 obliquity of the impact
${Object.entries(GRIP_LAWS)
  .map(([kind, law]) => `${law.padEnd(54)}${' '.repeat(Math.max(1, 12 - law.length))}(${kind})`)
  .join('\n')}`);

const compliance = formulas(`
W  = (1/m + 1/M) 1 − [rb] [rb]/I − [rh] Ih⁻¹ [rh]`);

const grip = formulas(`
n · W J = −(1 + e) un,        (W J)t = −(1 + et) ut`);

const slip = formulas(`
Jn = −(1 + e) un/(n · W n + μ n · W g),               J = Jn (n + μ g)`);

const away = formulas(`
vb = J/m,   Ω = rb × J/I,   head afterwards: V − J/M`);

/** Renders the chapter. */
export function strikeChapter(): string[] {
  const names = Object.keys(clubheads) as (keyof typeof clubheads)[];
  return [
    '## Strike',
    paragraph(`One impulse of two rigid bodies. The delivery gives club speed, attack angle A, club path P, dynamic loft L, face
      angle F, the strike offsets \`toe\` and \`high\`, the closure rate and the hand. Those that may be left out are 0, and the
      hand is right. M is the mass of the head and of the shaft that takes part; m, r and I are those of the ball.`),
    '1. **Hand.** For a left-handed player turn the signs of P and F, compute as for a right-handed one, and turn the result back in step 7.',
    '2. **Motion of the head**, in the world:',
    frame,
    '3. **Point of contact.** The normal n there, the point seen from the centres of head and ball, and the velocity u with which the ball, at rest, meets it. A flat face has infinite radii. There is no strike unless un < 0.',
    contact,
    '4. **Restitutions**, normal and tangential. There is no strike unless e lies from 0 to 1.',
    restitution,
    paragraph(`Where the ball has a temperature T, 1 + e is multiplied by 1 + ${figure(GAIN_PER_KELVIN)} (T − ${figure(REFERENCE_TEMPERATURE)} K). The
      gain is derived from trade rows, ± 0.03 % a kelvin; a ball without a temperature, which is the default, has none.`),
    paragraph(`The law by club speed is fitted, not published, to the spin of six drives of 82 to 125 mph (\`npm run refit:grip\`); beyond
      them it runs on to its limits. In a record \`gripAt\`, \`gripSpeed\` and \`fall\` are \`atReference\`, \`referenceSpeed\` and \`slope\`
      of the tangential restitution.`),
    '5. **Compliance of the contact**, so that an impulse J on the ball changes u by W J. [x] is the matrix of x ×; Ih has I0, I1, I2 along t0, t1, t2.',
    compliance,
    '6. **Impulse.** If the face grips, both restitutions hold; (…)t is the part across n:',
    grip,
    paragraph(`Its part across n is Jt, its part along n Jn. Where |Jt| > μ Jn the ball slides along the face throughout, in the
      direction g = Jt/|Jt| of that grip:`),
    slip,
    paragraph(`There is no strike where J · (2 u + W J), twice the energy gained, is above ${ROUNDING} Jn (|ut| − un). With a
      \`gearElasticity\` other than 0, the term of Jn in the second equation of the grip is multiplied by 1 + that. The gear
      effect is the spin of this strike less that of one whose W has no terms between n and the directions across it.`),
    '7. **The ball**, at the origin of the flight, with its spin about its centre:',
    away,
    paragraph(`For a left-handed player turn the signs of the z of both velocities and of n, and of the x and y of Ω. With d = vb/|vb|, δ = atan2
      of its z and x, and k and l as at the start of the flight: ball speed |vb|, launch angle asin(dy), launch direction δ,
      backspin Ω · k, sidespin −Ω · l, spin rate hypot of the two, spin axis tilt atan2(sidespin, backspin), rifle spin Ω · d.
      Smash factor is ball speed over club speed, spin loft the angle between V and n, face to path the horizontal direction
      of n less P.`),
    table(
      ['', ...names.map((name) => `\`${name}\``)],
      ROWS.map(([what, of]) => [what, ...names.map((name) => of(clubheads[name]))]),
    ),
    'The head is `driver` unless another is given. Where the numbers come from is said [below](#ball-heads-and-turf).',
  ];
}
