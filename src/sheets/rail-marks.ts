/** Marks on the rail at the quarters and middles of the walls, with how far each is from the nearer corner. */
import type { Arena } from '../core/course/course.ts';
import { FOOT, type LengthUnit } from '../core/measure/quantity.ts';
import type { Mark } from '../core/plane/mark.ts';
import type { Point } from '../core/plane/point.ts';
import { opening } from './ground.ts';
import { addShape } from './paper-shapes.ts';
import { onPaper, type PaperTransform, perMetre } from './paper-transform.ts';
import { wordLabel } from './pattern-labels.ts';
import type { RidePicture } from './ride-picture.ts';

const FRACTIONS = [0.25, 0.5, 0.75];
/** Length of a mark inside the rail and its stroke, mm. */
const TICK = 1.5;
const WIDTH = 0.35;

interface RailPlace {
  readonly at: Point;
  readonly inward: Point;
  /** From the nearer corner, metres. */
  readonly from: number;
}

function railPlaces({ length, width }: Arena): readonly RailPlace[] {
  return FRACTIONS.flatMap((each) => {
    const near = Math.min(each, 1 - each);
    return [
      { at: { x: each * length, y: 0 }, inward: { x: 0, y: 1 }, from: near * length },
      { at: { x: each * length, y: width }, inward: { x: 0, y: -1 }, from: near * length },
      { at: { x: 0, y: each * width }, inward: { x: 1, y: 0 }, from: near * width },
      { at: { x: length, y: each * width }, inward: { x: -1, y: 0 }, from: near * width },
    ];
  });
}

/** Feet or metres to a tenth, without trailing zeros: "62.5 ft". */
export function railWords(from: number, unit: LengthUnit): string {
  const value = Math.round((from / (unit === 'ft' ? FOOT : 1)) * 10) / 10;
  return `${value} ${unit}`;
}

/** The marks, and their distances where there is room for them; none in the opening. */
export function addRailMarks(
  { index, marks, labels }: RidePicture,
  { arena, unit }: { readonly arena: Arena; readonly unit: LengthUnit },
  transform: PaperTransform,
): void {
  const [from, to] = opening(arena);
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const k = 1 / perMetre(transform);
  for (const { at, inward, from: off } of railPlaces(arena)) {
    if (Math.hypot(at.x - middle.x, at.y - middle.y) < arena.entrance.width / 2 + 3 * k) continue;
    const a = onPaper(transform, at);
    const b = onPaper(transform, { x: at.x + inward.x * TICK * k, y: at.y + inward.y * TICK * k });
    const mark: Mark<'paper'> = { kind: 'line', ink: 'rail', points: [a, b], width: WIDTH };
    marks.push(mark);
    addShape(index, { points: [a, b], reach: WIDTH / 2, firmness: 'solid' });
    labels.push(nearLabel(railWords(off, unit), b));
  }
}

/** Left out rather than set where it would not be read with its mark. */
function nearLabel(text: string, at: { readonly x: number; readonly y: number }) {
  const label = wordLabel(text, at, { isOptional: true });
  const { wish } = label;
  return {
    ...label,
    wish: { ...wish, cost: (middle: { x: number; y: number }, off: number) => 3 * off * off + wish.cost(middle, off) },
  };
}
