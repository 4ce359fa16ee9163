export type * from './measured-shot.js';
