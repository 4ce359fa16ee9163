export * from './factors.js';
export * from './make.js';
export * from './quantities.js';
export * from './read.js';
