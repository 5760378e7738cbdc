import { expect, test } from '@playwright/test';
import { opened, stage } from './arena.ts';

test('a fix that is offered mends what was found, with one click and one undo', async ({ page }) => {
  await opened(page);
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Practice with faults' }).click();
  await stage(page, 'Check').click();
  const panel = page.getByRole('region', { name: 'Findings' });
  const cards = panel.getByRole('listitem');
  await expect(cards.first()).toBeVisible();
  const count = await cards.count();
  const gap = panel.locator('[data-finding="gap-band"]').first();
  const says = await gap.locator('.finding-says').textContent();
  await expect(gap).toContainText('Source:');
  await gap.locator('.remedy').first().click();
  await expect(panel.getByText(says ?? '', { exact: true })).toHaveCount(0);
  expect(await cards.count()).toBeLessThan(count);
  await page.getByRole('button', { name: /^Undo: / }).click();
  await expect(panel.getByText(says ?? '', { exact: true })).toHaveCount(1);
  await expect(cards).toHaveCount(count);
});

test('going to a finding brings its place to the middle and chooses what it is about', async ({ page }) => {
  await opened(page);
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Practice with faults' }).click();
  await stage(page, 'Check').click();
  const ground = page.getByRole('application');
  const before = await ground.getAttribute('data-origin');
  await page.locator('[data-finding="gap-band"]').first().getByRole('button', { name: 'Go there' }).click();
  await expect(ground).not.toHaveAttribute('data-origin', before ?? '');
  await expect(page.locator('[data-obstacle]').filter({ hasText: 'chosen' })).toHaveCount(1);
});
