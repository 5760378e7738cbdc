import { fileURLToPath } from 'node:url';
import type { Browser, Page } from '@playwright/test';
import { arena, onPage, opened, openStarter, type Place, placeOf, seenBefore, stage } from '../e2e/arena.ts';
import { costOfMoves, heapOfDrags, type MoveCost, noteMoves, reachOfMoves } from './frame/drags.ts';
import { percentile, type Row, row } from './row.ts';
import { withBrowser, withServed } from './served.ts';

const VIEWPORT = { width: 1366, height: 850 } as const;
/** A starter of ten obstacles, and the one of them that is dragged: its middle pole lies where it lies. */
const STARTER = 'larkhollow-open';
const DRAGGED = 'fan-1';
const KB = 1024;
/** A frame of a 60 Hz screen, milliseconds. */
const FRAME = 16;

interface Pages {
  readonly app: Page;
  readonly bare: Page;
  /** Where the bench presses on the bare page. */
  readonly bareAt: Place;
}

async function notedPage(browser: Browser, baseURL: string): Promise<Page> {
  const context = await browser.newContext({ viewport: VIEWPORT, baseURL });
  const page = await context.newPage();
  await seenBefore(page);
  await noteMoves(page);
  return page;
}

/** The app with the starter open, and beside it Konva alone on a stage of the arena's size. */
async function openPages(browser: Browser, urls: { readonly app: string; readonly bare: string }): Promise<Pages> {
  const app = await notedPage(browser, urls.app);
  await opened(app);
  await openStarter(app, STARTER);
  await app.locator(`[data-obstacle="${DRAGGED}"]`).waitFor({ state: 'attached' });
  const box = await arena(app).boundingBox();
  if (box === null) throw new Error('frame: the arena is not on the page');
  const bare = await notedPage(browser, urls.bare);
  await bare.goto(`./?width=${box.width}&height=${box.height}`);
  await bare.locator('canvas').first().waitFor();
  return { app, bare, bareAt: { x: box.width / 2, y: box.height / 2 } };
}

/** One drag of the app beside one of the bare page. A page in front of another one gets its frames. */
function costRows(name: string, ours: MoveCost, bare: MoveCost): Row[] {
  const anchorName = 'Konva alone, in the same browser';
  const paint = (share: number) => percentile(ours.toPaint, share);
  const barePaint = (share: number) => percentile(bare.toPaint, share);
  return [
    row(`${name}: main thread a move`, 'ms', { ours: ours.task, anchor: bare.task, anchorName }),
    row(`${name}: of it script`, 'ms', { ours: ours.script, anchor: bare.script, anchorName }),
    row(`${name}: of it styles and layout`, 'ms', { ours: ours.layout, anchor: bare.layout, anchorName }),
    row(`${name}: main thread to begin and end a drag`, 'ms', { ours: ours.ends, anchor: bare.ends, anchorName }),
    row(`${name}: pointer to paint, p50`, 'ms', { ours: paint(0.5), anchor: barePaint(0.5), anchorName }),
    row(`${name}: pointer to paint, p95`, 'ms', { ours: paint(0.95), anchor: barePaint(0.95), anchorName }),
    row(`${name}: pointer to paint, p95, and a frame`, 'ms', {
      ours: paint(0.95),
      anchor: FRAME,
      anchorName: 'a frame of a 60 Hz screen',
    }),
  ];
}

async function measured(page: Page, at: Place): Promise<MoveCost> {
  await page.bringToFront();
  return costOfMoves(page, at);
}

/** Where the dragged obstacle is on the page, with nothing chosen. The arena has another size at another stage. */
async function atRest(app: Page, name: string): Promise<Place> {
  await app.bringToFront();
  await stage(app, name).click();
  await arena(app).press('Escape');
  return onPage(app, await placeOf(app, DRAGGED));
}

async function rowsOf({ app, bare, bareAt }: Pages): Promise<Row[]> {
  const out: Row[] = [];
  let appAt = await atRest(app, 'Set');
  const compare = async (name: string) => {
    const alone = await measured(bare, bareAt);
    out.push(...costRows(name, await measured(app, appAt), alone));
  };
  await compare('Set, an obstacle');
  const reach = await reachOfMoves(app, appAt);
  // A second press on what is chosen means the pole under it.
  await app.mouse.click(appAt.x, appAt.y);
  await compare('Set, a pole');
  appAt = await atRest(app, 'Ride');
  await compare('Ride, an obstacle');
  await bare.bringToFront();
  const bareReach = await reachOfMoves(bare, bareAt);
  const anchorName = 'Konva alone, in the same browser';
  out.push(
    row('Set, an obstacle: DOM mutations a move', 'count', {
      ours: reach.mutations,
      anchor: bareReach.mutations,
      anchorName,
    }),
    row('Set, an obstacle: canvases drawn a move', 'count', {
      ours: reach.canvases,
      anchor: bareReach.canvases,
      anchorName,
    }),
  );
  if (process.env.FRAME_HEAP === '0') return out;
  appAt = await atRest(app, 'Set');
  const heap = async (page: Page, at: Place) => {
    await page.bringToFront();
    return (await heapOfDrags(page, at)) / KB;
  };
  const bareHeap = await heap(bare, bareAt);
  out.push(
    row('heap that each of 2,000 drags leaves', 'kB', { ours: await heap(app, appAt), anchor: bareHeap, anchorName }),
  );
  return out;
}

/** What a pointer move costs while something is dragged, beside Konva alone; and what drags leave in the heap. */
export async function rows(): Promise<Row[]> {
  const bareRoot = fileURLToPath(new URL('./frame/', import.meta.url));
  return withServed(undefined, (app) =>
    withServed(bareRoot, (bare) =>
      withBrowser(async (browser) => rowsOf(await openPages(browser, { app: app.url, bare: bare.url }))),
    ),
  );
}
