import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['{grammar,compiler,server,extension}/src/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
  },
});
