export type { Delivery, Hand, StrikeOffset } from './delivery.js';
export * from './strike.js';
