import { expect, test } from '@playwright/test';
import { arena, drag, onPage, opened, placeOf, stage } from './arena.ts';

test('a part that cannot be fetched says so, and comes when there is a connection again', async ({ page }) => {
  const isPart = /\/assets\/(palette|findings)-[^/]*\.js$/;
  let isAnswered = false;
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route(isPart, async (route) => {
    if (!isAnswered) return route.abort();
    await held;
    return route.continue();
  });
  await opened(page);
  const notice = page.getByRole('region', { name: 'Add' }).getByRole('alert');
  await expect(notice).toContainText('could not be loaded');
  // The rest is of use meanwhile.
  const before = await placeOf(page, 'fan-1');
  await drag(page, before, { x: before.x - 3, y: before.y + 2 });
  await expect.poll(() => placeOf(page, 'fan-1')).not.toEqual(before);
  const moved = await placeOf(page, 'fan-1');
  // The page tries by itself too: what comes is held back, so that the button is still there when it is pressed.
  isAnswered = true;
  await notice.getByRole('button', { name: 'Try again' }).click();
  release();
  await expect(page.getByRole('region', { name: 'Add' }).getByRole('button').first()).toBeVisible();
  await stage(page, 'Check').click();
  await expect(page.getByRole('region', { name: 'Findings' })).toContainText('not this list');
  expect(await placeOf(page, 'fan-1')).toEqual(moved);
});

test('each stage can be gone to before its parts have come, and shows them then', async ({ page }) => {
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  // All that comes after the first picture waits.
  await page.route(/\/assets\/(?!index|first)[^/]*\.js$/, async (route) => {
    await held;
    await route.continue();
  });
  await opened(page);
  for (const name of ['Ride', 'Check', 'Change', 'Post', 'Set']) {
    await stage(page, name).click();
    await expect(stage(page, name)).toHaveAttribute('aria-selected', 'true');
    if (name !== 'Post') await expect(arena(page).locator('canvas').first()).toBeVisible();
  }
  await expect(page.getByText('findings.')).toHaveCount(0);
  await stage(page, 'Check').click();
  release();
  await expect(page.getByRole('region', { name: 'Findings' })).toContainText('not this list');
  await expect(page.getByRole('region', { name: 'Rule book' }).getByRole('combobox').first()).toBeVisible();
});

test('a kept course that cannot be read for want of a connection is not lost, nor is another shown in its place', async ({
  page,
}) => {
  await opened(page);
  const before = await placeOf(page, 'fan-1');
  await drag(page, before, { x: before.x - 3, y: before.y + 2 });
  await expect.poll(() => placeOf(page, 'fan-1')).not.toEqual(before);
  const moved = await placeOf(page, 'fan-1');
  const isReader = /\/assets\/read-[^/]*\.js$/;
  await page.route(isReader, (route) => route.abort());
  // At once: what was done is only in the backup that a closing page writes.
  await page.reload();
  await expect(page.getByRole('alert')).toContainText('Polewright could not be loaded');
  await expect(arena(page)).toHaveCount(0);
  await page.unroute(isReader);
  await page.getByRole('button', { name: 'Reload the page' }).click();
  await expect(arena(page).locator('canvas').first()).toBeVisible();
  expect(await placeOf(page, 'fan-1')).toEqual(moved);
  expect((await onPage(page, moved)).x).toBeGreaterThan(0);
});
