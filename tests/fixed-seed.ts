import fc from 'fast-check';

const { SEED = '20261126' } = process.env;

// The same cases on every machine; SEED=… npm test draws others.
fc.configureGlobal({ seed: Number(SEED) });
