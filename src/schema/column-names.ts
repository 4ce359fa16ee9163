import type { MeasuredShot } from '../inputs/measured-shot.js';

/** Fields of a shot that hold text. */
export type TextName = 'label' | 'session' | 'date' | 'club';
/** Columns that are not a field of their own but lead to one. */
export type HelperName = 'smashFactor' | 'backspin' | 'sidespin';
/** Columns of numbers: the quantities of a shot, and what leads to them. */
export type NumberName = Exclude<keyof MeasuredShot, TextName | 'line'> | HelperName;

/** What columns are called besides the label of their field, in plain words. */
export const aliases: Readonly<Partial<Record<NumberName | TextName, readonly string[]>>> = {
  clubSpeed: ['clubhead speed', 'club head speed', 'head speed', 'swing speed'],
  attackAngle: ['angle of attack', 'attack'],
  clubPath: ['path'],
  faceAngle: ['face'],
  dynamicLoft: ['delivered loft'],
  nominalLoft: ['loft', 'static loft', 'club loft', 'design loft'],
  launchAngle: ['launch', 'vertical launch', 'vertical launch angle'],
  launchDirection: ['start direction', 'horizontal launch', 'horizontal launch angle'],
  spinRate: ['spin', 'total spin'],
  spinAxisTilt: ['spin axis', 'axis tilt'],
  carry: ['carry distance'],
  total: ['total distance'],
  apex: ['apex height', 'peak height', 'height'],
  descentAngle: ['descent', 'landing angle', 'angle of descent'],
  side: ['offline', 'carry side', 'side at landing'],
  curve: ['curvature'],
  hangTime: ['flight time', 'time in the air'],
  smashFactor: ['smash'],
  backspin: ['back spin'],
  sidespin: ['side spin'],
  label: ['band', 'speed band', 'group'],
  date: ['day'],
};
