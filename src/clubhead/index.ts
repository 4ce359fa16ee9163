export type {
  ClubClass,
  Clubhead,
  RestitutionLaw,
  TangentialRestitution,
} from '../inputs/clubhead.js';
export { type ClubheadName, clubheads } from './presets.js';
