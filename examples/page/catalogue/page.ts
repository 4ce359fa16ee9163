import type { ShotColumn } from 'fairflight/schema';
import type { AnswerId } from '../protocol.js';
import type { Turf } from '../study.js';

/** Words of the page around the answers. */
export interface PageWords {
  readonly title: string;
  readonly lead: string;
  readonly skip: string;
  readonly units: string;
  readonly yards: string;
  readonly metres: string;
  readonly contents: string;
  readonly steps: Readonly<Record<'file' | 'about' | 'answers' | 'sheet', string>>;
  readonly drop: string;
  readonly dropSecond: string;
  readonly choose: string;
  readonly tryIt: string;
  readonly privacy: string;
  readonly remove: (name: string) => string;
  readonly swap: string;
  readonly thisTime: string;
  readonly lastTime: string;
  readonly columnsTitle: string;
  readonly columnsHelp: string;
  readonly columnHead: Readonly<Record<'header' | 'sample' | 'meaning' | 'unit', string>>;
  readonly notUsed: string;
  readonly foundUnit: string;
  readonly meaningFor: (header: string) => string;
  readonly unitFor: (header: string) => string;
  readonly previewTitle: string;
  readonly leftOutTitle: (count: number) => string;
  readonly more: (count: number) => string;
  readonly problem: string;
  readonly dates: string;
  readonly dateOrders: Readonly<Record<'' | 'day-first' | 'month-first', string>>;
  readonly aboutHelp: string;
  readonly fields: Readonly<
    Record<
      | 'player'
      | 'date'
      | 'place'
      | 'club'
      | 'hand'
      | 'loft'
      | 'altitude'
      | 'temperature'
      | 'turf'
      | 'score'
      | 'note'
      | 'keepOdd',
      string
    >
  >;
  readonly mostShots: string;
  readonly hands: Readonly<Record<'' | 'right' | 'left', string>>;
  readonly turfs: Readonly<Record<Turf, string>>;
  readonly answers: Readonly<Record<AnswerId, string>>;
  readonly reading: string;
  readonly finished: string;
  readonly stopped: string;
  readonly cancel: string;
  readonly again: string;
  readonly figures: string;
  readonly noAnswer: string;
  readonly sheetHelp: string;
  readonly print: string;
  readonly printAll: string;
  readonly saveSheet: string;
  readonly saveStudy: string;
  readonly opened: (version: string) => string;
  readonly openedOther: (version: string, now: string) => string;
  readonly notAStudy: string;
  readonly tooMany: string;
  readonly crashed: string;
  readonly foot: (version: string) => string;
  readonly quantities: Readonly<Record<NonNullable<ShotColumn['field']>, string>>;
}

export const page: PageWords = {
  title: 'Your shots, on one sheet',
  lead: 'Give this page a file of shots. It says what they show, what would bring most, and prints one side to take home.',
  skip: 'Skip to the answers',
  units: 'Units',
  yards: 'yards, mph',
  metres: 'metres, km/h',
  contents: 'On this page',
  steps: {
    file: 'The file',
    about: 'Whose shots, and where',
    answers: 'What the shots say',
    sheet: 'The sheet',
  },
  drop: 'Drop a CSV file of shots here, or a study you saved',
  dropSecond: 'Drop last time’s file here too, to see what changed',
  choose: 'Choose a file',
  tryIt: 'Try it with invented shots',
  privacy:
    'Nothing leaves this page. It cannot connect to anything, and it forgets everything when you close it.',
  remove: (name) => `Remove ${name}`,
  swap: 'Swap this time and last time',
  thisTime: 'This time',
  lastTime: 'Last time',
  columnsTitle: 'How each column was read',
  columnsHelp: 'Change what is wrong; the answers follow.',
  columnHead: { header: 'column', sample: 'first value', meaning: 'is', unit: 'in' },
  notUsed: 'not used',
  foundUnit: 'as found',
  meaningFor: (header) => `What ${header} is`,
  unitFor: (header) => `Unit of ${header}`,
  previewTitle: 'The first shots as they were read',
  leftOutTitle: (count) => `Left out, and why (${count})`,
  more: (count) => `and ${count} more`,
  problem: 'This file could not be read yet.',
  dates: 'Dates like 3/5/2026',
  dateOrders: { '': 'as found', 'day-first': 'day first', 'month-first': 'month first' },
  aboutHelp: 'All of it may stay empty. What you type is printed on the sheet.',
  fields: {
    player: 'Player',
    date: 'Date',
    place: 'Place',
    club: 'Club',
    hand: 'Plays',
    loft: 'Loft of the head, in °',
    altitude: 'Height above the sea',
    temperature: 'Air temperature',
    turf: 'Ground',
    score: 'Usual score for 18 holes',
    note: 'Note for the player',
    keepOdd: 'Count the shots that stand apart too',
  },
  mostShots: 'the one with most shots',
  hands: { '': 'as the file says', right: 'right-handed', left: 'left-handed' },
  turfs: {
    normal: 'normal',
    firm: 'firm',
    soft: 'soft',
    wet: 'wet',
    baked: 'baked',
    artificial: 'artificial',
  },
  answers: {
    speeds: 'How far, at which speed?',
    steps: 'What did each step of speed bring?',
    changes: 'What would help?',
    compare: 'What changed since last time?',
    face: 'Where on the face?',
    strokes: 'Faster, or straighter?',
    weeks: 'Did the weeks of practice work?',
    elsewhere: 'How far elsewhere?',
  },
  reading: 'Reading the file',
  finished: 'All answers are ready.',
  stopped: 'Stopped. What was ready stays.',
  cancel: 'Stop',
  again: 'Go on',
  figures: 'The figures of this picture',
  noAnswer: 'These shots do not say.',
  sheetHelp: 'One printed side to take home. What you typed above is on it.',
  print: 'Print the sheet',
  printAll: 'Print everything',
  saveSheet: 'Save the sheet as a file',
  saveStudy: 'Save this study',
  opened: (version) => `Study opened; it was made with version ${version}.`,
  openedOther: (version, now) =>
    `Study opened. It was made with version ${version}; the answers here are those of version ${now} and may differ.`,
  notAStudy: 'That file holds no study.',
  tooMany: 'Two files at most: last time and this time. The newest two are kept.',
  crashed: 'Something went wrong in the calculation. The answers so far stay; change a choice to try again.',
  foot: (version) =>
    `fairflight ${version}. The formulas and their sources stand in its documentation. This file works without a network.`,
  quantities: {
    clubSpeed: 'club speed',
    attackAngle: 'attack angle',
    clubPath: 'club path',
    faceAngle: 'face angle',
    dynamicLoft: 'loft at impact',
    nominalLoft: 'loft of the club',
    ballSpeed: 'ball speed',
    smashFactor: 'ball speed over club speed',
    launchAngle: 'launch angle',
    launchDirection: 'start direction',
    spinRate: 'spin',
    spinAxisTilt: 'tilt of the spin',
    backspin: 'backspin',
    sidespin: 'sidespin',
    carry: 'carry',
    total: 'total',
    apex: 'height of the flight',
    descentAngle: 'descent angle',
    side: 'side',
    curve: 'curve',
    hangTime: 'time in the air',
    label: 'group',
    session: 'session',
    date: 'date',
    club: 'club',
    hand: 'hand',
    line: 'line',
  },
};
