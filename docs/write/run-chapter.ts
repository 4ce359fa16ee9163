import { type Turf, turfs } from '../../src/index.js';
import type { BiberBounce, PennerBounce } from '../../src/inputs/turf.js';
import { RUN_TIME_LIMIT } from '../../src/shot/run-out.js';
import { biberLaw } from '../../src/turf/biber-2023.js';
import { STRAIGHT_DOWN } from '../../src/turf/bounce.js';
import { FADE_SPEED } from '../../src/turf/bounce-law.js';
import { HOP_DRAG, ROLL_DRAG } from '../../src/turf/constants.js';
import { RELEASE_SPEED } from '../../src/turf/green-speed.js';
import { ROLL_HEIGHT } from '../../src/turf/hop.js';
import { MOST_BOUNCES } from '../../src/turf/kernel.js';
import { CRATER, pennerLaw, RESTITUTION } from '../../src/turf/penner-2002.js';
import { REST_SPEED } from '../../src/turf/roll.js';
import { figure, formulas, inDegrees, paragraph, table } from './markdown.js';

/** The chapter of docs/models.md on bounce and run: all that is needed to compute one. */

const millimetres = (value: number): string => figure(value * 1e3);

const frame = formulas(`
N = unit(−tan(slope), 1, −tan(cross slope))           normal of the plane, up
X = unit(1, tan(slope), 0)                            in the plane, above the x axis of the world
Z = X × N                                             in the plane, to the right
G = (−g Xy, −g Ny, −g Zy),   gN = g Ny                gravity in the frame X, N, Z
c = ρ π r²/(2 m)
β = I/(I + m r²)                                      share of the slip that gripping takes, 2/7 here`);

const wall = formulas(`
a  = hypot(vX, vZ),   i = −vN                         speeds along and into the plane
h  = (vX, 0, vZ)/a                                    direction of travel; (1, 0, 0) where a < ${STRAIGHT_DOWN} m/s
s  = h × N                                            across it
ψ  = tilt of the wall                                 of speed hypot(a, i), of i and of descent = atan2(i, a)
t  = h cos ψ + N sin ψ                                up the wall
b  = N cos ψ − h sin ψ                                normal of the wall, against the travel
vn = −v · b                                           approach
S  = (v · t + r ω · s) t − r (ω · t) s                slip of the contact point`);

const bounce = formulas(`
Δ  = −β S              where β |S| ≤ μ (1 + e) vn     the turf stops the slip
Δ  = −μ (1 + e) vn S/|S|   elsewhere                  the ball slides throughout
v  → (v · t) t + Δ + e vn b,                          then vN → max(0, vN)
ω  → ω − (1 − β)/(β r) b × Δ`);

const hop = formulas(`
dv/dt = G − ${HOP_DRAG} c |v| v,   ω stays`);

const brush = formulas(`
x = (rise − ${millimetres(ROLL_HEIGHT / 2)} mm)/(${millimetres(ROLL_HEIGHT)} mm), held to 0 … 1
q = 1 − x² (3 − 2 x)                                                   share of rolling in the hop
held   = min(speed, (1 − q) T min(max(0, G · y), R gN))                on a slope, down it
rolled = min(speed − held, q T (1 − β) R gN)
v → v − (held + rolled) y,   place → place − (held + rolled) T y/2
ω → ω + min(max(0, −ω · z), rolled/r) z,   z = y × N                   topspin goes, backspin stays`);

const skid = formulas(`
S = (vX + r ωZ, 0, vZ − r ωX)
dv/dt = G∥ − ${ROLL_DRAG} c |v| v − μ gN S/|S|
dω/dt = (1 − β)/(β r) μ gN N × S/|S|`);

const roll = formulas(`
dv/dt = (1 − β) (G∥ − R gN v/|v| − ${ROLL_DRAG} c |v| v),   spin rate |v|/r`);

function turfRows(model: Turf['bounce']['model'], of: (bounce: Turf['bounce']) => string[]): string[][] {
  return Object.entries(turfs)
    .filter(([, { bounce }]) => bounce.model === model)
    .map(([name, { bounce, rollingResistance }]) => [
      `\`${name}\``,
      ...of(bounce),
      figure(bounce.friction),
      figure(rollingResistance),
    ]);
}

/** Renders the chapter. */
export function runChapter(): string[] {
  const band = (share: number): string => `±${figure(100 * share)} %`;
  return [
    '## Bounce and run',
    '### Frame and state',
    paragraph(`The run starts from the place, velocity and spin vector ω n of the landing and is computed in the frame of the ground
      plane, with its origin where the ball landed. The state is place, velocity v and spin vector ω, each along X, N and Z;
      time starts at 0.`),
    frame,
    '### Order of events',
    [
      '1. A ball whose vN is above 0 hops first.',
      '2. It bounces.',
      `3. The hop to come rises vN²/(2 gN). Below ${millimetres(ROLL_HEIGHT / 2)} mm, and after bounce number ${MOST_BOUNCES}, the ball stays down: vN is set to 0 and it skids, then rolls.`,
      '4. Otherwise it hops, and goes on at 2.',
      `5. After ${RUN_TIME_LIMIT} s, or the time limit given, the run ends where the ball is then, \`still-rolling\`.`,
    ].join('\n'),
    '### Bounce',
    paragraph(`The ball meets a wall that leans toward it by the angle ψ. Tilt ψ, restitution e and friction μ are those of the
      turf:`),
    [
      `- \`biber-2023\`: ψ = min(tilt min(1, i/${FADE_SPEED}), 90° − descent), i in m/s. e is constant.`,
      `- \`penner-2002\`: ψ = min(cap, tilt scale × ${CRATER.tilt}° (v/${CRATER.speed}) ((90° − descent)/${CRATER.fromNormal}°) min(1, i/${FADE_SPEED})), v = hypot(a, i) and i in m/s. e = restitution scale × (${RESTITUTION.still} − ${RESTITUTION.fall} vn + ${figure(RESTITUTION.rise)} vn²) up to vn = ${RESTITUTION.fastest} m/s, restitution scale × ${RESTITUTION.beyond} above.`,
    ].join('\n'),
    wall,
    'Then, e being that of vn:',
    bounce,
    '### Hop',
    'From the plane back to the plane, without lift, wind and spin decay:',
    hop,
    paragraph(`At its end, T after it began, the turf takes its share. \`rise\` is the height vN²/(2 gN) from the start of the hop,
      \`speed\` the speed along the plane at its end and y the direction of that. R is the rolling resistance.`),
    brush,
    '### Skid',
    paragraph(`The ball skids while its contact point slips, |S| > 0, and then rolls. G∥ is the part of G along the plane, and v lies in
      it.`),
    skid,
    '### Roll',
    roll,
    paragraph(`On level ground the ball rests where v is 0. On a slope it rests as soon as |v| is below ${REST_SPEED} m/s where the turf can
      hold it, R gN ≥ |G∥|; where it cannot, it rolls on, or back, to the time limit.`),
    '### What is reported',
    paragraph(`The place in the world is that of the landing plus the place along X, N and Z. With H the horizontal direction of the
      velocity at landing, (1, 0, 0) for a ball falling straight down, \`distance\` is the displacement along H and \`side\`
      that across it, to the right of H. The total of a shot is hypot(px, pz) at the end of its run, its side pz; of one
      that did not land, at the end of its flight. The band is
      ${band(biberLaw({ model: 'biber-2023' } as BiberBounce).band)} of the distance with \`biber-2023\` and
      ${band(pennerLaw({ model: 'penner-2002' } as PennerBounce).band)} with \`penner-2002\`. A contact reports place and time,
      speed and descent before it, speed and backspin ω · s after it, and the rise of the hop to come. The library's own steps
      leave under 0.1 mm to each hop and skid.`),
    '### Turf',
    table(
      ['turf', 'tilt', 'restitution e', 'friction μ', 'rolling resistance R'],
      turfRows('biber-2023', (bounce) =>
        bounce.model === 'biber-2023' ? [`${inDegrees(bounce.tilt)}°`, figure(bounce.restitution)] : [],
      ),
    ),
    table(
      ['turf', 'tilt scale', 'cap', 'restitution scale', 'friction μ', 'rolling resistance R'],
      turfRows('penner-2002', (bounce) =>
        bounce.model === 'penner-2002'
          ? [figure(bounce.tiltScale), `${inDegrees(bounce.tiltCap)}°`, figure(bounce.restitutionScale)]
          : [],
      ),
    ),
    paragraph(`The turf is \`normal\` unless another is given. A green on which a stimpmeter ball rolls out to the distance s has
      R = 7 × ${RELEASE_SPEED}²/(10 g s).`),
  ];
}
