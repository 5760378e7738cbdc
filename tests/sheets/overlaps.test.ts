/** The page as a map: nothing covers anything, and every pole is where its scale says, in the frames too. */
import { describe, expect, test } from 'vitest';
import { distance } from '../../src/core/plane/point.ts';
import { survey } from '../../src/core/survey.ts';
import { LINE_STYLES } from '../../src/sheets/line-styles.ts';
import { pattern } from '../../src/sheets/pattern.ts';
import { pdf } from '../../src/sheets/pdf.ts';
import { PAPERS, type Pages } from '../../src/sheets/sheet.ts';
import { overlapsOf } from '../bench/sheets/overlaps.ts';
import { randomCourse } from '../bench/sheets/random-courses.ts';
import { FONTS } from './fonts.ts';
import { drawingOf, onPaper } from './on-paper.ts';
import { pathsOf } from './read-pdf.ts';
import { SEEDS } from './samples.ts';

function patternOf(course: Parameters<typeof survey>[0], paper: (typeof PAPERS)[number]): Pages {
  const pages = pattern.draw(survey(course), { paper, orientation: 'fit' });
  if (pages.kind !== 'pages') throw new Error(pages.why);
  return pages;
}

function covered(pages: Pages): readonly string[] {
  return pages.pages.flatMap(({ marks }) => overlapsOf(marks).overlaps.map((each) => `${each.what} on ${each.with}`));
}

describe('nothing on a pattern covers anything', () => {
  test.each(Object.entries(SEEDS))('on %s, on every paper', (_, course) => {
    for (const paper of PAPERS) expect(covered(patternOf(course, paper)), paper).toEqual([]);
  });

  test('on six courses drawn at random', () => {
    for (let number = 0; number < 6; number += 1) {
      expect(covered(patternOf(randomCourse(number), 'letter')), `course ${number}`).toEqual([]);
    }
  });
});

test('frames that would shrink the drawing too much stand overleaf, each once, and nothing covers anything', () => {
  // Ten of its eleven obstacles are small.
  const course = randomCourse(61);
  const pages = patternOf(course, 'letter');
  expect(covered(pages)).toEqual([]);
  const { insets = [], scale } = drawingOf(pages);
  expect(scale).toBeLessThanOrEqual(500);
  expect(insets.map(({ page }) => page)).toEqual(insets.map(() => 1));
  expect(new Set(insets.map(({ obstacle }) => obstacle)).size).toBe(10);
  expect(pages.pages).toHaveLength(2);
});

test.each(Object.entries(SEEDS))(
  'every pole of %s is read back where its scale has it, in its frame too',
  async (_, course) => {
    const facts = survey(course);
    const pages = patternOf(course, 'letter');
    const bytes = await pdf(pages, FONTS);
    const cornersOn = await Promise.all(
      pages.pages.map(async ({ height }, i) =>
        // The PDF's own frame has y up.
        (await pathsOf(bytes, i + 1)).flatMap((path) =>
          path.flatMap(({ x, y }) => [
            { x, y },
            { x, y: height - y },
          ]),
        ),
      ),
    );
    const isDrawn = (at: { x: number; y: number }, page = 0): boolean =>
      cornersOn[page]?.some((each) => distance(each, at) < 0.3) === true;
    const { insets = [] } = drawingOf(pages);
    for (const piece of facts.pieces.filter(({ kind }) => kind.id === 'pole')) {
      for (const corner of piece.footprint) expect(isDrawn(onPaper(pages, corner)), piece.key).toBe(true);
      for (const inset of insets.filter(({ obstacle }) => obstacle === piece.obstacle)) {
        const framed: Pages = { ...pages, drawing: inset };
        for (const corner of piece.footprint)
          expect(isDrawn(onPaper(framed, corner), inset.page), `${piece.key} at 1:${inset.scale}`).toBe(true);
      }
    }
  },
);

test('gaits and moves are told apart by stroke alone, and each is wide enough for a poor copy', () => {
  const inks = ['walk', 'jog', 'lope', 'back', 'side-pass', 'work'] as const;
  for (const ink of inks) expect(LINE_STYLES[ink].width, ink).toBeGreaterThanOrEqual(0.35);
  for (const ink of inks) expect(LINE_STYLES[ink].stroke, ink).toBe('#000000');
  const rhythm = (ink: (typeof inks)[number]): readonly number[] => LINE_STYLES[ink].dash ?? [];
  inks.forEach((a, i) => {
    for (const b of inks.slice(i + 1)) {
      const [one, two] = [rhythm(a), rhythm(b)];
      // Ink and white of one repeat, mm: two strokes differ where either does by a third.
      const ink = (dash: readonly number[]) =>
        dash.filter((_, at) => at % 2 === 0).reduce((sum, each) => sum + each, 0);
      const all = (dash: readonly number[]) => dash.reduce((sum, each) => sum + each, 0);
      const differs = (x: number, y: number) => Math.abs(x - y) > Math.max(x, y) / 3;
      expect(
        one.length !== two.length || differs(ink(one), ink(two)) || differs(all(one), all(two)),
        `${a} and ${b}`,
      ).toBe(true);
    }
  });
});
