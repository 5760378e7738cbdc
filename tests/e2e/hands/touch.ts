/** The hand on glass: taps, a finger that drags, and the letters of the keyboard on the screen in a field that was tapped. */
import { expect, type Locator, type Page } from '@playwright/test';
import { arena, onPage, type Place, placeOf, stage } from '../arena.ts';
import { fingers } from '../fingers.ts';
import { type Hand, pickReached, showPanel } from './hand.ts';

/** How far a finger goes from one event to the next, pixels. */
const STEP = 15;
/** Where a metre is shorter, a finger covers several poles, and a number that is as large as a finger covers them too. Pixels. */
const NEAR = 24;

async function middleOf(control: Locator): Promise<Place> {
  const box = await control.boundingBox();
  if (box === null) throw new Error(`${control} is not on the page`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

export async function touch(page: Page): Promise<Hand> {
  const finger = await fingers(page);
  const pinchIn = async (about: Place) => {
    while (Number(await arena(page).getAttribute('data-scale')) < NEAR) {
      const { x, y } = await onPage(page, about);
      const spread = (far: number) => [
        { x, y: y - far },
        { x, y: y + far },
      ];
      await finger.down(...spread(60));
      await finger.move(...spread(90));
      await finger.move(...spread(115));
      await finger.up();
    }
  };
  const hand: Hand = {
    press: (control) => control.tap(),
    goTo: (name) => stage(page, name).tap(),
    async type(field, text, send) {
      await field.tap();
      await expect(field).toBeFocused();
      await field.fill(text);
      if (send !== undefined) await field.press('Enter');
    },
    pick: (list, value) => pickReached(list, value, () => list.tap({ trial: true })),
    async add(kind, _words, at) {
      await showPanel(hand, page, 'Add');
      const tile = page.locator(`[data-kind="${kind}"]`);
      if (at === undefined) return tile.tap();
      await tile.scrollIntoViewIfNeeded();
      const from = await middleOf(tile);
      await finger.down(from);
      // A finger that holds picks the tile up.
      await expect(page.locator('.ghost')).toBeVisible();
      await finger.go(from, await onPage(page, at), STEP);
      await finger.up();
    },
    async choosePole(obstacle, pole) {
      // By the list: on a phone the nudge pad of what is chosen may lie over the obstacle.
      await showPanel(hand, page, 'Obstacles');
      const ids = await page
        .locator('[data-obstacle]')
        .evaluateAll((all: HTMLElement[]) => all.map(({ dataset }) => dataset.obstacle));
      await page.locator('ul.rows .row').nth(ids.indexOf(obstacle)).tap();
      await expect(page.locator(`[data-obstacle="${obstacle}"]`)).toContainText('Chosen');
      await pinchIn(pole);
      const at = await onPage(page, pole);
      await page.touchscreen.tap(at.x, at.y);
    },
    openTape: (tape) => tape.tap(),
    async move(obstacle, by) {
      const from = await placeOf(page, obstacle);
      const row = page.locator(`[data-obstacle="${obstacle}"]`);
      if (!(await row.textContent())?.startsWith('Chosen')) {
        // Only what is chosen goes along with a finger.
        const at = await onPage(page, from);
        await page.touchscreen.tap(at.x, at.y);
        await expect(row).toContainText('Chosen');
      }
      const start = await onPage(page, from);
      const end = await onPage(page, { x: from.x + by.x, y: from.y + by.y });
      await finger.down(start);
      await finger.go(start, end, STEP);
      await finger.up();
    },
  };
  return hand;
}
