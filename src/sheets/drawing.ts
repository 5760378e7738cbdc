/** The drawing of a course on paper: one list of marks from the rail to the labels; nothing covers anything. */
import type { Mark } from '../core/plane/mark.ts';
import type { Bounds } from '../core/plane/ring.ts';
import type { LineElement } from '../core/ride/line.ts';
import { linePlaces } from '../core/ride/line-places.ts';
import type { Survey } from '../core/survey.ts';
import { entranceSign, judgeSign } from './entrance.ts';
import { gapLabels } from './gap-labels.ts';
import { footprintOnPaper, railMarks } from './ground.ts';
import { addFrame, insetLeader, insetMarks, insetsInGround, insetsInRow, type PlacedInset } from './inset-places.ts';
import { insetOf, isWithin, type SmallObstacle, smallObstacles } from './insets.ts';
import { strokeWidth } from './line-styles.ts';
import { addShape } from './paper-shapes.ts';
import { onPaper, type PaperPoint, type PaperTransform, perMetre } from './paper-transform.ts';
import { BOLD_WORD, LEADER_WIDTH, numberLabel, outlinesOf, wordLabel } from './pattern-labels.ts';
import { addRailMarks } from './rail-marks.ts';
import { addEnd, addStart, labelled, pictureOf, type RidePicture } from './ride-picture.ts';
import { endOf, gateHands, letterLabels } from './ride-signs.ts';

export interface DrawingChoices {
  /** `plain`: pieces, numbers and the line, nothing else. */
  readonly signs: 'all' | 'plain';
  readonly dimensions: 'off' | 'gaps';
  /**
   * `none`: small obstacles are not drawn again; `ground`: in free ground of the drawing, and overleaf where one has no room;
   * `overleaf`: on a page that is not drawn here; or in a row on the page.
   */
  readonly insets: 'none' | 'ground' | 'overleaf' | Bounds;
}

export const ALL_SIGNS: DrawingChoices = { signs: 'all', dimensions: 'off', insets: 'none' };

export interface CourseDrawing {
  readonly marks: readonly Mark<'paper'>[];
  readonly insets: readonly PlacedInset[];
  /** Whether every inset has a place on the page; else none has, and they belong overleaf. */
  readonly isWhole: boolean;
  /** Labels that cover something. */
  readonly conflicts: number;
  /** The share of the ground on paper that labels take with 1 mm of air about them, 0 … 1. */
  readonly crowding: number;
}

/** The course with its signs and without insets. `bounds` is the part of the page that labels may use. */
export function drawing(survey: Survey, transform: PaperTransform, bounds: Bounds): readonly Mark<'paper'>[] {
  return courseDrawing(survey, transform, { bounds, choices: ALL_SIGNS }).marks;
}

/** The course drawn under its transform. */
export function courseDrawing(
  survey: Survey,
  transform: PaperTransform,
  { bounds, choices }: { readonly bounds: Bounds; readonly choices: DrawingChoices },
): CourseDrawing {
  const isPlain = choices.signs === 'plain';
  const small = isPlain || choices.insets === 'none' ? [] : smallObstacles(survey, transform.scale);
  const picture = arenaPicture(survey, transform, { isPlain, small });
  const insets = small.map((each) => insetOf(survey, each, transform));
  const placed =
    choices.insets === 'ground'
      ? insetsInGround(insets, picture.index, { room: insideRail(survey, transform), transform })
      : choices.insets === 'none' || choices.insets === 'overleaf'
        ? []
        : insetsInRow(insets, choices.insets);
  if (placed === undefined) {
    const whole = courseDrawing(survey, transform, { bounds, choices: { ...choices, insets: 'overleaf' } });
    return { ...whole, isWhole: false };
  }
  for (const each of placed) {
    picture.marks.push(...insetMarks(each));
    addFrame(picture.index, each);
  }
  for (const each of placed) addInsetLeader(picture, transform, each);
  addNumbers(picture, survey, transform);
  if (!isPlain) addSignLabels(picture, survey, transform, small);
  if (choices.dimensions === 'gaps' && !isPlain) picture.labels.push(...gapLabels(survey, transform));
  const { marks, conflicts, taken } = labelled(picture, bounds);
  const inner = insets.reduce((sum, inset) => sum + inset.conflicts, 0);
  return {
    marks,
    insets: placed,
    isWhole: true,
    conflicts: conflicts + inner,
    crowding: taken / groundArea(survey, transform),
  };
}

/** Whether the drawing has free ground for all of its insets. */
export function hasInsetRoom(survey: Survey, transform: PaperTransform): boolean {
  const small = smallObstacles(survey, transform.scale);
  const { index } = arenaPicture(survey, transform, { isPlain: false, small });
  const insets = small.map((each) => insetOf(survey, each, transform));
  return insetsInGround(insets, index, { room: insideRail(survey, transform), transform }) !== undefined;
}

/** Rail, pieces, strokes and the signs that stand on them. */
function arenaPicture(
  survey: Survey,
  transform: PaperTransform,
  { isPlain, small }: { readonly isPlain: boolean; readonly small: readonly SmallObstacle[] },
): RidePicture {
  const { arena } = survey.course;
  const shownApart = new Set(small.flatMap(({ places }) => places));
  const drawnApart = new Set(small.flatMap(signedApart));
  const { elements } = survey.line;
  const signed = elements.filter((element) => !drawnApart.has(element));
  const hasRide = survey.layout.ride.legs.length > 0;
  const end = hasRide ? endOf(survey) : undefined;
  const picture = pictureOf(transform, {
    pieces: survey.pieces,
    rails: railMarks(transform, arena),
    elements,
    signed: isPlain ? [] : signed,
    arrowed: signed,
    places: isPlain ? [] : linePlaces(survey.line).filter((place) => !shownApart.has(place)),
    before: (begun) => {
      if (hasRide) addStart(begun, transform, survey.layout.ride.start);
      if (end !== undefined) addEnd(begun, transform, end);
    },
  });
  addSigns(picture, survey, transform);
  return picture;
}

/** What has its arrows and its turns in an inset: the obstacle itself, and turns on the spot on the ground that it shows. */
function signedApart({ numbers, elements, extent }: SmallObstacle): readonly LineElement[] {
  const legs = new Set(numbers.map((number) => number - 1));
  return elements.filter(({ leg, part, length, path }) => {
    const at = path[0]?.start;
    const isShown = length === 0 && at !== undefined && isWithin(extent, at);
    return isShown || (part === 'obstacle' && legs.has(leg));
  });
}

function addSigns(picture: RidePicture, survey: Survey, transform: PaperTransform): void {
  const { arena, unit } = survey.course;
  const entrance = entranceSign(arena, transform);
  addStroke(picture, entrance.ring, 0.35);
  const isAtSide = (arena.entrance.wall === 'west' || arena.entrance.wall === 'east') !== transform.turned;
  // Beside the page there is no room for the long word.
  picture.labels.push(wordLabel(isAtSide ? 'In' : 'Entrance', entrance.at, { style: BOLD_WORD, reach: 2.2 }));
  if (arena.judge !== undefined) {
    const at = onPaper(transform, arena.judge);
    const ring = judgeSign(at);
    addStroke(picture, ring, 0.35);
    picture.labels.push(wordLabel('Judge', at, { style: BOLD_WORD, reach: 1.6 }));
  }
  addRailMarks(picture, { arena, unit }, transform);
}

function addStroke({ index, marks }: RidePicture, points: readonly PaperPoint[], width: number): void {
  marks.push({ kind: 'line', ink: 'words', points, width });
  addShape(index, { points, reach: width / 2, isFilled: true, firmness: 'solid' });
}

/** The arena on paper, mm². */
function groundArea({ course }: Survey, transform: PaperTransform): number {
  return course.arena.length * course.arena.width * perMetre(transform) ** 2;
}

/** Inside the rail, a little off it. */
function insideRail({ course }: Survey, transform: PaperTransform): Bounds {
  const a = onPaper(transform, { x: 0, y: 0 });
  const b = onPaper(transform, { x: course.arena.length, y: course.arena.width });
  const off = 1.8 + strokeWidth('rail', undefined);
  return {
    minX: Math.min(a.x, b.x) + off,
    maxX: Math.max(a.x, b.x) - off,
    minY: Math.min(a.y, b.y) + off,
    maxY: Math.max(a.y, b.y) - off,
  };
}

/** A line from a frame to its obstacle, where one crosses nothing. */
function addInsetLeader({ index, marks }: RidePicture, transform: PaperTransform, placed: PlacedInset): void {
  const corners = placed.inset.small.obstacle.pieces.flatMap((piece) => footprintOnPaper(transform, piece));
  const leader = insetLeader(index, placed, corners);
  if (leader === undefined) return;
  marks.push({ kind: 'line', ink: 'words', points: leader, width: LEADER_WIDTH });
  addShape(index, { points: leader, reach: 0.1, firmness: 'solid' });
}

/** The numbers of the go, each in a disc by its obstacle. */
function addNumbers({ labels }: RidePicture, survey: Survey, transform: PaperTransform): void {
  const all = survey.obstacles.filter(({ pieces }) => pieces.length > 0);
  const outlines = new Map(all.map((obstacle) => [obstacle, outlinesOf(transform, obstacle)]));
  for (const [{ obstacle }, outline] of outlines) {
    const others = [...outlines.values()].filter((other) => other !== outline);
    for (const number of survey.numbers.get(obstacle.id) ?? []) {
      const entry = survey.line.elements.find(({ leg, part }) => leg === number - 1 && part === 'obstacle')?.path[0]
        ?.start;
      const at = entry === undefined ? undefined : onPaper(transform, entry);
      labels.push(numberLabel(number, outline, { entry: at, others }));
    }
  }
}

/** Letters of markers and hands at gates, of what is not drawn again in an inset. */
function addSignLabels(
  { labels }: RidePicture,
  survey: Survey,
  transform: PaperTransform,
  small: readonly SmallObstacle[],
): void {
  const apart = new Set(small.map(({ obstacle }) => obstacle.obstacle.id));
  const pieces = survey.pieces.filter(({ obstacle }) => !apart.has(obstacle));
  const numbers = [...survey.numbers].flatMap(([id, own]) => (apart.has(id) ? [] : own));
  labels.push(...letterLabels(survey, transform, pieces), ...gateHands(survey, transform, numbers));
}
