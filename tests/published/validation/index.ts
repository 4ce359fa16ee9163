export { figuresBefore, figuresOf } from './before.js';
export { bounceSection, byBounceModel, leftOver } from './bounce-models.js';
export { groups } from './groups.js';
export { headColumns, headLines } from './head-table.js';
export { comparedRows, renderPage, type Validation, validate } from './page.js';
export { compare, reasonNotCompared } from './row.js';
export { changedSides, hasWorsened } from './score.js';
