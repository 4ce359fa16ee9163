import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { renderInputsPage } from './inputs-page.js';

const target = fileURLToPath(new URL('../inputs.md', import.meta.url));
void renderInputsPage().then((page) => {
  writeFileSync(target, page);
  console.log(target);
});
