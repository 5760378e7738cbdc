/** Fingers on the page, as the screen reports them: for what a tap alone cannot do. */
import type { CDPSession, Page } from '@playwright/test';
import type { Place } from './arena.ts';

export interface Fingers {
  down(...at: Place[]): Promise<void>;
  /** One finger, in moves of so many pixels. */
  go(from: Place, to: Place, step: number): Promise<void>;
  move(...at: Place[]): Promise<void>;
  up(): Promise<void>;
}

export async function fingers(page: Page): Promise<Fingers> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', at: readonly Place[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: at.map((each, id) => ({ ...each, id })) });
  const self: Fingers = {
    down: async (...at) => void (await send('touchStart', at)),
    move: async (...at) => void (await send('touchMove', at)),
    up: async () => void (await send('touchEnd', [])),
    async go(from, to, step) {
      const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / step));
      for (let i = 1; i <= count; i++) {
        await self.move({ x: from.x + ((to.x - from.x) * i) / count, y: from.y + ((to.y - from.y) * i) / count });
      }
    },
  };
  return self;
}
