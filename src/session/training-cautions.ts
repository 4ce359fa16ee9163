import { frozen } from '../inputs/frozen.js';

/**
 * What to say wherever speed training is talked about. Usual precautions, no medical advice; a qualified coach, a
 * physiotherapist or doctor, and the rules of the place come first.
 */
export const trainingCautions: readonly string[] = /* @__PURE__ */ frozen(() => [
  'Full-effort and overspeed swings load back, hips, shoulders, elbows and wrists. Warm up first, and build up over weeks, not days.',
  'Leave a day or more of rest between speed sessions, and stop a session when speed falls off or form goes.',
  'Stop at pain, dizziness or numbness, and see a doctor or physiotherapist before going on.',
  'Children, older players, anyone pregnant, injured, after an operation or with a heart or joint condition: ask a doctor first.',
  'Learn the swings from a qualified coach, with sound equipment, clear space all round and nobody in front.',
]);
