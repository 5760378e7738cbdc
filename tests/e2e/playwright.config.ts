import { defineConfig } from '@playwright/test';

const PORT = Number(process.env.POLEWRIGHT_TEST_PORT ?? 4191);
const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export default defineConfig({
  testDir: '.',
  testMatch: '*.e2e.ts',
  outputDir: '../../out/e2e',
  reporter: [['list'], ['json', { outputFile: '../../out/e2e.json' }]],
  // A page waits now and then; a third one works meanwhile.
  workers: 3,
  // Each test opens a page of its own.
  fullyParallel: true,
  // Far beyond what a slow machine needs: a limit here only ends a run that hangs.
  timeout: 180_000,
  expect: { timeout: 30_000 },
  use: {
    baseURL: `http://127.0.0.1:${PORT}/`,
    viewport: { width: 1366, height: 850 },
    // Not a first visit: nothing moves by itself, and no hint takes room. first.e2e.ts has its own.
    storageState: {
      cookies: [],
      origins: [
        {
          origin: `http://127.0.0.1:${PORT}`,
          localStorage: [{ name: 'polewright-first-visit', value: '{"hints":3,"example":true}' }],
        },
      ],
    },
    launchOptions: { executablePath: process.env.POLEWRIGHT_CHROMIUM ?? '/usr/bin/chromium', args: QUIET },
    screenshot: 'only-on-failure',
  },
  webServer: {
    command: `npx vite build --logLevel warn && npx vite preview --port ${PORT} --strictPort`,
    cwd: '../..',
    url: `http://127.0.0.1:${PORT}/`,
    timeout: 120_000,
  },
});
