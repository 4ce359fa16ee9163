import { type CountField, count } from './field.js';
import { frozen } from './frozen.js';

/** Seed of random numbers: the same one gives the same numbers. @internal */
export const seedField: CountField = /* @__PURE__ */ frozen(() =>
  count(0, Number.MAX_SAFE_INTEGER, 1, 'seed'),
);
