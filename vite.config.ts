import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('src/app'),
  base: './',
  plugins: [react()],
  resolve: {
    // pdfkit's font reader carries a brotli decoder of 60 kB for WOFF2 fonts; ours are TTF.
    alias: {
      'brotli/decompress.js': here('src/sheets/no-brotli.ts'),
      'brotli/decompress': here('src/sheets/no-brotli.ts'),
    },
  },
  build: { outDir: here('dist/app'), emptyOutDir: true, target: 'es2023', chunkSizeWarningLimit: 700 },
  preview: { host: '127.0.0.1', port: 4190 },
  server: { host: '127.0.0.1', port: 4190, fs: { allow: [here('.')] } },
  test: {
    root: here('.'),
    include: ['tests/**/*.test.{ts,tsx}'],
    reporters: ['default', ['json', { outputFile: 'out/vitest.json' }]],
  },
});
