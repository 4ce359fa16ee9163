/**
 * General numerics written by hand beside kept libraries: size (bundled, minified, gzipped) and error against reference
 * values. `npm run bench:numerics` installs the libraries and prints the figures of docs/decisions.md.
 */

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { variance as d3Variance } from 'd3-array';
import { build } from 'esbuild';
import jstat from 'jstat';
import { Matrix, QrDecomposition } from 'ml-matrix';
import { probit, sampleStandardDeviation } from 'simple-statistics';
import * as ours from '../../src/numerics/index.ts';

const from = '../../src/numerics';
const bundles = [
  [
    'distributions',
    `export { normalQuantile, normalCdf, studentTQuantile, studentTCdf, chiSquareQuantile, chiSquareCdf, fQuantile } from '${from}/distributions.ts'`,
    { jstat: "export { default } from 'jstat'" },
  ],
  [
    'linear algebra',
    `export { leastSquares, inverseOfSymmetric, symmetricEigen } from '${from}/linear-algebra.ts'`,
    {
      'ml-matrix':
        "export { Matrix, QrDecomposition, CholeskyDecomposition, EigenvalueDecomposition } from 'ml-matrix'",
    },
  ],
  [
    'nonlinear least squares',
    `export { levenbergMarquardt } from '${from}/levenberg-marquardt.ts'`,
    { 'ml-levenberg-marquardt': "export { levenbergMarquardt } from 'ml-levenberg-marquardt'" },
  ],
  [
    'moments and order statistics',
    `export { mean, variance, standardDeviation, covariance } from '${from}/moments.ts'; export { quantile, median, medianAbsoluteDeviation } from '${from}/order-statistics.ts'`,
    {
      'simple-statistics':
        "export { mean, sampleVariance, sampleStandardDeviation, sampleCovariance, quantile, median, medianAbsoluteDeviation } from 'simple-statistics'",
      'd3-array': "export { mean, variance, deviation, quantile, median } from 'd3-array'",
    },
  ],
  [
    'root and minimum',
    `export { brent } from '${from}/roots.ts'; export { brentMinimum } from '${from}/minimise.ts'`,
    {},
  ],
  [
    'natural groups',
    `export { naturalGroups } from '${from}/natural-groups.ts'`,
    { 'simple-statistics': "export { ckmeans } from 'simple-statistics'" },
  ],
];

async function kilobytes(contents) {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: fileURLToPath(new URL('.', import.meta.url)), loader: 'ts' },
    bundle: true,
    minify: true,
    format: 'esm',
    write: false,
    logLevel: 'error',
  });
  return `${(gzipSync(outputFiles[0].contents).length / 1000).toFixed(1)} kB`;
}

console.log('size, min+gzip');
for (const [what, own, others] of bundles) {
  const sizes = [`ours ${await kilobytes(own)}`];
  for (const [name, contents] of Object.entries(others)) sizes.push(`${name} ${await kilobytes(contents)}`);
  console.log(`  ${what}: ${sizes.join(', ')}`);
}

const data = (name) =>
  JSON.parse(readFileSync(new URL(`../../tests/published/data/${name}.json`, import.meta.url), 'utf8'));
/** Largest relative error over rows of arguments with the value last. */
const worst = (rows, f) =>
  Math.max(
    ...rows.filter((row) => row.at(-1) !== 0).map((row) => Math.abs(f(...row.slice(0, -1)) / row.at(-1) - 1)),
  ).toExponential(0);

console.log('largest relative error');
const reference = data('distributions');
for (const [what, own, others] of [
  [
    'normalQuantile',
    ours.normalQuantile,
    { jstat: (p) => jstat.normal.inv(p, 0, 1), 'simple-statistics': probit },
  ],
  ['studentTQuantile', ours.studentTQuantile, { jstat: jstat.studentt.inv }],
  ['chiSquareQuantile', ours.chiSquareQuantile, { jstat: jstat.chisquare.inv }],
  ['fQuantile', ours.fQuantile, { jstat: jstat.centralF.inv }],
]) {
  const errors = Object.entries({ ours: own, ...others }).map(
    ([name, f]) => `${name} ${worst(reference[what], f)}`,
  );
  console.log(`  ${what}: ${errors.join(', ')}`);
}
const accurate = [10000000.2, ...Array.from({ length: 500 }, () => [10000000.1, 10000000.3]).flat()];
const deviations = {
  ours: ours.standardDeviation(accurate),
  'simple-statistics': sampleStandardDeviation(accurate),
  'd3-array': Math.sqrt(d3Variance(accurate)),
};
console.log(
  `  standard deviation, NIST NumAcc4: ${Object.entries(deviations)
    .map(([name, value]) => `${name} ${worst([[value, 0.1]], (v) => v)}`)
    .join(', ')}`,
);
const { rows, certified } = data('nist-longley');
const table = rows.map((row) => [1, ...row.slice(1)]);
const y = rows.map((row) => row[0]);
const fits = {
  ours: ours.leastSquares(table, y).x,
  'ml-matrix': new QrDecomposition(new Matrix(table)).solve(Matrix.columnVector(y)).to1DArray(),
};
console.log(
  `  linear least squares, NIST Longley: ${Object.entries(fits)
    .map(
      ([name, x]) =>
        `${name} ${worst(
          x.map((value, i) => [value, certified.coefficients[i]]),
          (v) => v,
        )}`,
    )
    .join(', ')}`,
);
