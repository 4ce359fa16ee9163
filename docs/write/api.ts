import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Extractor, ExtractorConfig, ExtractorLogLevel } from '@microsoft/api-extractor';

/**
 * Writes docs/api-report: what each entry of the built package exports, so that a change of the face shows in a diff.
 * `npm run api` writes it, `npm run api:check` fails when it is stale. Both want a fresh build.
 */

const root = fileURLToPath(new URL('../..', import.meta.url));
const check = process.argv.includes('--check');
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  exports: Record<string, unknown>;
};
const entries = Object.keys(manifest.exports)
  .filter((entry) => entry !== './package.json')
  .map((entry) => (entry === '.' ? 'index' : entry.slice(2)));
const reports = join(root, 'docs/api-report');
const scratch = mkdtempSync(join(tmpdir(), 'api-'));
mkdirSync(reports, { recursive: true });

let stale = false;
for (const entry of entries) {
  const config = ExtractorConfig.prepare({
    configObject: {
      projectFolder: root,
      mainEntryPointFilePath: join(root, `dist/${entry}.d.ts`),
      compiler: {
        overrideTsconfig: {
          compilerOptions: {
            target: 'es2022',
            module: 'esnext',
            moduleResolution: 'bundler',
            lib: ['es2022', 'dom'],
            types: ['node'],
            strict: true,
            skipLibCheck: true,
          },
          include: [join(root, 'dist')],
        },
      },
      apiReport: {
        enabled: true,
        reportFileName: `${entry}.api.md`,
        reportFolder: reports,
        reportTempFolder: scratch,
        includeForgottenExports: false,
      },
      docModel: { enabled: false },
      dtsRollup: { enabled: false },
      tsdocMetadata: { enabled: false },
      messages: {
        // typedoc checks the comments; the report is about names and types.
        compilerMessageReporting: { default: { logLevel: ExtractorLogLevel.None } },
        extractorMessageReporting: { default: { logLevel: ExtractorLogLevel.None } },
        tsdocMessageReporting: { default: { logLevel: ExtractorLogLevel.None } },
      },
      newlineKind: 'lf',
    },
    configObjectFullPath: join(root, 'api-extractor.json'),
    packageJsonFullPath: join(root, 'package.json'),
  });
  const { apiReportChanged } = Extractor.invoke(config, {
    localBuild: !check,
    messageCallback: (message) => {
      message.handled = true;
    },
  });
  if (apiReportChanged) {
    stale = true;
    console.log(check ? `docs/api-report/${entry}.api.md is stale: npm run api` : `${entry}: written`);
  }
}
rmSync(scratch, { recursive: true });
if (check && stale) process.exitCode = 1;
