/** The drawing of a course on paper: one list of marks from the arena to the labels; no label covers another. */
import type { Mark } from '../core/plane/mark.ts';
import { pathEnd } from '../core/plane/path.ts';
import type { Pose } from '../core/plane/pose.ts';
import type { Bounds } from '../core/plane/ring.ts';
import type { Survey } from '../core/survey.ts';
import { entranceSign } from './entrance.ts';
import { AIR, blockGround, pieceMarks, railMarks } from './ground.ts';
import { discMarks, wordBeside } from './labels.ts';
import { letterMarks } from './letters.ts';
import { strokeWidth } from './line-styles.ts';
import { blockLine, blockRing, emptyGrid } from './occupancy-grid.ts';
import { headingOnPaper, onPaper, type PaperPoint, type PaperTransform } from './paper-transform.ts';
import { blockTicks, placeTicks, tickMarks, tickWords } from './places.ts';
import { arrowhead, arrowMarks, runMarks, runsOf, turnMarks, turnsOf } from './travel.ts';

/** A big arrow where the go starts, leading the way. */
function startSign(transform: PaperTransform, start: Pose): readonly PaperPoint[] {
  return arrowhead(onPaper(transform, start), headingOnPaper(transform, start.angle), 4.6);
}

/** A bar across the line where the go ends. */
function endSign(transform: PaperTransform, end: Pose): readonly PaperPoint[] {
  const at = onPaper(transform, end);
  const across = headingOnPaper(transform, end.angle) + Math.PI / 2;
  const x = Math.cos(across) * 2.4;
  const y = Math.sin(across) * 2.4;
  return [
    { x: at.x - x, y: at.y - y },
    { x: at.x + x, y: at.y + y },
  ];
}

function endOf(survey: Survey): Pose | undefined {
  if (survey.layout.ride.end !== undefined) return survey.layout.ride.end;
  const last = survey.line.elements.at(-1);
  return last === undefined || last.path.length === 0 ? undefined : pathEnd(last.path);
}

/** The course drawn under its transform; `bounds` is the part of the page that labels may use. */
export function drawing(survey: Survey, transform: PaperTransform, bounds: Bounds): readonly Mark<'paper'>[] {
  const grid = emptyGrid(bounds);
  const runs = runsOf(transform, survey.line.elements);
  const turns = turnsOf(transform, survey.line.elements);
  const ticks = placeTicks(survey, transform);
  blockGround(grid, { arena: survey.course.arena, pieces: survey.pieces }, transform);
  blockTicks(grid, ticks, AIR);
  const arrows = arrowMarks(runs, grid);
  for (const run of runs) blockLine(grid, run.points, strokeWidth(run.ink, undefined) / 2 + AIR);
  const spins = turns.flatMap((turn) => turnMarks(turn));
  for (const mark of spins) if (mark.kind === 'line') blockLine(grid, mark.points, AIR);

  const marks: Mark<'paper'>[] = [...railMarks(transform, survey.course.arena)];
  marks.push(...survey.pieces.flatMap((piece) => pieceMarks(transform, piece)));
  marks.push(...runMarks(runs), ...spins, ...arrows, ...tickMarks(ticks));

  const hasRide = survey.layout.ride.legs.length > 0;
  const end = hasRide ? endOf(survey) : undefined;
  const start = startSign(transform, survey.layout.ride.start);
  if (hasRide) {
    blockRing(grid, start, AIR);
    marks.push({ kind: 'area', ink: 'words', ring: start });
  }
  if (end !== undefined) {
    const points = endSign(transform, end);
    blockLine(grid, points, AIR);
    marks.push({ kind: 'line', ink: 'words', points, width: 1 });
  }
  const entrance = entranceSign(survey.course.arena, transform);
  blockRing(grid, entrance.ring, AIR);
  marks.push({ kind: 'line', ink: 'words', points: entrance.ring, width: 0.35 });
  if (hasRide) marks.push(wordBeside(grid, 'START', onPaper(transform, survey.layout.ride.start)));
  if (end !== undefined) marks.push(wordBeside(grid, 'END', onPaper(transform, end)));
  marks.push(...letterMarks(survey, transform, grid));
  const label = wordBeside(grid, 'Entrance', entrance.at);
  marks.push(...discMarks(survey, transform, grid), label);
  for (const { at, by } of turns) {
    marks.push(wordBeside(grid, `${Math.round((Math.abs(by) * 180) / Math.PI)}°`, at));
  }
  marks.push(...tickWords(grid, ticks));
  return marks;
}
