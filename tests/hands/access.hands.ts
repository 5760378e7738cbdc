import AxeBuilder from '@axe-core/playwright';
import { devices, expect, test } from '@playwright/test';
import { opened, stage } from './arena.ts';

const STAGES = ['Set', 'Ride', 'Check', 'Post', 'Reset'];

for (const scheme of ['light', 'dark'] as const) {
  test(`no stage has a serious fault of access (${scheme})`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme });
    await opened(page);
    for (const name of STAGES) {
      await stage(page, name).click();
      if (name === 'Post') await expect(page.locator('img.page').first()).toBeVisible();
      const { violations } = await new AxeBuilder({ page }).analyze();
      const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
      const told = grave.map(({ id, nodes }) => `${name}: ${id} ${nodes.map((node) => node.target).join(' | ')}`);
      expect(told).toEqual([]);
    }
  });
}

test('help tells the stages and the keys, and Escape closes it', async ({ page }) => {
  await opened(page);
  await page.getByRole('button', { name: 'Help' }).click();
  const help = page.getByRole('dialog', { name: 'Help' });
  await expect(help).toContainText('the judge decide');
  await expect(help.getByRole('row')).not.toHaveCount(0);
  await page.keyboard.press('Escape');
  await expect(help).toBeHidden();
});

test('the strip has a twin as a table', async ({ page }) => {
  await opened(page);
  await page.getByRole('button', { name: 'Table' }).click();
  const rows = page.getByRole('region', { name: 'The go as a table' }).getByRole('row');
  await expect(rows).toHaveCount(1 + (await page.locator('[data-obstacle]').count()));
});

test.describe('on a phone', () => {
  const { defaultBrowserType: _, ...phone } = devices['Pixel 7'];
  test.use(phone);

  test('every stage fits the width and the panels are tabs', async ({ page }) => {
    await opened(page);
    for (const name of STAGES) {
      await stage(page, name).click();
      const wide = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(wide, name).toBeLessThanOrEqual(0);
      await expect(page.getByRole('tablist', { name: 'Panels' })).toBeVisible();
    }
    await stage(page, 'Set').click();
    await page.getByRole('tab', { name: 'Line' }).click();
    await expect(page.getByRole('list', { name: 'The go from start to end' })).toBeVisible();
  });
});
