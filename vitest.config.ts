import { defineConfig } from 'vitest/config';

export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: ['{src,test,validation}/**/*.test.{ts,tsx}', 'tools/**/*.test.mjs'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    env: { TZ: 'UTC' },
  },
});
