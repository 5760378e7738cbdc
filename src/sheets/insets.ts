/**
 * Obstacles that are too small to be read at the scale of the arena, each drawn once more in a frame at its own stated
 * scale: where the room in which a horse works is less than 3.5 mm wide on paper, or poles lie nearer than 1.2 mm.
 */
import type { PlacedObstacle } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import { pathBounds } from '../core/plane/path.ts';
import { type Bounds, unionBounds } from '../core/plane/ring.ts';
import type { LineElement } from '../core/ride/line.ts';
import { type LinePlace, linePlaces } from '../core/ride/line-places.ts';
import type { Survey } from '../core/survey.ts';
import type { Sized } from './frame-rows.ts';
import { numberMark } from './labels.ts';
import { backingRadius, CAP_HEIGHT, SMALLEST_FONT_SIZE, textWidth } from './lettering.ts';
import { markBounds, movedMark, movedTransform } from './moved-marks.ts';
import { grown, pointBounds } from './paper-shapes.ts';
import { onPaper, type PaperTransform, perMetre } from './paper-transform.ts';
import { addEnd, labelled, pictureOf } from './ride-picture.ts';
import { endOf, gateHands, letterLabels } from './ride-signs.ts';

/** An obstacle that is drawn once more, before it is known at what scale. */
export interface SmallObstacle {
  readonly obstacle: PlacedObstacle;
  readonly numbers: readonly number[];
  /** What is drawn of it, metres on the ground. */
  readonly extent: Bounds;
  readonly elements: readonly LineElement[];
  readonly places: readonly LinePlace[];
}

/** An inset with its upper left corner at 0, 0. */
export interface Inset {
  readonly small: SmallObstacle;
  readonly width: number;
  readonly height: number;
  readonly transform: PaperTransform;
  readonly marks: readonly Mark<'paper'>[];
  /** Labels in it that cover something. */
  readonly conflicts: number;
}

/** The least room in which a horse works, and the least gap that is ridden over, mm on paper. */
const WORK_ROOM = 3.5;
const RIDDEN_GAP = 1.2;
/** The room of a horse that works, metres, where nothing says less: a lane, the inside of a box, the way round a gate. */
const USUAL_ROOM = 1;
/** Ground about the pieces and the line that is shown, metres. */
const ABOUT = 0.5;
/** Scales of insets, and the size on paper that they are chosen for, mm. */
const SCALES = [50, 75, 100, 125, 150, 200, 250];
const LARGEST = 28;
/** The same on a page that has nothing else. */
const LARGEST_OVERLEAF = 52;
/** The line is shown so far beyond that ground, and labels may stand so far from it, mm. */
const AROUND = 2.5;
const LABEL_ROOM = 36;
/** The head of a frame, with the number and the scale, and the air at its other edges, mm. */
const HEAD = 8;
const EDGE = 1.6;
const FRAME_WIDTH = 0.3;
/** Its approach and what follows are shown where they begin or end so near, and changes of gait so near, metres along the line. */
const LINE_REACH = 0.5;
const PLACE_REACH = 1.5;

function isWorked({ move }: LineElement): boolean {
  return move !== 'ride';
}

/** Whether an obstacle is a smudge at a scale. */
function isTooSmall(survey: Survey, numbers: readonly number[], scale: number): boolean {
  const k = 1000 / scale;
  const legs = new Set(numbers.map((number) => number - 1));
  const own = survey.line.elements.filter(({ leg, part }) => legs.has(leg) && part === 'obstacle');
  if (own.some(isWorked) || own.some(({ turn }) => Math.abs(turn) > Math.PI / 2)) {
    if (USUAL_ROOM * k < WORK_ROOM) return true;
  }
  const gaps = survey.line.gaps.filter(({ leg }) => legs.has(leg));
  return gaps.some(({ taped }) => taped * k < RIDDEN_GAP);
}

/** The obstacles of the go that need an inset at a scale. */
export function smallObstacles(survey: Survey, scale: number): readonly SmallObstacle[] {
  return survey.obstacles.flatMap((obstacle) => {
    const numbers = survey.numbers.get(obstacle.obstacle.id) ?? [];
    if (numbers.length === 0 || obstacle.pieces.length === 0 || !isTooSmall(survey, numbers, scale)) return [];
    return [smallObstacle(survey, obstacle, numbers)];
  });
}

function smallObstacle(survey: Survey, obstacle: PlacedObstacle, numbers: readonly number[]): SmallObstacle {
  const legs = new Set(numbers.map((number) => number - 1));
  const own = survey.line.elements.filter(({ leg, part }) => legs.has(leg) && part === 'obstacle');
  const ridden = own.filter(({ path }) => path.length > 0).map(({ path }) => pathBounds(path));
  const { minX, minY, maxX, maxY } = ridden.reduce(unionBounds, obstacle.bounds);
  const extent = { minX: minX - ABOUT, minY: minY - ABOUT, maxX: maxX + ABOUT, maxY: maxY + ABOUT };
  const near = (at: number, reach: number): boolean =>
    own.some(({ from, length }) => at >= from - reach && at <= from + length + reach);
  const elements = survey.line.elements.filter(
    (each) => own.includes(each) || near(each.from, LINE_REACH) || near(each.from + each.length, LINE_REACH),
  );
  const places = linePlaces(survey.line).filter(({ at, pose }) => near(at, PLACE_REACH) && isWithin(extent, pose));
  return { obstacle, numbers, extent, elements, places };
}

const drawn = new WeakMap<Survey, Map<string, Inset>>();

/** The drawing beside which an inset stands. */
interface InsetPlace {
  readonly scale: number;
  readonly turned: boolean;
  /** On a page without the drawing: larger. */
  readonly isOverleaf?: boolean;
}

/** The obstacle in its frame, turned as the drawing is; drawn once for a survey. */
export function insetOf(survey: Survey, small: SmallObstacle, place: InsetPlace): Inset {
  const known = drawn.get(survey) ?? new Map<string, Inset>();
  drawn.set(survey, known);
  const key = `${small.obstacle.obstacle.id} ${insetScale(small, place)} ${place.turned}`;
  const inset = known.get(key) ?? freshInset(survey, small, place);
  known.set(key, inset);
  return inset;
}

/** Their sizes at a scale of the drawing. */
export function insetSizes(survey: Survey, scale: number, turned: boolean): readonly Sized[] {
  return smallObstacles(survey, scale).map((small) => insetOf(survey, small, { scale, turned }));
}

/** The largest scale at which it keeps to its size, and not smaller than the drawing's. */
function insetScale({ extent }: SmallObstacle, { scale, isOverleaf = false }: InsetPlace): number {
  const most = isOverleaf ? LARGEST_OVERLEAF : LARGEST;
  const largest = Math.max(extent.maxX - extent.minX, extent.maxY - extent.minY);
  return Math.min(SCALES.find((each) => (largest * 1000) / each <= most) ?? 250, scale);
}

function freshInset(survey: Survey, small: SmallObstacle, place: InsetPlace): Inset {
  const { turned } = place;
  const { extent, numbers, obstacle } = small;
  const own = insetScale(small, place);
  const k = 1000 / own;
  const { minX, maxX, minY, maxY } = extent;
  const transform: PaperTransform = turned
    ? { scale: own, turned, x: maxY * k, y: maxX * k }
    : { scale: own, turned, x: -minX * k, y: maxY * k };
  const ground = pointBounds([onPaper(transform, { x: minX, y: minY }), onPaper(transform, { x: maxX, y: maxY })]);
  const picture = pictureOf(transform, {
    pieces: obstacle.pieces,
    elements: small.elements,
    signed: small.elements,
    arrowed: small.elements,
    places: small.places,
    clip: grown(ground, AROUND),
  });
  picture.labels.push(...letterLabels(survey, transform, obstacle.pieces), ...gateHands(survey, transform, numbers));
  const end = endOf(survey);
  if (end !== undefined && isWithin(extent, end)) addEnd(picture, transform, end);
  const { marks, conflicts } = labelled(picture, grown(ground, LABEL_ROOM));
  return inFrame({ small, transform, marks, conflicts });
}

/** A frame as large as what is drawn, with the number and the scale at its head; its corner at 0, 0. */
function inFrame({ small, transform, marks, conflicts }: Omit<Inset, 'width' | 'height'>): Inset {
  const { numbers } = small;
  const used = marks.map(markBounds).reduce(unionBounds);
  const header = headerMarks(numbers, transform.scale);
  const width = Math.max(used.maxX - used.minX + 2 * EDGE, header.width + EDGE);
  const height = used.maxY - used.minY + EDGE + HEAD;
  const by = { x: (width - used.minX - used.maxX) / 2, y: HEAD - used.minY };
  const corners = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
    { x: 0, y: 0 },
  ];
  const frame: Mark<'paper'> = { kind: 'line', ink: 'words', points: corners, width: FRAME_WIDTH };
  return {
    small,
    width,
    height,
    transform: movedTransform(transform, by),
    marks: [frame, ...header.marks, ...marks.map((mark) => movedMark(mark, by))],
    conflicts,
  };
}

function headerMarks(
  numbers: readonly number[],
  scale: number,
): { readonly width: number; readonly marks: readonly Mark<'paper'>[] } {
  let x = 1.2;
  const middle = HEAD / 2;
  const discs = numbers.map((number) => {
    const radius = backingRadius(numberMark(String(number), { x: 0, y: 0 }));
    const mark = numberMark(String(number), { x: x + radius, y: middle });
    x += 2 * radius + 1;
    return mark;
  });
  const size = SMALLEST_FONT_SIZE;
  const text = `1:${scale}`;
  const at = { x: x + 0.6, y: middle + (CAP_HEIGHT * size) / 2 };
  const words: Mark<'paper'> = { kind: 'words', at, text, size, ink: 'words', align: 'start' };
  return { width: at.x + textWidth(text, size), marks: [...discs, words] };
}

/** Whether a place is on the ground of an extent. */
export function isWithin(
  { minX, maxX, minY, maxY }: Bounds,
  { x, y }: { readonly x: number; readonly y: number },
): boolean {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}

/** The middle of an obstacle on the drawing of the arena. */
export function placeOf(
  { obstacle }: SmallObstacle,
  transform: PaperTransform,
): { x: number; y: number; reach: number } {
  const { minX, maxX, minY, maxY } = obstacle.bounds;
  const { x, y } = onPaper(transform, { x: (minX + maxX) / 2, y: (minY + maxY) / 2 });
  return { x, y, reach: (Math.hypot(maxX - minX, maxY - minY) / 2) * perMetre(transform) };
}
