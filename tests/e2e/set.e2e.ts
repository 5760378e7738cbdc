import { expect, test } from '@playwright/test';
import { arena, choose, drag, opened, placeOf, stage } from './arena.ts';

const FOOT = 0.3048;

test('a fan that is dragged to the wall is found too near, and clear again where it was', async ({ page }) => {
  await opened(page);
  await expect(stage(page, 'Check')).toHaveText('Check');
  await choose(page, 'Fan');
  const home = await placeOf(page, 'fan-1');
  await drag(page, home, { x: home.x, y: 0.4 });
  await expect(stage(page, 'Check')).toHaveText(/Check\d/);
  await stage(page, 'Check').click();
  await expect(page.getByRole('region', { name: 'Findings' }).getByText(/wall/i).first()).toBeVisible();
  const away = await placeOf(page, 'fan-1');
  expect(away.y).toBeLessThan(home.y - 1);

  await arena(page).focus();
  await page.keyboard.press('Control+z');
  await expect(stage(page, 'Check')).toHaveText('Check');
  expect(await placeOf(page, 'fan-1')).toEqual(home);
});

test('a gap that is typed on the tape is taken, undone and redone by keys', async ({ page }) => {
  await opened(page);
  await choose(page, 'Fan');
  const gap = page.getByRole('textbox', { name: 'Gap', exact: true });
  const before = await gap.inputValue();
  await gap.fill('6 ft 3in');
  await gap.press('Enter');
  await expect(gap).toHaveValue(`6' 3"`);
  await arena(page).focus();
  await page.keyboard.press('Control+z');
  await expect(gap).toHaveValue(before);
  await page.keyboard.press('Control+Shift+z');
  await expect(gap).toHaveValue(`6' 3"`);
});

test('what the tape refuses stays in the field with the reason beneath, and changes nothing', async ({ page }) => {
  await opened(page);
  await choose(page, 'Fan');
  const gap = page.getByRole('textbox', { name: 'Gap', exact: true });
  const before = await gap.inputValue();
  await gap.fill('six paces');
  await gap.press('Enter');
  await expect(gap).toHaveAttribute('aria-invalid', 'true');
  await expect(gap).toHaveAccessibleDescription(/six paces|Write/);
  await gap.press('Escape');
  await expect(gap).toHaveValue(before);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
});

test('an obstacle is added by a click and by a drag from the list', async ({ page }) => {
  await opened(page);
  const rows = page.locator('[data-obstacle]');
  const count = await rows.count();
  await page.getByRole('button', { name: 'Box', exact: true }).click();
  await expect(rows).toHaveCount(count + 1);
  const tile = await page.getByRole('button', { name: 'Spoke', exact: true }).boundingBox();
  if (tile === null) throw new Error('the palette has no spoke');
  await page.mouse.move(tile.x + tile.width / 2, tile.y + tile.height / 2);
  await page.mouse.down();
  const box = await arena(page).boundingBox();
  if (box === null) throw new Error('there is no arena');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2, { steps: 8 });
  await page.mouse.up();
  await expect(rows).toHaveCount(count + 2);
  await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue('Spoke');
});

test('the arena is worked by keys alone', async ({ page }) => {
  await opened(page);
  await arena(page).focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  const before = await placeOf(page, 'run-1');
  await page.keyboard.press('Shift+ArrowUp');
  const after = await placeOf(page, 'run-1');
  expect(after.y - before.y).toBeCloseTo(FOOT, 6);
  await page.keyboard.press('Escape');
  await page.keyboard.press('2');
  await expect(stage(page, 'Ride')).toHaveAttribute('aria-selected', 'true');
});

test('pointing at a gap on the strip lights it up in the arena and says what it is', async ({ page }) => {
  await opened(page);
  await choose(page, 'Fan');
  const gap = page.getByRole('button', { name: /^Gap 1 of Fan/ });
  await gap.hover();
  await expect(page.locator('.readout')).toContainText(/^Gap 1 of Fan: \d/);
  await expect(page.locator('.hint-line')).toContainText('Gap 1 of Fan');
});
