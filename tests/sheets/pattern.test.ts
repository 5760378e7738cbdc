import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { shiftByKeys } from '../../src/core/course/edit-obstacles.ts';
import { replaceLayout } from '../../src/core/course/layouts.ts';
import type { Bounds } from '../../src/core/plane/ring.ts';
import { survey } from '../../src/core/survey.ts';
import { SCALES } from '../../src/sheets/drawn-pages.ts';
import { smallObstacles } from '../../src/sheets/insets.ts';
import {
  backingRadius,
  CAP_HEIGHT,
  SMALLEST_FONT_SIZE,
  type WordsMark,
  wordsBounds,
} from '../../src/sheets/lettering.ts';
import { pattern } from '../../src/sheets/pattern.ts';
import type { Page, PageOptions, Pages } from '../../src/sheets/sheet.ts';
import { overlapsOf } from '../bench/sheets/overlaps.ts';
import { drawingOf, onPaper } from './on-paper.ts';
import { ended, SAMPLES, SEEDS } from './samples.ts';

const ASKS: readonly PageOptions[] = (['letter', 'a4'] as const).flatMap((paper) =>
  (['portrait', 'landscape', 'fit'] as const).map((orientation) => ({ paper, orientation })),
);

const COURSES: readonly (readonly [string, Course])[] = [
  ...Object.entries(SAMPLES),
  ...Object.entries(SAMPLES).map(([name, course]) => [`${name}, with an END mark`, ended(course)] as const),
  ...Object.entries(SEEDS),
];

const CASES = COURSES.flatMap(([name, course]) =>
  ASKS.map((ask) => [name, ask.paper, ask.orientation, course, ask] as const),
);

const drawn = new Map<string, Pages>();

/** The pages of a sample, drawn once for all the tests that look at them. */
function pagesFor(name: string, course: Course, ask: PageOptions): Pages {
  const key = `${name} ${ask.paper} ${ask.orientation}`;
  const pages = drawn.get(key) ?? pagesOf(course, ask);
  drawn.set(key, pages);
  return pages;
}

function pagesOf(course: Course, ask: PageOptions): Pages {
  const pages = pattern.draw(survey(course), ask);
  if (pages.kind !== 'pages') throw new Error(pages.why);
  return pages;
}

function wordsOf(page: Page): readonly WordsMark[] {
  return page.marks.filter((mark) => mark.kind === 'words');
}

/** What a mark of words covers, its disc included. */
function covers(mark: WordsMark): Bounds {
  if (mark.backing !== 'disc') return wordsBounds(mark);
  const radius = backingRadius(mark);
  const y = mark.at.y - (CAP_HEIGHT * mark.size) / 2;
  return { minX: mark.at.x - radius, maxX: mark.at.x + radius, minY: y - radius, maxY: y + radius };
}

function overlap(a: Bounds, b: Bounds): boolean {
  const touch = 0.01;
  return a.minX < b.maxX - touch && b.minX < a.maxX - touch && a.minY < b.maxY - touch && b.minY < a.maxY - touch;
}

interface Disc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly text: string;
}

function discsOf(page: Page): readonly Disc[] {
  return wordsOf(page)
    .filter(({ backing }) => backing === 'disc')
    .map((mark) => ({
      x: mark.at.x,
      y: mark.at.y - (CAP_HEIGHT * mark.size) / 2,
      radius: backingRadius(mark),
      text: mark.text,
    }));
}

function distanceToStroke({ x, y }: Disc, points: readonly { readonly x: number; readonly y: number }[]): number {
  let least = Number.POSITIVE_INFINITY;
  points.slice(1).forEach((b, index) => {
    const a = points[index] ?? b;
    const square = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / square));
    least = Math.min(least, Math.hypot(a.x + (b.x - a.x) * t - x, a.y + (b.y - a.y) * t - y));
  });
  return least;
}

const TRAVEL = new Set(['walk', 'jog', 'lope', 'back', 'side-pass', 'work']);

describe('the exhibitors’ pattern', () => {
  test.each(CASES)('%s on %s %s has no words over words or over the edge', (name, _, __, course, ask) => {
    for (const page of pagesFor(name, course, ask).pages) {
      const words = wordsOf(page);
      expect(words.length).toBeGreaterThan(3);
      words.forEach((mark, index) => {
        const box = covers(mark);
        expect(box.minX, mark.text).toBeGreaterThanOrEqual(5.5);
        expect(box.maxX, mark.text).toBeLessThanOrEqual(page.width - 5.5);
        expect(box.minY, mark.text).toBeGreaterThanOrEqual(5.5);
        expect(box.maxY, mark.text).toBeLessThanOrEqual(page.height - 5.5);
        const under = words.slice(0, index).find((other) => overlap(covers(other), box));
        expect(under?.text, `under “${mark.text}”`).toBeUndefined();
      });
    }
  });

  test.each(CASES)('%s on %s %s reads at arm’s length', (name, _, __, course, ask) => {
    const words = pagesFor(name, course, ask).pages.flatMap(wordsOf);
    expect(Math.min(...words.map(({ size }) => size))).toBeGreaterThanOrEqual(SMALLEST_FONT_SIZE);
    const numbers = words.filter(({ backing }) => backing === 'disc');
    for (const { size } of numbers) expect(size).toBeGreaterThanOrEqual(3.5);
  });

  test.each(CASES)(
    '%s on %s %s has each number of the go once, clear of pieces and line',
    (_, __, ___, course, ask) => {
      const posted = pagesOf(course, ask);
      const { pages } = posted;
      const facts = survey(course);
      const discs = discsOf(pages[0]);
      const numbers = discs.map(({ text }) => Number(text)).sort((a, b) => a - b);
      const here = (drawingOf(posted).insets ?? []).filter(({ page }) => page === undefined);
      const again = here.flatMap(({ obstacle }) => facts.numbers.get(obstacle) ?? []);
      const once = facts.layout.ride.legs.map((__, index) => index + 1);
      expect(numbers).toEqual([...once, ...again].sort((a, b) => a - b));
      const rings = facts.pieces.map(({ footprint }) => footprint.map((corner) => onPaper(posted, corner)));
      const lines = pages[0].marks.flatMap((mark) =>
        mark.kind === 'line' && TRAVEL.has(mark.ink) ? [mark.points] : [],
      );
      for (const disc of discs) {
        for (const ring of rings) {
          const [first = { x: 0, y: 0 }] = ring;
          expect(distanceToStroke(disc, [...ring, first]), disc.text).toBeGreaterThan(disc.radius);
        }
        for (const line of lines) expect(distanceToStroke(disc, line), disc.text).toBeGreaterThan(disc.radius);
      }
    },
  );

  test.each(COURSES)('%s takes the largest of the usual scales at which it fits one page', (name, course) => {
    for (const ask of ASKS) {
      const { scale } = drawingOf(pagesFor(name, course, ask));
      expect(SCALES).toContain(scale);
      for (const larger of SCALES.filter((each) => each < scale).slice(-2)) {
        const tried = pattern.draw(survey(course), { ...ask, scale: larger });
        if (tried.kind === 'too-big') continue;
        // The words would go overleaf, or what is small would have no room to be drawn again.
        const small = smallObstacles(survey(course), larger).length;
        const isWhole = (drawingOf(tried).insets ?? []).length === small;
        expect(tried.pages.length === 1 && isWhole, `1:${larger}`).toBe(false);
      }
    }
  });

  test('turns a long arena a quarter on a portrait page and says so', () => {
    const course = SAMPLES['20 x 60 m'] as Course;
    expect(drawingOf(pagesOf(course, { paper: 'a4', orientation: 'portrait' })).origin.turned).toBe(true);
    expect(drawingOf(pagesOf(course, { paper: 'a4', orientation: 'landscape' })).origin.turned).toBe(false);
  });

  test('keeps a scale that is asked for, or says why not and which is nearest', () => {
    const facts = survey(SAMPLES['100 x 200 ft'] as Course);
    const ask = { paper: 'letter', orientation: 'portrait' } as const;
    expect(pattern.draw(facts, { ...ask, scale: 400 })).toMatchObject({ kind: 'pages', drawing: { scale: 400 } });
    expect(pattern.draw(facts, { ...ask, scale: 100 })).toEqual({
      kind: 'too-big',
      why: 'At 1:100 the arena is 610 × 305 mm on paper, more than Letter has room for. 1:300 fits.',
      nearest: 300,
    });
    expect(pattern.draw(facts, { ...ask, scale: 300 }).kind).toBe('pages');
  });

  test('prints no dimension of a gap', () => {
    const pages = pagesOf(SAMPLES['100 x 200 ft'] as Course, { paper: 'letter', orientation: 'fit' });
    const texts = pages.pages.flatMap(wordsOf).map(({ text }) => text);
    expect(texts.filter((text) => /\d+\s*(['"′″]|in\b)/.test(text))).toEqual([]);
  });

  test('shows in its legend the gaits that occur and no others', () => {
    const course = SAMPLES['100 x 200 ft'] as Course;
    const words = (each: Course) =>
      pagesOf(each, { paper: 'letter', orientation: 'fit' })
        .pages.flatMap(wordsOf)
        .map(({ text }) => text);
    for (const name of ['Walk', 'Jog', 'Lope', 'Back', 'Side pass']) expect(words(course)).toContain(name);
    const walked = replaceLayout(course, (layout) => ({
      ...layout,
      ride: {
        ...layout.ride,
        legs: layout.ride.legs.slice(0, 2).map((leg) => ({ ...leg, gait: 'walk', approach: 'walk' })),
      },
    }));
    expect(words(walked)).toContain('Walk');
    for (const name of ['Jog', 'Lope', 'Back', 'Side pass']) expect(words(walked)).not.toContain(name);
  });

  test('runs on to further pages when the words are many, and loses none', () => {
    const long =
      'Pause, breathe, look up, and ride on over every pole that lies before you, quietly and without haste.';
    const course = replaceLayout(SAMPLES['100 x 200 ft'] as Course, (layout) => ({
      ...layout,
      ride: {
        ...layout.ride,
        legs: layout.ride.legs.map((leg, index) => ({ ...leg, words: `${long} ${long} ${long} Number ${index + 1}!` })),
      },
    }));
    const { pages } = pagesOf(course, { paper: 'letter', orientation: 'landscape' });
    expect(pages.length).toBeGreaterThan(1);
    const text = pages.flatMap(wordsOf).map((mark) => mark.text.replaceAll('\u00a0', ' '));
    const all = text.join(' ');
    for (let number = 1; number <= 8; number += 1) expect(all).toContain(`Number ${number}!`);
    expect(text).toContain(`Page 2 of ${pages.length}`);
  });

  test('draws what lies outside the arena too', () => {
    const base = SAMPLES['100 x 200 ft'] as Course;
    const course = shiftByKeys(base, ['bridge-1'], 0, 20);
    const pages = pagesOf(course, { paper: 'letter', orientation: 'fit' });
    for (const mark of pages.pages[0].marks) {
      if (mark.kind !== 'area') continue;
      for (const { x, y } of mark.ring) {
        expect(x).toBeGreaterThan(5);
        expect(x).toBeLessThan(pages.pages[0].width - 5);
        expect(y).toBeGreaterThan(5);
        expect(y).toBeLessThan(pages.pages[0].height - 5);
      }
    }
  });

  test('says what it is without a class, a show or a date', () => {
    const pages = pagesOf(blankCourse({ title: 'Tuesday practice' }), { paper: 'a4', orientation: 'fit' });
    expect(pages.title).toBe('Pattern: Tuesday practice');
    expect(pages.pages.flatMap(wordsOf).map(({ text }) => text)).toContain('Tuesday practice');
  });

  test('shows the judge where the arena says, clear of everything, and none where it says nothing', () => {
    const course = SAMPLES['100 x 200 ft'] as Course;
    const ask = { paper: 'letter', orientation: 'fit' } as const;
    const judged = { ...course, arena: { ...course.arena, judge: { x: 30, y: 24 } } };
    const texts = (each: Course) =>
      pagesOf(each, ask)
        .pages.flatMap(wordsOf)
        .map(({ text }) => text);
    expect(texts(judged)).toContain('Judge');
    expect(texts(course)).not.toContain('Judge');
    const pages = pagesOf(judged, ask);
    const at = onPaper(pages, { x: 30, y: 24 });
    const sign = pages.pages[0].marks.find(
      (mark) => mark.kind === 'line' && mark.ink === 'words' && mark.points.length === 5 && mark.width === 0.35,
    );
    if (sign?.kind !== 'line') throw new Error('the judge has no sign');
    const xs = sign.points.map(({ x }) => x);
    expect((Math.min(...xs) + Math.max(...xs)) / 2).toBeCloseTo(at.x, 6);
    expect(pages.pages.flatMap(({ marks }) => overlapsOf(marks).overlaps)).toEqual([]);
  });

  test('writes the gaps and adds a plain drawing where that is asked for', () => {
    const course = SAMPLES['100 x 200 ft'] as Course;
    const ask = { paper: 'letter', orientation: 'fit' } as const;
    const texts = (chosen: Readonly<Record<string, string>>) =>
      pagesOf(course, { ...ask, chosen }).pages.map((page) => wordsOf(page).map(({ text }) => text));
    expect(texts({ dimensions: 'gaps' }).flat()).toContain("3 × 3'");
    const plain = texts({ drawing: 'plain' });
    expect(plain.length).toBe(texts({ drawing: 'signs' }).length + 1);
    const last = plain.at(-1) ?? [];
    expect(last).toContain(`Page ${plain.length} of ${plain.length}`);
    expect(last).not.toContain('halt');
    expect(plain[0]).toContain(`Page 1 of ${plain.length}`);
  });
});
