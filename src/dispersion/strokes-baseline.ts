/** Where the ball lies. `recovery`: trees or the like, the way to the hole blocked. */
export type BallLie = 'tee' | 'fairway' | 'rough' | 'sand' | 'recovery' | 'green';

/**
 * Distance [yd], then strokes to hole out from tee, fairway, rough, sand and recovery, as published: Broadie M (2012)
 * Assessing golfer performance on the PGA TOUR, Interfaces 42(2), 146–165, appendix, table 9; more than 8 million shots,
 * 2003 to 2010. Five public transcriptions agree digit for digit; the paper itself was not opened.
 * @internal
 */
export const BASELINE_ROWS: readonly (readonly [
  yards: number,
  tee: number | undefined,
  fairway: number,
  rough: number,
  sand: number,
  recovery: number,
])[] = [
  [10, undefined, 2.18, 2.34, 2.43, 3.45],
  [20, undefined, 2.4, 2.59, 2.53, 3.51],
  [30, undefined, 2.52, 2.7, 2.66, 3.57],
  [40, undefined, 2.6, 2.78, 2.82, 3.71],
  [50, undefined, 2.66, 2.87, 2.92, 3.79],
  [60, undefined, 2.7, 2.91, 3.15, 3.83],
  [70, undefined, 2.72, 2.93, 3.21, 3.84],
  [80, undefined, 2.75, 2.96, 3.24, 3.84],
  [90, undefined, 2.77, 2.99, 3.24, 3.82],
  [100, 2.92, 2.8, 3.02, 3.23, 3.8],
  [120, 2.99, 2.85, 3.08, 3.21, 3.78],
  [140, 2.97, 2.91, 3.15, 3.22, 3.8],
  [160, 2.99, 2.98, 3.23, 3.28, 3.81],
  [180, 3.05, 3.08, 3.31, 3.4, 3.82],
  [200, 3.12, 3.19, 3.42, 3.55, 3.87],
  [220, 3.17, 3.32, 3.53, 3.7, 3.92],
  [240, 3.25, 3.45, 3.64, 3.84, 3.97],
  [260, 3.45, 3.58, 3.74, 3.93, 4.03],
  [280, 3.65, 3.69, 3.83, 4.0, 4.1],
  [300, 3.71, 3.78, 3.9, 4.04, 4.2],
  [320, 3.79, 3.84, 3.95, 4.12, 4.31],
  [340, 3.86, 3.88, 4.02, 4.26, 4.44],
  [360, 3.92, 3.95, 4.11, 4.41, 4.56],
  [380, 3.96, 4.03, 4.21, 4.55, 4.66],
  [400, 3.99, 4.11, 4.3, 4.69, 4.75],
  [420, 4.02, 4.19, 4.4, 4.83, 4.84],
  [440, 4.08, 4.27, 4.49, 4.97, 4.94],
  [460, 4.17, 4.34, 4.58, 5.11, 5.03],
  [480, 4.28, 4.42, 4.68, 5.25, 5.13],
  [500, 4.41, 4.5, 4.77, 5.4, 5.22],
  [520, 4.54, 4.58, 4.87, 5.54, 5.32],
  [540, 4.65, 4.66, 4.96, 5.68, 5.41],
  [560, 4.74, 4.74, 5.06, 5.82, 5.51],
  [580, 4.79, 4.82, 5.15, 5.96, 5.6],
  [600, 4.82, 4.89, 5.25, 6.1, 5.7],
];

/** Distance [ft] and putts to hole out on the green: Broadie M (2011 draft) Putts gained, figure 1. @internal */
export const PUTTING_ROWS: readonly (readonly [feet: number, putts: number])[] = [
  [2, 1.01],
  [3, 1.05],
  [4, 1.14],
  [5, 1.24],
  [6, 1.34],
  [7, 1.43],
  [8, 1.5],
  [9, 1.56],
  [10, 1.61],
  [15, 1.78],
  [20, 1.87],
  [30, 1.98],
  [40, 2.06],
  [50, 2.14],
  [60, 2.21],
  [90, 2.36],
];
