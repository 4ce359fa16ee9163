/** Words of the answers that are the page's own. */
export interface AnswerWords {
  readonly charts: Readonly<
    Record<
      | 'carry'
      | 'flights'
      | 'landing'
      | 'map'
      | 'face'
      | 'scatterPays'
      | 'strokes'
      | 'cloud'
      | 'weeks'
      | 'scatter'
      | 'causes'
      | 'places',
      { readonly title: string; readonly says: string }
    >
  >;
  readonly tables: Readonly<
    Record<
      | 'bands'
      | 'model'
      | 'steps'
      | 'changes'
      | 'loft'
      | 'compare'
      | 'offCentre'
      | 'speeds'
      | 'sessions'
      | 'distances',
      string
    >
  >;
  readonly method: string;
  readonly limits: string;
  readonly cautions: string;
  readonly oddTitle: string;
  readonly fromTo: (facts: {
    readonly slow: string;
    readonly fast: string;
    readonly near: string;
    readonly far: string;
  }) => string;
  readonly oneSpeed: (facts: { readonly carry: string; readonly speed: string | undefined }) => string;
  readonly noFace: string;
  readonly noStrokes: (why: string) => string;
  readonly noElsewhere: (why: string) => string;
  readonly noLadder: (why: string) => string;
  readonly sampled: (used: string, all: string) => string;
  readonly drawn: (used: string, all: string) => string;
  readonly stepMethod: string;
  readonly changeMethod: (worth: string) => string;
  readonly modelMethod: string;
  readonly heads: Readonly<
    Record<
      | 'band'
      | 'carry'
      | 'attainable'
      | 'speed'
      | 'attack'
      | 'landed'
      | 'scatterSide'
      | 'scatterAlong'
      | 'quantity'
      | 'last'
      | 'this'
      | 'change'
      | 'shots'
      | 'place'
      | 'club'
      | 'toe'
      | 'high'
      | 'shot'
      | 'session'
      | 'now'
      | 'strokes'
      | 'fairways'
      | 'more'
      | 'interval'
      | 'cause'
      | 'allowed'
      | 'within'
      | 'launch'
      | 'spin'
      | 'best',
      string
    >
  >;
  readonly compareCarry: (facts: {
    readonly change: string;
    readonly low: string;
    readonly high: string;
  }) => string;
  readonly compareUnclear: (facts: {
    readonly change: string;
    readonly low: string;
    readonly high: string;
  }) => string;
  readonly compareNone: string;
  readonly compareCauses: (parts: string) => string;
  readonly compareNote: string;
  readonly causes: Readonly<Record<'ballSpeed' | 'launch' | 'spinRate' | 'spinAxis' | 'air', string>>;
  readonly join: (items: readonly string[]) => string;
}

export const answers: AnswerWords = {
  charts: {
    carry: {
      title: 'Carry against club speed',
      says: 'Each dot is a shot. The gap to the line is still to gain.',
    },
    flights: {
      title: 'The flights from the side',
      says: 'One flight a speed, the fastest on top. Heights are drawn at twice the scale of distances.',
    },
    landing: {
      title: 'Where the balls landed',
      says: 'Seen from above, the target to the right, both directions at one scale.',
    },
    map: {
      title: 'Launch and spin',
      says: 'Shades show carry for every launch and spin at this ball speed. Only what lies near the line can be reached with this head.',
    },
    face: {
      title: 'The face',
      says: 'Seen from behind the club. Shades show the carry lost against the best place; the small curves show the flight from above.',
    },
    scatterPays: {
      title: 'How much more scatter a faster swing can afford',
      says: 'Below the black line a speed saves strokes, above it the rough costs more than the distance brings.',
    },
    strokes: { title: 'Strokes at each speed', says: 'All driving holes together, against now.' },
    cloud: {
      title: 'Where tee shots come to rest',
      says: 'Simulated from these shots, now and faster, seen from above.',
    },
    weeks: {
      title: 'Club speed over the weeks',
      says: 'A day’s mean inside the shaded band could be the old speed on another day.',
    },
    scatter: {
      title: 'Did the shots spread more?',
      says: 'The last sessions over the first. Right of the dashed line is more spread.',
    },
    causes: {
      title: 'What changed the carry',
      says: 'The change between the first and last sessions, shared out over its causes.',
    },
    places: {
      title: 'What each place does to the carry',
      says: 'Change from where the shots were hit, club by club.',
    },
  },
  tables: {
    bands: 'Means at each speed, with the range in which the true mean lies 19 times out of 20',
    model: 'The calculated flight beside the measured one',
    steps: 'From one speed to the next',
    changes: 'Each change tried alone, and what it brings',
    loft: 'Loft at each speed',
    compare: 'Last time beside this time',
    offCentre: 'What a strike off the middle does',
    speeds: 'Speed by speed',
    sessions: 'Session by session',
    distances: 'Carry of each club in each place',
  },
  method: 'How this was worked out',
  limits: 'How far to trust it',
  cautions: 'Before you act on it',
  oddTitle: 'Shots that stand apart',
  fromTo: ({ slow, fast, near, far }) =>
    `From ${slow} to ${fast} of club speed the carry goes from ${near} to ${far}.`,
  oneSpeed: ({ carry, speed }) =>
    `The mean carry is ${carry}${speed === undefined ? '' : ` from ${speed} of club speed`}.`,
  noFace:
    'Where on the face it was struck cannot be told: that takes club speed, ball speed, launch and spin of a driver.',
  noStrokes: (why) => `Faster or straighter cannot be told: ${why}.`,
  noElsewhere: (why) => `Distances elsewhere cannot be told: ${why}.`,
  noLadder: (why) => `This cannot be told: ${why}.`,
  sampled: (used, all) => `Worked out from ${used} of ${all} shots, spread evenly over the file.`,
  drawn: (used, all) => `${used} of ${all} shots are drawn.`,
  stepMethod:
    'The change of carry is shared out over its causes fairly, whatever their order (Shapley values). The small figures hold the true value 19 times out of 20; they come from drawing the shots anew many times, and are widened for few shots.',
  changeMethod: (worth) =>
    `Each change is tried alone in the calculation, all else as it is. It is worth trying when it brings ${worth} and is clear of its range.`,
  modelMethod:
    'Every measured launch is flown by the library. Calculated less measured, and how much that differs from shot to shot, says how far to trust the other figures.',
  heads: {
    band: 'speed',
    carry: 'carry',
    attainable: 'best loft, centred',
    speed: 'club speed',
    attack: 'attack angle',
    landed: 'shots that landed',
    scatterSide: 'spread sideways',
    scatterAlong: 'spread in length',
    quantity: 'what',
    last: 'last time',
    this: 'this time',
    change: 'change',
    shots: 'shots',
    place: 'place',
    club: 'club',
    toe: 'toward the toe',
    high: 'up the face',
    shot: 'shot',
    session: 'session',
    now: 'as hit',
    strokes: 'strokes',
    fairways: 'fairways',
    more: 'against now',
    interval: '19 times out of 20',
    cause: 'cause',
    allowed: 'scatter allowed',
    within: 'range',
    launch: 'launch',
    spin: 'spin',
    best: 'at the best loft',
  },
  compareCarry: ({ change, low, high }) =>
    `Carry changed by ${change} since last time (${low} to ${high}): more than chance makes of it.`,
  compareUnclear: ({ change, low, high }) =>
    `Carry changed by ${change} since last time (${low} to ${high}): that may be chance.`,
  compareNone: 'The carry of one of the two was not measured, so the change cannot be told.',
  compareCauses: (parts) => `By cause: ${parts}.`,
  compareNote:
    'Means of all shots of the club looked at. Another day, ball, device or mix of speeds changes them too.',
  causes: {
    ballSpeed: 'ball speed',
    launch: 'launch',
    spinRate: 'spin',
    spinAxis: 'tilt of the spin',
    air: 'air',
  },
  join: (items) =>
    items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`,
};
