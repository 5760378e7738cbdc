/** The line of travel on paper: runs of one ink with their arrows, and the signs for turns on the spot. */
import type { Ink, Mark } from '../core/plane/mark.ts';
import { type Path, pathEnd, pathPoints } from '../core/plane/path.ts';
import type { LineElement } from '../core/ride/line.ts';
import { strokeWidth } from './line-styles.ts';
import { headingOnPaper, onPaper, type PaperPoint, type PaperTransform, perMetre } from './paper-transform.ts';

/** A part of the line drawn with one stroke. */
export interface InkRun {
  readonly ink: Ink;
  readonly points: readonly PaperPoint[];
}

/** A turn on the spot: where, by how much (counter-clockwise positive), and where the horse faces before it. */
export interface SpotTurn {
  readonly at: PaperPoint;
  readonly by: number;
  readonly heading: number;
}

/** Chords of arcs are this long on paper, mm: at a radius of 5 mm they miss the arc by 0.006 mm. */
const CHORD = 0.5;

function inkOf(element: LineElement): Ink {
  return element.move === 'ride' ? element.gait : element.move;
}

const LEGEND_ORDER: readonly Ink[] = ['walk', 'jog', 'lope', 'back', 'side-pass', 'turn', 'work'];

/** A smaller turn on the spot is a corner that the line shows by itself. */
const SHOWN_TURN = (100 * Math.PI) / 180;

/** Turns on the spot that get a sign. At a gate the horse goes round its end; that is part of working it. */
function shownTurns(elements: readonly LineElement[]): readonly LineElement[] {
  const gates = new Set(elements.filter(({ move }) => move === 'work').map(({ leg }) => leg));
  return elements.filter(({ turn, leg }) => Math.abs(turn) > SHOWN_TURN && !gates.has(leg));
}

/** The inks with which these elements are drawn, in the order of the legend. */
export function inksOf(elements: readonly LineElement[]): readonly Ink[] {
  const shown = [...elements.filter(({ length }) => length > 0), ...shownTurns(elements)];
  const inks = new Set(shown.map(inkOf));
  return LEGEND_ORDER.filter((ink) => inks.has(ink));
}

function pathOnPaper(transform: PaperTransform, path: Path): readonly PaperPoint[] {
  const step = CHORD / perMetre(transform);
  const points = path.flatMap((stretch) =>
    stretch.curvature === 0 ? [stretch.start] : pathPoints([stretch], step).slice(0, -1),
  );
  return path.length === 0 ? [] : [...points, pathEnd(path)].map((at) => onPaper(transform, at));
}

function isApart(a: PaperPoint | undefined, b: PaperPoint): boolean {
  return a === undefined || Math.hypot(a.x - b.x, a.y - b.y) > 0.001;
}

/** Neighbouring elements that are ridden alike become one run, so that their dashes run on. */
export function runsOf(transform: PaperTransform, elements: readonly LineElement[]): readonly InkRun[] {
  const runs: { ink: Ink; points: PaperPoint[] }[] = [];
  for (const element of elements) {
    if (element.length === 0) continue;
    const points = pathOnPaper(transform, element.path);
    const last = runs.at(-1);
    const [first] = points;
    if (first === undefined) continue;
    if (last !== undefined && last.ink === inkOf(element) && !isApart(last.points.at(-1), first)) {
      last.points.push(...points.slice(1));
    } else {
      runs.push({ ink: inkOf(element), points: [...points] });
    }
  }
  return runs;
}

export function turnsOf(transform: PaperTransform, elements: readonly LineElement[]): readonly SpotTurn[] {
  return shownTurns(elements).flatMap((element) => {
    if (element.path[0] === undefined) return [];
    const { start } = element.path[0];
    const heading = headingOnPaper(transform, start.angle + element.facing);
    return [{ at: onPaper(transform, start), by: element.turn, heading }];
  });
}

/** A mark for each run. */
export function runMarks(runs: readonly InkRun[]): readonly Mark<'paper'>[] {
  return runs.map(({ ink, points }) => ({ kind: 'line', ink, points, width: strokeWidth(ink, undefined) }));
}

/** A solid arrowhead whose tip leads in `heading`, with its middle at a point. */
export function arrowhead(at: PaperPoint, heading: number, size: number): readonly PaperPoint[] {
  const along = (forward: number, aside: number): PaperPoint => ({
    x: at.x + Math.cos(heading) * forward - Math.sin(heading) * aside,
    y: at.y + Math.sin(heading) * forward + Math.cos(heading) * aside,
  });
  return [
    along(0.6 * size, 0),
    along(-0.5 * size, 0.42 * size),
    along(-0.28 * size, 0),
    along(-0.5 * size, -0.42 * size),
  ];
}

const ARROW = 2.8;

/** An arrow has to stand out from the bars of a side pass. */
export function arrowSize(ink: Ink): number {
  return ink === 'side-pass' ? 3.6 : ARROW;
}

/** Radius of the sign for a turn on the spot, mm. */
const TURN_RADIUS = 2.3;

/** The sweep of a turn on the spot as an arc with an arrowhead, about the place where it is made. */
export function turnMarks(turn: SpotTurn, radius = TURN_RADIUS): readonly Mark<'paper'>[] {
  // A full turn leaves a gap so that its direction shows. y runs down, so counter-clockwise is negative here.
  const sweep = -Math.sign(turn.by) * Math.min(Math.abs(turn.by), (320 * Math.PI) / 180);
  const steps = Math.max(4, Math.ceil(Math.abs(sweep) / 0.2));
  const points = Array.from({ length: steps + 1 }, (_, index) => {
    const angle = turn.heading + (sweep * index) / steps;
    return { x: turn.at.x + radius * Math.cos(angle), y: turn.at.y + radius * Math.sin(angle) };
  });
  const end = points.at(-1) ?? turn.at;
  const heading = turn.heading + sweep + (Math.sign(sweep) * Math.PI) / 2;
  return [
    { kind: 'line', ink: 'turn', points },
    { kind: 'area', ink: 'turn', ring: arrowhead(end, heading, 1.9) },
  ];
}
