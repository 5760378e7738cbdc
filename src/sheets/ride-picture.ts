/**
 * The ride as it is drawn in one picture, the whole arena or an inset: strokes, arrows, ticks, turns and the labels that
 * go with them. What has no room to be drawn where it belongs becomes a label with a line to its place.
 */
import type { PlacedPiece } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import type { Pose } from '../core/plane/pose.ts';
import type { Bounds } from '../core/plane/ring.ts';
import type { LineElement } from '../core/ride/line.ts';
import type { LinePlace } from '../core/ride/line-places.ts';
import { clippedRuns } from './clipped-runs.ts';
import { drawnShapes } from './ground.ts';
import { labelPlaces } from './label-search.ts';
import { strokeWidth } from './line-styles.ts';
import { addShape, coveredByStroke, emptyIndex, isRingClear, type ShapeIndex } from './paper-shapes.ts';
import { headingOnPaper, onPaper, type PaperPoint, type PaperTransform } from './paper-transform.ts';
import { BOLD_WORD, type Label, turnLabel, turnText, wordLabel } from './pattern-labels.ts';
import { arrowhead, runMarks, runsOf, turnMarks, turnsOf } from './travel.ts';
import { arrowMarks } from './travel-arrows.ts';

/** What is drawn of the ride and of the ground, before labels have places. */
export interface RidePicture {
  readonly index: ShapeIndex;
  readonly marks: Mark<'paper'>[];
  readonly labels: Label[];
}

export interface PictureParts {
  readonly pieces: readonly PlacedPiece[];
  /** The rail, where it is in the picture. */
  readonly rails?: readonly Mark<'paper'>[];
  /** Drawn as strokes. */
  readonly elements: readonly LineElement[];
  /** Of those, with the signs of turns, and with arrows. */
  readonly signed: readonly LineElement[];
  readonly arrowed: readonly LineElement[];
  readonly places: readonly LinePlace[];
  /** The strokes end here; absent: nowhere. */
  readonly clip?: Bounds;
  /** Adds the signs that come before ticks, turns and arrows. */
  before?(begun: RidePicture): void;
}

/** Half the length of a tick, the best first, and its stroke, mm. */
const HALF_TICKS = [1.7, 1.2, 0.8];
const TICK_WIDTH = 0.35;
/** Air about signs, mm. */
const AIR = 0.25;
const TURN_REACH = 2.6;
/** Its words may stand beyond the poles that it is made between, mm. */
const TURN_FAR = 8;
/** A turn and a change of gait nearer than this are at one place, mm. */
const SAME_PLACE = 0.5;
/** As the places on the line have it (`core/ride/line-places.ts`). */
const HALT = 'halt';
/** Radii of the sign for a turn, the best first, mm. */
const TURN_RADII = [2.3, 1.7];

/** An empty picture with its pieces and strokes. */
export function pictureOf(transform: PaperTransform, parts: PictureParts): RidePicture {
  const { pieces, rails = [], elements, signed, arrowed, places, clip } = parts;
  const index = emptyIndex();
  for (const mark of rails) {
    if (mark.kind === 'line')
      addShape(index, { points: mark.points, reach: strokeWidth('rail', mark.width) / 2, firmness: 'solid' });
    if (mark.kind === 'disc') addShape(index, { points: [mark.at, mark.at], reach: mark.radius, firmness: 'solid' });
  }
  const shapes = pieces.map((piece) => drawnShapes(transform, piece));
  for (const shape of shapes.flatMap((each) => each.shapes)) addShape(index, shape);
  const runs = clippedRuns(runsOf(transform, elements), clip);
  const picture: RidePicture = {
    index,
    marks: [...rails, ...shapes.flatMap((each) => each.marks), ...runMarks(runs)],
    labels: [],
  };
  parts.before?.(picture);
  const turned = addTurns(picture, { transform, signed, places });
  addTicks(
    picture,
    transform,
    places.filter((place) => !turned.has(place)),
  );
  const arrows = arrowMarks(clippedRuns(runsOf(transform, arrowed), clip), index);
  picture.marks.push(...arrows);
  for (const run of runs)
    addShape(index, { points: run.points, reach: strokeWidth(run.ink, undefined) / 2 + AIR, firmness: 'line' });
  return picture;
}

/** A stroke across a heading, about a place. */
export function acrossStroke(at: PaperPoint, heading: number, half: number): readonly [PaperPoint, PaperPoint] {
  const [x, y] = [half * Math.cos(heading + Math.PI / 2), half * Math.sin(heading + Math.PI / 2)];
  return [
    { x: at.x - x, y: at.y - y },
    { x: at.x + x, y: at.y + y },
  ];
}

function addTicks(
  { index, marks, labels }: RidePicture,
  transform: PaperTransform,
  places: readonly LinePlace[],
): void {
  for (const { pose, words } of places) {
    const at = onPaper(transform, pose);
    const heading = headingOnPaper(transform, pose.angle);
    const points = HALF_TICKS.map((half) => acrossStroke(at, heading, half)).find(
      (each) => !coveredByStroke(index, each, TICK_WIDTH / 2 + 0.1).isSolid,
    );
    if (points !== undefined) {
      marks.push({ kind: 'line', ink: 'words', points, width: TICK_WIDTH });
      addShape(index, { points, reach: TICK_WIDTH / 2, firmness: 'solid' });
    }
    labels.push(wordLabel(words.join(', '), at, { reach: points === undefined ? 0 : 0.6 }));
  }
}

/** The signs of turns, with what is done at the same place. The places that were named with them. */
function addTurns(
  { index, marks, labels }: RidePicture,
  { transform, signed, places }: Pick<PictureParts, 'signed' | 'places'> & { readonly transform: PaperTransform },
): ReadonlySet<LinePlace> {
  const named = new Set<LinePlace>();
  for (const turn of turnsOf(transform, signed)) {
    const here = places.find(
      (place) => !named.has(place) && distance(onPaper(transform, place.pose), turn.at) < SAME_PLACE,
    );
    if (here !== undefined) named.add(here);
    const text = turnWith(turnText(turn.by), here?.words ?? []);
    const sign = TURN_RADII.map((radius) => turnMarks(turn, radius)).find((each) => isSignClear(index, each));
    if (sign === undefined) {
      labels.push(turnLabel(turn, text));
      continue;
    }
    marks.push(...sign);
    for (const mark of sign) {
      if (mark.kind === 'line') addShape(index, { points: mark.points, reach: 0.25, firmness: 'solid' });
      if (mark.kind === 'area') addShape(index, { points: mark.ring, reach: 0, isFilled: true, firmness: 'solid' });
    }
    labels.push(wordLabel(text, turn.at, { style: BOLD_WORD, reach: TURN_REACH, far: TURN_FAR }));
  }
  return named;
}

/** What is done where a horse turns, in its order: "halt, 360° left, walk". */
function turnWith(turn: string, words: readonly string[]): string {
  const before = words.filter((each) => each === HALT);
  const after = words.filter((each) => each !== HALT);
  return [...before, turn, ...after].join(', ');
}

function isSignClear(index: ShapeIndex, sign: readonly Mark<'paper'>[]): boolean {
  return sign.every((mark) => {
    if (mark.kind === 'area') return isRingClear(index, mark.ring, AIR);
    if (mark.kind !== 'line') return true;
    return mark.points
      .slice(1)
      .every((b, i) => !coveredByStroke(index, [mark.points[i] as PaperPoint, b], 0.25 + AIR).isSolid);
  });
}

/** Big arrows that lead from the start, the best first, mm. */
const STARTS = [4.6, 3.4, 2.4];
/** Half lengths of the bar at the end, mm. */
const ENDS = [2.4, 1.6, 1];

/** A big arrow where the go starts, leading the way, with its word. */
export function addStart({ index, marks, labels }: RidePicture, transform: PaperTransform, start: Pose): void {
  const at = onPaper(transform, start);
  const heading = headingOnPaper(transform, start.angle);
  const ring = STARTS.map((size) => arrowhead(at, heading, size)).find((each) => isRingClear(index, each, AIR));
  if (ring !== undefined) {
    marks.push({ kind: 'area', ink: 'words', ring });
    addShape(index, { points: ring, reach: 0, isFilled: true, firmness: 'solid' });
  }
  labels.push(wordLabel('START', at, { style: BOLD_WORD, reach: ring === undefined ? 0 : 2.4 }));
}

/** A bar across the line where the go ends, with its word. */
export function addEnd({ index, marks, labels }: RidePicture, transform: PaperTransform, end: Pose): void {
  const at = onPaper(transform, end);
  const heading = headingOnPaper(transform, end.angle);
  const points = ENDS.map((half) => acrossStroke(at, heading, half)).find(
    (each) => !coveredByStroke(index, each, 0.5 + AIR).isSolid,
  );
  if (points !== undefined) {
    marks.push({ kind: 'line', ink: 'words', points, width: 1 });
    addShape(index, { points, reach: 0.5, firmness: 'solid' });
  }
  labels.push(wordLabel('END', at, { style: BOLD_WORD, reach: points === undefined ? 0 : 0.8 }));
}

/** A picture with its labels in their places. */
export interface Labelled {
  readonly marks: readonly Mark<'paper'>[];
  /** Labels that cover something. */
  readonly conflicts: number;
  /** Paper that labels take with 1 mm of air about them, mm². */
  readonly taken: number;
}

export function labelled({ index, marks, labels }: RidePicture, room: Bounds): Labelled {
  const { places, conflicts } = labelPlaces(
    labels.map(({ wish }) => wish),
    index,
    room,
  );
  const set = labels.flatMap(({ marks: drawn }, i) => {
    const place = places[i];
    return place === undefined ? [] : drawn(place);
  });
  const taken = places.reduce((sum, place) => {
    if (place === undefined) return sum;
    const { minX, maxX, minY, maxY } = place.box;
    return sum + (maxX - minX + 2) * (maxY - minY + 2);
  }, 0);
  return { marks: [...marks, ...set], conflicts, taken };
}
