export { groups } from './groups.js';
export { renderPage, type Validation, validate } from './page.js';
export { compare, reasonNotCompared } from './row.js';
