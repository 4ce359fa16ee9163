import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { advisedPlayers, renderAdvicePage } from './advice-page.js';

const target = fileURLToPath(new URL('../advice.md', import.meta.url));
writeFileSync(target, renderAdvicePage(advisedPlayers()));
console.log(target);
