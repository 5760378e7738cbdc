import type { Browser } from '@playwright/test';
import { opened, openStarter, seenBefore, stage } from '../e2e/arena.ts';
import { type Row, row } from './row.ts';
import { withBrowser, withServed } from './served.ts';

/** A laptop and a phone. */
const SIZES = [
  { width: 1366, height: 768 },
  { width: 390, height: 844 },
] as const;
/** The starter with most findings. */
const FAULTY = 'practice-with-faults';

/** How long the list of findings is to scroll, pixels, in the panel as it opens at Check. */
async function listHeight(browser: Browser, baseURL: string, viewport: (typeof SIZES)[number]): Promise<number> {
  const context = await browser.newContext({ viewport, baseURL });
  const page = await context.newPage();
  await seenBefore(page);
  await opened(page);
  await openStarter(page, FAULTY);
  await stage(page, 'Check').click();
  const list = page.locator('.findings');
  await list.locator('.finding').first().waitFor();
  const height = await list.evaluate((element) => element.scrollHeight);
  await context.close();
  return height;
}

/** How long the list of findings is, beside the window that it is read in. */
export async function rows(): Promise<Row[]> {
  return withServed(undefined, ({ url }) =>
    withBrowser(async (browser) => {
      const out: Row[] = [];
      for (const size of SIZES) {
        out.push(
          row(`list of ${FAULTY} at ${size.width} x ${size.height}`, 'px', {
            ours: await listHeight(browser, url, size),
            anchor: size.height,
            anchorName: 'the height of the window',
          }),
        );
      }
      return out;
    }),
  );
}
