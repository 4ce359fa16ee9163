export * from './minimise.js';
export * from './nelder-mead.js';
export * from './roots.js';
