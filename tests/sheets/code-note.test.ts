import jsqr from 'jsqr';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import type { Course } from '../../src/core/course/course.ts';
import { courseLink } from '../../src/core/files/course-link.ts';
import { survey } from '../../src/core/survey.ts';
import { painter } from '../../src/sheets/formats/picture.ts';
import { pattern } from '../../src/sheets/pattern.ts';
import type { PageOptions, Pages } from '../../src/sheets/sheet.ts';
import { LETTER, RESOURCES } from './formats/resources.ts';
import { SEEDS } from './samples.ts';

const BASE = 'https://trail.example/';
const LINKED: PageOptions = { ...LETTER, linkBase: BASE };

function drawn(course: Course, options: PageOptions): Pages {
  const pages = pattern.draw(survey(course), options);
  if (pages.kind === 'too-big') throw new Error(pages.why);
  return pages;
}

function words(pages: Pages): string {
  const marks = pages.pages.flatMap((page) => page.marks);
  return marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : [])).join(' ');
}

/** What an independent reader finds on each page of 300 dots in an inch. */
async function scanned(pages: Pages): Promise<readonly (string | undefined)[]> {
  const { png } = await painter(RESOURCES);
  return pages.pages.map((page) => {
    const { data, width, height } = PNG.sync.read(Buffer.from(png(page, 300)));
    return jsqr(new Uint8ClampedArray(data), width, height)?.data;
  });
}

function seed(name: string): Course {
  const course = SEEDS[name];
  if (course === undefined) throw new Error(`the starter ${name} is missing`);
  return course;
}

describe('the code on a pattern', () => {
  test.each(['larkhollow-novice', 'larkhollow-open'])(
    'is read from the whole page and opens the course: %s',
    async (name) => {
      const pages = drawn(seed(name), LINKED);
      expect(await scanned(pages)).toContain(courseLink(seed(name), BASE));
      expect(words(pages)).toContain('Scan this code');
    },
  );

  test('is left out where nobody asked for it, and where there is no address', () => {
    const without = drawn(seed('larkhollow-novice'), LETTER);
    expect(words(without)).not.toContain('Scan');
    expect(drawn(seed('larkhollow-novice'), { ...LINKED, chosen: { code: 'no' } }).pages).toEqual(without.pages);
  });

  test('is told as missing where it would be too fine', () => {
    const notes = Array.from({ length: 400 }, (_, i) => String.fromCodePoint(0x100 + ((i * 7919) % 300))).join('');
    const course = { ...seed('larkhollow-novice'), notes: `${notes} ${[...notes].reverse().join('')}` };
    const text = words(drawn(course, LINKED));
    expect(text).toContain('This course has no code for a phone');
    expect(text).not.toContain('Scan this code');
  });
});
