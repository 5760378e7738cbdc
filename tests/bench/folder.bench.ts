/** The folder of a course of ten obstacles, from the course to its bytes, beside the same sheets as a file each. */
import { readFileSync } from 'node:fs';
import type { Course } from '../../src/core/course/course.ts';
import { readCourse } from '../../src/core/files/read.ts';
import type { ExportFormat } from '../../src/sheets/formats/format.ts';
import { EXPORT_FORMATS } from '../../src/sheets/formats/formats.ts';
import type { PageOptions } from '../../src/sheets/sheet.ts';
import { SHEETS } from '../../src/sheets/sheets.ts';
import { FONTS } from '../sheets/fonts.ts';
import { percentile, type Row, row } from './row.ts';

const RUNS = 5;
const options: PageOptions = { paper: 'letter', orientation: 'fit' };

function tenObstacles(): Course {
  const reading = readCourse(readFileSync('seeds/starters/larkhollow-open.course.json', 'utf8'));
  if (reading.kind === 'refused') throw new Error(reading.why);
  return reading.course;
}

function formatThat(is: (format: ExportFormat) => boolean): ExportFormat {
  const found = EXPORT_FORMATS.find(is);
  if (found === undefined) throw new Error('folder bench: there is such a format');
  return found;
}

/** Milliseconds of each run; the course is a new one each time, so that nothing of it is known from before. */
async function runs(format: ExportFormat, course: Course): Promise<readonly number[]> {
  const took: number[] = [];
  for (let i = 0; i < RUNS; i += 1) {
    const [first, ...rest] = SHEETS.map((sheet) => ({ sheet, options }));
    if (first === undefined) throw new Error('folder bench: there is a sheet');
    const job = { course: structuredClone(course), sheets: [first, ...rest], dpi: 150 } as const;
    const begun = performance.now();
    const made = await format.write(job, { fonts: async () => FONTS } as never, { step() {} });
    took.push(performance.now() - begun);
    if ('kind' in made) throw new Error(made.why);
  }
  return took;
}

export async function rows(): Promise<Row[]> {
  const course = tenObstacles();
  const single = await runs(
    formatThat(({ ending, binds }) => ending === 'pdf' && binds === undefined),
    course,
  );
  const bound = await runs(
    formatThat(({ binds }) => binds === 'class'),
    course,
  );
  const name = `folder of ${course.layouts[0].obstacles.length} obstacles, ${SHEETS.length} sheets`;
  const anchorName = 'a file for each sheet';
  return [
    row(`${name}, p50`, 'ms', { ours: percentile(bound, 0.5), anchor: percentile(single, 0.5), anchorName }),
    row(`${name}, worst of ${RUNS}`, 'ms', { ours: percentile(bound, 1), anchor: percentile(single, 1), anchorName }),
  ];
}
