/** What a drag draws, and what waits for its end. */
import { expect, type Page, test } from '@playwright/test';
import { arena, drag, onPage, opened, type Place, placeOf } from './arena.ts';

const FAN = 'fan-1';

/** All canvases of the arena as they are, from the lowest to the highest. */
async function drawn(page: Page): Promise<string> {
  const pictures = await arena(page)
    .locator('canvas')
    .evaluateAll((all) => all.map((canvas) => (canvas as HTMLCanvasElement).toDataURL()));
  return pictures.join('\n');
}

/** The same once nothing is chosen or pointed at. */
async function drawnAtRest(page: Page): Promise<string> {
  await arena(page).press('Escape');
  await page.mouse.move(2, 2);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  return drawn(page);
}

/** Begins a drag and goes so far to the left, metres. */
async function dragging(page: Page, from: Place, far: number): Promise<void> {
  const [start, end] = [await onPage(page, from), await onPage(page, { x: from.x - far, y: from.y })];
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move(end.x, end.y, { steps: 6 });
}

test('a drag draws at each move; what stands around the arena waits for the end and is true then', async ({ page }) => {
  await page.clock.install();
  await opened(page);
  const home = await placeOf(page, FAN);
  const total = page.locator('.strip-total');
  const before = await total.textContent();
  // From here on the page's time goes only when this test says so.
  await page.clock.pauseAt(Date.now() + 3_600_000);
  await dragging(page, home, 2);
  await page.clock.runFor(17);
  const first = await drawn(page);
  const at = await onPage(page, { x: home.x - 3, y: home.y });
  await page.mouse.move(at.x, at.y);
  await page.clock.runFor(17);
  expect(await drawn(page)).not.toBe(first);
  expect(await placeOf(page, FAN)).toEqual(home);
  expect(await total.textContent()).toBe(before);
  await page.mouse.up();
  expect((await placeOf(page, FAN)).x).toBeLessThan(home.x - 2);
  expect(await total.textContent()).not.toBe(before);
});

test('the frame of the focus is a box of its own, because an outline round the canvases is painted at each move', async ({
  page,
}) => {
  await opened(page);
  await arena(page).press('Escape');
  const outlines = await arena(page).evaluate((element) =>
    [undefined, '::after'].map((part) => getComputedStyle(element, part).outlineStyle),
  );
  expect(outlines).toEqual(['none', 'solid']);
});

test('a drag moves the parts of the strip and makes none of them anew', async ({ page }) => {
  await opened(page);
  const home = await placeOf(page, FAN);
  const poles = page.locator('.strip-picture rect[rx="1.5"]');
  await expect(poles.nth(5)).toBeAttached();
  const before = await poles.elementHandles();
  const x = (await poles.last().getAttribute('x')) ?? '';
  await drag(page, home, { x: home.x - 1, y: home.y });
  await expect(poles.last()).not.toHaveAttribute('x', x);
  const areThere = await Promise.all(before.map((pole) => pole.evaluate((element) => element.isConnected)));
  expect(areThere).not.toContain(false);
});

test('the list and the strip follow a hand that rests in a drag', async ({ page }) => {
  await opened(page);
  const home = await placeOf(page, FAN);
  await dragging(page, home, 2);
  await expect.poll(async () => (await placeOf(page, FAN)).x).toBeLessThan(home.x - 1);
  await page.mouse.up();
});

test('what a drag has drawn at its end is the drawing of the same course opened anew', async ({ page }) => {
  await opened(page);
  const home = await placeOf(page, FAN);
  await drag(page, home, { x: home.x - 2, y: home.y + 1 });
  const moved = await placeOf(page, FAN);
  expect(moved.x).toBeLessThan(home.x - 1);
  const after = await drawnAtRest(page);
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();
  await page.reload();
  await expect(arena(page).locator('canvas').first()).toBeVisible();
  expect(await placeOf(page, FAN)).toEqual(moved);
  await expect.poll(() => drawnAtRest(page)).toBe(after);
});

test('after Escape in a drag, and after an undo, drawing and list are as they were', async ({ page }) => {
  await opened(page);
  const home = await placeOf(page, FAN);
  const before = await drawnAtRest(page);
  await dragging(page, home, 2);
  await page.keyboard.press('Escape');
  expect(await placeOf(page, FAN)).toEqual(home);
  await page.mouse.up();
  expect(await drawnAtRest(page)).toBe(before);
  await drag(page, home, { x: home.x - 2, y: home.y });
  expect(await drawnAtRest(page)).not.toBe(before);
  await page.keyboard.press('Control+z');
  expect(await placeOf(page, FAN)).toEqual(home);
  await expect.poll(() => drawnAtRest(page)).toBe(before);
});
