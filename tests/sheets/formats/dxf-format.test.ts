import DxfParser from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import type { Course } from '../../../src/core/course/course.ts';
import { pathLength, poseAt } from '../../../src/core/plane/path.ts';
import { survey } from '../../../src/core/survey.ts';
import { dxfFormat } from '../../../src/sheets/formats/dxf-format.ts';
import { pattern } from '../../../src/sheets/pattern.ts';
import { SEEDS } from '../samples.ts';
import { LETTER, RESOURCES, UNWATCHED } from './resources.ts';

async function written(course: Course): Promise<string> {
  const sheets = [{ sheet: pattern, options: LETTER }] as const;
  const files = await dxfFormat.write({ course, sheets, dpi: 150 }, RESOURCES, UNWATCHED);
  if ('kind' in files || files[0] === undefined) throw new Error('no file');
  return new TextDecoder().decode(files[0].bytes);
}

interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}
/** What the reader gives of an entity; its own types have one interface for each kind. */
interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly vertices?: readonly Vertex[];
  readonly shape?: boolean;
  readonly text?: string;
  readonly center?: Vertex;
  readonly radius?: number;
}

async function readBack(course: Course): Promise<{ readonly entities: readonly Entity[]; readonly metre: number }> {
  const read = new DxfParser().parseSync(await written(course));
  if (read === null) throw new Error('the reader found no drawing');
  const unit = read.header.$INSUNITS;
  expect(unit).toBe(course.unit === 'ft' ? 1 : 6);
  return { entities: read.entities as unknown as readonly Entity[], metre: unit === 1 ? 1 / 0.0254 : 1 };
}

/** Length of a polyline with bulges, in the unit of the file. */
function lengthOf(vertices: readonly Vertex[]): number {
  return vertices.slice(1).reduce((sum, to, i) => {
    const from = vertices[i] ?? to;
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    const sweep = 4 * Math.atan(from.bulge ?? 0);
    return sum + (sweep === 0 ? chord : (chord * (sweep / 2)) / Math.sin(sweep / 2));
  }, 0);
}

/** A tenth of a millimetre. */
const TENTH = 0.0001;

describe('the drawing for CAD', () => {
  test.each(Object.entries(SEEDS))(
    'has every corner of every pole within a tenth of a millimetre: %s',
    async (_, course) => {
      const { entities, metre } = await readBack(course);
      const { pieces } = survey(course);
      const poles = pieces.filter(({ kind }) => kind.id === 'pole');
      const drawn = entities.filter(({ layer }) => layer === 'POLES');
      expect(drawn).toHaveLength(poles.length);
      for (const [i, { footprint }] of poles.entries()) {
        expect(drawn[i]?.shape).toBe(true);
        const corners = drawn[i]?.vertices ?? [];
        expect(corners).toHaveLength(4);
        for (const [k, at] of footprint.entries()) {
          const there = corners[k] ?? { x: Number.NaN, y: Number.NaN };
          expect(Math.hypot(there.x / metre - at.x, there.y / metre - at.y)).toBeLessThan(TENTH);
        }
      }
      const others = entities.filter(({ layer }) => ['MARKERS', 'GATE', 'OTHER-THINGS'].includes(layer));
      expect(others).toHaveLength(pieces.length - poles.length);
    },
  );

  test.each(Object.entries(SEEDS))('has the line of travel exact, by gaits: %s', async (_, course) => {
    const { entities, metre } = await readBack(course);
    const { line } = survey(course);
    const runs = entities.filter(({ layer }) => layer.startsWith('LINE-'));
    const drawn = runs.reduce((sum, { vertices = [] }) => sum + lengthOf(vertices), 0);
    const ridden = line.elements.reduce((sum, { path, length }) => sum + (length > 0 ? pathLength(path) : 0), 0);
    expect(Math.abs(drawn / metre - ridden)).toBeLessThan(TENTH);
    expect(runs.some(({ vertices = [] }) => vertices.some(({ bulge = 0 }) => bulge !== 0))).toBe(true);
    // The middle of every arc lies on the line: a bulge to the wrong hand has the right length and another middle.
    const points = line.elements.flatMap(({ path, length }) =>
      length > 0 ? Array.from({ length: 400 }, (_, i) => poseAt(path, (pathLength(path) * i) / 399)) : [],
    );
    for (const { vertices = [] } of runs) {
      for (const [i, from] of vertices.entries()) {
        const to = vertices[i + 1];
        const { bulge = 0 } = from;
        if (to === undefined || bulge === 0) continue;
        const x = ((from.x + to.x) / 2 + (bulge * (to.y - from.y)) / 2) / metre;
        const y = ((from.y + to.y) / 2 - (bulge * (to.x - from.x)) / 2) / metre;
        expect(Math.min(...points.map((at) => Math.hypot(at.x - x, at.y - y)))).toBeLessThan(0.05);
      }
    }
    const walked = line.elements.some(({ move, gait, length }) => move === 'ride' && gait === 'walk' && length > 0);
    expect(runs.some(({ layer }) => layer === 'LINE-WALK')).toBe(walked);
  });

  test('numbers the obstacles, tapes the gaps on the line and names the way in', async () => {
    const course = SEEDS['larkhollow-novice'];
    if (course === undefined) throw new Error('the novice starter is missing');
    const { entities } = await readBack(course);
    const words = (layer: string) => entities.flatMap((each) => (each.layer === layer ? (each.text ?? []) : []));
    expect(words('NUMBERS')).toEqual(expect.arrayContaining(['1', '7', 'START', 'END']));
    expect(words('WALLS')).toEqual(['Entrance']);
    expect(words('DIMENSIONS').length).toBeGreaterThanOrEqual(survey(course).line.gaps.length);
    expect(words('DIMENSIONS')).toContain('3\' 3"');
  });

  test('is the same bytes each time', async () => {
    const course = SEEDS['larkhollow-indoor'];
    if (course === undefined) throw new Error('the indoor starter is missing');
    expect(await written(course)).toBe(await written(course));
  });
});
