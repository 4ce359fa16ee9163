import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { renderModelsPage } from './models-page.js';

const target = fileURLToPath(new URL('../models.md', import.meta.url));
writeFileSync(target, renderModelsPage());
console.log(target);
