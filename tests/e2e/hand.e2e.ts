/** The hand on a mouse: tiles, snaps, one pole and its neighbours, the ends of the go, the menu. */
import { expect, type Page, test } from '@playwright/test';
import { arena, emptied, onPage, placeOf, showTiles } from './arena.ts';

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

/** Every grip with every step on a laptop; on smaller screens each step once, and each grip. */
function dragsAt({ width }: { readonly width: number }) {
  return STEPS.flatMap((step, index) =>
    GRIPS.filter((_, grip) => width === SCREENS[0].width || grip === index % GRIPS.length).map((grip) => ({
      grip,
      step,
    })),
  );
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
    await emptied(page);
    for (const { grip, step } of dragsAt(viewport)) {
      const from = await tileGrip(page, grip);
      const asked = { x: 30, y: 15 };
      const to = await onPage(page, asked);
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      await page.mouse.move(to.x, to.y, { steps: Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / step) });
      await page.mouse.up();
      const label = `${grip[0]}, ${step} px`;
      await expect(page.locator('[data-obstacle]'), label).toHaveCount(1);
      const place = await placeOf(page, 'box-1');
      expect(Math.hypot(place.x - asked.x, place.y - asked.y), label).toBeLessThan(0.6);
      await arena(page).press('Control+z');
      await expect(page.locator('[data-obstacle]')).toHaveCount(0);
      await showTiles(page);
    }
  });
}

test('a tile that is let go of outside, or given up by Escape, is not placed, and the list says so', async ({
  page,
}) => {
  await emptied(page);
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

/** The middle of one pole of the run that is placed, on the ground. */
async function runPlaced(page: Page): Promise<void> {
  await emptied(page);
  await page.locator('[data-kind="run"]').click();
  await expect(page.locator('[data-obstacle="run-1"]')).toHaveCount(1);
}

test('one pole of a run: it says what moves along, and J or the button moves just this one', async ({ page }) => {
  await runPlaced(page);
  await arena(page).focus();
  await arena(page).press('Enter');
  await expect(page.locator('.along-bar')).toContainText('Moves all');
  await page.locator('.along-bar').getByRole('button').click();
  await expect(page.locator('[data-said]')).toContainText('Just this one moves now');
  await arena(page).press('Shift+ArrowRight');
  await expect(page.locator('[data-said]')).toContainText('Just this one:');
  await arena(page).press('j');
  await expect(page.locator('.along-bar')).toContainText('Moves');
});

test('the menu opens by the second button and by its key, moves by arrows, and gives the focus back', async ({
  page,
}) => {
  await runPlaced(page);
  await arena(page).focus();
  await arena(page).press('Shift+F10');
  const menu = page.getByRole('menu', { name: 'What is chosen' });
  await expect(menu.getByRole('menuitem').first()).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await expect(menu.getByRole('menuitem').nth(1)).toBeFocused();
  await page.keyboard.press('End');
  await expect(menu.getByRole('menuitem', { name: 'Delete' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(menu).toHaveCount(0);
  await expect(arena(page)).toBeFocused();
  const at = await onPage(page, await placeOf(page, 'run-1'));
  await page.mouse.click(at.x, at.y, { button: 'right' });
  await expect(menu).toBeVisible();
  await menu.getByRole('menuitem', { name: 'Delete' }).click();
  await expect(page.locator('[data-obstacle]')).toHaveCount(0);
  await expect(arena(page)).toBeFocused();
});

test('a smaller arena takes its way in along and names what no longer fits', async ({ page }) => {
  await runPlaced(page);
  await arena(page).press('Escape');
  const length = page.getByLabel('Length', { exact: true });
  await length.fill("60'");
  await length.press('Enter');
  await expect(page.locator('[data-said]')).toContainText('The arena is now 60');
  await expect(page.locator('[data-said]')).toContainText('no longer fits');
  const list = page.getByRole('region', { name: 'Does not fit in this arena' });
  await list.getByRole('button').first().click();
  await expect(page.locator('[data-said]')).toContainText('Chose');
  await arena(page).press('Control+z');
  await expect(page.locator('[data-said]')).toContainText('Undid: Change the arena');
});

test('the start is dragged at the Set stage', async ({ page }) => {
  await runPlaced(page);
  // Where the go of the course on the page starts.
  const from = await onPage(page, { x: 3, y: 16.764 });
  const to = await onPage(page, { x: 5, y: 5 });
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
  await expect(page.locator('[data-said]')).toContainText('Moved the start');
});
