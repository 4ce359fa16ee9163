import {
  type ClubClass,
  type Clubhead,
  clubheadFields,
  type RestitutionLaw,
  type TangentialRestitution,
} from '../inputs/clubhead.js';
import { type NamedField, named } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import type { Source } from '../source.js';
import { degrees, gramSquareCentimetres, grams, metresPerSecond, millimetres } from '../units/index.js';
import { DRIVER_GRIP } from './driver-grip.js';

/** Names of the built-in clubheads. */
export type ClubheadName =
  | 'driver'
  | 'fairwayWood'
  | 'hybrid'
  | 'longIron'
  | 'midIron'
  | 'shortIron'
  | 'wedge';

const DRIVER_SOURCE: Source = {
  authors: 'McNally, McPhee and Henrikson; R&A and USGA; fitted',
  year: 2020,
  work: 'Proceedings (ISEA) 49(1), 47, table 1; The Equipment Rules 2019, parts 2 and 4',
  confidence: 'derived',
  note:
    'Shaft share 3 g, shape of the inertia tensor and bulge 305 mm: McNally 2020. Head mass: 200 g, the middle of the 190-206 g in use ' +
    '(MacKenzie et al. 2015 tested 174/190/200 g). Vertical-axis inertia 4800 g cm² and CG depth 40 mm: inside the 3870-5867 g cm² and ' +
    '32-47 mm measured on 17 drivers (Tutelman 2009). Restitution 0.838 at 48.8 m/s: from the 120 mph and 125 mph ball-test pairs. ' +
    'Edge restitution 0.78: no spring effect. Tangential restitution: a law in club speed fitted to the spin of six drives; at 49 m/s -0.18, ' +
    'where the contact shift of McNally 2020 is equivalent to -0.22. Slope of restitution with speed, edge distance, friction, roll equal to bulge, CG on the face-centre normal and loft 10.5°: assumptions.',
};

const ASSUMED: Source = {
  authors: 'fairflight',
  year: 2025,
  work: 'Engineering assumptions for generic heads',
  confidence: 'assumption',
  note:
    'Head masses of fairway wood and irons: those assumed with the quoted tour averages. Normal and tangential restitution: solved from the ' +
    'same averages (from memory), which define club speed by radar. Inertia, CG depth, face curvature and loft: assumptions, no published table was readable.',
};

/** A face without spring effect keeps its restitution off centre; the rest of the loss is the turning head. */
function evenFace(atReference: number): RestitutionLaw {
  return {
    atReference,
    referenceSpeed: metresPerSecond(48.8),
    slope: 0.0015,
    atEdge: atReference,
    edgeDistance: millimetres(30),
  };
}

/** Fits the tangential restitution that the quoted 5-iron to wedge averages imply within about 0.03. */
const IRON_GRIP: TangentialRestitution = /* @__PURE__ */ frozen(() => ({
  kind: 'oblique',
  limit: 0.3,
  onset: degrees(12),
  scale: degrees(6),
}));

interface IronFigures {
  readonly loft: number;
  readonly mass: number;
  readonly inertia: readonly [faceNormal: number, vertical: number, heelToe: number];
  readonly depth: number;
  readonly restitution: number;
}

function iron(name: string, clubClass: ClubClass, figures: IronFigures): Clubhead {
  const [faceNormal, vertical, heelToe] = figures.inertia;
  return {
    name,
    clubClass,
    staticLoft: degrees(figures.loft),
    mass: grams(figures.mass),
    shaftMass: grams(3),
    inertia: {
      faceNormal: gramSquareCentimetres(faceNormal),
      vertical: gramSquareCentimetres(vertical),
      heelToe: gramSquareCentimetres(heelToe),
    },
    centreOfGravity: { depth: millimetres(figures.depth), high: millimetres(0), toe: millimetres(0) },
    restitution: evenFace(figures.restitution),
    tangentialRestitution: IRON_GRIP,
    friction: 0.3,
    source: ASSUMED,
  };
}

/**
 * Generic clubheads by class, no make or model. The driver rests on measured heads and the ball test; the others are
 * typical figures marked as assumptions in their `source`. Copy one and change what you know:
 * `{ ...clubheads.driver, mass: grams(204) }`.
 */
export const clubheads: Readonly<Record<ClubheadName, Clubhead>> = /* @__PURE__ */ frozen(() => ({
  driver: {
    name: 'generic driver',
    clubClass: 'driver',
    staticLoft: degrees(10.5),
    mass: grams(200),
    shaftMass: grams(3),
    inertia: {
      faceNormal: gramSquareCentimetres(2400),
      vertical: gramSquareCentimetres(4800),
      heelToe: gramSquareCentimetres(3450),
    },
    centreOfGravity: { depth: millimetres(40), high: millimetres(0), toe: millimetres(0) },
    bulge: millimetres(305),
    roll: millimetres(305),
    restitution: {
      atReference: 0.838,
      referenceSpeed: metresPerSecond(48.8),
      slope: 0.0015,
      atEdge: 0.78,
      edgeDistance: millimetres(30),
    },
    tangentialRestitution: DRIVER_GRIP,
    friction: 0.3,
    source: DRIVER_SOURCE,
  },
  fairwayWood: {
    name: 'generic fairway wood',
    clubClass: 'fairway-wood',
    staticLoft: degrees(15),
    mass: grams(212),
    shaftMass: grams(3),
    inertia: {
      faceNormal: gramSquareCentimetres(1700),
      vertical: gramSquareCentimetres(2800),
      heelToe: gramSquareCentimetres(1700),
    },
    centreOfGravity: { depth: millimetres(25), high: millimetres(0), toe: millimetres(0) },
    bulge: millimetres(305),
    roll: millimetres(305),
    restitution: {
      atReference: 0.825,
      referenceSpeed: metresPerSecond(48.8),
      slope: 0.0015,
      atEdge: 0.78,
      edgeDistance: millimetres(25),
    },
    tangentialRestitution: { kind: 'constant', value: 0 },
    friction: 0.3,
    source: ASSUMED,
  },
  hybrid: {
    name: 'generic hybrid',
    clubClass: 'hybrid',
    staticLoft: degrees(21),
    mass: grams(235),
    shaftMass: grams(3),
    inertia: {
      faceNormal: gramSquareCentimetres(1900),
      vertical: gramSquareCentimetres(2700),
      heelToe: gramSquareCentimetres(1300),
    },
    centreOfGravity: { depth: millimetres(17), high: millimetres(0), toe: millimetres(0) },
    bulge: millimetres(356),
    roll: millimetres(508),
    restitution: {
      atReference: 0.79,
      referenceSpeed: metresPerSecond(48.8),
      slope: 0.0015,
      atEdge: 0.75,
      edgeDistance: millimetres(25),
    },
    tangentialRestitution: IRON_GRIP,
    friction: 0.3,
    source: ASSUMED,
  },
  longIron: iron('generic long iron', 'long-iron', {
    loft: 22,
    mass: 248,
    inertia: [2600, 2400, 550],
    depth: 10,
    restitution: 0.745,
  }),
  midIron: iron('generic mid iron', 'mid-iron', {
    loft: 33,
    mass: 268,
    inertia: [2900, 2600, 650],
    depth: 9,
    restitution: 0.745,
  }),
  shortIron: iron('generic short iron', 'short-iron', {
    loft: 41,
    mass: 282,
    inertia: [3100, 2700, 750],
    depth: 7,
    restitution: 0.745,
  }),
  wedge: iron('generic wedge', 'wedge', {
    loft: 46,
    mass: 288,
    inertia: [3300, 2800, 900],
    depth: 5,
    restitution: 0.745,
  }),
}));

/** A clubhead as an input. @internal */
export const clubheadField: NamedField = /* @__PURE__ */ frozen(() =>
  named(clubheads, clubheadFields, 'clubhead'),
);
