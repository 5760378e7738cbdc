/** The page as a screen reader has it, compared with by-ear.txt. POLEWRIGHT_UPDATE=1 writes the file anew: read it aloud. */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { arena, opened, openStarter } from './arena.ts';

const GOLDEN = new URL('./by-ear.txt', import.meta.url);

/** What is read when the focus comes to the arena, and the tree of everything between the stages and the strip. */
async function heard(page: Page, title: string): Promise<string> {
  const ground = arena(page);
  const ids = ((await ground.getAttribute('aria-describedby')) ?? '').split(' ');
  const described = await Promise.all(ids.map((id) => page.locator(`#${id}`).textContent()));
  const said = await page.locator('[data-said]').textContent();
  const tree = await page.getByRole('main').ariaSnapshot();
  return [`## ${title}`, `Arena: ${described.join(' ')}`, `Said: ${said}`, tree, ''].join('\n');
}

test('the page reads as it is written down', async ({ page }) => {
  await opened(page);
  await openStarter(page, 'practice-with-faults');
  await expect(page.locator('[data-said]')).toContainText('Opened');
  await expect(page.locator('[data-badge]').first()).toBeAttached();
  const parts: string[] = [await heard(page, 'Set, nothing chosen')];
  await arena(page).focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('region', { name: 'What it keeps' })).toContainText('Can still');
  parts.push(await heard(page, 'Set, an obstacle chosen'));
  await page.keyboard.press('2');
  await expect(page.getByText('Gait over it')).toBeVisible();
  parts.push(await heard(page, 'Ride'));
  await page.keyboard.press('3');
  await expect(page.locator('.remedy').first()).toBeVisible();
  await expect(page.getByText('Trying fixes…')).toHaveCount(0);
  parts.push(await heard(page, 'Check'));
  const text = parts.join('\n');
  if (process.env.POLEWRIGHT_UPDATE === '1') writeFileSync(GOLDEN, text);
  expect(text).toBe(readFileSync(GOLDEN, 'utf8'));
});

test('a change says the new value and the old one, once', async ({ page }) => {
  await opened(page);
  await openStarter(page, 'practice-with-faults');
  const said = page.locator('[data-said]');
  await expect(said).toContainText('Opened');
  await arena(page).focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await expect(said).toContainText(
    /^Chose the set of jog-overs \(obstacle 2\), jog, .+ from the west wall, .+ 3 gaps of 2'\s6"/,
  );
  await page.keyboard.press('Shift+ArrowRight');
  await expect(said).toContainText(/^Moved the set of jog-overs \(obstacle 2\): .+ from the west wall \(was .+\)/);
  await page.getByRole('textbox', { name: 'Gap', exact: true }).fill(`3' 3"`);
  await page.keyboard.press('Enter');
  await expect(said).toHaveText(`The set of jog-overs (obstacle 2): gap is now 3' 3" (was 2' 6")`);
  await expect(page.locator('[data-found]')).toContainText(/finding/);
});
