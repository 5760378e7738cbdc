import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import jsqr from 'jsqr';
import { PNG } from 'pngjs';
import { courseLink } from '../../src/core/files/course-link.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { painter } from '../../src/sheets/formats/picture.ts';
import { qrCode, qrMarks } from '../../src/sheets/qr-code.ts';
import { RESOURCES } from '../sheets/formats/resources.ts';
import { arena, choose, opened, placeOf, stage } from './arena.ts';

function linkTo(starter: string, base = ''): string {
  const reading = readCourse(readFileSync(`seeds/starters/${starter}.course.json`, 'utf8'));
  if (reading.kind === 'refused') throw new Error(reading.why);
  return courseLink(reading.course, base);
}

/** The code of a link as it is printed, read back from its dots by an independent reader. */
async function scanned(link: string): Promise<string> {
  const code = qrCode(link);
  if (code === undefined) throw new Error('the link does not fit into a code');
  const marks = qrMarks(code, { x: 0, y: 0 }, code.side);
  const { png } = await painter(RESOURCES);
  const { data, width, height } = PNG.sync.read(
    Buffer.from(png({ width: code.side, height: code.side, marks, about: '' }, 300)),
  );
  return jsqr(new Uint8ClampedArray(data), width, height)?.data ?? '';
}

function notice(page: Page) {
  return page.getByRole('region', { name: 'A course from a link' });
}

const title = (page: Page) => page.locator('.course-title');

test('a code that is scanned opens the course, says whose it is, and the ride plays', async ({ page, baseURL }) => {
  const link = await scanned(linkTo('larkhollow-amateur', baseURL));
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.goto(link);
  await expect(title(page)).toHaveText('Sunday amateur trail');
  await expect(stage(page, 'Ride')).toHaveAttribute('aria-selected', 'true');
  await expect(notice(page)).toContainText('Amateur Trail, Larkhollow Summer Show');
  await expect(page.locator('.save-state')).toHaveText('From a link');
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
  const time = page.getByRole('slider', { name: /time/i });
  const before = Number(await time.inputValue());
  await expect.poll(async () => Number(await time.inputValue())).toBeGreaterThan(before + 1);
  expect(asked.filter((url) => url.includes('course='))).toEqual([]);
});

test('who wants nothing to move by itself starts the ride by hand', async ({ page, baseURL }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(linkTo('larkhollow-novice', baseURL));
  await expect(notice(page)).toBeVisible();
  await page.getByRole('button', { name: 'Play the ride' }).click();
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
});

test('what was open before stays in this browser, and a look at a link leaves nothing', async ({ page, baseURL }) => {
  await opened(page);
  await choose(page, 'Fan');
  const name = page.getByRole('textbox', { name: 'Name', exact: true });
  await name.fill('Fan by the judge');
  await name.press('Enter');
  await expect(page.locator('.save-state')).toHaveText('Saved');
  await page.goto(linkTo('larkhollow-open', baseURL));
  await expect(title(page)).toHaveText('Sunday open trail');
  await page.reload();
  await expect(title(page)).toHaveText('Sunday open trail');
  await page.goto('about:blank');
  await opened(page);
  await expect(page.getByRole('region', { name: 'Obstacles' })).toContainText('Fan by the judge');
});

test('back brings back what was open, and forward the link', async ({ page, baseURL }) => {
  await opened(page);
  await expect(title(page)).toHaveText('Saturday novice trail');
  await choose(page, 'Fan');
  await arena(page).focus();
  await page.keyboard.press('Shift+ArrowLeft');
  await expect(page.locator('.save-state')).toHaveText('Saved');
  const place = await placeOf(page, 'fan-1');
  await page.evaluate(
    (hash) => {
      location.hash = hash;
    },
    new URL(linkTo('larkhollow-indoor', baseURL)).hash,
  );
  await expect(title(page)).toHaveText('Winter indoor trail');
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
  await page.goBack();
  await expect(title(page)).toHaveText('Saturday novice trail');
  expect(await placeOf(page, 'fan-1')).toEqual(place);
  await page.goForward();
  await expect(title(page)).toHaveText('Winter indoor trail');
});

test('another part of the page comes and goes in the address, and the course of the link stays', async ({
  page,
  baseURL,
}) => {
  await page.goto(linkTo('larkhollow-open', baseURL));
  await expect(notice(page)).toBeVisible();
  await stage(page, 'Set').click();
  await choose(page, 'Fan');
  const away = () =>
    page.evaluate(() => {
      history.pushState({ elsewhere: true }, '', '#elsewhere');
      window.dispatchEvent(new HashChangeEvent('hashchange'));
    });
  await away();
  await expect(title(page)).toHaveText('Sunday open trail');
  await page.goBack();
  await expect(stage(page, 'Set')).toHaveAttribute('aria-selected', 'true');
  await away();
  const name = page.getByRole('textbox', { name: 'Name', exact: true });
  await name.fill('My own fan');
  await name.press('Enter');
  await page.goBack();
  await expect(page).not.toHaveURL(/#/);
  await expect(page.getByRole('region', { name: 'Obstacles' })).toContainText('My own fan');
});

test('a course that was changed is kept as a copy, and a reload goes on with it', async ({ page, baseURL }) => {
  await page.goto(linkTo('larkhollow-open', baseURL));
  await expect(notice(page)).toBeVisible();
  await stage(page, 'Set').click();
  await choose(page, 'Fan');
  const name = page.getByRole('textbox', { name: 'Name', exact: true });
  await name.fill('My own fan');
  await name.press('Enter');
  await expect(page).not.toHaveURL(/course=/);
  await expect(page.locator('.save-state')).toHaveText('Saved');
  await page.reload();
  await expect(title(page)).toHaveText('Sunday open trail');
  await expect(page.getByRole('region', { name: 'Obstacles' })).toContainText('My own fan');
});

test('a damaged link and a newer one are told plainly, and the app opens as usual', async ({ page, baseURL }) => {
  const link = linkTo('larkhollow-open', baseURL);
  for (const [hash, why] of [
    [link.slice(0, -40), 'The link is damaged'],
    [link.replace('#course=1.', '#course=9.'), 'newer Polewright'],
  ] as const) {
    await page.goto('about:blank');
    await page.goto(hash);
    const dialog = page.getByRole('dialog', { name: 'The link was not opened' });
    await expect(dialog).toContainText(why);
    await dialog.getByRole('button', { name: 'Close' }).click();
    await expect(title(page)).toHaveText('Saturday novice trail');
  }
});

test('a link is made from the File menu and opens the same course', async ({ page }) => {
  await opened(page);
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Copy a link…' }).click();
  const link = await page.getByRole('textbox', { name: 'Link' }).inputValue();
  await page.goto('about:blank');
  await page.goto(link);
  await expect(notice(page)).toContainText('Saturday novice trail');
});
