import { describe, expect, test } from 'vitest';
import type { Course, Leg } from '../../src/core/course/course.ts';
import { changeLeg } from '../../src/core/course/edit-ride.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { writeCourse } from '../../src/core/files/write.ts';
import { survey } from '../../src/core/survey.ts';
import { designersCopy } from '../../src/sheets/copy.ts';
import { instructions, madeInstructions } from '../../src/sheets/instructions.ts';
import { pattern } from '../../src/sheets/pattern.ts';
import { staleWords, staleWordsWarning } from '../../src/sheets/stale-words.ts';
import { SEEDS } from './samples.ts';

const OWN = 'Jog the poles nicely.';
const COURSE = SEEDS['larkhollow-novice'] as Course;

function legs({ layouts, current }: Course): readonly Leg[] {
  return layouts.find(({ id }) => id === current)?.ride.legs ?? [];
}

/** The second leg in the designer's own words, written for what the course says now. */
function worded(): { readonly course: Course; readonly leg: string; readonly made: string } {
  const made = madeInstructions(survey(COURSE))[1];
  if (made === undefined) throw new Error('the starter has no second leg');
  return {
    course: changeLeg(COURSE, made.leg, { words: OWN, wordsFor: made.text }),
    leg: made.leg,
    made: made.text,
  };
}

describe('the designer’s own words', () => {
  test('are not stale while the course says what it said, and become so when it says something else', () => {
    const { course, leg, made } = worded();
    expect(staleWords(survey(course))).toEqual([]);
    const loped = changeLeg(course, leg, { gait: 'walk', approach: 'walk' });
    const now = madeInstructions(survey(loped))[1]?.text;
    expect(now).not.toBe(made);
    expect(staleWords(survey(loped))).toEqual([{ leg, number: 2, words: OWN, said: made, says: now }]);
    expect(instructions(survey(loped))[1]?.text).toBe(OWN);
  });

  test('are not stale again when the course comes back to what it said', () => {
    const { course, leg } = worded();
    const { gait, approach } = legs(course).find(({ id }) => id === leg) as Leg;
    const there = changeLeg(course, leg, { gait: 'walk', approach: 'walk' });
    expect(staleWords(survey(changeLeg(there, leg, { gait, approach })))).toEqual([]);
  });

  test('of a file that does not say what they were written for never are', () => {
    const { leg } = worded();
    const old = changeLeg(changeLeg(COURSE, leg, { words: OWN }), leg, { gait: 'walk', approach: 'walk' });
    expect(legs(old).find(({ id }) => id === leg)).not.toHaveProperty('wordsFor');
    expect(staleWords(survey(old))).toEqual([]);
  });

  test('are read from a file as they were written to it', () => {
    const { course, leg, made } = worded();
    const reading = readCourse(writeCourse(course));
    if (reading.kind === 'refused') throw new Error(reading.why);
    expect(legs(reading.course).find(({ id }) => id === leg)).toMatchObject({ words: OWN, wordsFor: made });
  });

  test('that are stale are on the designer’s copy with both sentences, and the pattern is as before', () => {
    const { course, leg, made } = worded();
    const changed = changeLeg(course, leg, { gait: 'walk', approach: 'walk' });
    const textOf = (sheet: typeof pattern) => {
      const drawn = sheet.draw(survey(changed), { paper: 'letter', orientation: 'fit' });
      if (drawn.kind === 'too-big') throw new Error(drawn.why);
      const marks = drawn.pages.flatMap((page) => page.marks);
      return marks
        .flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []))
        .join(' ')
        .replaceAll('\u00a0', ' ');
    };
    expect(textOf(designersCopy)).toContain('Own words to look at again (1)');
    expect(textOf(designersCopy)).toContain(made);
    expect(textOf(pattern)).toContain(OWN);
    expect(textOf(pattern)).not.toContain(made);
  });

  test('are warned of in one sentence', () => {
    const stale = { leg: 'a', number: 2, words: '', said: '', says: '' };
    expect(staleWordsWarning([])).toBe('');
    expect(staleWordsWarning([stale, { ...stale, number: 5 }])).toBe(
      'Instructions 2 and 5 are in the designer’s own words, and the course has changed since.',
    );
  });
});
