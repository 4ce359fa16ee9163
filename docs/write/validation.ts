import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  bounceSection,
  changedSides,
  comparedRows,
  figuresBefore,
  figuresOf,
  groups,
  headColumns,
  headLines,
  renderPage,
  validate,
} from '../../tests/published/validation/index.js';

const path = (name: string): string => fileURLToPath(new URL(`../../${name}`, import.meta.url));

// With --before, what is computed now is stored as what was computed before the change to come.
const storing = process.argv.includes('--before');
const before = storing ? figuresOf(comparedRows(validate(groups, {}))) : figuresBefore;
if (storing) {
  writeFileSync(
    path('tests/published/data/validation-before.json'),
    `${JSON.stringify(before, undefined, 2)}\n`,
  );
}

const validation = validate(groups, before);
writeFileSync(path('docs/validation.md'), renderPage(validation));

const rows = comparedRows(validation);
console.log([headColumns, ...headLines(rows)].map((line) => line.join(' | ')).join('\n'));
console.log(`\n${rows.length} rows compared, ${rows.filter(({ within }) => !within).length} outside`);
for (const row of rows.filter((each) => each.setAside === undefined && changedSides(each))) {
  console.log(
    `${row.within ? 'came within' : 'went outside'}: ${row.group} / ${row.id}: ` +
      `${row.computed.toFixed(3)} against ${row.expected} ± ${row.tolerance} ${row.unit}`,
  );
}
console.log(`\n${bounceSection(groups).join('\n\n')}`);
