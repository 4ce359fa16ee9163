#!/usr/bin/env node
/**
 * All programs under one name: `npx fairflight ladder shots.csv`. `npx fairflight --help` lists them.
 */

import { VERSION } from 'fairflight';
import { EXIT } from './lib/command.js';
import { PROGRAMS, type ProgramName } from './lib/programs.js';
import { remark, say } from './lib/terminal.js';

/** A program runs as it is loaded, on what the command line holds. */
const LOAD: Readonly<Record<ProgramName, () => Promise<unknown>>> = {
  ladder: () => import('./ladder.js'),
  tradeoff: () => import('./tradeoff.js'),
  log: () => import('./log.js'),
  face: () => import('./face.js'),
  places: () => import('./places.js'),
  worth: () => import('./worth.js'),
  doubt: () => import('./doubt.js'),
  sweep: () => import('./sweep.js'),
  shots: () => import('./shots.js'),
};

function helpText(): string {
  const names = Object.entries(PROGRAMS);
  const width = Math.max(...names.map(([name]) => name.length));
  return [
    'fairflight: what measured golf shots say about speed, strike and club',
    '',
    'Usage: npx fairflight PROGRAM [file.csv] [options]',
    '',
    ...names.map(([name, answers]) => `  ${name.padEnd(width)}  ${answers}`),
    '',
    'Most work on invented demo data when they are given no file, and say so.',
    'npx fairflight PROGRAM --help lists the options of a program; --version prints the version.',
    '',
  ].join('\n');
}

const [name = '--help'] = process.argv.splice(2, 1);
if (name === '--help' || name === '-h') say(helpText());
else if (name === '--version') say(`${VERSION}\n`);
else if (Object.hasOwn(LOAD, name)) await LOAD[name as ProgramName]();
else {
  remark(`fairflight: there is no program ${JSON.stringify(name)}; npx fairflight --help lists them\n`);
  process.exitCode = EXIT.refused;
}
