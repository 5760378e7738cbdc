import { expect, type Locator, type Page, test } from '@playwright/test';
import { arena, choose, drag, onPage, opened, type Place, placeOf } from './arena.ts';
import { axe, faultsInUse } from './axe.ts';

const FOOT = 0.3048;

/** The numbers on the tapes in the arena, as they read. */
function tapes(page: Page): Locator {
  return page.getByRole('list', { name: 'Measures of what is chosen' }).getByRole('button');
}

function keeps(page: Page): Locator {
  return page.getByRole('region', { name: 'What it keeps' });
}

function undo(page: Page): Locator {
  return page.getByRole('button', { name: /^Undo/ });
}

/** Where a piece lies, by the numbers of its tape in the panel. */
async function pieceAt(page: Page): Promise<Place> {
  const read = async (label: string) => {
    const text = await page.getByRole('textbox', { name: label, exact: true }).inputValue();
    const [, feet = '0', inches = '0', half = ''] = /^(?:(\d+)')? ?(?:(\d+)?([¼½¾])?")?$/.exec(text) ?? [];
    const part = { '': 0, '¼': 0.25, '½': 0.5, '¾': 0.75 }[half] ?? 0;
    return (Number(feet) + (Number(inches) + part) / 12) * FOOT;
  };
  return { x: await read('From west'), y: await read('From south') };
}

/** Presses the key in the arena so many times. */
async function press(page: Page, key: string, times = 1): Promise<void> {
  await arena(page).focus();
  for (let i = 0; i < times; i += 1) await page.keyboard.press(key);
}

test('a pole dragged inside a fan keeps every measure of the fan', async ({ page }) => {
  await opened(page);
  await choose(page, 'Fan');
  await expect(tapes(page).first()).toBeVisible();
  // The values of constraints are in the dimensions; what lies on the ground is measured in the rows of gaps.
  const gaps = page.locator('.gap-rows strong');
  const before = await gaps.allTextContents();
  expect(before.length).toBeGreaterThan(1);
  await press(page, 'Enter');
  const from = await pieceAt(page);
  await drag(page, from, { x: from.x - 1.4, y: from.y + 0.9 });
  const to = await pieceAt(page);
  expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeGreaterThan(0.5);
  await press(page, 'Escape');
  await expect(gaps.first()).toBeVisible();
  expect(await gaps.allTextContents()).toEqual(before);
});

test('a gap is typed on its tape in the arena; what is no length is refused beneath', async ({ page }) => {
  await opened(page);
  await choose(page, 'Fan');
  await press(page, 'Enter');
  const gap = tapes(page).filter({ hasText: `6'` }).first();
  await gap.click();
  const field = page.locator('.dimension-field input');
  await field.fill('six paces');
  await field.press('Enter');
  await expect(field).toHaveAttribute('aria-invalid', 'true');
  await expect(page.locator('.dimension-field .refusal')).toContainText('Write');
  await field.fill(`6' 6"`);
  await field.press('Enter');
  await expect(field).toBeHidden();
  await expect(tapes(page).filter({ hasText: `6' 6"` })).toHaveCount(1);
  await expect(arena(page)).toBeFocused();
  await undo(page).click();
  await expect(tapes(page).filter({ hasText: `6' 6"` })).toHaveCount(0);
});

test('the numbers on the tapes are reached by a key, and Escape comes back', async ({ page }) => {
  await opened(page);
  await choose(page, 'Fan');
  await press(page, 'g');
  await expect(tapes(page).first()).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.locator('.dimension-field input')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(arena(page)).toBeFocused();
});

test('what is kept is added from what is chosen, moves nothing, and is dropped again', async ({ page }) => {
  await opened(page);
  await choose(page, 'Fan');
  const home = await placeOf(page, 'fan-1');
  const offer = keeps(page)
    .getByRole('button', { name: /^Keep it .* off the \w+ wall$/ })
    .first();
  const says = (await offer.textContent()) ?? '';
  await offer.click();
  expect(await placeOf(page, 'fan-1')).toEqual(home);
  const wall = /the (\w+ wall)/.exec(says)?.[1] ?? '';
  const row = keeps(page).getByRole('listitem').filter({ hasText: wall }).filter({ hasText: 'clear of' });
  await expect(row).toHaveCount(1);
  await row.getByRole('button', { name: /^Drop/ }).click();
  await expect(row).toHaveCount(0);
  expect(await placeOf(page, 'fan-1')).toEqual(home);
});

test('what cannot all hold is said, nothing moves, and dropping one goes on', async ({ page }) => {
  await opened(page);
  await choose(page, 'Fan');
  const kept = keeps(page);
  for (let i = 0; i < 2; i += 1) {
    await kept
      .getByRole('button', { name: /^Keep it .* off the \w+ wall$/ })
      .first()
      .click();
  }
  await press(page, 'f');
  const home = await placeOf(page, 'fan-1');
  const field = kept.getByRole('textbox', { name: /^Clear of the wall/ }).first();
  const before = await field.inputValue();
  await field.fill(`2'`);
  await field.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'These cannot all be kept' });
  await expect(dialog).toContainText(/clear of/);
  const { violations } = await axe(page).include('.conflict-dialog').analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  expect(await placeOf(page, 'fan-1')).toEqual(home);
  await dialog.getByRole('button', { name: 'Leave it as it was' }).click();
  await expect(dialog).toBeHidden();
  expect(await placeOf(page, 'fan-1')).toEqual(home);
  await field.press('Escape');
  await expect(field).toHaveValue(before);
  await field.fill(`2'`);
  await field.press('Enter');
  await dialog
    .getByRole('button', { name: /^Drop:/ })
    .first()
    .click();
  await expect(dialog).toBeHidden();
  await expect(kept.getByRole('textbox', { name: /^Clear of the wall/ })).toHaveCount(1);
});

test('the tape measures two poles by hand and by key, and what it reads can be kept', async ({ page }) => {
  await opened(page);
  await choose(page, '2 Jog-overs');
  await press(page, 'Enter');
  const first = await pieceAt(page);
  await press(page, 'Tab');
  const second = await pieceAt(page);
  await press(page, 'Escape', 2);
  await page.getByRole('button', { name: 'Measure' }).click();
  for (const at of [first, second]) {
    const spot = await onPage(page, at);
    await page.mouse.click(spot.x, spot.y);
  }
  await expect(page.locator('.hint-line')).toContainText('inside to inside');
  const byHand = await page.locator('.hint-line').textContent();
  await press(page, 'Escape');
  await expect(page.locator('.hint-line')).toHaveCount(0);

  await choose(page, '2 Jog-overs');
  for (const key of ['Enter', 'n', 't']) await press(page, key);
  await expect(page.locator('.hint-line')).toHaveText(byHand ?? '');
});

test('what a snap found is offered, kept with a key, and holds in the next drag', async ({ page }) => {
  await opened(page);
  await choose(page, '2 Jog-overs');
  const home = await placeOf(page, 'run-1');
  // The run lies along x: its poles stand 6 ft to each side of its middle, and 2 ft is what the book wants clear.
  await drag(page, home, { x: home.x + 0.3, y: 8 * FOOT + 0.1 });
  const offer = page.locator('.suggestion-bar');
  await expect(offer).toContainText(/Keep it .* off the south wall\?/);
  await press(page, 'k');
  await expect(offer).toHaveCount(0);
  const kept = await placeOf(page, 'run-1');
  await press(page, 'Shift+ArrowUp');
  const after = await placeOf(page, 'run-1');
  expect(after.y).toBeCloseTo(kept.y, 3);
});

test('pieces are gathered into one obstacle, put on the shelf, placed from it after a new start, and taken off', async ({
  page,
}) => {
  await opened(page);
  await choose(page, '2 Jog-overs');
  for (const key of ['Enter', 'n']) await press(page, key);
  await page.getByRole('button', { name: 'Make one obstacle' }).click();
  await expect(page.locator('[data-obstacle="free-1"]')).toHaveCount(1);
  await page.getByRole('textbox', { name: 'Name on my shelf' }).fill('Short run');
  await page.getByRole('button', { name: 'Put on my shelf' }).click();
  const shelf = page.getByRole('region', { name: 'My shelf' });
  await expect(shelf.getByRole('button', { name: 'Short run', exact: true })).toBeVisible();
  await page.reload();
  await shelf.getByRole('button', { name: 'Short run', exact: true }).click();
  await expect(page.locator('[data-obstacle^="free-"]').last()).toContainText('Short run');
  await shelf.getByRole('button', { name: 'Delete Short run from my shelf' }).click();
  await expect(shelf.getByRole('button', { name: 'Short run', exact: true })).toHaveCount(0);
});

test('a fixed pole carries a peg and stays while its neighbour is typed away from it', async ({ page }) => {
  await opened(page);
  await choose(page, '2 Jog-overs');
  await press(page, 'Enter');
  await page.getByRole('checkbox', { name: /^Pinned/ }).check();
  const home = await pieceAt(page);
  await keeps(page)
    .getByRole('textbox', { name: /^Gap, inside to inside/ })
    .fill(`3' 6"`);
  await page.keyboard.press('Enter');
  await expect(tapes(page).first()).toHaveText(`3' 6"`);
  expect(await pieceAt(page)).toEqual(home);
});

test('tapes, offers and the list of what is kept have no fault of access', async ({ page }) => {
  await opened(page);
  await choose(page, 'Fan');
  for (const key of ['Enter', 'n', 't']) await press(page, key);
  expect(await faultsInUse(page, 'tape')).toEqual([]);
  await press(page, 't');
  await press(page, 'g');
  await page.keyboard.press('Enter');
  expect(await faultsInUse(page, 'field')).toEqual([]);
});
