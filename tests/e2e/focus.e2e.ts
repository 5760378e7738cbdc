/** The focus is never lost: each action is done by keys alone, and something sensible has the focus after it. */
import { expect, type Locator, type Page, test } from '@playwright/test';
import { arena, opened, openStarter, stage } from './arena.ts';

async function starter(page: Page, name: string): Promise<void> {
  await openStarter(page, name);
}

/** Waits until the focus has settled, and gives what has it: never the page as a whole. */
async function focused(page: Page): Promise<Locator> {
  await expect(page.locator('body:focus, html:focus')).toHaveCount(0);
  await expect(page.locator(':focus')).toHaveCount(1);
  return page.locator(':focus');
}

async function pressOn(control: Locator, key = 'Enter'): Promise<void> {
  await control.focus();
  await control.press(key);
}

test('the keys of the stages keep the focus on the arena, or on the page at Post', async ({ page }) => {
  await opened(page);
  await arena(page).focus();
  for (const [key, name] of Object.entries({ 2: 'Ride', 3: 'Check', 5: 'Change', 1: 'Set', 4: 'Post' })) {
    await page.keyboard.press(key);
    await expect(stage(page, name)).toHaveAttribute('aria-selected', 'true');
    await expect(page.locator('[data-pane="arena"]')).toBeFocused();
  }
  await page.keyboard.press('1');
  await expect(arena(page)).toBeFocused();
});

test('delete, Escape, undo and redo leave the focus where it was', async ({ page }) => {
  await opened(page);
  await arena(page).focus();
  for (const key of ['Tab', 'Delete', 'Control+z', 'Control+Shift+z', 'Escape', 'Escape']) {
    await page.keyboard.press(key);
    await expect(arena(page)).toBeFocused();
  }
  const undo = page.getByRole('button', { name: /^Undo/ });
  await undo.focus();
  while (await undo.isEnabled()) await page.keyboard.press('Enter');
  // Nothing is left to undo: its neighbour has the focus.
  await expect(page.getByRole('button', { name: /^Redo/ })).toBeFocused();
});

test('a row that moves keeps the focus, and at the end of the list its other button has it', async ({ page }) => {
  await opened(page);
  await starter(page, 'practice-with-faults');
  await stage(page, 'Ride').click();
  const rows = page.locator('.order li');
  const title = (await rows.nth(1).locator('.row-title').textContent())?.replace(/(Walk|Jog|Lope)$/, '') ?? '';
  await pressOn(rows.nth(1).getByRole('button', { name: /earlier$/ }));
  await expect(rows.nth(0)).toContainText(title);
  await expect(rows.nth(0).getByRole('button', { name: /later$/ })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(rows.nth(1)).toContainText(title);
  await expect(rows.nth(1).getByRole('button', { name: /later$/ })).toBeFocused();
});

test('of a row that is removed the next one has the focus, on the same control', async ({ page }) => {
  await opened(page);
  await stage(page, 'Ride').click();
  await page.locator('.order .row').nth(1).press('Enter');
  const add = page.getByRole('button', { name: 'Add a bend' });
  for (let bend = 0; bend < 2; bend++) await pressOn(add);
  await pressOn(page.getByRole('button', { name: 'Delete bend 1' }));
  await expect(page.getByRole('button', { name: 'Delete bend 2' })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Delete bend 1' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Delete bend/ })).toHaveCount(0);
  await expect(await focused(page)).toBeVisible();
});

test('export, a fix, a dialog and a menu give the focus back', async ({ page }) => {
  await opened(page);
  await starter(page, 'practice-with-faults');
  const file = page.getByRole('button', { name: 'File', exact: true });
  await expect(file).toBeFocused();
  await pressOn(page.getByRole('button', { name: 'Help' }));
  await expect(page.getByRole('dialog', { name: 'Help' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Help' })).toBeFocused();
  await pressOn(stage(page, 'Post'));
  const print = page.getByRole('button', { name: 'Export PDF' });
  const download = page.waitForEvent('download');
  await pressOn(print);
  await download;
  await expect(print).toBeFocused();
  await pressOn(stage(page, 'Check'));
  const door = page.locator('.finding[data-finding="gap-band"] .finding-door').first();
  if ((await door.getAttribute('aria-expanded')) === 'false') await pressOn(door);
  await pressOn(page.locator('.remedy').first());
  await expect(page.locator('.finding-door:focus')).toHaveAttribute('aria-expanded', 'true');
  await pressOn(page.getByRole('button', { name: 'Set a house rule' }));
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).press('Enter');
  await expect(page.getByRole('button', { name: 'Set a house rule' })).toBeFocused();
});

test('F6 jumps between the parts of the page and comes back to where it was; links skip to them from the top', async ({
  page,
}) => {
  await opened(page);
  // The strip comes after the arena.
  await expect(page.locator('[data-pane="strip"]').getByRole('button').first()).toBeVisible();
  const inPane = (name: string) => page.locator(`[data-pane="${name}"]:focus, [data-pane="${name}"] :focus`);
  await arena(page).focus();
  for (const pane of ['right', 'strip', 'top', 'left', 'arena']) {
    await page.keyboard.press('F6');
    await expect(inPane(pane)).toHaveCount(1);
  }
  await page.keyboard.press('Shift+F6');
  await expect(inPane('left')).toHaveCount(1);
  await page.keyboard.press('Tab');
  const there = await (await focused(page)).getAttribute('aria-label');
  await page.keyboard.press('F6');
  await page.keyboard.press('Shift+F6');
  expect(await (await focused(page)).getAttribute('aria-label')).toBe(there);
  const skip = page.getByRole('link', { name: 'Skip to the arena' });
  await expect(skip).not.toBeInViewport({ ratio: 0.9 });
  await page
    .getByRole('heading', { level: 1 })
    .evaluate((top) => (top.ownerDocument.activeElement as HTMLElement).blur());
  await page.evaluate(() => window.getSelection()?.removeAllRanges());
  await skip.focus();
  await expect(skip).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(arena(page)).toBeFocused();
});

test('a layout that is deleted leaves the focus with the next, and tabs keep it', async ({ page }) => {
  await opened(page);
  await pressOn(stage(page, 'Change'));
  await pressOn(page.getByRole('button', { name: 'Branch this layout' }));
  const rows = page.locator('.layout');
  await expect(rows).toHaveCount(2);
  await pressOn(rows.nth(1).locator('.quiet').first());
  await pressOn(rows.nth(1).getByRole('button', { name: /^Delete/ }));
  await expect(rows).toHaveCount(1);
  await expect(rows.locator(':focus')).toHaveCount(1);
  const day = page.getByRole('tab', { name: 'Day', exact: true });
  await page.getByRole('tab', { name: 'Layouts' }).press('ArrowRight');
  await expect(day).toBeFocused();
});
