/** The drawing of a course on paper: one list of marks from the arena to the labels, none of which cover each other. */
import type { Mark } from '../core/plane/mark.ts';
import { pathEnd } from '../core/plane/path.ts';
import { lerp } from '../core/plane/point.ts';
import type { Pose } from '../core/plane/pose.ts';
import type { Bounds } from '../core/plane/ring.ts';
import type { Survey } from '../core/survey.ts';
import { footprintOnPaper, opening, pieceMarks, railLines, railMarks, reachOf } from './ground.ts';
import { discMarks, wordBeside } from './labels.ts';
import { strokeWidth } from './line-styles.ts';
import { blockLine, blockRing, emptyRoom, type Room } from './occupancy-grid.ts';
import { type Frame, headingOnPaper, onPaper, type PaperPoint } from './paper-transform.ts';
import { arrowhead, arrowMarks, runMarks, runsOf, turnMarks, turnsOf } from './travel.ts';

/** Air between a thing and a label, mm. */
const AIR = 0.7;

function blockGround(room: Room, survey: Survey, frame: Frame): void {
  for (const rail of railLines(survey.course.arena)) {
    const points = rail.map((at) => onPaper(frame, at));
    blockLine(room, points, AIR);
  }
  for (const piece of survey.pieces) {
    blockRing(room, footprintOnPaper(frame, piece), AIR + reachOf(frame, piece));
  }
}

/** A big arrow where the go starts, leading the way. */
function startSign(frame: Frame, start: Pose): readonly PaperPoint[] {
  return arrowhead(onPaper(frame, start), headingOnPaper(frame, start.angle), 4.6);
}

/** A bar across the line where the go ends. */
function endSign(frame: Frame, end: Pose): readonly PaperPoint[] {
  const at = onPaper(frame, end);
  const across = headingOnPaper(frame, end.angle) + Math.PI / 2;
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

interface Entrance {
  readonly at: PaperPoint;
  readonly ring: readonly PaperPoint[];
}

/** A hollow arrow into the opening, outside the rail. */
function entranceSign(survey: Survey, frame: Frame): Entrance {
  const [from, to] = opening(survey.course.arena);
  const middle = onPaper(frame, lerp(from, to, 0.5));
  const inward = { south: Math.PI / 2, west: 0, north: -Math.PI / 2, east: Math.PI }[survey.course.arena.entrance.wall];
  const heading = headingOnPaper(frame, inward);
  const at = { x: middle.x - Math.cos(heading) * 2.4, y: middle.y - Math.sin(heading) * 2.4 };
  const [tip, left, , right] = arrowhead(at, heading, 3.8);
  return { at, ring: tip && left && right ? [tip, left, right, tip] : [] };
}

/** The course drawn in its frame; `bounds` is the part of the page that labels may use. */
export function drawing(survey: Survey, frame: Frame, bounds: Bounds): readonly Mark<'paper'>[] {
  const room = emptyRoom(bounds);
  const runs = runsOf(frame, survey.line.elements);
  const turns = turnsOf(frame, survey.line.elements);
  blockGround(room, survey, frame);
  const arrows = arrowMarks(runs, room);
  for (const run of runs) blockLine(room, run.points, strokeWidth(run.ink, undefined) / 2 + AIR);
  const spins = turns.flatMap((turn) => turnMarks(turn));
  for (const mark of spins) if (mark.kind === 'line') blockLine(room, mark.points, AIR);

  const marks: Mark<'paper'>[] = [...railMarks(frame, survey.course.arena)];
  marks.push(...survey.pieces.flatMap((piece) => pieceMarks(frame, piece)));
  marks.push(...runMarks(runs), ...spins, ...arrows);

  const hasRide = survey.layout.ride.legs.length > 0;
  const end = hasRide ? endOf(survey) : undefined;
  const start = startSign(frame, survey.layout.ride.start);
  if (hasRide) {
    blockRing(room, start, AIR);
    marks.push({ kind: 'area', ink: 'words', ring: start });
  }
  if (end !== undefined) {
    const points = endSign(frame, end);
    blockLine(room, points, AIR);
    marks.push({ kind: 'line', ink: 'words', points, width: 1 });
  }
  const entrance = entranceSign(survey, frame);
  blockRing(room, entrance.ring, AIR);
  marks.push({ kind: 'line', ink: 'words', points: entrance.ring, width: 0.35 });
  if (hasRide) marks.push(wordBeside(room, 'START', onPaper(frame, survey.layout.ride.start)));
  if (end !== undefined) marks.push(wordBeside(room, 'END', onPaper(frame, end)));
  const label = wordBeside(room, 'Entrance', entrance.at);
  marks.push(...discMarks(survey, frame, room), label);
  for (const { at, by } of turns) {
    marks.push(wordBeside(room, `${Math.round((Math.abs(by) * 180) / Math.PI)}°`, at));
  }
  return marks;
}
