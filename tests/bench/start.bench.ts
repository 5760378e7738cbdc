import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { type Browser, chromium, type Response } from '@playwright/test';
import { build, preview } from 'vite';
import { percentile, type Row, row } from './row.ts';

const VISITS = 7;
/** Decimal, as download sizes are told. */
const KB = 1000;

interface Visit {
  /** Milliseconds from the start of loading until the arena is painted and its obstacles are there. */
  readonly usable: number;
  /** Bytes of all that was fetched until then, each file by itself under gzip. */
  readonly bytes: number;
  readonly files: number;
}

/** One first visit: nothing is in the cache, nothing is kept. */
async function visit(browser: Browser, url: string): Promise<Visit> {
  const context = await browser.newContext({ viewport: { width: 1366, height: 850 } });
  const page = await context.newPage();
  const bodies: Promise<Buffer>[] = [];
  const keep = (response: Response) => bodies.push(response.body());
  page.on('response', keep);
  await page.goto(url, { waitUntil: 'commit' });
  // Asked at every frame: what is in the page at one is on the screen with it.
  const found = await page.waitForFunction(
    () => document.querySelector('canvas') && document.querySelector('[data-obstacle]') && performance.now(),
    undefined,
    { polling: 'raf' },
  );
  page.off('response', keep);
  const usable = Number(await found.jsonValue());
  const fetched = await Promise.all(bodies);
  await context.close();
  return { usable, bytes: fetched.reduce((sum, body) => sum + gzipSync(body).length, 0), files: fetched.length };
}

/** A first visit to a build, from the start of loading to an arena that can be used. */
export async function rows(): Promise<Row[]> {
  const outDir = mkdtempSync(join(tmpdir(), 'start-bench-'));
  await build({ logLevel: 'error', build: { outDir, emptyOutDir: true } });
  const server = await preview({ logLevel: 'error', build: { outDir }, preview: { port: 0 } });
  const browser = await chromium.launch({
    executablePath: process.env.POLEWRIGHT_CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu'],
  });
  try {
    const [url] = server.resolvedUrls?.local ?? [];
    if (url === undefined) throw new Error('start: the server has no address');
    const visits: Visit[] = [];
    for (let i = 0; i < VISITS; i += 1) visits.push(await visit(browser, url));
    const times = visits.slice(1).map((each) => each.usable);
    const [first] = visits;
    if (first === undefined) throw new Error('start: there was no visit');
    const time = { anchor: 1000, anchorName: 'budget of 1000 ms, chosen by us' };
    return [
      row('page load to a usable arena, p50', 'ms', { ours: percentile(times, 0.5), ...time }),
      row('page load to a usable arena, worst', 'ms', { ours: percentile(times, 1), ...time }),
      row(`first load, gzip, ${first.files} files`, 'kB', {
        ours: first.bytes / KB,
        anchor: 300,
        anchorName: 'budget of 300 kB, chosen by us',
      }),
    ];
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true });
  }
}
