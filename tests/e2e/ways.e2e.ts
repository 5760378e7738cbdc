/** The main job from the form to the paper, by mouse, by touch only and by keys only, on a laptop, a tablet and a phone. */
import { readFileSync } from 'node:fs';
import { type Download, expect, type Page, test } from '@playwright/test';
import { opened, type Place, placeOf } from './arena.ts';
import { type Hand, type MakeHand, showPanel, watchInput } from './hands/hand.ts';
import { keys } from './hands/keys.ts';
import { mouse } from './hands/mouse.ts';
import { touch } from './hands/touch.ts';

const FOOT = 0.3048;
const SIZES = [
  { width: 1366, height: 768 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
] as const;

interface Way {
  readonly title: string;
  readonly makeHand: MakeHand;
  /** What the browser may see of it. */
  readonly pointers: readonly string[];
  readonly keys: readonly string[];
  readonly context: { readonly hasTouch: boolean; readonly isMobile: boolean };
}

const DESKTOP = { hasTouch: false, isMobile: false };
const WAYS: readonly Way[] = [
  { title: 'by mouse', makeHand: mouse, pointers: ['mouse'], keys: ['in a field'], context: DESKTOP },
  {
    title: 'by touch only',
    makeHand: touch,
    pointers: ['touch'],
    keys: ['in a field'],
    context: { hasTouch: true, isMobile: true },
  },
  { title: 'by keys only', makeHand: keys, pointers: [], keys: ['elsewhere', 'in a field'], context: DESKTOP },
];

interface SavedCourse {
  readonly title: string;
  readonly arena: { readonly length: number; readonly width: number };
  readonly truck: readonly { readonly title: string; readonly count: number }[];
  readonly rulebook: { readonly id: string };
  readonly layouts: readonly {
    readonly obstacles: readonly { readonly id: string; readonly pose: Place }[];
    readonly ride: {
      readonly legs: readonly { readonly obstacle: string; readonly approach: string; readonly lead?: string }[];
    };
  }[];
}

async function downloaded(page: Page, press: () => Promise<void>): Promise<Download> {
  const saving = page.waitForEvent('download');
  await press();
  return saving;
}

async function begin(hand: Hand, page: Page): Promise<void> {
  await hand.press(page.getByRole('button', { name: 'File', exact: true }));
  await hand.press(page.getByRole('button', { name: 'New course…' }));
  const form = page.getByRole('dialog', { name: 'A new course' });
  await hand.type(form.getByLabel('Title of the course'), 'Spring trail');
  await hand.press(form.getByRole('button', { name: `250' × 130'` }));
  await hand.type(form.getByLabel(`Poles of 10'`), '33');
  await hand.pick(form.getByLabel('Rule book'), 'trade-press');
  await hand.press(form.getByRole('button', { name: 'Begin' }));
  await expect(form).toHaveCount(0);
  await expect(page.locator('.course-title')).toHaveText('Spring trail');
}

async function setThree(hand: Hand, page: Page): Promise<void> {
  const rows = page.locator('[data-obstacle]');
  await hand.add('run', 'run of poles', { x: 20, y: 28 });
  await expect(rows).toHaveCount(1);
  await hand.add('box', 'box');
  await expect(rows).toHaveCount(2);
  await hand.add('bridge', 'bridge');
  await expect(rows).toHaveCount(3);
}

async function moveBridge(hand: Hand, page: Page): Promise<void> {
  const from = await placeOf(page, 'bridge-1');
  await hand.move('bridge-1', { x: 6 * FOOT, y: -9 * FOOT });
  await expect(page.locator('[data-said]')).toContainText('Moved');
  const to = await placeOf(page, 'bridge-1');
  // A hand that drags may be taken in by a snap near by.
  expect(Math.hypot(to.x - from.x - 6 * FOOT, to.y - from.y + 9 * FOOT)).toBeLessThan(0.6);
}

async function typeOwnGap(hand: Hand, page: Page): Promise<void> {
  const run = await placeOf(page, 'run-1');
  // The usual run has four poles of 4 in by 12 ft, 3 ft apart: the second lies half a pitch before the middle. It is pressed
  // near its end, since numbers stand at the middle.
  await hand.choosePole('run-1', { x: run.x - (FOOT * 10) / 6, y: run.y + 5 * FOOT });
  const tape = page.getByRole('list', { name: 'Measures of what is chosen' }).getByRole('button', { name: /^Gap/ });
  await hand.openTape(tape.first());
  const field = page.locator('.dimension-field input');
  await hand.type(field, `4' 6"`, 'send');
  await expect(field).toHaveCount(0);
  await expect(page.locator('[data-said]')).toContainText(`4' 6"`);
}

async function ride(hand: Hand, page: Page): Promise<void> {
  await hand.goTo('Ride');
  await showPanel(hand, page, 'Order');
  const rows = page.locator('.order li');
  await expect(rows).toHaveText([/^1/, /^2Box/, /^3Bridge/]);
  await hand.press(page.getByRole('button', { name: 'Ride Box earlier' }));
  await expect(rows.first()).toContainText('Box');
  await hand.press(rows.first().getByRole('button').first());
  await showPanel(hand, page, 'How');
  await hand.pick(page.getByLabel('Gait to it'), 'lope');
  await hand.pick(page.getByLabel('Lead', { exact: true }), 'left');
}

async function fixGap(hand: Hand, page: Page): Promise<void> {
  await hand.goTo('Check');
  await showPanel(hand, page, 'Findings');
  const gap = page.locator('[data-finding="gap-band"]').filter({ hasText: `4' 6"` });
  const door = gap.locator('.finding-door');
  await expect(door).toHaveCount(1);
  if ((await door.getAttribute('aria-expanded')) === 'false') await hand.press(door);
  await hand.press(gap.locator('.remedy').first());
  await expect(gap).toHaveCount(0);
}

async function save(hand: Hand, page: Page): Promise<SavedCourse> {
  const file = await downloaded(page, async () => {
    await hand.press(page.getByRole('button', { name: 'File', exact: true }));
    await hand.press(page.getByRole('button', { name: /^Save as a file/ }));
  });
  return JSON.parse(readFileSync(await file.path(), 'utf8')) as SavedCourse;
}

async function post(hand: Hand, page: Page): Promise<void> {
  await hand.goTo('Post');
  await showPanel(hand, page, 'Paper');
  const pdf = await downloaded(page, () => hand.press(page.getByRole('button', { name: 'Export PDF' })));
  expect(pdf.suggestedFilename()).toBe('spring-trail-pattern.pdf');
  expect(
    readFileSync(await pdf.path())
      .subarray(0, 5)
      .toString('latin1'),
  ).toBe('%PDF-');
}

for (const { title, makeHand, context, ...allowed } of WAYS) {
  for (const viewport of SIZES) {
    test.describe(`${title} at ${viewport.width} by ${viewport.height}`, () => {
      test.use({ ...context, viewport });

      test('the main job is done', async ({ page }) => {
        // Pickers of the operating system cannot be driven here; without them the page saves as a download.
        await page.addInitScript(() => {
          for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) {
            Reflect.deleteProperty(window, name);
            Reflect.deleteProperty(Window.prototype, name);
          }
        });
        const seenInput = await watchInput(page);
        await opened(page);
        const hand = await makeHand(page);
        await test.step('a course is begun from the form', () => begin(hand, page));
        await test.step('three obstacles are added', () => setThree(hand, page));
        await test.step('one is placed elsewhere', () => moveBridge(hand, page));
        await test.step('one gap is typed', () => typeOwnGap(hand, page));
        await test.step('order, gait and lead are chosen', () => ride(hand, page));
        await test.step('a finding is fixed', () => fixGap(hand, page));
        const bridge = await placeOf(page, 'bridge-1');
        await test.step('the saved course has all of it', async () => {
          const course = await save(hand, page);
          expect(course).toMatchObject({ title: 'Spring trail', rulebook: { id: 'trade-press' } });
          expect(course.arena.length).toBeCloseTo(250 * FOOT, 6);
          expect(course.arena.width).toBeCloseTo(130 * FOOT, 6);
          expect(course.truck).toContainEqual(expect.objectContaining({ title: 'Poles, 10 ft', count: 33 }));
          const [layout] = course.layouts;
          expect(layout?.ride.legs.map(({ obstacle }) => obstacle)).toEqual(['box-1', 'run-1', 'bridge-1']);
          expect(layout?.ride.legs[0]).toMatchObject({ approach: 'lope', lead: 'left' });
          expect(layout?.obstacles.find(({ id }) => id === 'bridge-1')?.pose).toMatchObject({ ...bridge });
        });
        await test.step('the pattern is exported', () => post(hand, page));
        const { pointers, keys } = await seenInput();
        expect(pointers).toEqual(allowed.pointers);
        for (const key of keys) expect(allowed.keys).toContain(key);
      });
    });
  }
}
