export * from './ball.js';
