/** What a bench needs that looks at pages: a build that is served, and a browser. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium } from '@playwright/test';
import { build, preview } from 'vite';

const CONFIG = fileURLToPath(new URL('../../vite.config.ts', import.meta.url));

/** A build that is served, and the folder that it lies in. */
export interface Served {
  readonly url: string;
  readonly folder: string;
}

/** Builds the app, or the page in `root` under the same settings, and serves it while `use` runs. */
export async function withServed<T>(root: string | undefined, use: (served: Served) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const from = { configFile: CONFIG, logLevel: 'error', ...(root === undefined ? {} : { root }) } as const;
  await build({ ...from, build: { outDir: folder, emptyOutDir: true } });
  const server = await preview({ ...from, build: { outDir: folder }, preview: { port: 0 } });
  try {
    const [url] = server.resolvedUrls?.local ?? [];
    if (url === undefined) throw new Error('withServed: the server has no address');
    return await use({ url, folder });
  } finally {
    await server.close();
    rmSync(folder, { recursive: true });
  }
}

/** Runs `use` with a Chromium that draws by its processor alone. */
export async function withBrowser<T>(use: (browser: Browser) => Promise<T>): Promise<T> {
  const browser = await chromium.launch({
    executablePath: process.env.POLEWRIGHT_CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu'],
  });
  try {
    return await use(browser);
  } finally {
    await browser.close();
  }
}
