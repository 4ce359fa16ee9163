export { type FaceGrid, type FaceMap, faceMap } from './face-map.js';
export * from './face-pattern.js';
export * from './sensitivities.js';
export * from './strike-quality.js';
