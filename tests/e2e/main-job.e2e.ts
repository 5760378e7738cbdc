import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { type Corner, inkIn, pathsOf, pictureOf, wordBoxes } from '../sheets/read-pdf.ts';
import { arena, choose, drag, opened, placeOf, stage } from './arena.ts';

/** How far a corner on paper may be from where the course has it, mm. */
const TRUE_TO: number = 0.5;

interface Pose extends Corner {
  readonly angle: number;
}
interface Piece {
  readonly kind: string;
  readonly pose: Pose;
  readonly values: { readonly length: number; readonly thickness: number };
}
interface SavedCourse {
  readonly arena: { readonly length: number; readonly width: number };
  readonly current: string;
  readonly layouts: readonly {
    readonly id: string;
    readonly obstacles: readonly { readonly pose: Pose; readonly pieces: readonly Piece[] }[];
  }[];
}

/** A pose in the frame of another, worked out here and not by the program that is tested. */
function onGround(frame: Pose, { x, y, angle }: Pose): Pose {
  const [c, s] = [Math.cos(frame.angle), Math.sin(frame.angle)];
  return { x: frame.x + c * x - s * y, y: frame.y + s * x + c * y, angle: frame.angle + angle };
}

/** The corners of every pole of the layout that is shown, metres. */
function poleCorners(course: SavedCourse): readonly (readonly Corner[])[] {
  const layout = course.layouts.find(({ id }) => id === course.current) ?? course.layouts[0];
  return (layout?.obstacles ?? []).flatMap(({ pose, pieces }) =>
    pieces
      .filter(({ kind }) => kind === 'pole')
      .map((piece) => {
        const middle = onGround(pose, piece.pose);
        const [half, thick] = [piece.values.length / 2, piece.values.thickness / 2];
        const signs = [
          [-1, -1],
          [1, -1],
          [1, 1],
          [-1, 1],
        ] as const;
        return signs.map(([a, b]) => onGround(middle, { x: a * half, y: b * thick, angle: 0 }));
      }),
  );
}

function bounds(path: readonly Corner[]) {
  const [xs, ys] = [path.map(({ x }) => x), path.map(({ y }) => y)];
  const [left, top, right, bottom] = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  return { left, top, right, bottom, wide: right - left, high: bottom - top };
}

/** How the page maps the ground, told by the page alone: the scale in its words and the rectangle of its arena. */
function mapOf(
  words: readonly string[],
  paths: readonly (readonly Corner[])[],
  { length, width }: SavedCourse['arena'],
) {
  const scale = Number(/1:(\d+)/.exec(words.join(' '))?.[1]);
  const mm = 1000 / scale;
  for (const { left, bottom, right, wide, high } of paths.map(bounds)) {
    if (near(wide, length * mm) && near(high, width * mm)) {
      return { mm, place: ({ x, y }: Corner): Corner => ({ x: left + x * mm, y: bottom - y * mm }) };
    }
    if (near(wide, width * mm) && near(high, length * mm)) {
      return { mm, place: ({ x, y }: Corner): Corner => ({ x: right - y * mm, y: bottom - x * mm }) };
    }
  }
  throw new Error(`the page has no arena of ${length} by ${width} m at 1:${scale}`);
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) <= TRUE_TO;
}

/** The farthest that a corner of either is from the other's nearest. */
function apart(a: readonly Corner[], b: readonly Corner[]): number {
  const reach = (from: readonly Corner[], to: readonly Corner[]) =>
    Math.max(...from.map((p) => Math.min(...to.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))));
  return Math.max(reach(a, b), reach(b, a));
}

async function downloaded(page: Page, press: () => Promise<void>): Promise<Uint8Array> {
  const saving = page.waitForEvent('download');
  await press();
  return new Uint8Array(readFileSync(await (await saving).path()));
}

test('the main job: set, be warned, mend, measure, keep, post; and the paper is true to the course', async ({
  page,
}) => {
  // Pickers of the operating system cannot be driven here; without them the page saves as a download.
  await page.addInitScript(() => {
    for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) {
      Reflect.deleteProperty(window, name);
      Reflect.deleteProperty(Window.prototype, name);
    }
  });
  await opened(page);
  const findings = page.getByRole('region', { name: 'Findings' });
  const gap = page.getByRole('textbox', { name: 'Gap', exact: true });
  let kept = { x: 0, y: 0 };

  await test.step('a fan that is dragged towards the wall is found too near, and clear when it is dragged back', async () => {
    await expect(stage(page, 'Check')).toHaveText('Check');
    await choose(page, 'Fan');
    const home = await placeOf(page, 'fan-1');
    await drag(page, home, { x: home.x, y: 0.4 });
    await expect(stage(page, 'Check')).toHaveText(/Check\d/);
    await stage(page, 'Check').click();
    await expect(findings.getByText(/wall/i).first()).toBeVisible();
    const away = await placeOf(page, 'fan-1');
    expect(away.y).toBeLessThan(home.y - 1);
    await drag(page, away, home);
    await expect(stage(page, 'Check')).toHaveText('Check');
    await expect(findings).not.toContainText(/wall/i);
  });

  await test.step('a gap is typed, undone and done again', async () => {
    await stage(page, 'Set').click();
    await choose(page, 'Fan');
    const before = await gap.inputValue();
    await gap.fill('6 ft 1 1/2 in');
    await gap.press('Enter');
    await expect(gap).toHaveValue(`6' 1½"`);
    await arena(page).focus();
    await page.keyboard.press('Control+z');
    await expect(gap).toHaveValue(before);
    await page.keyboard.press('Control+Shift+z');
    await expect(gap).toHaveValue(`6' 1½"`);
    kept = await placeOf(page, 'fan-1');
  });

  await test.step('nothing is lost when the page is loaded again', async () => {
    await page.reload();
    await expect(arena(page).locator('canvas').first()).toBeVisible();
    expect(await placeOf(page, 'fan-1')).toEqual(kept);
    await choose(page, 'Fan');
    await expect(gap).toHaveValue(`6' 1½"`);
  });

  await test.step('the pattern on paper is true to the saved course, and all its words have ink', async () => {
    const text = await downloaded(page, async () => {
      await page.getByRole('button', { name: 'File', exact: true }).click();
      await page.getByRole('button', { name: /^Save as a file/ }).click();
    });
    const course = JSON.parse(new TextDecoder().decode(text)) as SavedCourse;
    await stage(page, 'Post').click();
    const bytes = await downloaded(page, () => page.getByRole('button', { name: 'Export PDF' }).click());

    const pages = wordBoxes(bytes);
    const paths = await pathsOf(bytes);
    const { mm, place } = mapOf(
      (pages[0] ?? []).map(({ text: word }) => word),
      paths,
      course.arena,
    );
    const poles = poleCorners(course);
    expect(poles.length).toBeGreaterThan(10);
    for (const corners of poles) {
      const wanted = corners.map(place);
      const best = Math.min(...paths.filter((path) => path.length <= 5).map((path) => apart(path, wanted)));
      expect(best, `a pole of ${bounds(wanted).wide} by ${bounds(wanted).high} mm, 1 m is ${mm} mm`).toBeLessThan(
        TRUE_TO,
      );
    }
    pages.forEach((words, index) => {
      const picture = pictureOf(bytes, index + 1);
      expect(words.length).toBeGreaterThan(0);
      for (const word of words)
        expect(inkIn(picture, word), `“${word.text}” on page ${index + 1}`).toBeGreaterThan(0.01);
    });
  });
});
