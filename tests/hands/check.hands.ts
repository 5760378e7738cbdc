import { expect, test } from '@playwright/test';
import { opened, stage } from './arena.ts';

test('a fix that is offered mends what was found, with one click and one undo', async ({ page }) => {
  await opened(page);
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.locator('[data-starter="practice-with-faults"]').click();
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
  await page.locator('[data-starter="practice-with-faults"]').click();
  await stage(page, 'Check').click();
  const ground = page.getByRole('application');
  const before = await ground.getAttribute('data-origin');
  await page.locator('[data-finding="gap-band"]').first().getByRole('button', { name: 'Go there' }).click();
  await expect(ground).not.toHaveAttribute('data-origin', before ?? '');
  await expect(page.locator('[data-obstacle]').filter({ hasText: 'chosen' })).toHaveCount(1);
});

test('a house rule takes the place of a limit, says so, and is removed again', async ({ page }) => {
  await opened(page);
  await stage(page, 'Check').click();
  const findings = page.getByRole('region', { name: 'Findings' });
  await expect(findings.getByText('Nothing to mend')).toBeVisible();
  await page.getByRole('button', { name: 'Set a house rule' }).click();
  const dialog = page.getByRole('dialog', { name: 'Set a house rule' });
  await dialog.getByLabel('What it bounds').selectOption({ label: 'Gap between poles at the jog' });
  await dialog.getByLabel('Least').fill(`3' 4"`);
  await dialog.getByLabel('Most').fill(`3' 6"`);
  await dialog.getByRole('button', { name: 'Set the house rule' }).click();
  await expect(dialog.getByRole('alert')).toContainText('Say why');
  await dialog.getByLabel('Reason').fill('The show wants long gaps');
  await dialog.getByRole('button', { name: 'Set the house rule' }).click();
  const house = page.getByRole('region', { name: 'House rules' });
  await expect(house).toContainText(`3' 4" to 3' 6"`);
  await expect(house.getByText('house rule', { exact: true })).toBeVisible();
  await expect(findings).toContainText('house rule: The show wants long gaps');
  await house.getByRole('button', { name: /^Remove the house rule/ }).click();
  await expect(findings.getByText('Nothing to mend')).toBeVisible();
});

test('another horse is chosen, and what is assumed of it is told with sources', async ({ page }) => {
  await opened(page);
  await stage(page, 'Check').click();
  const panel = page.getByRole('region', { name: 'Horse', exact: true });
  const before = await panel.locator('dl').textContent();
  await panel.getByLabel('Ridden by').selectOption({ index: 1 });
  await expect(panel.locator('dl')).not.toHaveText(before ?? '');
  await panel.getByRole('button', { name: 'All that is assumed, with sources' }).click();
  const dialog = page.getByRole('dialog', { name: /^What is assumed/ });
  await expect(dialog.getByText('estimate', { exact: true }).first()).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
});
