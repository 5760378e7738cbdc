import { csvParse, csvParseRows } from 'd3-dsv';
import { describe, expect, test } from 'vitest';
import type { Course } from '../../../src/core/course/course.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { survey } from '../../../src/core/survey.ts';
import { csvFormat } from '../../../src/sheets/formats/csv-format.ts';
import { pattern } from '../../../src/sheets/pattern.ts';
import { SEEDS } from '../samples.ts';
import { LETTER, RESOURCES, UNWATCHED } from './resources.ts';

async function written(course: Course): Promise<{ readonly name: string; readonly text: string }> {
  const sheets = [{ sheet: pattern, options: LETTER }] as const;
  const files = await csvFormat.write({ course, sheets, dpi: 150 }, RESOURCES, UNWATCHED);
  if ('kind' in files || files[0] === undefined) throw new Error('no file');
  // A decoder that leaves the byte order mark where it is.
  return { name: files[0].name, text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(files[0].bytes) };
}

function seed(name: string): Course {
  const course = SEEDS[name];
  if (course === undefined) throw new Error(`the starter ${name} is missing`);
  return course;
}

describe('the table of pieces', () => {
  test.each(Object.entries(SEEDS))(
    'has both ends of every long piece within a tenth of a millimetre: %s',
    async (_, course) => {
      const { text } = await written(course);
      const rows = csvParse(text.slice(1));
      const { pieces, numbers } = survey(course);
      expect(rows.map((row) => row.Piece)).toEqual(pieces.map(({ key }) => key));
      for (const [i, { figure, pose, kind, obstacle }] of pieces.entries()) {
        const row = rows[i] ?? {};
        expect(row['Number in the go']).toBe((numbers.get(obstacle) ?? []).join(', '));
        const [c, s] = [Math.cos(pose.angle), Math.sin(pose.angle)];
        const half = kind.extent === 'small' ? 0 : figure.length / 2;
        const off = [
          Number(row['First end x (m)']) - (pose.x - c * half),
          Number(row['First end y (m)']) - (pose.y - s * half),
          ...(kind.extent === 'small'
            ? [Number(row['Second end x (m)'])]
            : [
                Number(row['Second end x (m)']) - (pose.x + c * half),
                Number(row['Second end y (m)']) - (pose.y + s * half),
              ]),
        ];
        for (const each of off) expect(Math.abs(each)).toBeLessThan(0.0001);
        if (course.unit === 'ft') {
          expect(Math.abs(Number(row['Length (ft)']) * 0.3048 - figure.length)).toBeLessThan(0.0001);
        }
      }
    },
  );

  test('opens in spreadsheets as it is: UTF-8 by its mark, lines and cells of one number', async () => {
    const { name, text } = await written(seed('larkhollow-novice'));
    expect(name).toBe('saturday-novice-trail-pieces.csv');
    expect(text.startsWith('\uFEFFNumber in the go,')).toBe(true);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const widths = new Set(csvParseRows(text).map((row) => row.length));
    expect(widths.size).toBe(1);
  });

  test('has no feet where the course is in metres', async () => {
    expect((await written(seed('larkhollow-indoor'))).text).not.toContain('(ft)');
  });

  test('makes cells safe that a spreadsheet would work out, and leaves numbers alone', async () => {
    const named = replaceLayout(seed('larkhollow-novice'), (layout) => ({
      ...layout,
      obstacles: layout.obstacles.map((each, i) => ({
        ...each,
        name: i === 0 ? '=HYPERLINK("http://trail.example")' : 'Gate, "the\nnew"',
        pose: { ...each.pose, x: each.pose.x - 60 },
      })),
    }));
    const rows = csvParse((await written(named)).text.slice(1));
    expect(rows[0]?.Obstacle).toBe('\'=HYPERLINK("http://trail.example")');
    expect(rows.at(-1)?.Obstacle).toBe('Gate, "the\nnew"');
    const numbers = rows.map((row) => row['First end x (m)'] ?? '');
    expect(numbers.some((each) => each.startsWith('-'))).toBe(true);
    for (const each of numbers) expect(each).toMatch(/^-?\d+(\.\d+)?$/);
  });
});
