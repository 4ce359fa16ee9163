/**
 * The reference integrator, in an entry of its own so that the root entry does not carry odex.
 * @module
 */
export { flyReference } from './flight/fly-reference.js';
