import fc from 'fast-check';

// The same cases on every machine; SEED=… npm test draws others.
fc.configureGlobal({ seed: Number(process.env['SEED'] ?? 20_261_126) });
