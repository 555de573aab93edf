import { fileURLToPath } from 'node:url';
import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';

// The page is served under a policy of `script-src 'self'` by a local server without internet: everything is a file of its own.
export default defineConfig({
  root: fileURLToPath(new URL('src/web', import.meta.url)),
  base: './',
  plugins: [preact({ prefreshEnabled: false, devToolsEnabled: false })],
  // It comes from the same machine: one file of 600 kB needs no warning.
  build: {
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1000,
  },
  worker: { format: 'es' },
});
