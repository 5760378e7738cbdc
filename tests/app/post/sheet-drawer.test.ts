import { expect, test } from 'vitest';
import { FIRST_COURSE } from '../../../src/app/file/first-course.ts';
import type { DrawingTold, DrawnSheet, SheetQuestion } from '../../../src/app/post/drawn-sheet.ts';
import { createSheetDrawer } from '../../../src/app/post/sheet-drawer.ts';

/** A drawer over workers that answer when they are told to. */
function bench() {
  const asked: SheetQuestion[] = [];
  const log: string[] = [];
  let tell: (told: DrawingTold) => void = () => undefined;
  const drawer = createSheetDrawer((answer) => {
    tell = answer;
    log.push('start');
    return { ask: (question) => asked.push(question), end: () => log.push('end') };
  });
  return { drawer, asked, log, answer: (told: DrawingTold) => tell(told) };
}

function question(sheet: string, title = 'Course'): SheetQuestion {
  return { course: { ...FIRST_COURSE, title }, sheet, options: { paper: 'letter', orientation: 'fit' } };
}

function drawing(about: string): DrawnSheet {
  return { kind: 'drawn', pages: [{ svg: ['', ''], width: 1, height: 1, about }], scale: null, substitutions: [] };
}

test('while one drawing is under way, of those wanted after it only the last is drawn, and each that is ready is shown', () => {
  const { drawer, asked, log, answer } = bench();
  const [first, second, third] = [question('pattern', 'a'), question('pattern', 'b'), question('pattern', 'c')];
  for (const each of [first, second, third]) drawer.want(each);
  expect(asked).toEqual([first]);
  answer({ drawn: drawing('a') });
  expect(drawer.state().shown?.of).toBe(first);
  expect(asked).toEqual([first, third]);
  answer({ drawn: drawing('c') });
  expect(drawer.state().shown?.of).toBe(third);
  expect(asked).toHaveLength(2);
  expect(log).toEqual(['start']);
});

test('a long drawing is given up when another sheet is wanted', () => {
  const { drawer, asked, log, answer } = bench();
  const [long, wanted] = [question('set-up'), question('pattern')];
  drawer.want(long);
  drawer.want(wanted);
  expect(log).toEqual(['start', 'end', 'start']);
  expect(asked).toEqual([long, wanted]);
  answer({ drawn: drawing('pattern') });
  expect(drawer.state().shown?.of).toBe(wanted);
});

test('what is shown already is not drawn again', () => {
  const { drawer, asked, answer } = bench();
  const first = question('pattern');
  drawer.want(first);
  answer({ drawn: drawing('a') });
  drawer.want({ ...first, options: { ...first.options } });
  expect(asked).toHaveLength(1);
  expect(drawer.state().wanted).toBe(first);
});

test('a failure is told, the pages from before stay, and it is tried again when that is asked for or something changes', () => {
  const { drawer, asked, log, answer } = bench();
  const [first, second] = [question('pattern', 'a'), question('pattern', 'b')];
  drawer.want(first);
  answer({ drawn: drawing('a') });
  drawer.want(second);
  answer({ failure: 'no memory' });
  expect(drawer.state()).toMatchObject({ failure: 'no memory', shown: { of: first } });
  expect(asked).toHaveLength(2);
  drawer.tryAgain();
  expect(asked).toEqual([first, second, second]);
  expect(log).toEqual(['start', 'end', 'start']);
  answer({ failure: 'no memory' });
  drawer.want(first);
  expect(drawer.state()).toMatchObject({ failure: null, wanted: first });
});
