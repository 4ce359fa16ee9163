export { Solver } from 'odex';
