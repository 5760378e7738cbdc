/** The arena and its list by touch only, in a tablet and a phone. */
import { expect, type Page, test } from '@playwright/test';
import { arena, emptied, onPage, opened, placeOf, showTiles, stage } from './arena.ts';
import { fingers } from './fingers.ts';

test.use({ hasTouch: true, isMobile: true, viewport: { width: 820, height: 1180 } });

function said(page: Page) {
  return page.locator('[data-said]');
}

/** Where the tile is held, as a share of its width and height, and how far the finger goes at once, pixels. */
const DRAGS = [
  [0.5, 5],
  [0.06, 20],
  [0.94, 60],
  [0.06, 200],
  [0.94, 200],
] as const;

for (const viewport of [
  { width: 1366, height: 768 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
]) {
  test(`a tile held and dragged is placed where it is let go of, at ${viewport.width} by ${viewport.height}`, async ({
    page,
  }) => {
    await page.setViewportSize(viewport);
    await emptied(page);
    const hand = await fingers(page);
    await expect(page.getByText('press and hold')).toBeVisible();
    for (const [part, step] of DRAGS) {
      const tile = page.locator('[data-kind="box"]');
      await tile.scrollIntoViewIfNeeded();
      const box = await tile.boundingBox();
      if (box === null) throw new Error('there is no tile');
      const from = { x: box.x + box.width * part, y: box.y + box.height * part };
      const asked = { x: 30, y: 15 };
      const to = await onPage(page, asked);
      await hand.down(from);
      await expect(page.locator('.ghost')).toBeVisible();
      await hand.go(from, to, step);
      await hand.up();
      const label = `${part}, ${step} px`;
      await expect(page.locator('[data-obstacle]'), label).toHaveCount(1);
      const place = await placeOf(page, 'box-1');
      expect(Math.hypot(place.x - asked.x, place.y - asked.y), label).toBeLessThan(0.6);
      await arena(page).press('Control+z');
      await expect(page.locator('[data-obstacle]')).toHaveCount(0);
      await showTiles(page);
    }
  });
}

test('a tap on a tile adds it, and a second finger gives up one that is carried', async ({ page }) => {
  await emptied(page);
  const hand = await fingers(page);
  const tile = page.locator('[data-kind="box"]');
  await tile.tap();
  await expect(page.locator('[data-obstacle]')).toHaveCount(1);
  await showTiles(page);
  const box = await tile.boundingBox();
  if (box === null) throw new Error('there is no tile');
  const at = { x: box.x + 20, y: box.y + 20 };
  await hand.down(at);
  await expect(page.locator('.ghost')).toBeVisible();
  await hand.down(at, { x: 200, y: 300 });
  await expect(page.locator('.ghost')).toHaveCount(0);
  await hand.up();
  await expect(page.getByText('Put back: nothing was placed.')).toBeVisible();
  await expect(page.locator('[data-obstacle]')).toHaveCount(1);
});

test('one finger pans until a thing is chosen, and then moves it under a loupe; two fingers pinch', async ({
  page,
}) => {
  await opened(page);
  const hand = await fingers(page);
  const key = (await page.locator('[data-obstacle]').first().getAttribute('data-obstacle')) ?? '';
  const piece = await placeOf(page, key);
  const at = await onPage(page, piece);
  const origin = await arena(page).getAttribute('data-origin');
  await hand.down(at);
  await hand.go(at, { x: at.x + 60, y: at.y + 40 }, 20);
  await hand.up();
  await expect(arena(page)).not.toHaveAttribute('data-origin', origin ?? '');
  expect(await placeOf(page, key)).toEqual(piece);

  await page.locator(`[data-obstacle="${key}"]`).evaluate((row: HTMLElement) => row.click());
  const there = await onPage(page, piece);
  await hand.down(there);
  await hand.up();
  await expect(said(page)).toContainText('Chose');
  await hand.down(there);
  await hand.go(there, { x: there.x + 30, y: there.y + 60 }, 15);
  await expect(page.locator('.loupe')).toBeVisible();
  const glass = await page.locator('.loupe').boundingBox();
  expect((glass?.y ?? 0) + (glass?.height ?? 0)).toBeLessThan(there.y + 60);
  await hand.up();
  await expect(page.locator('.loupe')).toHaveCount(0);
  expect(await placeOf(page, key)).not.toEqual(piece);

  const scale = Number(await arena(page).getAttribute('data-scale'));
  const [one, other] = [
    { x: 300, y: 300 },
    { x: 400, y: 300 },
  ];
  await hand.down(one, other);
  await hand.move({ x: 250, y: 300 }, { x: 450, y: 300 });
  await hand.up();
  expect(Number(await arena(page).getAttribute('data-scale'))).toBeGreaterThan(scale * 1.5);
});

test('the nudge pad moves and turns what is chosen by its step', async ({ page }) => {
  await emptied(page);
  await page.locator('[data-kind="box"]').tap();
  const before = await placeOf(page, 'box-1');
  const pad = page.getByRole('group', { name: 'Nudge', exact: true });
  await pad.getByRole('button', { name: "1'", exact: true }).tap();
  await pad.getByRole('button', { name: "Move 1' right" }).tap();
  await expect(said(page)).toContainText('Moved');
  const after = await placeOf(page, 'box-1');
  expect(Math.hypot(after.x - before.x, after.y - before.y)).toBeCloseTo(0.3048, 3);
  await pad.getByRole('button', { name: 'Turn 15° to the left' }).tap();
  await expect(said(page)).toContainText('15°');
  for (const button of await pad.getByRole('button').all()) {
    const box = await button.boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
  }
});

test('a long press opens the menu of the thing, and the snap switch says what it is', async ({ page }) => {
  await emptied(page);
  await page.locator('[data-kind="box"]').tap();
  const box = await placeOf(page, 'box-1');
  const hand = await fingers(page);
  const at = await onPage(page, box);
  const pole = page.locator('[data-obstacle="box-1"]');
  await expect(pole).toHaveCount(1);
  const edge = await onPage(page, { x: box.x, y: box.y + 0.9 });
  await hand.down(edge);
  await expect(page.getByRole('menu', { name: 'What is chosen' })).toBeVisible();
  await hand.up();
  await page.getByRole('menuitem', { name: 'Duplicate' }).tap();
  await expect(page.locator('[data-obstacle]')).toHaveCount(2);
  expect(at).toBeDefined();
  const snap = page.getByRole('button', { name: 'Snap', exact: true });
  await expect(snap).toHaveAttribute('aria-pressed', 'true');
  await snap.tap();
  await expect(snap).toHaveAttribute('aria-pressed', 'false');
  await expect(said(page)).toHaveText('Snapping is off');
  await stage(page, 'Ride').tap();
  await expect(page.getByRole('button', { name: 'Snap', exact: true })).toHaveAttribute('aria-pressed', 'false');
});

test('a tap chooses what it meets, and presses no number that it brings up', async ({ page }) => {
  await emptied(page);
  await page.locator('[data-kind="run"]').tap();
  const number = page.getByRole('list', { name: 'Measures of what is chosen' }).getByRole('button').first();
  const box = await number.boundingBox();
  if (box === null) throw new Error('there is no number');
  const run = await placeOf(page, 'run-1');
  // The place under the number that is nearest to the middle of the run, and so within a finger of a pole.
  const middle = await onPage(page, run);
  const within = (value: number, least: number, far: number) => Math.max(least + 2, Math.min(least + far - 2, value));
  const under = { x: within(middle.x, box.x, box.width), y: within(middle.y, box.y, box.height) };
  const open = await onPage(page, { x: run.x, y: 3 });
  await page.touchscreen.tap(open.x, open.y);
  await expect(number).toHaveCount(0);
  await page.touchscreen.tap(under.x, under.y);
  await expect(said(page)).toContainText('Chose');
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  await expect(page.locator('.dimension-field')).toHaveCount(0);
  await expect(number).toBeVisible();
});
