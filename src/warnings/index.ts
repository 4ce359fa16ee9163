export type { ModelWarning, Severity, WarningCode } from './warning.js';
export { type SpokenUnits, type WarningTextOptions, warningText } from './warning-text.js';
