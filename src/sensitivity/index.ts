export * from './ensemble.js';
export { type FaceMap, type FaceMapOptions, faceMap } from './face-map.js';
export * from './face-pattern.js';
export type { SmashMisread, SmashReading } from './misread.js';
export * from './sensitivities.js';
export * from './strike-quality.js';
