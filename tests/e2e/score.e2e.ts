/** The score card as it is used: on a tablet, by touch; and by keys. */
import { readFile } from 'node:fs/promises';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { opened, openStarter, stage } from './arena.ts';
import { axe, faultsInUse } from './axe.ts';

const TABLET = { width: 820, height: 1180 };
const PHONE = { width: 390, height: 844 };
/** Gate, jog-overs, bridge … side pass. */
const OBSTACLES = 10;

function card(page: Page): Locator {
  return page.getByRole('dialog', { name: /^Score card/ });
}

/** Opens the card of a starter with ten obstacles; `then` is done before, once all later parts have come. */
async function openCard(page: Page, then?: () => Promise<void>): Promise<void> {
  await opened(page);
  await openStarter(page, 'larkhollow-open');
  await expect(page.locator('[data-said]')).toContainText('Opened');
  if (then !== undefined) {
    await page.waitForLoadState('networkidle');
    await then();
  }
  await stage(page, 'Post').click();
  await page.getByRole('tab', { name: 'Score', exact: true }).click();
  await page.getByRole('button', { name: 'Open the score card' }).click();
  await expect(card(page)).toBeVisible();
}

/** How a button is pressed. */
type Press = (button: Locator) => Promise<void>;
const tap: Press = (button) => button.tap();
const click: Press = (button) => button.click();

async function addEntry(page: Page, number: string, press: Press): Promise<void> {
  await card(page).getByLabel('Add an entry by its number').fill(number);
  await press(card(page).getByRole('button', { name: 'Add', exact: true }));
  await expect(card(page).getByRole('heading', { level: 3 })).toContainText(number);
}

function scoreButton(page: Page, score: string): Locator {
  return card(page)
    .getByRole('group', { name: 'Score', exact: true })
    .getByRole('button', { name: new RegExp(`^${score.replace('+', '\\+')} `) });
}

function penalty(page: Page, fault: RegExp): Locator {
  return card(page).getByRole('group', { name: 'Penalties' }).getByRole('button', { name: fault }).first();
}

/** Gives every obstacle of the entry a score, and penalties at some; by obstacle, from 1. */
async function judge(
  page: Page,
  score: string,
  penalties: Readonly<Record<number, readonly RegExp[]>>,
  press: Press,
): Promise<void> {
  for (let obstacle = 1; obstacle <= OBSTACLES; obstacle += 1) {
    await press(scoreButton(page, score));
    for (const fault of penalties[obstacle] ?? []) await press(penalty(page, fault));
    if (obstacle < OBSTACLES) await press(card(page).getByRole('button', { name: 'Next', exact: true }));
  }
}

function sums(page: Page): Locator {
  return card(page).locator('.score-who [role="status"]');
}

async function placings(page: Page): Promise<readonly (readonly string[])[]> {
  const rows = card(page).getByRole('row');
  const told: string[][] = [];
  for (const row of (await rows.all()).slice(1)) {
    told.push(
      (await row.getByRole('cell').or(row.getByRole('rowheader')).allTextContents()).map((text) => text.trim()),
    );
  }
  return told;
}

test.describe('on a tablet, by touch', () => {
  test.use({ viewport: TABLET, hasTouch: true });

  test('three entries are judged: penalties, a zero, a tie; nothing is lost, and it all comes out as a table', async ({
    page,
  }) => {
    await openCard(page);
    await addEntry(page, '412', tap);
    await judge(page, '+½', { 2: [/Hit of/, /Hit of/], 4: [/Wrong lead/] }, tap);
    // 70 + 10 × ½ − 1 − 1 − 3.
    await expect(sums(page)).toContainText('total 70 ·');
    await addEntry(page, '77', tap);
    await judge(page, '0', {}, tap);
    await addEntry(page, '9A', tap);
    await tap(scoreButton(page, '+1½'));
    await card(page).getByLabel('Ends the go').selectOption({ label: 'Zero score: Outside the boundary' });
    await expect(sums(page)).toContainText('zero score');

    await test.step('the tie is found', async () => {
      await tap(card(page).getByRole('button', { name: 'Placings', exact: true }));
      expect(await placings(page)).toMatchObject([
        ['1', '412', '', '70', 'tied'],
        ['1', '77', '', '70', 'tied'],
        ['3', '9A', '', '0', 'zero score'],
      ]);
      await expect(card(page)).toContainText('Tied: place 1, 412 and 77.');
    });

    await test.step('what was tapped is there after a reload', async () => {
      await page.reload();
      await expect(card(page)).toBeVisible();
      await tap(card(page).getByRole('button', { name: /^412/ }));
      await expect(sums(page)).toContainText('Scores +5, penalties −5, total 70');
      await tap(card(page).getByRole('button', { name: /^2\. Jog-overs/ }));
      await expect(penalty(page, /Hit of/)).toContainText('×2');
    });

    await test.step('a penalty is taken back, and undo gives it again', async () => {
      await tap(card(page).getByRole('button', { name: /^Take back: Hit of/ }));
      await expect(sums(page)).toContainText('total 71');
      await tap(card(page).getByRole('button', { name: 'Undo', exact: true }));
      await expect(sums(page)).toContainText('total 70');
    });

    await test.step('the judge breaks the tie', async () => {
      await tap(card(page).getByRole('button', { name: 'Placings', exact: true }));
      await card(page).getByLabel('Order of 77 among those tied').fill('1');
      await expect
        .poll(() => placings(page))
        .toMatchObject([
          ['1', '77', '', '70', 'tie broken by the judge'],
          ['2', '412', '', '70', 'tie broken by the judge'],
          ['3', '9A', '', '0', 'zero score'],
        ]);
      await expect(card(page)).toContainText('There is no tie.');
    });

    await test.step('the table and the card are files', async () => {
      const [csv] = await Promise.all([
        page.waitForEvent('download'),
        tap(card(page).getByRole('button', { name: 'Export CSV' })),
      ]);
      expect(csv.suggestedFilename()).toMatch(/-score\.csv$/);
      const lines = (await readFile(await csv.path(), 'utf8')).split('\n');
      expect(lines[0]).toContain('"1. Gate, left-hand push",1. penalties');
      expect(lines[1]).toMatch(/^412,.*,5,5,70,2,,finished,,/);
      expect(lines[3]).toMatch(/^9A,.*,0,3,,"zero score, |^9A,.*,0,3,,zero score,Outside the boundary,/);
      expect(lines[4]).toContain('not the official result');
      const [json] = await Promise.all([
        page.waitForEvent('download'),
        tap(card(page).getByRole('button', { name: 'Save the card' })),
      ]);
      await tap(card(page).getByRole('button', { name: 'Clear the card' }));
      await tap(card(page).getByRole('button', { name: 'Clear it' }));
      expect(await placings(page)).toEqual([]);
      await card(page)
        .locator('input[type="file"]')
        .setInputFiles(await json.path());
      await expect.poll(() => placings(page)).toHaveLength(3);
    });

    await test.step('Back leaves the card, and not the app', async () => {
      await page.goBack();
      await expect(card(page)).toBeHidden();
      await expect(stage(page, 'Set')).toBeVisible();
    });
  });

  test('what is pressed is large enough, and nothing has a fault of access, in light and in dark', async ({ page }) => {
    await openCard(page);
    await addEntry(page, '412', tap);
    await tap(scoreButton(page, '−1'));
    await tap(penalty(page, /Hit of/));
    for (const view of ['Judge', 'Placings']) {
      await tap(card(page).getByRole('button', { name: view, exact: true }));
      const small = await card(page).evaluate((dialog) =>
        [
          ...dialog.querySelectorAll(
            'button, select, summary, input:not([type="checkbox"], [hidden]), label:has(input)',
          ),
        ]
          .map((each) => ({ box: each.getBoundingClientRect(), text: each.textContent }))
          .filter(({ box }) => box.width > 0 && (box.width < 43.9 || box.height < 43.9))
          .map(({ box, text }) => `${text} ${box.width} x ${box.height}`),
      );
      expect(small).toEqual([]);
      expect(await faultsInUse(page, view, '.score-card')).toEqual([]);
      const { violations } = await axe(page)
        .include('.score-card')
        .withTags(['wcag2a', 'wcag2aa', 'best-practice'])
        .analyze();
      expect(violations.map(({ id }) => id)).toEqual([]);
    }
  });

  test('a second tab shows the card, and writes nothing over it', async ({ page, context }) => {
    await openCard(page);
    await addEntry(page, '412', tap);
    await tap(scoreButton(page, '+1'));
    const other = await context.newPage();
    await other.goto(page.url());
    await expect(card(other)).toContainText('judged in another tab');
    await tap(scoreButton(other, '−1'));
    await expect(sums(other)).toContainText('Scores +1,');
    await tap(scoreButton(page, '+½'));
    await expect(sums(other)).toContainText('Scores +½,');
    await tap(card(page).getByRole('button', { name: 'Leave the score card' }));
    await expect(card(other)).not.toContainText('judged in another tab');
    await tap(scoreButton(other, '0'));
    await expect(sums(other)).toContainText('Scores 0,');
  });
});

test('by keys, without a connection: digits give scores, arrows go on, Escape leaves', async ({ page, context }) => {
  await openCard(page, () => context.setOffline(true));
  const field = card(page).getByLabel('Add an entry by its number');
  await expect(field).toBeFocused();
  await field.fill('5');
  await page.keyboard.press('Enter');
  await addEntry(page, '6', click);
  await card(page).getByRole('button', { name: 'Next', exact: true }).focus();
  await page.keyboard.press('7');
  await expect(sums(page)).toContainText('Scores +1½');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('1');
  await expect(sums(page)).toContainText('Scores 0,');
  await page.keyboard.press('Control+z');
  await expect(sums(page)).toContainText('Scores +1½');
  await page.keyboard.press('PageUp');
  await expect(card(page).getByRole('heading', { level: 3 })).toContainText('5');
  await page.keyboard.press('Escape');
  await expect(card(page)).toBeHidden();
  await expect(page.getByRole('button', { name: 'Open the score card' })).toBeFocused();
});

test('on a phone the entries have the screen for themselves, and nothing is wider than it', async ({ page }) => {
  await page.setViewportSize(PHONE);
  await openCard(page);
  await card(page).getByRole('button', { name: 'Entries', exact: true }).click();
  await addEntry(page, '412', click);
  await scoreButton(page, '+½').click();
  await expect(sums(page)).toContainText('total 70½');
  await penalty(page, /Gate let go/).click();
  await card(page).getByRole('button', { name: 'Next', exact: true }).click();
  await expect(scoreButton(page, '+½')).toBeInViewport();
  for (const view of ['Entries', 'Placings', 'Judge']) {
    await card(page).getByRole('button', { name: view, exact: true }).click();
    const wide = await card(page).evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth);
    expect(wide, view).toBeLessThanOrEqual(0);
  }
});
