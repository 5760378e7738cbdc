/**
 * A first visit, from the start of loading to an arena that can be used, beside a page of React and Konva alone under the
 * same settings. Usable means: drawn, and a drag moves something with nothing more than what was fetched until then.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from '@playwright/test';
import { onPage, placeOf } from '../e2e/arena.ts';
import { percentile, type Row, row } from './row.ts';
import { withBrowser, withServed } from './served.ts';

const VISITS = 9;
/** Decimal, as download sizes are told. */
const KB = 1000;
/** How long a drag may take to be seen, milliseconds. */
const PATIENCE = 10_000;

/** A page that is measured. */
interface Subject {
  /** Folder of its index.html; undefined for the app's own. */
  readonly root?: string;
  /** True at the frame with which it can be used; runs in the page. */
  readonly isUsable: () => boolean;
  /** What a drag changes. */
  moved(page: Page): Promise<string>;
  /** Where the drag begins, pixels. */
  grip(page: Page): Promise<{ readonly x: number; readonly y: number }>;
}

/** The obstacle of the first course that is dragged. */
const DRAGGED = 'fan-1';

const OURS: Subject = {
  isUsable: () =>
    // It gets its size with the first picture.
    (document.querySelector<HTMLCanvasElement>('.arena canvas')?.width ?? 0) > 0 &&
    document.querySelector('[data-obstacle]') !== null,
  moved: async (page) => JSON.stringify(await placeOf(page, DRAGGED)),
  grip: async (page) => onPage(page, await placeOf(page, DRAGGED)),
};

const BARE: Subject = {
  root: fileURLToPath(new URL('./start/', import.meta.url)),
  isUsable: () => document.querySelector('canvas') !== null && document.querySelector('output') !== null,
  moved: async (page) => (await page.locator('output').textContent()) ?? '',
  grip: async () => ({ x: 160, y: 110 }),
};

interface Visit {
  /** Milliseconds from the start of loading until the page can be used. */
  readonly usable: number;
  /** Addresses of all that had come by then. */
  readonly fetched: readonly string[];
}

type Watched = typeof globalThis & { seen?: { readonly usable: number; readonly fetched: readonly string[] } };

const WATCH = fileURLToPath(new URL('./start/watch.js', import.meta.url));

/** One first visit: nothing is in the cache, nothing is kept. From the moment it is usable the network is cut. */
async function visit(browser: Browser, url: string, { isUsable, moved, grip }: Subject): Promise<Visit> {
  const context = await browser.newContext({ viewport: { width: 1366, height: 850 } });
  const page = await context.newPage();
  await page.addInitScript(`globalThis.isUsable = ${isUsable}`);
  await page.addInitScript({ path: WATCH });
  await page.goto(url, { waitUntil: 'commit' });
  const found = await page.waitForFunction(() => (globalThis as Watched).seen, undefined, { polling: 'raf' });
  await context.setOffline(true);
  const seen = await found.jsonValue();
  if (seen === undefined) throw new Error('start: the page was never usable');
  await expectDrag(page, { moved, grip });
  await context.close();
  return { usable: seen.usable, fetched: [url, ...seen.fetched] };
}

async function expectDrag(page: Page, { moved, grip }: Pick<Subject, 'moved' | 'grip'>): Promise<void> {
  const before = await moved(page);
  const { x, y } = await grip(page);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 60, y + 30, { steps: 5 });
  await page.mouse.up();
  const end = performance.now() + PATIENCE;
  while ((await moved(page)) === before) {
    if (performance.now() > end) throw new Error(`start: a drag from ${x}, ${y} did not move anything`);
  }
}

interface Start {
  readonly times: readonly number[];
  /** Each file by itself under gzip. */
  readonly bytes: number;
  readonly files: number;
}

async function startOf(browser: Browser, subject: Subject): Promise<Start> {
  return withServed(subject.root, async ({ url, folder }) => {
    const visits: Visit[] = [];
    for (let i = 0; i < VISITS; i += 1) visits.push(await visit(browser, url, subject));
    // The most that any of the visits had fetched.
    const fetched = visits.reduce(
      (most, { fetched: own }) => (own.length > most.length ? own : most),
      [] as readonly string[],
    );
    const sizes = fetched
      .filter((address) => address.startsWith(url))
      .map((address) => gzipSync(readFileSync(join(folder, address.slice(url.length) || 'index.html'))).length);
    return {
      times: visits.slice(1).map(({ usable }) => usable),
      bytes: sizes.reduce((sum, size) => sum + size, 0),
      files: sizes.length,
    };
  });
}

export async function rows(): Promise<Row[]> {
  return withBrowser(async (browser) => {
    const bare = await startOf(browser, BARE);
    const ours = await startOf(browser, OURS);
    const beside = { anchorName: 'React and Konva alone' };
    const budget = { anchor: 1000, anchorName: 'budget of 1000 ms, chosen by us' };
    const [middle, bareMiddle] = [percentile(ours.times, 0.5), percentile(bare.times, 0.5)];
    return [
      row(`first load, gzip, ${ours.files} files`, 'kB', {
        ours: ours.bytes / KB,
        anchor: bare.bytes / KB,
        ...beside,
      }),
      row('page load to a usable arena, p50', 'ms', { ours: middle, anchor: bareMiddle, ...beside }),
      row('page load to a usable arena, p50', 'ms', { ours: middle, ...budget }),
      row('page load to a usable arena, worst', 'ms', { ours: percentile(ours.times, 1), ...budget }),
    ];
  });
}
