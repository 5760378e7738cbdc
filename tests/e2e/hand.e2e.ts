/** The hand on a mouse: tiles, snaps, one pole and its neighbours, the ends of the go, the menu. */
import { expect, type Page, test } from '@playwright/test';
import { arena, onPage, opened, placeOf } from './arena.ts';

const STEPS = [5, 20, 60, 200] as const;
const GRIPS = [
  ['the middle', 0.5, 0.5],
  ['the upper left corner', 0.04, 0.06],
  ['the lower right corner', 0.96, 0.94],
] as const;
const SCREENS = [
  { width: 1366, height: 768 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
] as const;

/** The course on the page, without its obstacles. */
async function emptyArena(page: Page): Promise<void> {
  await opened(page);
  await arena(page).press('Control+a');
  await arena(page).press('Delete');
  await expect(page.locator('[data-obstacle]')).toHaveCount(0);
}

async function tileGrip(page: Page, [, right, down]: (typeof GRIPS)[number]) {
  const tile = page.locator('[data-kind="box"]');
  await tile.scrollIntoViewIfNeeded();
  const box = await tile.boundingBox();
  if (box === null) throw new Error('there is no tile');
  return { x: box.x + box.width * right, y: box.y + box.height * down };
}

for (const viewport of SCREENS) {
  test(`a tile dragged by mouse is placed where it is let go of, at ${viewport.width} by ${viewport.height}`, async ({
    page,
  }) => {
    await page.setViewportSize(viewport);
    await emptyArena(page);
    let count = 0;
    for (const grip of GRIPS) {
      for (const step of STEPS) {
        const from = await tileGrip(page, grip);
        const asked = { x: 30, y: 15 };
        const to = await onPage(page, asked);
        await page.mouse.move(from.x, from.y);
        await page.mouse.down();
        await page.mouse.move(to.x, to.y, { steps: Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / step) });
        await page.mouse.up();
        count += 1;
        const label = `${grip[0]}, ${step} px`;
        await expect(page.locator('[data-obstacle]'), label).toHaveCount(1);
        const place = await placeOf(page, 'box-1');
        expect(Math.hypot(place.x - asked.x, place.y - asked.y), label).toBeLessThan(0.6);
        await arena(page).press('Control+z');
        await expect(page.locator('[data-obstacle]')).toHaveCount(0);
      }
    }
    expect(count).toBe(12);
  });
}

test('a tile that is let go of outside, or given up by Escape, is not placed, and the list says so', async ({
  page,
}) => {
  await emptyArena(page);
  const from = await tileGrip(page, GRIPS[0]);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(700, 10);
  await page.mouse.up();
  await expect(page.getByText('Let go outside of the arena: nothing was placed.')).toBeVisible();
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(700, 400);
  await expect(page.locator('.ghost')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.locator('.ghost')).toHaveCount(0);
  await page.mouse.up();
  await expect(page.getByText('Put back: nothing was placed.')).toBeVisible();
  await expect(page.locator('[data-obstacle]')).toHaveCount(0);
});
