export * from './model.js';
