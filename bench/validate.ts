import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { groups, renderPage, validate } from '../tests/published/validation/index.js';

const target = fileURLToPath(new URL('../docs/validation.md', import.meta.url));
const validation = validate(groups);
writeFileSync(target, renderPage(validation));

const rows = validation.groups.flatMap(({ compared }) => compared);
const surprises = rows.filter((row) => row.within !== (row.misfit === undefined));
console.log(
  `${rows.length} rows compared, ${rows.filter(({ within }) => !within).length} outside: ${target}`,
);
for (const row of surprises) {
  console.log(
    `${row.within ? 'now within, still marked a misfit' : 'outside, not marked'}: ${row.group} / ${row.id}: ` +
      `${row.computed.toFixed(3)} against ${row.expected} ± ${row.tolerance} ${row.unit}`,
  );
}
