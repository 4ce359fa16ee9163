export * from './distributions.js';
export * from './levenberg-marquardt.js';
export * from './linear-algebra.js';
export * from './minimise.js';
export * from './nelder-mead.js';
export * from './roots.js';
export * from './special-functions.js';
export * from './stream.js';
