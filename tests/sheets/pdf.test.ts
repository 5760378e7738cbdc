import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import { survey } from '../../src/core/survey.ts';
import { textWidth } from '../../src/sheets/lettering.ts';
import { pattern } from '../../src/sheets/pattern.ts';
import { pdf } from '../../src/sheets/pdf.ts';
import type { PageOptions, Pages } from '../../src/sheets/sheet.ts';
import { FONTS } from './fonts.ts';
import { onPaper } from './on-paper.ts';
import { type Corner, inkIn, pathsOf, pictureOf, wordBoxes } from './read-pdf.ts';
import { SAMPLES } from './samples.ts';

function pagesOf(course: Course, ask: PageOptions): Pages {
  const pages = pattern.draw(survey(course), ask);
  if (pages.kind !== 'pages') throw new Error(pages.why);
  return pages;
}

function nearest(corners: readonly Corner[], to: Corner): number {
  return Math.min(...corners.map(({ x, y }) => Math.hypot(x - to.x, y - to.y)));
}

const FIRST = Object.entries(SAMPLES)[0] as [string, Course];

describe('the PDF of a pattern', () => {
  test('puts two poles that lie 10 m apart at 1:200 exactly 50 mm apart', async () => {
    let course = blankCourse({
      arena: { title: '', length: 40, width: 20, entrance: { wall: 'west', at: 10, width: 3 } },
      unit: 'm',
    });
    for (const [index, x] of [8, 18].entries()) {
      const pole = buildObstacle(`pole-${index}`, 'run', { poles: 1, length: 3 }, { x, y: 10, angle: 0 });
      if (!('pieces' in pole)) throw new Error(pole.why);
      course = addObstacle(course, pole);
    }
    const pages = pagesOf(course, { paper: 'a4', orientation: 'landscape', scale: 200 });
    const paths = await pathsOf(await pdf(pages, FONTS));
    // A pole's footprint is a closed outline of 15 mm by half a millimetre.
    const poles = paths.filter((path) => {
      const xs = path.map(({ x }) => x);
      const ys = path.map(({ y }) => y);
      const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
      return path.length === 5 && Math.abs(high - 15) < 0.001 && wide < 1;
    });
    const lefts = poles.map((path) => Math.min(...path.map(({ x }) => x))).sort((a, b) => a - b);
    expect(lefts.length).toBe(2);
    expect((lefts[1] ?? 0) - (lefts[0] ?? 0)).toBeCloseTo(50, 3);
  });

  test.each(Object.entries(SAMPLES))(
    'draws every corner of every piece of %s where the course has it',
    async (_, course) => {
      for (const paper of ['letter', 'a4'] as const) {
        const pages = pagesOf(course, { paper, orientation: 'fit' });
        const corners = (await pathsOf(await pdf(pages, FONTS))).flat();
        const footprints = survey(course).pieces.flatMap(({ footprint }) => footprint);
        const { length, width } = course.arena;
        for (const ground of [...footprints, { x: 0, y: 0 }, { x: length, y: 0 }, { x: length, y: width }]) {
          expect(nearest(corners, onPaper(pages, ground))).toBeLessThan(0.01);
        }
      }
    },
  );

  test('has ink in the box of every word', async () => {
    const [, course] = FIRST;
    const bytes = await pdf(pagesOf(course, { paper: 'letter', orientation: 'landscape' }), FONTS);
    const pages = wordBoxes(bytes);
    expect(pages.flat().length).toBeGreaterThan(60);
    pages.forEach((words, index) => {
      const picture = pictureOf(bytes, index + 1);
      const bare = words.filter((word) => word.text !== '–' && inkIn(picture, word) < 0.03);
      expect(bare.map(({ text }) => text)).toEqual([]);
    });
  });

  test('prints the words of the instructions, to be searched and read aloud', async () => {
    const [, course] = FIRST;
    const bytes = await pdf(pagesOf(course, { paper: 'a4', orientation: 'fit' }), FONTS);
    const text = wordBoxes(bytes)
      .flat()
      .map((word) => word.text)
      .join(' ');
    expect(text).toContain('Jog to and over the poles.');
    expect(text).toContain('Larkhollow Fairground Summer Show');
  });

  test('is the same to the byte when it is written twice', async () => {
    const [, course] = FIRST;
    const ask = { paper: 'letter', orientation: 'fit' } as const;
    const once = await pdf(pagesOf(course, ask), FONTS);
    const again = await pdf(pagesOf(structuredClone(course), ask), FONTS);
    expect(Buffer.compare(once, again)).toBe(0);
  });

  test('carries title, language and the date of the class, never the clock', async () => {
    const [, course] = FIRST;
    const bytes = await pdf(pagesOf(course, { paper: 'letter', orientation: 'fit' }), FONTS);
    const text = Buffer.from(bytes).toString('latin1');
    expect(text).toContain('(D:20260613000000Z)');
    expect(text).toContain('/Lang (en)');
    expect(text).toContain('Pattern: Open Trail');
    const undated = await pdf(pagesOf(blankCourse(), { paper: 'letter', orientation: 'fit' }), FONTS);
    expect(Buffer.from(undated).toString('latin1')).toContain('(D:20000101000000Z)');
  });

  test('prints signs that Inter lacks from the second font, in their place between letters', async () => {
    const course = blankCourse({ class: { title: 'Trail ♞☎ for all' } });
    const pages = pagesOf(course, { paper: 'letter', orientation: 'fit' });
    expect(pages.substitutions).toEqual([]);
    const [boxes = []] = wordBoxes(await pdf(pages, FONTS));
    expect(boxes.slice(0, 4).map(({ text }) => text)).toEqual(['Trail', '♞☎', 'for', 'all']);
    const [trail, signs, after] = boxes;
    if (trail === undefined || signs === undefined || after === undefined) throw new Error('the title has four words');
    expect(signs.minX).toBeGreaterThan(trail.maxX);
    expect(after.minX).toBeGreaterThan(signs.maxX);
    const width = textWidth('♞☎', 7, 'bold');
    expect(signs.maxX - signs.minX).toBeCloseTo(width, 1);
    expect(inkIn(pictureOf(await pdf(pages, FONTS)), signs)).toBeGreaterThan(0.1);
  });

  test('prints no box for a sign that the font lacks', async () => {
    const course = blankCourse({ class: { title: 'Trail 🐴 for 北' } });
    const pages = pagesOf(course, { paper: 'letter', orientation: 'fit' });
    expect(pages.substitutions).toEqual([
      'Not in the printing fonts: “🐴” is left out; “北” is printed as “?”. There is no font here for Chinese, Japanese and Korean.',
    ]);
    const words = wordBoxes(await pdf(pages, FONTS))
      .flat()
      .map((word) => word.text);
    expect(words.slice(0, 3)).toEqual(['Trail', 'for', '?']);
  });
});
