export * from './clubhead.js';
