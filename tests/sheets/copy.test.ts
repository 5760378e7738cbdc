import { describe, expect, test } from 'vitest';
import { closerFindingsOf } from '../../src/core/checks/checks.ts';
import { waiveFinding } from '../../src/core/checks/results/waived.ts';
import type { Course } from '../../src/core/course/course.ts';
import { survey } from '../../src/core/survey.ts';
import { designersCopy } from '../../src/sheets/copy.ts';
import { wordsBounds } from '../../src/sheets/lettering.ts';
import { pattern } from '../../src/sheets/pattern.ts';
import { pdf } from '../../src/sheets/pdf.ts';
import type { PageOptions, Pages } from '../../src/sheets/sheet.ts';
import { sheetById } from '../../src/sheets/sheets.ts';
import { FONTS } from './fonts.ts';
import { wordBoxes } from './read-pdf.ts';
import { SEEDS } from './samples.ts';

const ASK: PageOptions = { paper: 'letter', orientation: 'fit' };
const FAULTY = seed('practice-with-faults');

function seed(name: string): Course {
  const course = SEEDS[name];
  if (course === undefined) throw new Error(`there is no seed ${name}`);
  return course;
}

function drawn(course: Course, ask: PageOptions = ASK): Pages {
  const pages = designersCopy.draw(survey(course), ask);
  if (pages.kind !== 'pages') throw new Error(pages.why);
  return pages;
}

/** The pages after those of the pattern, as one text. */
function textOf(course: Course, ask: PageOptions = ASK): string {
  const before = pattern.draw(survey(course), ask);
  const from = before.kind === 'pages' ? before.pages.length : 0;
  const marks = drawn(course, ask)
    .pages.slice(from)
    .flatMap((page) => page.marks);
  return marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : [])).join(' ');
}

describe('the designer’s copy', () => {
  test('begins with the pattern as it is posted', () => {
    const posted = pattern.draw(survey(FAULTY), ASK);
    if (posted.kind !== 'pages') throw new Error(posted.why);
    const copy = drawn(FAULTY);
    expect(copy.pages.slice(0, posted.pages.length)).toEqual(posted.pages);
    expect(copy.drawing).toEqual(posted.drawing);
    expect(copy.pages.length).toBeGreaterThan(posted.pages.length);
  });

  test('tells every finding with its source, and who decides', () => {
    const text = textOf(FAULTY);
    const findings = closerFindingsOf(survey(FAULTY));
    expect(findings.length).toBeGreaterThan(10);
    for (const { says, source } of findings) {
      expect(text).toContain(says);
      expect(text).toContain(source);
    }
    expect(text).toContain('the show’s officials and the judge decide');
    expect(text).toContain('What this book does not say');
  });

  test('prints a waiver with its reason, apart from what is open', () => {
    const [first] = closerFindingsOf(survey(FAULTY));
    if (first === undefined) throw new Error('the faulty course has no findings');
    expect(textOf(FAULTY)).not.toContain('Waived');
    const text = textOf(waiveFinding(FAULTY, first.id, 'The steward asked for it'));
    expect(text).toContain('Waived by the designer (1)');
    expect(text).toContain(`${first.says} Waived, because: The steward asked for it.`);
    expect(text.indexOf(first.says)).toBeGreaterThan(text.indexOf('Waived by the designer'));
  });

  test('says so when nothing is open', () => {
    expect(textOf(seed('larkhollow-amateur'))).toContain('Nothing is open.');
  });

  test.each(Object.keys(SEEDS))('%s keeps every word inside the margins on both papers', (name) => {
    for (const paper of ['letter', 'a4'] as const) {
      for (const page of drawn(seed(name), { paper, orientation: 'fit' }).pages) {
        for (const mark of page.marks) {
          if (mark.kind !== 'words') continue;
          const box = wordsBounds(mark);
          expect(box.maxY, mark.text).toBeLessThanOrEqual(page.height - 5.5);
          expect(box.maxX, mark.text).toBeLessThanOrEqual(page.width - 5.5);
        }
      }
    }
  });

  test('is found by its id, and a file can be read back', async () => {
    const sheet = sheetById('copy');
    expect(sheet).toBe(designersCopy);
    const [first] = closerFindingsOf(survey(FAULTY));
    const course = waiveFinding(FAULTY, first?.id ?? '', 'The steward asked for it');
    const pages = drawn(course);
    const bytes = await pdf(pages, FONTS);
    const texts = wordBoxes(bytes).map((page) => page.map(({ text }) => text).join(' '));
    expect(texts).toHaveLength(pages.pages.length);
    expect(texts.join(' ')).toContain('The steward asked for it');
  });
});
