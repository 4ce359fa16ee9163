import {
  type Clubhead,
  clubheads,
  type Delivery,
  type Flight,
  isFairflightError,
  type Launch,
  locateStrike,
  playShot,
  type Scene,
} from 'fairflight';
import type { MeasuredShot } from 'fairflight/session';

/** What the model adds to a shot, in SI; what cannot be told is missing. */
export interface Computed {
  readonly carry?: number;
  readonly apex?: number;
  readonly descentAngle?: number;
  readonly total?: number;
  readonly strikeToe?: number;
  readonly strikeHigh?: number;
  /** Why it could not be flown. */
  readonly why?: string;
}

/** Flies a measured shot and finds where on the face it was struck. */
export function computed(shot: MeasuredShot, scene: Scene, hand: 'right' | 'left'): Computed {
  try {
    return { ...flown(shot, scene), ...struck(shot, scene, hand) };
  } catch (error) {
    if (isFairflightError(error)) return { why: error.message };
    throw error;
  }
}

function flown(shot: MeasuredShot, scene: Scene): Computed {
  const from = launchOf(shot) ?? deliveryOf(shot);
  if (from === undefined) {
    return {
      why: 'it needs ball speed, launch angle and spin, or club speed, attack angle and dynamic loft',
    };
  }
  const clubhead = headOf(shot);
  const { carry, total, flight } = playShot(from, scene, clubhead && 'clubSpeed' in from ? { clubhead } : {});
  if (flight.ended !== 'landed') return { why: ENDED[flight.ended] };
  return { carry, apex: flight.apex, descentAngle: flight.landing.descentAngle, total };
}

const ENDED: Readonly<Record<Exclude<Flight['ended'], 'landed'>, string>> = {
  topped: 'it was topped and never flew',
  'below-ground': 'it never came above the ground',
  'time-limit': 'it was still in the air at the time limit',
};

function launchOf(shot: MeasuredShot): Launch | undefined {
  const { ballSpeed, launchAngle, spinRate, launchDirection, spinAxisTilt } = shot;
  if (ballSpeed === undefined || launchAngle === undefined || spinRate === undefined) return undefined;
  return {
    ballSpeed,
    launchAngle,
    spinRate,
    ...(launchDirection !== undefined && { launchDirection }),
    ...(spinAxisTilt !== undefined && { spinAxisTilt }),
  };
}

function deliveryOf(shot: MeasuredShot): Delivery | undefined {
  const { clubSpeed, attackAngle, dynamicLoft, clubPath, faceAngle } = shot;
  if (clubSpeed === undefined || attackAngle === undefined || dynamicLoft === undefined) return undefined;
  return {
    clubSpeed,
    attackAngle,
    dynamicLoft,
    ...(clubPath !== undefined && { clubPath }),
    ...(faceAngle !== undefined && { faceAngle }),
  };
}

/** The place on the face, where the readings leave only one and it is firm. */
function struck(shot: MeasuredShot, scene: Scene, hand: 'right' | 'left'): Computed {
  const clubhead = headOf(shot);
  if (clubhead === undefined || shot.clubSpeed === undefined || shot.ballSpeed === undefined) return {};
  const found = locateStrike(shot, {
    clubhead,
    hand: shot.hand ?? hand,
    ...(scene.ball && { ball: scene.ball }),
  });
  if (found.outcome === 'inconsistent' || found.alternatives.length > 0) return {};
  const { toe, high } = found.identifiability;
  return {
    ...(!toe.weak && { strikeToe: found.strikeOffset.toe }),
    ...(!high.weak && { strikeHigh: found.strikeOffset.high }),
  };
}

/** Words in the names of clubs, in the order in which they are looked for. */
const HEADS: readonly (readonly [RegExp, keyof typeof clubheads])[] = [
  [/driver|^1 ?w/iu, 'driver'],
  [/wedge|^[pgasl]w$/iu, 'wedge'],
  [/hybrid|rescue|\dh\b/iu, 'hybrid'],
  [/wood|\dw\b/iu, 'fairwayWood'],
  [/^[1-4] ?i|iron ?[1-4]/iu, 'longIron'],
  [/^[5-7] ?i|iron ?[5-7]/iu, 'midIron'],
  [/^[89] ?i|iron ?[89]/iu, 'shortIron'],
];

/** The generic head of the club that a shot names, a driver where it names none; undefined for one not known. */
export function headOf({ club, nominalLoft }: MeasuredShot): Clubhead | undefined {
  const name = club === undefined ? 'driver' : HEADS.find(([words]) => words.test(club.trim()))?.[1];
  if (name === undefined) return undefined;
  return nominalLoft === undefined ? clubheads[name] : { ...clubheads[name], staticLoft: nominalLoft };
}
