/** Drags in a real browser, by its own input, and what they cost the page's main thread. */
import type { CDPSession, Page } from '@playwright/test';

interface Place {
  readonly x: number;
  readonly y: number;
}

/** What moves cost; times in milliseconds. */
export interface MoveCost {
  /** A move: all of the main thread's tasks, and of these script, layout and styles. */
  readonly task: number;
  readonly script: number;
  readonly layout: number;
  /** Of the main thread to begin and to end one drag, all together. */
  readonly ends: number;
  /** Each: from the first handler of a move to after the frame that shows it. */
  readonly toPaint: readonly number[];
}

/** What moves touch, a move. */
export interface MoveReach {
  readonly mutations: number;
  readonly canvases: number;
}

/** What the page notes while it is measured. */
interface Notes {
  toPaint: number[];
  mutations: number;
  cleared: number;
}

declare global {
  interface Window {
    frameNotes: Notes;
  }
}

/** Begins to note when moves arrive and when their frame is done. Call it before the page is loaded. */
export async function noteMoves(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const notes: Notes = { toPaint: [], mutations: 0, cleared: 0 };
    window.frameNotes = notes;
    const after = new MessageChannel();
    let came: number | null = null;
    after.port1.onmessage = () => {
      if (came !== null) notes.toPaint.push(performance.now() - came);
      came = null;
    };
    window.addEventListener(
      'pointermove',
      (event) => {
        if (event.buttons === 0 || came !== null) return;
        came = performance.now();
        // A message that is sent in a frame's callback comes after that frame's style, layout and paint.
        requestAnimationFrame(() => after.port2.postMessage(null));
      },
      { capture: true },
    );
  });
}

async function mouse(session: CDPSession, type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', at: Place) {
  const isDown = type !== 'mouseReleased';
  await session.send('Input.dispatchMouseEvent', {
    type,
    ...at,
    button: 'left',
    buttons: isDown ? 1 : 0,
    clickCount: type === 'mouseMoved' ? 0 : 1,
  });
}

/** Drags from a place in a circle that comes back to it: each move is answered before the next is sent. */
async function circle(
  session: CDPSession,
  from: Place,
  {
    moves,
    radius,
    began = async () => undefined,
    ends = async () => undefined,
  }: { moves: number; radius: number; began?: () => Promise<void>; ends?: () => Promise<void> },
): Promise<void> {
  await mouse(session, 'mousePressed', from);
  // The first moves begin the drag: what is drawn once for all of it is drawn then.
  for (const dx of [3, 6]) await mouse(session, 'mouseMoved', { x: from.x + dx, y: from.y });
  await began();
  for (let i = 1; i <= moves; i += 1) {
    const angle = (2 * Math.PI * i) / moves;
    await mouse(session, 'mouseMoved', {
      x: from.x + radius * Math.sin(angle),
      y: from.y - radius * (1 - Math.cos(angle)),
    });
  }
  await ends();
  await mouse(session, 'mouseReleased', from);
}

async function metrics(session: CDPSession): Promise<ReadonlyMap<string, number>> {
  const { metrics: all } = await session.send('Performance.getMetrics');
  return new Map(all.map(({ name, value }) => [name, value]));
}

const RADIUS = 40;

const COUNTED = ['TaskDuration', 'ScriptDuration', 'LayoutDuration', 'RecalcStyleDuration'] as const;

/** The cost of moves in drags that begin at a place; what beginning and ending a drag costs is told apart. */
export async function costOfMoves(page: Page, from: Place, { drags = 4, moves = 60 } = {}): Promise<MoveCost> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  await circle(session, from, { moves, radius: RADIUS });
  const sums = { TaskDuration: 0, ScriptDuration: 0, LayoutDuration: 0, RecalcStyleDuration: 0 };
  const add = async (sign: 1 | -1) => {
    const now = await metrics(session);
    for (const name of COUNTED) sums[name] += sign * (now.get(name) ?? Number.NaN);
  };
  const toPaint: number[] = [];
  const first = (await metrics(session)).get('TaskDuration') ?? Number.NaN;
  for (let i = 0; i < drags; i += 1) {
    await circle(session, from, {
      moves,
      radius: RADIUS,
      began: async () => {
        await page.evaluate(() => {
          window.frameNotes.toPaint = [];
        });
        await add(-1);
      },
      ends: async () => {
        await add(1);
        toPaint.push(...(await page.evaluate(() => window.frameNotes.toPaint)));
      },
    });
  }
  const whole = ((await metrics(session)).get('TaskDuration') ?? Number.NaN) - first;
  await session.detach();
  const each = (seconds: number) => (1000 * seconds) / (drags * moves);
  return {
    task: each(sums.TaskDuration),
    script: each(sums.ScriptDuration),
    layout: each(sums.LayoutDuration + sums.RecalcStyleDuration),
    ends: (1000 * (whole - sums.TaskDuration)) / drags,
    toPaint,
  };
}

/** What moves of one drag touch; counted apart, because counting costs time. */
export async function reachOfMoves(page: Page, from: Place, { moves = 60 } = {}): Promise<MoveReach> {
  const session = await page.context().newCDPSession(page);
  await page.evaluate(() => {
    const notes = window.frameNotes;
    const observer = new MutationObserver((records) => {
      notes.mutations += records.length;
    });
    observer.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
    const { clearRect } = CanvasRenderingContext2D.prototype;
    CanvasRenderingContext2D.prototype.clearRect = function (...box) {
      // Konva keeps a canvas for hit tests, which has no size and is not in the page.
      if (this.canvas.isConnected) notes.cleared += 1;
      clearRect.apply(this, box);
    };
  });
  const counted = () => page.evaluate(() => ({ ...window.frameNotes, toPaint: [] }));
  await mouse(session, 'mousePressed', from);
  await mouse(session, 'mouseMoved', { x: from.x + 8, y: from.y });
  const before = await counted();
  for (let i = 1; i <= moves; i += 1) await mouse(session, 'mouseMoved', { x: from.x + 8 + i, y: from.y + i / 2 });
  const after = await counted();
  await mouse(session, 'mouseMoved', from);
  await mouse(session, 'mouseReleased', from);
  await session.detach();
  return {
    mutations: (after.mutations - before.mutations) / moves,
    canvases: (after.cleared - before.cleared) / moves,
  };
}

/**
 * Bytes that each drag leaves in the heap after collection. The first `skip` drags are left out: until then the history
 * that can be undone grows.
 */
export async function heapOfDrags(page: Page, from: Place, { drags = 2000, skip = 250 } = {}): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const used = async () => {
    // Twice: what the first collection finalizes is freed by the second.
    for (let i = 0; i < 2; i += 1) await session.send('HeapProfiler.collectGarbage');
    return (await metrics(session)).get('JSHeapUsedSize') ?? Number.NaN;
  };
  const aside = { x: from.x + 20, y: from.y - 24 };
  let before = Number.NaN;
  for (let i = 0; i < drags; i += 1) {
    if (i === skip) before = await used();
    // There and back: each drag leaves a course that is not the one before.
    const [begin, end] = i % 2 === 0 ? [from, aside] : [aside, from];
    await mouse(session, 'mousePressed', begin);
    for (const share of [0.3, 0.6, 1]) {
      await mouse(session, 'mouseMoved', {
        x: begin.x + share * (end.x - begin.x),
        y: begin.y + share * (end.y - begin.y),
      });
    }
    await mouse(session, 'mouseReleased', end);
  }
  const after = await used();
  await session.detach();
  return (after - before) / (drags - skip);
}
