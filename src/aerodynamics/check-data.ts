import { FairflightError, requireRecord } from '../errors.js';
import type { Source } from '../source.js';
import { aerodynamicModels } from './registry.js';

const REQUIRED = ['authors', 'work', 'confidence'] as const;
const OPTIONAL = ['locus', 'doi', 'note'] as const;

/** Refuses one entry of a model given as data. @throws FairflightError `invalid-input` @internal */
export function refuse(field: string, value: unknown, complaint: string): never {
  throw new FairflightError('invalid-input', `${field} ${complaint}`, { field, value });
}

/** Checked id and label of a model given as data. @throws FairflightError @internal */
export function checkName(
  { id, label }: { readonly id: string; readonly label?: string },
  field: string,
): { readonly id: string; readonly label?: string } {
  if (typeof id !== 'string' || id.trim() === '') refuse(`${field}.id`, id, 'must be a non-empty string');
  if (Object.hasOwn(aerodynamicModels, id)) {
    refuse(`${field}.id`, id, 'must differ from the ids of the built-in models');
  }
  if (label === undefined) return { id };
  if (typeof label !== 'string') refuse(`${field}.label`, label, 'must be a string');
  return { id, label };
}

/** A checked copy of where numbers come from. @throws FairflightError @internal */
export function checkSource(source: Source, field: string): Source {
  if (typeof source !== 'object' || source === null) {
    refuse(field, source, 'must say where the numbers come from');
  }
  requireRecord(field, source, [...REQUIRED, 'year', ...OPTIONAL]);
  const copy = { ...source };
  if (typeof copy.year !== 'number') refuse(`${field}.year`, copy.year, 'must be a number');
  for (const name of REQUIRED) {
    if (typeof copy[name] !== 'string') refuse(`${field}.${name}`, copy[name], 'must be a string');
  }
  for (const name of OPTIONAL) {
    const text = copy[name];
    if (text !== undefined && typeof text !== 'string') refuse(`${field}.${name}`, text, 'must be a string');
  }
  return copy;
}
