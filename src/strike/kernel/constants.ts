import type { Ball } from '../../ball/index.js';
import { gripLevel } from '../../clubhead/grip-level.js';
import type { Clubhead, TangentialRestitution } from '../../clubhead/index.js';
import { warmth } from './warmth.js';

/** The two numbers of a head's laws that a calibration varies. @internal */
export interface ImpactLaws {
  /** Restitution of a centred strike at the law's reference speed. */
  restitution: number;
  /** Level of the law of tangential restitution: its value, its limit if oblique, its value at the reference speed. */
  grip: number;
}

/** What a head and a ball bring to the impact, as plain SI numbers. @internal */
export interface ImpactConstants extends ImpactLaws {
  readonly ballMass: number;
  readonly ballRadius: number;
  readonly ballInertia: number;
  /** Multiplies 1 + e; see {@link warmth}. */
  readonly ballWarmth: number;
  /** Head and the share of the shaft that takes part. */
  readonly headMass: number;
  /** Inverse moments of inertia about the face normal, the up-face axis and the heel-toe axis. */
  readonly inverseNormal: number;
  readonly inverseUp: number;
  readonly inverseToe: number;
  /** Centre of gravity seen from the face centre: depth behind it, up the face, toward the toe. */
  readonly depth: number;
  readonly centreHigh: number;
  readonly centreToe: number;
  /** Curvatures, 1 / radius; 0 for a flat face. */
  readonly bulge: number;
  readonly roll: number;
  readonly referenceSpeed: number;
  readonly restitutionSlope: number;
  readonly edgeLoss: number;
  readonly inverseEdgeSquared: number;
  readonly gripLaw: TangentialRestitution['kind'];
  readonly gripOnset: number;
  readonly inverseGripScale: number;
  readonly gripReferenceSpeed: number;
  readonly gripReach: number;
  /** Slope over reach. */
  readonly gripSteepness: number;
  readonly friction: number;
  /** 1; with 0 the head still turns but its turning does not couple normal impulse and slip: no gear effect. */
  readonly coupling: number;
  /** Extra elasticity of the coupling term, e_g. */
  readonly couplingElasticity: number;
}

/** Constants of a head and a ball; inputs are taken as checked. @internal */
export function impactConstants(head: Clubhead, ball: Ball, couplingElasticity = 0): ImpactConstants {
  const law = head.restitution;
  const grip = head.tangentialRestitution;
  return {
    ballMass: ball.mass,
    ballRadius: ball.radius,
    ballInertia: ball.inertia,
    ballWarmth: warmth(ball),
    headMass: head.mass + head.shaftMass,
    inverseNormal: 1 / head.inertia.faceNormal,
    inverseUp: 1 / head.inertia.vertical,
    inverseToe: 1 / head.inertia.heelToe,
    depth: head.centreOfGravity.depth,
    centreHigh: head.centreOfGravity.high,
    centreToe: head.centreOfGravity.toe,
    bulge: head.bulge === undefined ? 0 : 1 / head.bulge,
    roll: head.roll === undefined ? 0 : 1 / head.roll,
    restitution: law.atReference,
    referenceSpeed: law.referenceSpeed,
    restitutionSlope: law.slope,
    edgeLoss: law.atReference - law.atEdge,
    inverseEdgeSquared: 1 / (law.edgeDistance * law.edgeDistance),
    gripLaw: grip.kind,
    grip: gripLevel(grip),
    gripOnset: grip.kind === 'oblique' ? grip.onset : 0,
    inverseGripScale: grip.kind === 'oblique' ? 1 / grip.scale : 0,
    gripReferenceSpeed: grip.kind === 'by-speed' ? grip.referenceSpeed : 0,
    gripReach: grip.kind === 'by-speed' ? grip.reach : 0,
    gripSteepness: grip.kind === 'by-speed' ? grip.slope / grip.reach : 0,
    friction: head.friction,
    coupling: 1,
    couplingElasticity,
  };
}
