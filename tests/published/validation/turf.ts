import { fly, type Launch, runOut, type TurfName, toYards } from '../../../src/index.js';
import { landingBall } from '../../turf/landing.js';
import data from '../data/outside-turf.json' with { type: 'json' };
import type { Group } from './row.js';
import { tour } from './walk.js';

/** Run after a flight [yd]. */
const run = (launch: Launch, turf: TurfName = 'normal'): number =>
  toYards(runOut(fly(launch).landing, turf).distance);
/** Run from a landing given in m/s, degrees and rpm [yd]. */
const runFrom = (speed: number, descent: number, backspin: number, turf: TurfName): number =>
  toYards(runOut(landingBall(speed, descent, backspin), turf).distance);

export const turfGroups: readonly Group[] = [
  {
    title: 'Run',
    about: `${data.about.use} ${data.about.confidence}`,
    rows: data.rows,
    compute: {
      'trial-men': () => run(tour.driver),
      'trial-women': () => run(tour.womenDriver),
      'course-rating': () => run(tour.driver),
      'tour-mean': () => run(tour.driver),
      'mountain-course': () => run(tour.driver, 'firm'),
      'medium-less-firm': () => run(tour.driver) - run(tour.driver, 'firm'),
      'soft-less-firm': () => run(tour.driver, 'soft') - run(tour.driver, 'firm'),
      'lower-descent': () => runFrom(28, 28.8, 2000, 'normal') - runFrom(28, 42.9, 3200, 'normal'),
      'low-iron-links': () => runFrom(25, 25, 2500, 'baked'),
    },
  },
];
