export * from './sensitivities.js';
