import type { Ball } from '../ball/index.js';
import type { Clubhead } from '../clubhead/index.js';
import { si } from '../units/index.js';
import type { StrikeFailure, StrikeInput, StrikeResult } from './impact.js';
import { compliance } from './kernel/compliance.js';
import { type ImpactConstants, type ImpactLaws, impactConstants } from './kernel/constants.js';
import { Contact } from './kernel/contact.js';
import { contactPoint } from './kernel/contact-point.js';
import { faceFrame } from './kernel/face-frame.js';
import { gripOrSlip } from './kernel/grip-or-slip.js';
import { restitutions } from './kernel/restitutions.js';
import { type FilledResult, toWorld } from './kernel/to-world.js';

/** Strikes one ball with one head, any number of times. @internal */
export interface Striker {
  /** The result of a delivery, or the name of what stands in its way: a string, and nothing can be read from it. */
  readonly strike: (input: Readonly<StrikeInput>) => StrikeResult | StrikeFailure;
  /** The head's own until they are set to something else. */
  readonly laws: ImpactLaws;
}

/**
 * Makes a striker; head and ball are taken as checked. A strike allocates nothing.
 *
 * The impact is one impulse of two rigid bodies with normal and tangential restitution and a friction cap, in stages:
 * the head's motion in the face frame, the point of contact, its compliance, its restitutions, the impulse by grip or
 * by slip, and the ball's way back to the world. Their sources stand with them in `kernel/`.
 * @param gearElasticity - e_g: scales the gear effect by 1 + e_g without touching the spin from loft; default 0.
 * @internal
 */
export function createStriker(setup: {
  readonly clubhead: Clubhead;
  readonly ball: Ball;
  readonly gearElasticity?: number;
}): Striker {
  return strikerOf(impactConstants(setup.clubhead, setup.ball, setup.gearElasticity));
}

/** The same with constants of the caller's making. @internal */
export function strikerOf(constants: ImpactConstants): Striker {
  const contact = new Contact();
  const result: FilledResult = {
    launch: {
      ballSpeed: si(Number.NaN),
      launchAngle: si(Number.NaN),
      launchDirection: si(Number.NaN),
      spinRate: si(Number.NaN),
      spinAxisTilt: si(Number.NaN),
      rifleSpin: si(Number.NaN),
    },
    backspin: Number.NaN,
    sidespin: Number.NaN,
    spinLoft: Number.NaN,
    faceToPath: Number.NaN,
    restitution: Number.NaN,
    tangentialRestitution: Number.NaN,
    slid: false,
    frictionUsed: Number.NaN,
    clubSpeedAfter: Number.NaN,
  };
  return {
    laws: constants,
    strike: (input) => {
      faceFrame(input, contact);
      contactPoint(constants, input, contact);
      if (!(contact.un < 0)) return 'no-approach';
      if (!restitutions(constants, input, contact)) return 'impossible-restitution';
      compliance(constants, contact);
      if (!gripOrSlip(constants, contact)) return 'makes-energy';
      toWorld(constants, input, contact, result);
      return result;
    },
  };
}
