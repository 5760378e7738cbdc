/** The exhibitors' pattern: what covers what, counted by exact outlines, and its time beside a bare writer's. */
import { readdirSync, readFileSync } from 'node:fs';
import PDFDocument from 'pdfkit';
import type { Course } from '../../src/core/course/course.ts';
import { readCourse } from '../../src/core/files/read.ts';
import type { Mark } from '../../src/core/plane/mark.ts';
import { survey } from '../../src/core/survey.ts';
import { backingRadius } from '../../src/sheets/lettering.ts';
import { pattern } from '../../src/sheets/pattern.ts';
import { pdf } from '../../src/sheets/pdf.ts';
import { PAPERS, type Pages } from '../../src/sheets/sheet.ts';
import { FONTS } from '../sheets/fonts.ts';
import { percentile, type Row, row } from './row.ts';
import { overlapsOf } from './sheets/overlaps.ts';
import { randomCourse } from './sheets/random-courses.ts';

const RANDOM = 200;
const TIMES = 5;
const POINTS = 72 / 25.4;

const STARTERS: readonly Course[] = readdirSync('seeds/starters').flatMap((name) => {
  const reading = readCourse(readFileSync(`seeds/starters/${name}`, 'utf8'));
  return reading.kind === 'read' ? [reading.course] : [];
});

function pagesOf(course: Course, paper: (typeof PAPERS)[number]): Pages {
  const pages = pattern.draw(survey(course), { paper, orientation: 'fit' });
  if (pages.kind !== 'pages') throw new Error(pages.why);
  return pages;
}

function counted(name: string, all: readonly Pages[]): Row[] {
  const found = all.flatMap(({ pages }) => pages.map(({ marks }) => overlapsOf(marks)));
  const [covered, onLine] = [
    found.reduce((sum, each) => sum + each.overlaps.length, 0),
    found.reduce((sum, each) => sum + each.onLine.length, 0),
  ];
  const anchor = { anchor: 0, anchorName: 'goal' };
  return [
    row(`${name}, ${all.length} patterns: things that cover something`, 'pairs', { ours: covered, ...anchor }),
    row(`${name}, ${all.length} patterns: labels on the line of travel`, 'pairs', { ours: onLine, ...anchor }),
  ];
}

function paintBare(doc: InstanceType<typeof PDFDocument>, mark: Mark<'paper'>): void {
  if (mark.kind === 'words') {
    if (mark.backing === 'disc')
      doc.circle(mark.at.x * POINTS, mark.at.y * POINTS, backingRadius(mark) * POINTS).stroke();
    doc.font(mark.weight ?? 'regular').fontSize(mark.size * POINTS);
    doc.text(mark.text, mark.at.x * POINTS, mark.at.y * POINTS, { lineBreak: false });
    return;
  }
  if (mark.kind === 'disc') {
    doc.circle(mark.at.x * POINTS, mark.at.y * POINTS, mark.radius * POINTS).stroke();
    return;
  }
  const [first, ...rest] = mark.kind === 'line' ? mark.points : mark.ring;
  if (first === undefined) return;
  doc.moveTo(first.x * POINTS, first.y * POINTS);
  for (const at of rest) doc.lineTo(at.x * POINTS, at.y * POINTS);
  if (mark.kind === 'line') doc.stroke();
  else doc.fill();
}

/** The same primitives through the writer alone: nothing is laid out, placed or styled. */
function bare(pages: Pages): Promise<number> {
  return new Promise((resolve) => {
    const doc = new PDFDocument({ font: null as never, autoFirstPage: false, compress: false });
    let size = 0;
    doc.on('data', (chunk: Uint8Array) => {
      size += chunk.length;
    });
    doc.on('end', () => resolve(size));
    doc.registerFont('regular', FONTS.regular as never);
    doc.registerFont('bold', FONTS.bold as never);
    for (const page of pages.pages) {
      doc.addPage({ size: [page.width * POINTS, page.height * POINTS], margin: 0 });
      for (const mark of page.marks) paintBare(doc, mark);
    }
    doc.end();
  });
}

/** Processor time, ms: other work on the machine does not count. */
async function spent(run: () => Promise<unknown>): Promise<number> {
  const before = process.cpuUsage().user;
  await run();
  return (process.cpuUsage().user - before) / 1000;
}

async function times(): Promise<Row[]> {
  const [whole, placed, alone]: [number[], number[], number[]] = [[], [], []];
  for (let time = 0; time < TIMES; time += 1) {
    for (const course of STARTERS) {
      const facts = survey(structuredClone(course));
      let pages: Pages | undefined;
      const drawn = await spent(async () => {
        const asked = pattern.draw(facts, { paper: 'letter', orientation: 'fit' });
        if (asked.kind === 'pages') pages = asked;
      });
      const made = pages;
      if (made === undefined) continue;
      placed.push(drawn);
      whole.push(drawn + (await spent(() => pdf(made, FONTS))));
      alone.push(await spent(() => bare(made)));
    }
  }
  const anchor = { anchor: percentile(alone, 0.5), anchorName: 'pdfkit alone, same primitives' };
  return [
    row('a starter on Letter: layout, placing and file, median', 'ms', { ours: percentile(whole, 0.5), ...anchor }),
    row('a starter on Letter: layout and placing, median', 'ms', { ours: percentile(placed, 0.5), ...anchor }),
  ];
}

export async function rows(): Promise<Row[]> {
  return [
    ...counted(
      'starters',
      STARTERS.flatMap((course) => PAPERS.map((paper) => pagesOf(course, paper))),
    ),
    ...counted(
      'random courses',
      Array.from({ length: RANDOM }, (_, i) => pagesOf(randomCourse(i), 'letter')),
    ),
    ...(await times()),
  ];
}
