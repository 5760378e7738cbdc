import { describe, expect, test } from 'vitest';
import type { ChangeEnds } from '../../src/core/change/layout-change-over.ts';
import { layoutChangeOver } from '../../src/core/change/layout-change-over.ts';
import type { Course } from '../../src/core/course/course.ts';
import { changeOverPages } from '../../src/sheets/change-over.ts';
import { wordsBounds } from '../../src/sheets/lettering.ts';
import type { Page, PageOptions, Pages } from '../../src/sheets/sheet.ts';
import { DAY } from '../core/change/larkhollow-day.ts';
import { onPaper } from './on-paper.ts';

const LETTER: PageOptions = { paper: 'letter', orientation: 'fit' };
const AMATEUR_TO_OPEN = { from: 'amateur', to: 'open' };

function planned(course: Course, ends: ChangeEnds) {
  return layoutChangeOver(course, ends);
}

function pagesOf(ends: ChangeEnds, options = LETTER): Pages {
  const drawn = changeOverPages(DAY, { ...ends, plan: planned(DAY, ends), options });
  if (drawn.kind === 'too-big') throw new Error(drawn.why);
  return drawn;
}

function words({ marks }: Page): readonly string[] {
  return marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));
}

function textOf({ pages }: Pages): string {
  return pages.flatMap(words).join(' ');
}

describe('the crew’s sheet of a change-over', () => {
  const pages = pagesOf(AMATEUR_TO_OPEN);
  const plan = planned(DAY, AMATEUR_TO_OPEN);

  test('numbers every carry once on the drawing and once in words', () => {
    const discs = pages.pages[0].marks.flatMap((mark) =>
      mark.kind === 'words' && mark.backing === 'disc' ? [Number(mark.text.replace(/^[+−]/, ''))] : [],
    );
    const wanted = plan.carries.map(({ number }) => number);
    expect(discs.toSorted((a, b) => a - b)).toEqual(wanted);
    const listed = pages.pages.flatMap(words).filter((text) => /^\d+\.$/.test(text));
    expect(listed.map(Number.parseFloat).toSorted((a, b) => a - b)).toEqual(wanted);
  });

  test('draws each arrow from where a thing lies to where it goes, to scale', () => {
    const lines = pages.pages[0].marks.flatMap((mark) =>
      mark.kind === 'line' && mark.points.length === 2 ? [mark] : [],
    );
    const arrows = plan.carries.flatMap(({ from, to, pass }) =>
      from.kind === 'ground' && to.kind === 'ground' ? [{ from: from.load.pose, to: to.load.pose, pass }] : [],
    );
    expect(arrows.length).toBeGreaterThan(5);
    for (const { from, to, pass } of arrows) {
      const [start, end] = [onPaper(pages, from), onPaper(pages, to)];
      if (Math.hypot(end.x - start.x, end.y - start.y) < 2) continue;
      const own = lines.filter(({ points: [a, b] }) => {
        const isStart = a !== undefined && Math.hypot(a.x - start.x, a.y - start.y) < 1e-6;
        // The line ends inside the head.
        return isStart && b !== undefined && Math.hypot(b.x - end.x, b.y - end.y) < 2;
      });
      expect(own).toHaveLength(1);
      expect(own[0]?.dash === undefined).toBe(pass === 1);
    }
  });

  test('says what the truck gives and takes, who walks, and the cautions', () => {
    const text = textOf(pages);
    expect(text).toContain('Comes from it: ');
    expect(text).toContain('Goes to it: 4 × marker');
    expect(text).toContain('Pass 2, Team 1');
    expect(text).toContain('The times are estimates');
    expect(text).toContain('measured again before a horse goes in');
  });

  test.each(['letter', 'a4'] as const)('keeps its words on the paper (%s)', (paper) => {
    for (const { marks, width, height } of pagesOf(AMATEUR_TO_OPEN, { ...LETTER, paper }).pages) {
      for (const mark of marks) {
        if (mark.kind !== 'words') continue;
        const box = wordsBounds(mark);
        expect(box.minX, mark.text).toBeGreaterThanOrEqual(5);
        expect(box.maxX, mark.text).toBeLessThanOrEqual(width - 5);
        expect(box.maxY, mark.text).toBeLessThanOrEqual(height - 5);
      }
    }
  });

  test('keeps its scale as a promise: one that does not fit is refused with the nearest', () => {
    const drawn = changeOverPages(DAY, { ...AMATEUR_TO_OPEN, plan, options: { ...LETTER, scale: 50 } });
    expect(drawn.kind).toBe('too-big');
    if (drawn.kind !== 'too-big') return;
    expect(drawn.why).toContain('1:50');
    expect(pagesOf(AMATEUR_TO_OPEN, { ...LETTER, scale: drawn.nearest }).drawing?.scale).toBe(drawn.nearest);
  });

  test('sets out from the empty arena, and takes down into it', () => {
    const out = textOf(pagesOf({ from: null, to: 'novice' }));
    expect(out).toContain('From the empty arena to Novice pattern');
    expect(out).toContain('Goes to it: nothing');
    const down = textOf(pagesOf({ from: 'novice', to: null }));
    expect(down).toContain('From Novice pattern to the empty arena');
    expect(down).toContain('Comes from it: nothing');
  });

  test('says so where nothing has to be carried', () => {
    expect(textOf(pagesOf({ from: 'novice', to: 'novice' }))).toContain('Nothing has to be carried');
  });
});
