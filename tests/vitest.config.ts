import { fileURLToPath } from 'node:url';
import { defineConfig, type ViteUserConfig } from 'vitest/config';

const config: ViteUserConfig = defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    coverage: { provider: 'v8', include: ['src/**/*.ts'], exclude: ['src/**/index.ts', '**/*.d.ts'] },
  },
});
export default config;
