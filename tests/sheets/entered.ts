/** Courses of the demo show with a list of entries, for the tests of the sheets about who rides when. */
import type { Course } from '../../src/core/course/course.ts';
import { addEntries, type NewEntry, startClass } from '../../src/core/course/edit-entries.ts';
import { boundsIntersect } from '../../src/core/plane/ring.ts';
import { type WordsMark, wordsBounds } from '../../src/sheets/lettering.ts';
import type { Page, Pages } from '../../src/sheets/sheet.ts';
import { SEEDS } from './samples.ts';

const RIDERS = ['Wren Halden', 'Oda Fenn', 'Ines Marrow', 'Tamsin Roe-Carrington', 'Piet Aldous'];
const HORSES = ['Biscuit', 'Sir Reginald of the Lower Meadow', 'Moss', 'Plain Jane'];

/** The open class with so many entries, the fifth scratched and the eighth five minutes late; from half past nine. */
export function entered(count: number, change: (i: number) => Partial<NewEntry> = () => ({})): Course {
  const course = SEEDS['larkhollow-open'];
  if (course === undefined) throw new Error('the starter larkhollow-open is gone');
  const list = Array.from(
    { length: count },
    (_, i): NewEntry => ({
      number: String(101 + i),
      rider: `${RIDERS[i % RIDERS.length]} (${i + 1})`,
      horse: HORSES[i % HORSES.length] ?? '',
      ...(i === 4 ? { scratched: true } : {}),
      ...(i === 7 ? { late: 300 } : {}),
      ...change(i),
    }),
  );
  return startClass(addEntries(course, list), 9.5 * 3600);
}

export function wordsOn({ marks }: Page): readonly WordsMark[] {
  return marks.filter((mark): mark is WordsMark => mark.kind === 'words');
}

/** The texts of all pages, joined. */
export function textOf({ pages }: Pages): string {
  return pages.flatMap((page) => wordsOn(page).map(({ text }) => text)).join('\n');
}

/** What is wrong with where the words stand: off the paper, too small, or one on another. */
export function misplaced({ pages }: Pages): readonly string[] {
  return pages.flatMap((page, number) => {
    const words = wordsOn(page);
    return words.flatMap((mark, i) => {
      const box = wordsBounds(mark);
      const isOff = box.minX < 4 || box.minY < 4 || box.maxX > page.width - 4 || box.maxY > page.height - 4;
      const struck = words.slice(i + 1).filter((other) => boundsIntersect(box, wordsBounds(other), -0.05));
      return [
        ...(isOff ? [`page ${number + 1}: "${mark.text}" is off the paper`] : []),
        ...(mark.size < 3.2 ? [`page ${number + 1}: "${mark.text}" is set at ${mark.size} mm`] : []),
        ...struck.map(({ text }) => `page ${number + 1}: "${mark.text}" is on "${text}"`),
      ];
    });
  });
}
