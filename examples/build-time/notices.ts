import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** `node_modules/d3-array`, `node_modules/@colors/colors`, `node_modules/a/node_modules/b`. */
const PACKAGE = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/u;

/** Names, versions and licences of the packages that were bundled, as their licences ask. @throws when one has none */
export function noticesFor(inputs: readonly string[]): string {
  return [...new Set(inputs.flatMap((path) => PACKAGE.exec(path) ?? []))].sort().map(notice).join('\n');
}

function notice(folder: string): string {
  const { name, version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Record<
    string,
    string
  >;
  const file = readdirSync(folder).find((each) => /^licen[cs]e/iu.test(each));
  if (file === undefined) throw new Error(`${folder} has no licence file`);
  return `${'='.repeat(72)}\n${name} ${version}\n\n${readFileSync(join(folder, file), 'utf8').trim()}\n`;
}
