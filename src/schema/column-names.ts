import type { MeasuredShot } from '../inputs/measured-shot.js';

/** Fields of a shot that hold text. */
export type TextName = 'label' | 'session' | 'date' | 'club';
/** Columns that are read into a shot as words. */
export type WordName = TextName | 'hand';
/** Columns that are not a field of their own but lead to one. */
export type HelperName = 'smashFactor' | 'backspin' | 'sidespin';
/** Columns of numbers: the quantities of a shot, and what leads to them. */
export type NumberName = Exclude<keyof MeasuredShot, WordName | 'line'> | HelperName;

/**
 * What columns are called besides the label of their field: words of the trade and their usual abbreviations, gathered
 * by meaning. Case, blanks and marks between words do not count.
 */
export const aliases: Readonly<Partial<Record<NumberName | WordName, readonly string[]>>> = {
  clubSpeed: ['clubhead speed', 'head speed', 'swing speed', 'club velocity', 'club spd', 'head spd', 'chs'],
  attackAngle: ['angle of attack', 'attack', 'attack ang', 'vertical attack', 'aoa'],
  clubPath: ['path', 'swing path', 'club path angle', 'path angle', 'horizontal path'],
  faceAngle: ['face', 'club face', 'club face angle', 'face to target'],
  dynamicLoft: ['delivered loft', 'dyn loft', 'loft at impact', 'impact loft'],
  nominalLoft: ['loft', 'static loft', 'club loft', 'design loft'],
  ballSpeed: ['ball velocity', 'ball spd', 'initial speed', 'launch speed'],
  launchAngle: ['launch', 'vertical launch', 'vertical launch angle', 'launch ang', 'launch v', 'vla'],
  launchDirection: [
    'start direction',
    'start line',
    'horizontal launch',
    'horizontal launch angle',
    'launch dir',
    'launch h',
    'direction',
    'azimuth',
    'hla',
  ],
  spinRate: ['spin', 'total spin', 'ball spin'],
  spinAxisTilt: ['spin axis', 'axis tilt', 'axis', 'spin tilt', 'tilt axis'],
  carry: ['carry distance', 'carry dist', 'carry length'],
  total: ['total distance', 'total dist', 'carry and run'],
  apex: ['apex height', 'peak height', 'height', 'max height', 'maximum height', 'peak'],
  descentAngle: ['descent', 'landing angle', 'land angle', 'angle of descent', 'fall angle'],
  side: ['offline', 'carry side', 'side carry', 'side at landing', 'lateral', 'deviation', 'left right'],
  curve: ['curvature'],
  hangTime: ['flight time', 'time in the air', 'air time'],
  smashFactor: ['smash', 'smash fac'],
  label: ['band', 'speed band', 'group'],
  session: ['session name'],
  date: ['day', 'date and time', 'timestamp'],
  club: ['club name', 'club type'],
  hand: ['handedness', 'player hand', 'plays'],
};
