/** Every picture of the gallery, from the functions that the tests and the program use. */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { givenOrder } from '../../src/core/change/day-order.ts';
import { dayProblem } from '../../src/core/change/day-problem.ts';
import { crewChange, layoutChangeOver } from '../../src/core/change/layout-change-over.ts';
import { findingsOf } from '../../src/core/checks/checks.ts';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import type { ObstacleKind } from '../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { completeValues, type Values } from '../../src/core/pieces/params.ts';
import type { PieceKind } from '../../src/core/pieces/piece.ts';
import { PIECE_KINDS } from '../../src/core/pieces/pieces.ts';
import type { Mark } from '../../src/core/plane/mark.ts';
import { ORIGIN } from '../../src/core/plane/pose.ts';
import { type Bounds, ringBounds, unionBounds } from '../../src/core/plane/ring.ts';
import { type Survey, survey } from '../../src/core/survey.ts';
import { changeOverPages } from '../../src/sheets/change-over.ts';
import { comparisonPages } from '../../src/sheets/comparison.ts';
import { dayPages } from '../../src/sheets/day.ts';
import { drawing } from '../../src/sheets/drawing.ts';
import { extent, pieceMarks } from '../../src/sheets/ground.ts';
import { markOnPaper } from '../../src/sheets/paper-transform.ts';
import type { Page, PageOptions, Pages, Paper, TooBig } from '../../src/sheets/sheet.ts';
import { SHEETS } from '../../src/sheets/sheets.ts';
import { svg } from '../../src/sheets/svg.ts';
import { runMarks, runsOf } from '../../src/sheets/travel.ts';
import { SAMPLES } from '../sheets/samples.ts';

export interface Figure {
  readonly section: string;
  /** Which thing it shows: figures of one group stand side by side under it. */
  readonly group: string;
  readonly title: string;
  /** Lines under the picture. */
  readonly says: readonly string[];
  /** None where the thing was refused: `says` tells why. */
  readonly svg?: string;
}

const EDGE = 8;

/** A drawing of its own size round what it shows, at a scale. */
function pictureOf(
  about: string,
  bounds: Bounds,
  scale: number,
  ink: (frame: PictureFrame) => readonly Mark<'paper'>[],
): string {
  const k = 1000 / scale;
  const width = (bounds.maxX - bounds.minX) * k + 2 * EDGE;
  const height = (bounds.maxY - bounds.minY) * k + 2 * EDGE;
  const frame = { scale, turned: false, x: EDGE - bounds.minX * k, y: height - EDGE + bounds.minY * k };
  const page: Page = { width, height, about, marks: ink({ frame, width, height }) };
  return svg(page);
}

interface PictureFrame {
  readonly frame: Parameters<typeof markOnPaper>[0];
  readonly width: number;
  readonly height: number;
}

/** The scale at which the bounds come out about so wide, mm. */
function scaleFor(bounds: Bounds, most: number): number {
  const size = Math.max(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY, 0.2);
  return Math.max(10, Math.ceil((size * 1000) / most / 5) * 5);
}

/** The seeds by file name, and what could not be read. */
function seeds(): readonly (readonly [string, Course | string])[] {
  const folder = 'seeds/starters';
  return readdirSync(folder)
    .filter((name) => name.endsWith('.course.json'))
    .sort()
    .map((name) => {
      const reading = readCourse(readFileSync(join(folder, name), 'utf8'));
      return [name.replace('.course.json', ''), reading.kind === 'read' ? reading.course : reading.why];
    });
}

function arenaPicture(facts: Survey): string {
  const bounds = extent(facts);
  return pictureOf(facts.course.title, bounds, 300, ({ frame, width, height }) =>
    drawing(facts, frame, { minX: 0, minY: 0, maxX: width, maxY: height }),
  );
}

/** A sheet on a paper: its title, and how it is drawn. */
interface DrawnSheet {
  readonly title: string;
  draw(options: PageOptions): Pages | TooBig;
}

/** The sheets about the layouts of a course and its day, where it has several or one. */
function layoutSheets(course: Course): readonly DrawnSheet[] {
  const [first, second] = course.layouts;
  const problem = dayProblem(course, crewChange(course));
  const ends = { from: first.id, to: second?.id ?? first.id };
  return [
    ...(second === undefined
      ? []
      : [
          {
            title: 'Comparison',
            draw: ({ paper }: PageOptions) => comparisonPages(course, { layouts: [first.id, second.id], paper }),
          },
          {
            title: 'Change-over',
            draw: (options: PageOptions) =>
              changeOverPages(course, { ...ends, plan: layoutChangeOver(course, ends), options }),
          },
        ]),
    ...(problem === undefined
      ? []
      : [
          {
            title: 'Day',
            draw: ({ paper }: PageOptions) => dayPages(course, { paper, times: givenOrder(problem).times }),
          },
        ]),
  ];
}

function sheetFigures(facts: Survey, group: string, section: string): readonly Figure[] {
  const ownSheets = SHEETS.map(({ title, draw }): DrawnSheet => ({ title, draw: (options) => draw(facts, options) }));
  return [...ownSheets, ...layoutSheets(facts.course)].flatMap((sheet) =>
    (['letter', 'a4'] as const satisfies readonly Paper[]).flatMap((paper): readonly Figure[] => {
      const pages = sheet.draw({ paper, orientation: 'fit' });
      const name = `${sheet.title}, ${paper === 'a4' ? 'A4' : 'Letter'}`;
      if (pages.kind !== 'pages') return [{ section, group, title: name, says: [pages.why] }];
      return pages.pages.map((page, index) => ({
        section,
        group,
        title: pages.pages.length === 1 ? name : `${name}, page ${index + 1}`,
        says: [...(pages.drawing === undefined ? [] : [`1:${pages.drawing.scale}`]), ...pages.substitutions],
        svg: svg(page),
      }));
    }),
  );
}

function courseFigures(section: string, name: string, course: Course): readonly Figure[] {
  const facts = survey(course);
  const findings = findingsOf(facts);
  const says =
    findings.length === 0 ? ['No findings.'] : findings.map(({ weight, says: text }) => `${weight}: ${text}`);
  const group = `${name}: ${course.title}`;
  const { length } = facts.line;
  const told = [`Line of travel ${length.toFixed(1)} m.`, ...says];
  const arena: Figure = { section, group, title: 'Arena', says: told, svg: arenaPicture(facts) };
  return [arena, ...sheetFigures(facts, group, section)];
}

function valuesInWords(kind: ObstacleKind | PieceKind, values: Values): string {
  const words = Object.entries(values).map(([key, value]) => {
    const param = kind.params[key];
    const label = param?.label ?? key;
    if (typeof value === 'string' || param === undefined) return `${label} ${value}`;
    if (param.kind === 'length') return `${label} ${value.toFixed(2)} m`;
    if (param.kind === 'angle') return `${label} ${((value * 180) / Math.PI).toFixed(0)}°`;
    return `${label} ${Number(value.toFixed(2))}`;
  });
  return words.join(' · ');
}

/** Usual values, then each number at its least and at its most with the rest usual. */
function rangeOf(kind: ObstacleKind | PieceKind): readonly (readonly [string, Values])[] {
  const ends = Object.entries(kind.params).flatMap(([key, param]): (readonly [string, Values])[] => {
    if (param.kind === 'choice') {
      const others = Object.keys(param.options).filter((id) => id !== param.usual);
      return others.map((id) => [`${param.label}: ${param.options[id]}`, { [key]: id }]);
    }
    return [
      [`${param.label}: least`, { [key]: param.least }],
      [`${param.label}: most`, { [key]: param.most }],
    ];
  });
  return [['Usual', {}], ...ends];
}

const MIDDLE = { x: 60, y: 60, angle: 0 };
const FIELD = blankCourse({
  unit: 'm',
  arena: { title: 'Field', length: 120, width: 120, entrance: { wall: 'west', at: 60, width: 4 } },
});

function obstacleFigure(kind: ObstacleKind, title: string, given: Values): Figure {
  const group = kind.title;
  const section = 'Obstacles';
  const obstacle = buildObstacle(`${kind.id}-1`, kind.id, given, MIDDLE);
  const values = valuesInWords(kind, completeValues(kind.params, given));
  if (!('pieces' in obstacle)) return { section, group, title, says: [values, `Refused: ${obstacle.why}`] };
  const facts = survey(addObstacle(FIELD, obstacle));
  const bounds = ringBounds(facts.pieces.flatMap(({ footprint }) => footprint));
  const over = facts.line.elements.filter(({ part }) => part === 'obstacle');
  const picture = pictureOf(`${group}, ${title}`, bounds, scaleFor(bounds, 60), ({ frame }) => [
    ...facts.pieces.flatMap((piece) => pieceMarks(frame, piece)),
    ...runMarks(runsOf(frame, over)),
  ]);
  const ways = obstacle.passages.map(({ title: way }) => way);
  const told = ways.length === 0 ? [] : [`Ways: ${ways.join('; ')}.`];
  return { section, group, title, says: title === 'Usual' ? [values, ...told] : [values], svg: picture };
}

function pieceFigure(kind: PieceKind, title: string, given: Values): Figure {
  const figure = kind.figure(completeValues(kind.params, given));
  const marked = figure.marks.flatMap((mark) => ('points' in mark ? mark.points : 'ring' in mark ? mark.ring : []));
  const bounds = unionBounds(ringBounds(figure.footprint), ringBounds([...figure.footprint, ...marked]));
  const picture = pictureOf(`${kind.title}, ${title}`, bounds, scaleFor(bounds, 50), ({ frame }) =>
    figure.marks.flatMap((mark) => markOnPaper(frame, ORIGIN, mark) ?? []),
  );
  const size = `${figure.length.toFixed(2)} × ${figure.width.toFixed(2)} m, ${figure.height.toFixed(2)} m high`;
  return { section: 'Pieces', group: kind.title, title, says: [size], svg: picture };
}

/** Everything there is to show, in the order of the page. */
export function figures(): readonly Figure[] {
  const shown = seeds().flatMap(([name, course]) =>
    typeof course === 'string'
      ? [{ section: 'Seeds', group: name, title: 'Unreadable', says: [course] }]
      : courseFigures('Seeds', name, course),
  );
  const samples = Object.entries(SAMPLES).flatMap(([name, course]) =>
    courseFigures('Samples of the tests', name, course),
  );
  const obstacles = OBSTACLE_KINDS.flatMap((kind) =>
    rangeOf(kind).map(([title, values]) => obstacleFigure(kind, title, values)),
  );
  const pieces = PIECE_KINDS.flatMap((kind) =>
    rangeOf(kind).map(([title, values]) => pieceFigure(kind, title, values)),
  );
  return [...shown, ...samples, ...obstacles, ...pieces];
}
