export * from './air.js';
export * from './wind.js';
