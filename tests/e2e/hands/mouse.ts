/** The hand on a mouse; keys only for text. */
import { expect, type Page } from '@playwright/test';
import { drag, onPage, placeOf, stage } from '../arena.ts';
import { type Hand, pickReached, showPanel } from './hand.ts';

export async function mouse(page: Page): Promise<Hand> {
  const hand: Hand = {
    press: (control) => control.click(),
    goTo: (name) => stage(page, name).click(),
    async type(field, text, send) {
      await field.click();
      await expect(field).toBeFocused();
      await field.fill(text);
      if (send !== undefined) await field.press('Enter');
    },
    pick: (list, value) => pickReached(list, value, () => list.click({ trial: true })),
    async add(kind, _words, at) {
      await showPanel(hand, page, 'Add');
      const tile = page.locator(`[data-kind="${kind}"]`);
      if (at === undefined) return tile.click();
      await tile.hover();
      const to = await onPage(page, at);
      await page.mouse.down();
      await page.mouse.move(to.x, to.y, { steps: 6 });
      await page.mouse.up();
    },
    async choosePole(obstacle, pole) {
      const at = await onPage(page, pole);
      await page.mouse.click(at.x, at.y);
      await expect(page.locator(`[data-obstacle="${obstacle}"]`)).toContainText('Chosen');
      // To choose an obstacle may open its panel, and the arena beside it gets another size.
      const now = await onPage(page, pole);
      await page.mouse.click(now.x, now.y);
    },
    openTape: (tape) => tape.click(),
    async move(obstacle, by) {
      const from = await placeOf(page, obstacle);
      await drag(page, from, { x: from.x + by.x, y: from.y + by.y });
    },
  };
  return hand;
}
