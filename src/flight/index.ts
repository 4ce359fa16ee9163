export type * from './flight.js';
