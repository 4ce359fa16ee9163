import { fileURLToPath } from 'node:url';
import { defineConfig, type ViteUserConfig } from 'vitest/config';

/** Tests of what a user gets: the packed package and the examples that import it. */
const BUILT = ['tests/package/**/*.test.ts', 'tests/examples/**/*.test.ts', 'tests/page/**/*.test.ts'];

const config: ViteUserConfig = defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // By default one processor would be left idle: of two, half the machine.
    maxWorkers: '100%',
    setupFiles: ['tests/fixed-seed.ts'],
    coverage: {
      provider: 'v8',
      include: ['src/**/*.ts'],
      exclude: ['src/**/index.ts', 'src/**/build-time/**', '**/*.d.ts'],
    },
    projects: [
      {
        extends: true,
        test: {
          name: 'source',
          include: ['tests/**/*.test.ts'],
          exclude: BUILT,
          globalSetup: ['tests/fresh-kernels.ts'],
        },
      },
      { extends: true, test: { name: 'built', include: BUILT, globalSetup: ['tests/fresh-build.ts'] } },
    ],
  },
});
export default config;
