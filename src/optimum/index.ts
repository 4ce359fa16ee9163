export { bestLaunch, type LaunchBox, type LaunchOptimum, type LaunchQuestion } from './best-launch.js';
export { bestLoft, type LoftAdvice, type LoftOptimum, type LoftQuestion } from './best-loft.js';
export {
  type DeliveredLoft,
  type InferOptions,
  inferDynamicLoft,
  type MeasuredLaunch,
} from './infer-loft.js';
export { type CarryMap, carryMap, type MapOptions, type MapQuestion } from './map.js';
export type * from './optimum.js';
export { type SpeedAnswer, type SpeedOptions, speedForCarry } from './speed-for-carry.js';
