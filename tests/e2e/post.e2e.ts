/** The Post stage: pages by mouse, fingers and keys, files of every kind, a long export given up, and own words that went stale. */
import { readFileSync } from 'node:fs';
import { devices, expect, type Locator, type Page, test } from '@playwright/test';
import { opened, stage } from './arena.ts';
import { faultsInUse } from './axe.ts';
import { fingers } from './fingers.ts';

/** How files of a kind begin. */
const BEGINNINGS: Readonly<Record<string, string>> = {
  pdf: '%PDF-',
  svg: '<svg',
  png: '\u0089PNG',
};

const paper = (page: Page) => page.locator('.page-sheet');
const turns = (page: Page) => page.locator('.page-turns');
const exportButton = (page: Page) => page.getByRole('button', { name: 'Export PDF' });

async function atPost(page: Page): Promise<void> {
  await opened(page);
  await stage(page, 'Post').click();
  await expect(page.locator('img.page').first()).toBeVisible();
}

/** The set-up has more than two pages. */
async function showSetUp(page: Page): Promise<void> {
  await page.getByLabel('Sheet', { exact: true }).selectOption('setout');
  await expect(turns(page)).toContainText(/Page 1 of \d/);
  await expect(page.locator('.page-view')).toHaveAttribute('aria-busy', 'false');
}

async function widthOf(control: Locator): Promise<number> {
  return (await control.boundingBox())?.width ?? 0;
}

/** A download, and its bytes as one sign each. */
async function downloaded(page: Page, press: () => Promise<void>): Promise<{ name: string; bytes: Buffer }> {
  const saving = page.waitForEvent('download');
  await press();
  const download = await saving;
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

test.describe('on a laptop', () => {
  test.use({ viewport: { width: 1366, height: 768 } });

  test('the button that exports is in sight, and a mouse zooms, drags and turns the page', async ({ page }) => {
    await atPost(page);
    await expect(exportButton(page)).toBeInViewport({ ratio: 1 });
    await showSetUp(page);
    await expect(exportButton(page)).toBeInViewport({ ratio: 1 });
    await page.getByRole('button', { name: 'Next page' }).click();
    const shown = page.locator('.page-sheet img.page:not(.is-coming)');
    await expect(shown).toHaveAttribute('alt', /^Page 2 of \d+\. /);
    await page.getByLabel('Zoom', { exact: true }).selectOption('width');
    const fitted = await widthOf(paper(page));
    expect(fitted).toBeGreaterThan(0.9 * (await widthOf(page.locator('.page-view'))));
    await page.getByLabel('Zoom', { exact: true }).selectOption('2');
    await expect.poll(() => widthOf(paper(page))).toBeGreaterThan(1.5 * fitted);
    const place = (await page.locator('.page-view').boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    const middle = { x: place.x + place.width / 2, y: place.y + place.height / 2 };
    const before = await paper(page).boundingBox();
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down();
    await page.mouse.move(middle.x - 120, middle.y - 60, { steps: 4 });
    await page.mouse.up();
    const after = await paper(page).boundingBox();
    expect([(before?.x ?? 0) - (after?.x ?? 0), (before?.y ?? 0) - (after?.y ?? 0)]).toEqual([120, 60]);
    // The place under the pointer stays there.
    const pointer = middle.x - 120;
    const under = (pointer - (after?.x ?? 0)) / (after?.width ?? 1);
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -100);
    await page.keyboard.up('Control');
    await expect.poll(() => widthOf(paper(page))).toBeGreaterThan((after?.width ?? 0) + 50);
    const zoomed = await paper(page).boundingBox();
    expect((pointer - (zoomed?.x ?? 0)) / (zoomed?.width ?? 1)).toBeCloseTo(under, 2);
    await page.mouse.dblclick(pointer, middle.y);
    await expect.poll(() => widthOf(paper(page))).toBeLessThanOrEqual(fitted);
    await page.mouse.dblclick(pointer, middle.y);
    await expect.poll(() => widthOf(paper(page))).toBeGreaterThan(fitted);
    expect(await faultsInUse(page, 'Post', '.posting')).toEqual([]);
  });

  test('keys turn and zoom the page, a screen reader hears which it is, and the paper is found again', async ({
    page,
  }) => {
    await atPost(page);
    const size = page.getByRole('combobox', { name: 'Paper' });
    await size.selectOption('a4');
    await showSetUp(page);
    const view = page.locator('.page-view');
    const told = page.locator('[data-told]');
    await view.focus();
    await page.keyboard.press('PageDown');
    await expect(told).toHaveText(/^Page 2 of \d+\. Set-up of|^Page 2 of \d+\. .*page 2/);
    await page.keyboard.press('End');
    await expect(told).toHaveText(/^Page (\d+) of \1\. /);
    await page.keyboard.press('Home');
    await expect(told).toHaveText(/^Page 1 of/);
    const whole = await widthOf(paper(page));
    await page.keyboard.press('+');
    await expect.poll(() => widthOf(paper(page))).toBeGreaterThan(whole);
    await page.keyboard.press('0');
    await expect.poll(() => widthOf(paper(page))).toBeCloseTo(whole, 0);
    // By the browser's own menu: the pages alone, on paper of their size. A4 is 210 × 297 mm.
    const count = Number(/of (\d+)/.exec((await turns(page).textContent()) ?? '')?.[1]);
    const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
    const data = new Uint8Array(await page.pdf({ preferCSSPageSize: true }));
    const printed = await getDocument({ data, verbosity: 0 }).promise;
    expect(printed.numPages).toBe(count);
    const [, , right = 0, top = 0] = (await printed.getPage(count)).view;
    expect([right, top].map((points) => Math.round((points * 25.4) / 72)).sort()).toEqual([210, 297]);
    await expect(page.locator('#print-run')).toHaveCount(0);
    // A sheet without a drawing has no scale; what it has to choose is found again.
    await page.getByLabel('Sheet', { exact: true }).selectOption('judge');
    await expect(view).toHaveAttribute('aria-busy', 'false');
    await expect(page.getByLabel('Scale')).toHaveCount(0);
    const rows = page.getByLabel('Blank rows');
    const [usual, other] = await rows.locator('option').allTextContents();
    expect(await rows.locator('option:checked').textContent()).toBe(usual);
    await rows.selectOption({ label: other ?? '' });
    await page.reload();
    await stage(page, 'Post').click();
    await expect(size).toHaveValue('a4');
    await page.getByLabel('Sheet', { exact: true }).selectOption('judge');
    await expect(rows.locator('option:checked')).toHaveText(other ?? '');
  });

  test('every kind of file is saved, and begins as its kind does; the link is copied', async ({ page, context }) => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await atPost(page);
    const menu = page.locator('.export-menu');
    const open = () => page.getByRole('button', { name: 'More ways to export' }).click();
    await open();
    // What binds or packs all sheets takes long, and is tested without a browser; the next test cancels it.
    const items = menu.locator('button:has(kbd)', { hasNotText: /Folder|of each/ });
    const endings = (await items.locator('kbd').allTextContents()).map((ending) => ending.slice(1));
    expect(endings.slice(0, 3)).toEqual(['pdf', 'svg', 'png']);
    for (const [index, ending] of endings.entries()) {
      if (index > 0) await open();
      const { name, bytes } = await downloaded(page, () => items.nth(index).click());
      expect(name.endsWith(`.${ending}`), name).toBe(true);
      const beginning = BEGINNINGS[ending];
      if (beginning !== undefined) expect(bytes.subarray(0, beginning.length).toString('latin1'), name).toBe(beginning);
      expect(bytes.length, name).toBeGreaterThan(200);
      await expect(page.locator('.export-status')).toContainText(name);
    }
    await open();
    await menu.getByRole('button', { name: 'Copy a link…' }).click();
    await expect(page.getByRole('dialog', { name: 'The link is copied' })).toBeVisible();
    expect(await page.evaluate(() => navigator.clipboard.readText())).toMatch(/^http:.*#course=1\./);
  });

  test('a long export shows how far it is, writes what was shown at the press, and can be cancelled', async ({
    page,
  }) => {
    let release = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route('**/Inter_400*.ttf', async (route) => {
      await held;
      await route.continue();
    });
    await atPost(page);
    const status = page.locator('.export-status');
    await page.getByRole('button', { name: 'More ways to export' }).click();
    await page.getByRole('button', { name: /^Folder of the class/ }).click();
    await expect(status).toContainText(/Writing part \d+ of \d+…/);
    await expect(status.getByRole('progressbar')).toBeVisible();
    await status.getByRole('button', { name: 'Cancel' }).click();
    await expect(status).toContainText('Cancelled. No file was saved.');
    const saving = page.waitForEvent('download');
    await exportButton(page).click();
    await expect(status.getByRole('progressbar')).toBeVisible();
    const title = page.getByRole('textbox', { name: 'Course', exact: true });
    await title.fill('Another name');
    await title.press('Enter');
    await expect(page.locator('.course-title')).toHaveText('Another name');
    release();
    expect((await saving).suggestedFilename()).toBe('saturday-novice-trail-pattern.pdf');
    await expect(status).toContainText('Print at 100 %.');
  });

  test('own words that were written before a change are marked, and kept, taken anew or edited', async ({ page }) => {
    await atPost(page);
    const words = page.getByRole('textbox', { name: 'Instruction 2' });
    await words.fill('Jog the four poles nicely.');
    await words.blur();
    await expect(page.getByText('Back to the words from the course')).toBeVisible();
    await stage(page, 'Ride').click();
    await page.locator('.order .row').nth(1).click();
    await page.getByLabel('Gait over it').selectOption('walk');
    await stage(page, 'Post').click();
    const stale = page.locator('.stale');
    await expect(stale).toContainText('The course has changed since you wrote this.');
    await expect(stale.locator('ins').first()).toContainText(/walk/i);
    await expect(page.locator('.page-notices')).toContainText('Instruction 2 is in the designer’s own words');
    expect(await faultsInUse(page, 'stale words', '.words')).toEqual([]);
    await stale.getByRole('button', { name: 'Edit mine' }).click();
    await expect(words).toBeFocused();
    await stale.getByRole('button', { name: 'Keep mine' }).click();
    await expect(stale).toHaveCount(0);
    await expect(words).toHaveValue('Jog the four poles nicely.');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await stale.getByRole('button', { name: 'Take the new words' }).click();
    await expect(words).toHaveValue(/walk/i);
    await expect(page.locator('.page-notices')).toHaveCount(0);
  });
});

test.describe('on a phone on its side', () => {
  const { isMobile, hasTouch, userAgent } = devices['Pixel 5'];
  test.use({ isMobile, hasTouch, userAgent, viewport: { width: 844, height: 390 } });

  test('the button is in sight, a finger turns the page, and two make it larger', async ({ page }) => {
    await atPost(page);
    await expect(exportButton(page)).toBeInViewport({ ratio: 1 });
    await page.getByRole('tab', { name: 'Paper', exact: true }).tap();
    await showSetUp(page);
    await expect(exportButton(page)).toBeInViewport({ ratio: 1 });
    const place = (await page.locator('.page-view').boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    const [x, y] = [place.x + place.width / 2, place.y + place.height / 2];
    const hand = await fingers(page);
    const swipe = async (by: number) => {
      await hand.down({ x: x - by / 2, y });
      await hand.go({ x: x - by / 2, y }, { x: x + by / 2, y }, 15);
      await hand.up();
    };
    await swipe(-160);
    await expect(turns(page)).toContainText(/Page 2 of \d/);
    await swipe(160);
    await expect(turns(page)).toContainText(/Page 1 of \d/);
    const before = await widthOf(paper(page));
    await hand.down({ x: x - 40, y }, { x: x + 40, y });
    await hand.move({ x: x - 60, y }, { x: x + 60, y });
    await hand.move({ x: x - 120, y }, { x: x + 120, y });
    await hand.up();
    await expect.poll(() => widthOf(paper(page))).toBeGreaterThan(2.5 * before);
    // Now a finger drags the page, and does not turn it.
    await swipe(-160);
    await expect(turns(page)).toContainText(/Page 1 of \d/);
    for (const button of await page.locator('.post-bar button:visible').all()) {
      const box = await button.boundingBox();
      expect(
        Math.min(box?.width ?? 0, box?.height ?? 0),
        (await button.getAttribute('aria-label')) ?? '',
      ).toBeGreaterThanOrEqual(44);
    }
  });
});
