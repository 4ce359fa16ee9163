export * from './delivery.js';
export type * from './strike.js';
