import { type NamedField, named } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type Turf, turfFields } from '../inputs/turf.js';
import type { Source } from '../source.js';
import { degrees } from '../units/index.js';
import type { TurfName } from './turf-name.js';

const MEASURED = {
  authors: 'S. W. Biber, K. M. Jones, A. R. Champneys, R. Green and R. Szalai',
  year: 2023,
  work: 'Measurements and linearized models for golf ball bounce on a green, Sports Engineering 26',
  doi: '10.1007/s12283-023-00442-4',
  confidence: 'second-hand',
} as const;

function biber(
  name: string,
  [tilt, restitution, friction]: readonly [degrees: number, restitution: number, friction: number],
  rollingResistance: number,
  source: Source,
): Turf {
  return {
    name,
    bounce: { model: 'biber-2023', tilt: degrees(tilt), restitution, friction },
    rollingResistance,
    source,
  };
}

/** A preset whose constants are none of the measured ones. */
function scaled(note: string): Source {
  return {
    authors: 'fairflight',
    year: 2026,
    work: 'Bounce of Biber et al. 2023 with constants scaled from the measured teeing area and artificial turf',
    confidence: 'assumption',
    note,
  };
}

const BETWEEN =
  'Tilt, restitution and friction scaled, not measured: harder and softer than the teeing area measured, on which ' +
  'they were not tuned to any run. Rolling resistance assumed.';

function penner(
  name: string,
  tiltScale: number,
  tiltCap: number,
  restitutionScale: number,
  rollingResistance: number,
): Turf {
  return {
    name,
    bounce: {
      model: 'penner-2002',
      tiltScale,
      tiltCap: degrees(tiltCap),
      restitutionScale,
      friction: 0.4,
    },
    rollingResistance,
    source: PENNER,
  };
}

const PENNER: Source = {
  authors: 'fairflight',
  year: 2026,
  work: 'Calibration of the bounce of Penner 2002 with a fade and a cap on the tilt of the crater wall',
  confidence: 'assumption',
  note:
    'Not measured. Firm, normal and soft were set so that a tour drive differs by about -5 and -11 yd from firm, ' +
    'against -4.49 and -9.80 yd of medium and soft fairways against firm (USGA and R&A 2023, second-hand). ' +
    'Friction 0.40 is that of Penner 2002, from memory.',
};

/**
 * Turf presets. Five fairways from hardest to softest, by the bounce of Biber et al. 2023: links in drought, a firm, a
 * normal and a soft fairway, a wet winter one; artificial turf; and a free-draining green on which backspin survives the
 * first bounce. Then the five fairways by the bounce of Penner 2002. Bounce constants were measured on a natural teeing
 * area (`normal`) and on artificial turf only; the `source` of each says what the others are.
 */
export const turfs: Readonly<Record<TurfName, Turf>> = /* @__PURE__ */ frozen(() => ({
  baked: biber(
    'baked',
    [12.9, 0.42, 0.852],
    0.15,
    scaled(
      'Tilt, restitution and friction of artificial turf, measured there, taken for links in drought. Rolling resistance assumed.',
    ),
  ),
  firm: biber('firm', [16.8, 0.17, 0.95], 0.2, scaled(BETWEEN)),
  normal: biber('normal', [18.4, 0.147, 0.998], 0.22, {
    ...MEASURED,
    note:
      'Tilt, restitution and friction measured, 693 bounces on a natural teeing area; read in a summary. That a fairway is ' +
      'like it is an assumption, and so is the rolling resistance.',
  }),
  soft: biber('soft', [20.5, 0.13, 1], 0.28, scaled(BETWEEN)),
  wet: biber('wet', [24, 0.11, 1], 0.4, scaled(BETWEEN)),
  artificial: biber('artificial', [12.9, 0.42, 0.852], 0.15, {
    ...MEASURED,
    note: 'Tilt, restitution and friction measured on artificial turf; read in a summary. Rolling resistance assumed.',
  }),
  drainedGreen: biber(
    'drained green',
    [18.4, 0.147, 0.157],
    0.087,
    scaled(
      'Friction scaled so that backspin above 350 rad/s survives the first bounce at 18.6 m/s and 44.4°, as on the ' +
        'free-draining greens of Haake 1989 and 1994. Tilt and restitution are those measured on a teeing area. Rolling ' +
        'resistance of 9 ft on the stimpmeter.',
    ),
  ),
  pennerBaked: penner('baked, Penner', 0.75, 28, 1.1, 0.15),
  pennerFirm: penner('firm, Penner', 0.92, 31, 1.05, 0.2),
  pennerNormal: penner('normal, Penner', 1, 32, 1, 0.22),
  pennerSoft: penner('soft, Penner', 1.08, 34, 0.92, 0.28),
  pennerWet: penner('wet, Penner', 1.25, 40, 0.8, 0.4),
}));

/** A turf as an input. @internal */
export const turfField: NamedField = /* @__PURE__ */ frozen(() => named(turfs, turfFields, 'turf'));

/** The turf of a scene: a preset by its name, `normal` where none is given. @internal */
export function turfOf(turf: Turf | TurfName = 'normal'): Turf {
  return typeof turf === 'string' ? turfs[turf] : turf;
}
