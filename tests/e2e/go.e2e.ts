/** Who rides the class, and when: the list as a show office makes it on the morning. */
import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { opened, openStarter, stage } from './arena.ts';
import { faultsInUse } from './axe.ts';

const RIDERS = ['Wren Halden', 'Oda Fenn', 'Ines Marrow', 'Tamsin Roe', 'Piet Aldous', 'Ruth Penhale'];
const HORSES = ['Biscuit', 'Moss', 'Plain Jane', 'Kit', 'Juniper', 'Tin Roof'];
/** Twelve entries as a spreadsheet copies them; every rider has two horses. */
const TWELVE = [
  'No.\tExhibitor\tHorse',
  ...Array.from({ length: 12 }, (_, i) => `${101 + i}\t${RIDERS[i % 6]}\t${HORSES[(i * 5) % 6]} ${i + 1}`),
].join('\n');

async function entries(page: Page): Promise<void> {
  await opened(page);
  await openStarter(page, 'larkhollow-open');
  await expect(page.locator('[data-said]')).toContainText('Opened');
  await stage(page, 'Post').click();
  await page.getByRole('tab', { name: 'Entries', exact: true }).click();
  await expect(page.getByLabel('Type or paste entries')).toBeVisible();
}

async function paste(page: Page, text: string): Promise<void> {
  await page.getByLabel('Type or paste entries').fill(text);
  await page.getByRole('button', { name: 'Add to the list' }).click();
}

function rows(page: Page): Locator {
  return page.getByRole('list', { name: 'Order of go' }).locator('.go-entry');
}

/** Number and time of each row, as it is read: minutes of the day, or null where it does not ride. */
async function told(page: Page): Promise<readonly { number: string; minutes: number | null }[]> {
  const texts = await rows(page).evaluateAll((all) =>
    all.map((row) => [
      row.querySelector('.number')?.textContent ?? '',
      row.querySelector('.go-when')?.textContent ?? '',
    ]),
  );
  return texts.map(([number = '', when = '']) => {
    const [, hours, minutes] = /^(\d+):(\d\d) am/.exec(when) ?? [];
    return { number, minutes: hours === undefined ? null : Number(hours) * 60 + Number(minutes) };
  });
}

test('twelve entries are pasted and drawn; one is late, one scratched, and the times follow', async ({ page }) => {
  await entries(page);
  await paste(page, TWELVE);
  await expect(rows(page)).toHaveCount(12);
  await expect(page.getByText('12 entries read.')).toBeVisible();
  await page.getByLabel('First go at').fill('9:30');
  await page.getByLabel('First go at').press('Enter');
  await expect(rows(page).first()).toContainText('9:30 am');

  await page.getByLabel('Draw number').fill('7');
  await page.getByLabel('Draw number').press('Enter');
  await page.getByRole('button', { name: 'Draw the order' }).click();
  await expect(page.getByText(/^Drawn with number 7, with 4 goes or more between two of one rider/)).toBeVisible();
  const drawn = await told(page);
  expect(drawn.map(({ number }) => number)).not.toEqual(drawn.map(({ number }) => number).toSorted());
  const times = drawn.map(({ minutes }) => minutes ?? 0);
  expect(times[0]).toBe(570);
  expect(times).toEqual(times.toSorted((a, b) => a - b));

  const fifth = rows(page).nth(4);
  await fifth.getByRole('button', { expanded: false }).click();
  await fifth.getByLabel('Minutes late').fill('5');
  await fifth.getByLabel('Minutes late').press('Enter');
  await expect(fifth).toContainText('5 min late');
  const late = await told(page);
  expect(late.map(({ minutes }, i) => (minutes ?? 0) - (times[i] ?? 0))).toEqual([0, 0, 0, 0, 5, 5, 5, 5, 5, 5, 5, 5]);

  await fifth.getByRole('button', { name: 'Scratch', exact: true }).click();
  await expect(fifth.locator('.go-when')).toHaveText('Scratched');
  const scratched = await told(page);
  expect(scratched[4]?.minutes).toBeNull();
  expect(scratched[5]?.minutes).toBe(times[4]);
  await expect(page.locator('.go-summary')).toContainText('11 entries');
  await expect(page.locator('.go-summary')).toContainText('1 scratched');

  await page.getByRole('button', { name: 'By number' }).click();
  await expect(rows(page).first().locator('.number')).toHaveText('101');
  await page.keyboard.press('Control+z');
  await expect(rows(page).first().locator('.number')).toHaveText(drawn[0]?.number ?? '');
});

test('a row is moved by its buttons, by keys and by drag', async ({ page }) => {
  await entries(page);
  await paste(page, TWELVE.split('\n').slice(0, 5).join('\n'));
  await expect(rows(page)).toHaveCount(4);
  const order = async () => (await told(page)).map(({ number }) => number).join(' ');
  await page.getByRole('button', { name: 'Let 101 Wren Halden go later' }).click();
  expect(await order()).toBe('102 101 103 104');
  await rows(page).nth(2).getByRole('button', { expanded: false }).focus();
  await page.keyboard.press('Alt+ArrowUp');
  expect(await order()).toBe('102 103 101 104');
  await page.keyboard.press('Alt+ArrowUp');
  expect(await order()).toBe('103 102 101 104');
  await rows(page).nth(3).dragTo(rows(page).nth(0));
  expect(await order()).toBe('104 103 102 101');
});

test('lines that cannot be read stay in the box with what would be right, and the rest is taken', async ({ page }) => {
  await entries(page);
  await paste(page, 'Number,Rider,Horse\n12,Wren Halden,Biscuit\nabout 13,Oda Fenn,Moss\n12,Ines Marrow,Kit');
  await expect(rows(page)).toHaveCount(2);
  await expect(
    page.getByText('Line 3: “about 13” is no number as it is worn; one such as 104 or 12A would be right.'),
  ).toBeVisible();
  await expect(page.getByText('Number 12 is there 2 times; each must have its own.')).toBeVisible();
  const box = page.getByLabel('Type or paste entries');
  await expect(box).toHaveValue('Number,Rider,Horse\nabout 13,Oda Fenn,Moss');
  await box.fill('Number,Rider,Horse\n13,Oda Fenn,Moss');
  await page.getByRole('button', { name: 'Add to the list' }).click();
  await expect(rows(page)).toHaveCount(3);
  await expect(box).toHaveValue('');
});

test('the list is saved as a table, and a table is opened', async ({ page }) => {
  await entries(page);
  await paste(page, 'Number,Rider,Horse\n12,=Wren Halden,"Moss, the old one"');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as CSV' }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toBe('sunday-open-trail-entries.csv');
  const text = readFileSync(await saved.path(), 'utf8');
  expect(text).toContain(`12,'=Wren Halden,"Moss, the old one",,,`);
  await page.getByRole('button', { name: 'Delete the list' }).click();
  await expect(rows(page)).toHaveCount(0);
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a CSV file' }).click();
  await (await chooser).setFiles({ name: 'entries.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  await expect(rows(page)).toHaveCount(1);
  await expect(rows(page).first()).toContainText('=Wren Halden');
  await expect(rows(page).first()).toContainText('Moss, the old one');
});

for (const [name, size] of [
  ['a desktop', { width: 1366, height: 768 }],
  ['a tablet', { width: 820, height: 1180 }],
  ['a phone', { width: 390, height: 844 }],
] as const) {
  test(`on ${name} the list fits, and anybody can use it`, async ({ page }) => {
    await page.setViewportSize(size);
    await entries(page);
    await paste(page, TWELVE);
    await expect(rows(page)).toHaveCount(12);
    await rows(page).nth(1).getByRole('button', { expanded: false }).click();
    await expect(page.getByLabel('Minutes late')).toBeVisible();
    const wide = await rows(page)
      .first()
      .evaluate((row) => {
        const panel = row.closest('.panel');
        return panel === null ? -1 : panel.scrollWidth - panel.clientWidth;
      });
    expect(wide).toBe(0);
    await page.screenshot({ path: `out/e2e/go-${size.width}.png` });
    expect(await faultsInUse(page, `entries on ${name}`)).toEqual([]);
  });
}

// Twenty entries without names, which the starter has, are on one page; the thirty of the list need two.
test('the sheets show the list', async ({ page }) => {
  await entries(page);
  await paste(page, Array.from({ length: 30 }, (_, i) => `${101 + i},${RIDERS[i % 6]},${HORSES[i % 6]}`).join('\n'));
  await expect(rows(page)).toHaveCount(30);
  await page.getByLabel('Sheet', { exact: true }).selectOption({ label: 'Gate sheet' });
  await expect(page.getByRole('img', { name: 'Gate sheet: Open Trail, page 1 of 2.' })).toBeVisible();
  await stage(page, 'Ride').click();
  await expect(page.getByText('30 entries, by the list at Post.')).toBeVisible();
});

test('every class of a day has a list of its own', async ({ page }) => {
  await opened(page);
  await openStarter(page, 'larkhollow-day');
  await expect(page.locator('[data-said]')).toContainText('Opened');
  await stage(page, 'Post').click();
  await page.getByRole('tab', { name: 'Entries', exact: true }).click();
  const choice = page.getByRole('tabpanel', { name: 'Entries' }).getByLabel('Class', { exact: true });
  await choice.selectOption({ label: 'Walk-Jog Trail' });
  await paste(page, TWELVE.split('\n').slice(0, 5).join('\n'));
  await expect(rows(page)).toHaveCount(4);
  await choice.selectOption({ index: 0 });
  await expect(rows(page)).toHaveCount(0);
  await paste(page, TWELVE);
  await expect(rows(page)).toHaveCount(12);
  await choice.selectOption({ label: 'Walk-Jog Trail' });
  await expect(rows(page)).toHaveCount(4);
  await stage(page, 'Change').click();
  await page.getByRole('tab', { name: 'Day', exact: true }).click();
  const day = page.getByRole('list', { name: 'The day' });
  await expect(day.locator('.timeline-class').filter({ hasText: 'Walk-Jog Trail' })).toContainText('4 entries');
  await expect(day.locator('.timeline-class').filter({ hasText: /^Open Trail/ })).toContainText('12 entries');
});
