import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('src/app'),
  base: './',
  plugins: [react({ jsxImportSource: '#jsx' })],
  resolve: {
    // pdfkit's font reader carries a brotli decoder of 60 kB for WOFF2 fonts; ours are TTF.
    alias: {
      'brotli/decompress.js': here('src/sheets/no-brotli.ts'),
      'brotli/decompress': here('src/sheets/no-brotli.ts'),
    },
  },
  build: {
    outDir: here('dist/app'),
    emptyOutDir: true,
    target: 'es2023',
    // The first load is one file, so that the arena waits for one request and not for twenty: React and Konva's core are half
    // of it, the desk and the survey most of the rest. What comes after it is fetched as
    // src/app/later-part.ts says. `npm run bench -- start` weighs it; this warns of a leap.
    chunkSizeWarningLimit: 850,
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } } },
  },
  // Workers fetch parts later too, such as what writes PDFs.
  worker: { format: 'es' },
  preview: { host: '127.0.0.1', port: 4190 },
  server: { host: '127.0.0.1', port: 4190, fs: { allow: [here('.')] } },
  test: {
    root: here('.'),
    include: ['tests/**/*.test.{ts,tsx}'],
    setupFiles: ['tests/property-seed.ts'],
    // The files of a worker share their modules, and with them caches by identity: to load and survey the same courses for each
    // file anew took as long as the tests. A test must not lean on the state of a module.
    isolate: false,
    // By default one core is left for watching.
    maxWorkers: '100%',
    // A slow machine is no fault of the code: a test that hangs is stopped by CI.
    testTimeout: 0,
    hookTimeout: 0,
    reporters: ['default', ['json', { outputFile: 'out/vitest.json' }]],
  },
});
