/** The frame of the app at six sizes: the arena has its half, and nothing lies over anything or is cut. */
import { expect, type Page, test } from '@playwright/test';
import { arena, opened, stage } from './arena.ts';

const STAGES = ['Set', 'Ride', 'Check', 'Post', 'Change'];
/** A laptop, a laptop's larger window, a tablet, a phone upright and on its side, and a laptop at 200 %. */
const SIZES = [
  { width: 1366, height: 768 },
  { width: 1366, height: 850 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
  { width: 844, height: 390 },
  { width: 683, height: 425 },
];

async function atStage(page: Page, name: string): Promise<void> {
  await stage(page, name).click();
  if (name === 'Post') await expect(page.locator('img.page').first()).toBeVisible();
}

/**
 * What is wrong with the places of the controls that are seen. A control is seen as far as the boxes that scroll about it
 * let it; what they hide can be scrolled to. What is drawn to scale, on the strip and in the arena, lies where it must.
 */
function misplaced(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const HIT = 1;
    const scrolls = (element: Element): boolean => {
      const { overflowX, overflowY } = getComputedStyle(element);
      return [overflowX, overflowY].some((overflow) => overflow !== 'visible');
    };
    const name = (element: Element): string =>
      (element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 40) || element.tagName;
    const controls = [
      ...document.querySelectorAll<HTMLElement>('button, input, select, textarea, a[href], summary, [role="tab"]'),
    ].filter(
      (element) =>
        element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
        element.closest('.strip-items, .dimension-labels, .visually-hidden, .skip-links') === null,
    );
    const faults: string[] = [];
    const seen = controls.flatMap((element) => {
      const whole = element.getBoundingClientRect();
      let { left, top, right, bottom } = whole;
      let canScroll = false;
      for (let about = element.parentElement; about !== null; about = about.parentElement) {
        if (!scrolls(about)) continue;
        const box = about.getBoundingClientRect();
        canScroll ||= about.scrollHeight > about.clientHeight || about.scrollWidth > about.clientWidth;
        left = Math.max(left, box.left);
        top = Math.max(top, box.top);
        right = Math.min(right, box.right);
        bottom = Math.min(bottom, box.bottom);
      }
      const isCut =
        left > whole.left + HIT || top > whole.top + HIT || right < whole.right - HIT || bottom < whole.bottom - HIT;
      if (isCut && !canScroll) faults.push(`${name(element)} is cut`);
      const isOut = left < -HIT || top < -HIT || right > innerWidth + HIT || bottom > innerHeight + HIT;
      if (isOut) faults.push(`${name(element)} is outside of the window`);
      if (right - left <= HIT || bottom - top <= HIT) return [];
      if (element.scrollWidth > element.clientWidth + HIT && element.matches('[role="tab"]')) {
        faults.push(`${name(element)} is wider than its tab`);
      }
      return [{ element, box: { left, top, right, bottom } }];
    });
    seen.forEach(({ element, box }, index) => {
      for (const { element: other, box: its } of seen.slice(index + 1)) {
        if (element.contains(other) || other.contains(element)) continue;
        const across = Math.min(box.right, its.right) - Math.max(box.left, its.left);
        const down = Math.min(box.bottom, its.bottom) - Math.max(box.top, its.top);
        if (across > HIT && down > HIT) faults.push(`${name(element)} lies over ${name(other)}`);
      }
    });
    return faults;
  });
}

/** Texts that are smaller than 13 px, with their size. */
function smallTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const found: string[] = [];
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const about = node.parentElement;
      if (about === null || node.textContent?.trim() === '' || !about.checkVisibility()) continue;
      const size = Number.parseFloat(getComputedStyle(about).fontSize);
      if (size < 13) found.push(`${node.textContent}: ${size}`);
    }
    return found;
  });
}

for (const size of SIZES) {
  test.describe(`at ${size.width} × ${size.height}`, () => {
    test.use({ viewport: size });

    test('the arena has half of the height, no control is covered or cut, and no letter is small', async ({ page }) => {
      await opened(page);
      for (const name of STAGES) {
        await atStage(page, name);
        const shown = name === 'Post' || name === 'Change' ? page.locator('.middle') : arena(page);
        const box = await shown.boundingBox();
        expect(box?.height ?? 0, name).toBeGreaterThanOrEqual(size.height / 2);
        expect(box?.width ?? 0, name).toBeGreaterThanOrEqual(300);
        expect(await misplaced(page), name).toEqual([]);
        expect(await smallTexts(page), name).toEqual([]);
      }
    });
  });
}

test.describe('in a low window', () => {
  test.use({ viewport: { width: 844, height: 390 } });

  test('the strip is folded until it is asked for, and both are found again as they were left', async ({ page }) => {
    await opened(page);
    const chart = page.getByRole('list', { name: 'The go from start to end' });
    await expect(chart).toHaveCount(0);
    await page.getByRole('button', { name: 'Show the strip' }).click();
    await expect(chart).toBeVisible();
    await page.reload();
    await expect(chart).toBeVisible();
    await page.getByRole('button', { name: 'Fold the strip' }).click();
    await expect(chart).toHaveCount(0);
    // In a high window it has not been folded.
    await page.setViewportSize({ width: 1366, height: 850 });
    await expect(chart).toBeVisible();
  });

  test('the panel folds to a button, at every stage until it is shown again', async ({ page }) => {
    await opened(page);
    await page.getByRole('button', { name: 'Hide the panel' }).click();
    await expect(page.getByRole('tab', { name: 'Add', exact: true })).toHaveCount(0);
    await stage(page, 'Ride').click();
    await page.getByRole('button', { name: 'Show the panel' }).click();
    await expect(page.getByRole('tab', { name: 'Order' })).toBeVisible();
  });
});

test('the name of the course and whether it is saved are on every screen', async ({ page }) => {
  await opened(page);
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await expect(page.locator('.course-title')).toBeInViewport();
    await expect(page.locator('.save-state')).toBeInViewport();
    await expect(page.locator('.save-state')).toHaveText('Saved');
  }
});

test('no length breaks across lines', async ({ page }) => {
  await opened(page);
  let lengths = 0;
  for (const width of [1366, 820, 390]) {
    await page.setViewportSize({ width, height: 844 });
    for (const name of STAGES) {
      await atStage(page, name);
      const { seen, broken } = await page.evaluate(() => {
        const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        const broken: string[] = [];
        let seen = 0;
        for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
          if (node.parentElement?.checkVisibility() !== true) continue;
          for (const match of (node.textContent ?? '').matchAll(/\d+'\s\d+[¼½¾]?"/g)) {
            const range = document.createRange();
            range.setStart(node, match.index);
            range.setEnd(node, match.index + match[0].length);
            seen += 1;
            if (new Set([...range.getClientRects()].map(({ top }) => top)).size > 1) broken.push(match[0]);
          }
        }
        return { seen, broken };
      });
      lengths += seen;
      expect(broken, `${name} at ${width}`).toEqual([]);
    }
  }
  expect(lengths).toBeGreaterThan(50);
});

test('a button that is a sign shows its name to the mouse and to the keyboard', async ({ page }) => {
  await opened(page);
  const plate = page.locator('.button-name');
  await page.getByRole('button', { name: 'Fold the strip' }).hover();
  await expect(plate).toHaveText('Fold the strip');
  await page.mouse.move(600, 20);
  await expect(plate).toBeHidden();
  await page.getByRole('button', { name: 'Table' }).focus();
  await page.keyboard.press('Tab');
  await expect(plate).toHaveText('Fold the strip');
  await page.keyboard.press('Escape');
  await expect(plate).toBeHidden();
});

test('headings go down one step at a time', async ({ page }) => {
  await opened(page);
  for (const name of STAGES) {
    await atStage(page, name);
    const levels = await page
      .getByRole('heading')
      .evaluateAll((headings) => headings.map(({ tagName }) => Number(tagName.slice(1))));
    expect(levels[0], name).toBe(1);
    expect(
      levels.filter((level, index) => level - (levels[index - 1] ?? 0) > 1),
      name,
    ).toEqual([]);
  }
});

for (const scheme of ['light', 'dark'] as const) {
  test(`in forced colours what is chosen and what has the focus are seen (${scheme})`, async ({ page }) => {
    await page.emulateMedia({ forcedColors: 'active', colorScheme: scheme });
    await opened(page);
    const ground = await page.locator('.arena').evaluate((element) => getComputedStyle(element).backgroundColor);
    expect(ground).toBe(scheme === 'light' ? 'rgb(226, 221, 208)' : 'rgb(27, 32, 29)');
    for (const name of STAGES) {
      await atStage(page, name);
      const looks = await page.evaluate(() =>
        [...document.querySelectorAll('button[aria-pressed="true"], [role="tab"][aria-selected="true"]')].map(
          (element) => {
            const { outlineStyle, outlineWidth, color, backgroundColor } = getComputedStyle(element);
            const isFramed = outlineStyle === 'solid' && Number.parseFloat(outlineWidth) >= 2;
            return isFramed && color !== backgroundColor ? '' : element.textContent;
          },
        ),
      );
      expect(looks.length, name).toBeGreaterThan(0);
      expect(
        looks.filter((fault) => fault !== ''),
        name,
      ).toEqual([]);
    }
    const chosen = await stage(page, 'Change').evaluate((element) => getComputedStyle(element).outlineColor);
    await stage(page, 'Change').focus();
    await page.keyboard.press('ArrowLeft');
    const { color, width } = await stage(page, 'Post').evaluate((element) => {
      const { outlineColor, outlineWidth } = getComputedStyle(element);
      return { color: outlineColor, width: Number.parseFloat(outlineWidth) };
    });
    expect(width).toBeGreaterThan(2);
    expect(color).not.toBe(chosen);
  });
}
