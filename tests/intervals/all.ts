import { stream } from '../../src/numerics/index.js';
import { attributionStudies } from './attribution.js';
import { calibrationStudies } from './calibration.js';
import { changeStudies } from './changes.js';
import { dispersionStudies } from './dispersion.js';
import { indexStudies } from './indices.js';
import { locateStudies } from './locate.js';
import { sessionStudies } from './session.js';
import { strokesStudies } from './strokes.js';
import type { Study } from './study.js';
import { trainingStudies } from './training.js';

/** Every study, in the order of the page. */
export const studies: readonly Study[] = [
  ...sessionStudies,
  ...trainingStudies,
  ...attributionStudies((index) => stream(7, index)),
  ...calibrationStudies,
  ...changeStudies,
  ...locateStudies,
  ...dispersionStudies,
  ...strokesStudies,
  ...indexStudies,
];
