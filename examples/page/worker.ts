import { messages } from './catalogue/messages.js';
import { freshMemory } from './memory.js';
import type { Job, Told } from './protocol.js';
import { doJob } from './worker-job.js';

const memory = freshMemory();
/** A bar that moves more often than this helps nobody [ms]. */
const PAUSE = 60;
let told = 0;

self.onmessage = ({ data }: MessageEvent<Job>): void => {
  doJob(data, messages, memory, (each: Told) => {
    const now = performance.now();
    if (each.kind === 'progress' && each.share > 0 && now - told < PAUSE) return;
    if (each.kind === 'progress') told = now;
    self.postMessage(each);
  });
};
