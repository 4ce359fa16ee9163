import { DRAWN, DRAWN_CONDITIONS } from './draws.js';
import type { Results } from './results.js';

/** Writes docs/gpu.md of what a run measured. */
export function pageOf(results: Results): string {
  const { card, processor, errors = [], onCard = [], cuda = [], batch, map, sums = [], cores = [] } = results;
  const best = cuda.reduce<(typeof cuda)[number] | undefined>(
    (first, one) => (first === undefined || one.seconds < first.seconds ? one : first),
    undefined,
  );
  const [plain] = onCard;
  const perSecond = (flights: number, seconds: number): string => (flights / seconds / 1e6).toFixed(0);
  return `# Flights on a graphics card

Written by \`npm run bench:gpu\`; it needs \`npm install webgpu\`, and for the kernel beside it nvcc. 
Card: ${card}. Processor: ${processor}.

\`openGpu\` of \`fairflight/gpu\` flies in single precision, a flight an invocation: Tsitouras 5(4), whose error estimate
chooses the next step, with the equations and the decisions of the other kernels. Sine, cosine and arc tangent are its own, since
those of WGSL may be wrong by 2⁻¹¹. It leaves to the processor, and counts in \`onProcessor\`: balls that start below the ground
or on it without rising, spin ratios and Reynolds numbers beyond the table of a model, and paths whose landing a step may hide.

## How far from exact

Landing against \`flyMany\` at 1e-7 m, the reference flights against SciPy; mm.

| flights | number | left to the processor | ended otherwise | median | 99 % | worst | worst apex |
| --- | --- | --- | --- | --- | --- | --- | --- |
${errors
  .map(
    (row) =>
      `| ${row.of} | ${row.flights.toLocaleString('en')} | ${row.onProcessor.toLocaleString('en')} | ${row.otherEnds} | ${row.median.toFixed(3)} | ${row.p99.toFixed(2)} | ${row.worst.toFixed(2)} | ${row.worstApex.toFixed(2)} |`,
  )
  .join('\n')}

Drawn launches: ${DRAWN}.
Conditions: ${DRAWN_CONDITIONS}.
The worst graze a raised green: at half a degree a hundredth of a mm of height is a mm of carry. Fast balls at any angle are
launches that nobody hits, as 80 m/s at 44° with 10,000 rpm. Reference flights whose model no table holds are left out.

## How fast

Results stay on the card: ${plain?.flights.toLocaleString('en')} of the drawn launches, calm unless it says so, five columns in and
five out, best of twelve.

| kernel | million flights a second |
| --- | --- |
${onCard.map((row) => `| ${row.of} | ${perSecond(row.flights, row.seconds)} |`).join('\n')}
${cuda.map((row) => `| CUDA by hand, \`${row.options}\` (worst carry ${row.worstCarry.toFixed(2)} mm) | ${perSecond(plain?.flights ?? 0, row.seconds)} |`).join('\n')}
${plain === undefined || best === undefined ? '' : `\nThe first row is ${(best.seconds / plain.seconds).toFixed(2)} of the fastest CUDA kernel (bench/gpu/flight.cu, the same method and decisions).\n`}
${
  batch === undefined
    ? ''
    : `\`flyMany\` end to end, columns checked, sent, flown and all seventeen copied back: ${batch.flights.toLocaleString('en')} launches in ${batch.seconds.toFixed(2)} s.
`
}${
  map === undefined
    ? ''
    : `A 200 × 200 \`carryMap\` end to end, copy back included: ${(1000 * map.median).toFixed(1)} ms (median of fifty; best ${(1000 * map.best).toFixed(1)}); the first, which compiles the kernel, ${(1000 * map.first).toFixed(0)} ms. On the processor ${(1000 * map.onProcessor).toFixed(0)} ms.
`
}
## Sums over designs

\`summarise\`: points drawn on the card, mean, deviation and extremes of five quantities brought back.

| flights | seconds | million a second | memory of the process [MB] |
| --- | --- | --- | --- |
${sums.map((row) => `| ${row.flights.toExponential(0).replace('+', '')} | ${row.seconds.toFixed(3)} | ${perSecond(row.flights, row.seconds)} | ${row.megabytes.toFixed(0)} |`).join('\n')}

## All cores of the processor beside one

\`sweepInParallel\`, 400,000 rows a worker, start of the workers included.

| sweep of | workers | times one worker |
| --- | --- | --- |
${cores.map((row) => `| ${row.of} | ${row.workers} | ${((row.workers * row.one) / row.all).toFixed(1)} |`).join('\n')}
`;
}
