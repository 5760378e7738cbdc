/**
 * What covers what on a page, counted from its marks alone: exact outlines, none of the placer's own code. A label is a
 * word with its box or disc; a sign is an arrowhead, an arc, a tick, a bar, a frame or a line that leads to a label.
 */
import type { Ink, Mark } from '../../../src/core/plane/mark.ts';
import { backingRadius, CAP_HEIGHT, wordsBounds } from '../../../src/sheets/lettering.ts';
import { strokeWidth } from '../../../src/sheets/line-styles.ts';

interface At {
  readonly x: number;
  readonly y: number;
}

/** A solid: a convex or plain outline, and how far about it it reaches. A stroke has two corners and half its width. */
interface Solid {
  readonly corners: readonly At[];
  readonly reach: number;
  readonly isClosed: boolean;
}

type Role = 'label' | 'piece' | 'faint' | 'rail' | 'sign' | 'leader' | 'line';

interface Thing {
  readonly role: Role;
  readonly name: string;
  readonly solids: readonly Solid[];
  /** Of a leader: where it leads to. */
  readonly tip?: At;
}

export interface Overlap {
  readonly what: string;
  readonly with: string;
}

const PIECES = new Set<Ink>(['timber', 'stripe', 'marker', 'metal', 'barrel', 'planting', 'water', 'outline']);
const TRAVEL = new Set<Ink>(['walk', 'jog', 'lope', 'back', 'side-pass', 'work']);
/** Lines to labels are drawn with this stroke, mm. */
const LEADER = 0.18;
/** Nearer than this is touching, mm: less than a printer's dot. */
const TOUCHING = 0.05;

function between(a: At, b: At, p: At, q: At): number {
  const cross = (o: At, u: At, v: At) => (u.x - o.x) * (v.y - o.y) - (u.y - o.y) * (v.x - o.x);
  if (cross(a, b, p) * cross(a, b, q) < 0 && cross(p, q, a) * cross(p, q, b) < 0) return 0;
  const off = (at: At, u: At, v: At): number => {
    const square = (v.x - u.x) ** 2 + (v.y - u.y) ** 2;
    const t = square === 0 ? 0 : ((at.x - u.x) * (v.x - u.x) + (at.y - u.y) * (v.y - u.y)) / square;
    const k = Math.min(1, Math.max(0, t));
    return Math.hypot(u.x + (v.x - u.x) * k - at.x, u.y + (v.y - u.y) * k - at.y);
  };
  return Math.min(off(a, p, q), off(b, p, q), off(p, a, b), off(q, a, b));
}

function isInside({ corners, isClosed }: Solid, at: At): boolean {
  if (!isClosed) return false;
  let inside = false;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length] as At;
    if (a.y > at.y !== b.y > at.y && at.x < ((b.x - a.x) * (at.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  });
  return inside;
}

function sidesOf({ corners, isClosed }: Solid): readonly (readonly [At, At])[] {
  if (corners.length === 1) return [[corners[0] as At, corners[0] as At]];
  const open = corners.slice(1).map((b, i) => [corners[i] as At, b] as const);
  return isClosed ? [...open, [corners.at(-1) as At, corners[0] as At]] : open;
}

function apart(a: Solid, b: Solid): number {
  if (isInside(a, b.corners[0] as At) || isInside(b, a.corners[0] as At)) return -1;
  let least = Number.POSITIVE_INFINITY;
  for (const [p, q] of sidesOf(a)) for (const [u, v] of sidesOf(b)) least = Math.min(least, between(p, q, u, v));
  return least - a.reach - b.reach;
}

function boxOf({ corners, reach }: Solid) {
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  return [Math.min(...xs) - reach, Math.max(...xs) + reach, Math.min(...ys) - reach, Math.max(...ys) + reach] as const;
}

function covers(a: Solid, b: Solid): boolean {
  const [al, ar, at, ab] = boxOf(a);
  const [bl, br, bt, bb] = boxOf(b);
  if (al > br || bl > ar || at > bb || bt > ab) return false;
  return apart(a, b) < -TOUCHING;
}

function strokes(points: readonly At[], width: number): readonly Solid[] {
  return points.slice(1).map((b, i) => ({ corners: [points[i] as At, b], reach: width / 2, isClosed: false }));
}

function thingOf(mark: Mark<'paper'>): Thing {
  if (mark.kind === 'words') {
    const name = `“${mark.text}”`;
    if (mark.backing === 'disc') {
      const at = { x: mark.at.x, y: mark.at.y - (CAP_HEIGHT * mark.size) / 2 };
      return { role: 'label', name, solids: [{ corners: [at], reach: backingRadius(mark), isClosed: false }] };
    }
    const { minX, maxX, minY, maxY } = wordsBounds(mark);
    const corners = [
      { x: minX, y: minY },
      { x: maxX, y: minY },
      { x: maxX, y: maxY },
      { x: minX, y: maxY },
    ];
    return { role: 'label', name, solids: [{ corners, reach: 0, isClosed: true }] };
  }
  const role: Role = PIECES.has(mark.ink)
    ? 'piece'
    : mark.ink === 'rail'
      ? 'rail'
      : mark.ink === 'faint'
        ? 'faint'
        : 'sign';
  const name = `${mark.ink} ${mark.kind}`;
  if (mark.kind === 'area') return { role, name, solids: [{ corners: mark.ring, reach: 0, isClosed: true }] };
  if (mark.kind === 'disc')
    return { role, name, solids: [{ corners: [mark.at], reach: mark.radius, isClosed: false }] };
  const solids = strokes(mark.points, strokeWidth(mark.ink, mark.width));
  // A turn about the front or hind feet is a part of the line, and has the line's stroke.
  if (TRAVEL.has(mark.ink) || (mark.ink === 'turn' && mark.width === strokeWidth('turn', undefined)))
    return { role: 'line', name, solids };
  if (mark.ink === 'words' && mark.width === LEADER)
    return { role: 'leader', name: 'leader', solids, tip: mark.points.at(-1) as At };
  return { role, name, solids };
}

/** Which roles may not lie on which. A label on the line of travel is told apart. */
const FORBIDDEN: Readonly<Record<Role, readonly Role[]>> = {
  label: ['label', 'piece', 'faint', 'rail', 'sign', 'leader'],
  sign: ['piece', 'rail', 'sign'],
  leader: ['piece', 'sign', 'rail', 'leader'],
  piece: [],
  faint: [],
  rail: [],
  line: [],
};

/** The frame of a scale bar with its black quarters. */
function isBarFrame(mark: Mark<'paper'>): boolean {
  return mark.kind === 'line' && mark.ink === 'words' && mark.width === undefined;
}

/** Marks of one sign that are drawn onto one another: an arc and its arrowhead, a scale bar. */
function belongTogether(a: Mark<'paper'>, b: Mark<'paper'>): boolean {
  if (a.kind === 'words' || b.kind === 'words' || a.ink !== b.ink || a.kind === b.kind) return false;
  return a.ink !== 'words' || isBarFrame(a) || isBarFrame(b);
}

function leadsTo({ tip }: Thing, other: Thing): boolean {
  if (tip === undefined) return false;
  const end: Solid = { corners: [tip], reach: 0.6, isClosed: false };
  return other.solids.some((solid) => covers(end, solid));
}

function meet(a: Thing, b: Thing): boolean {
  return a.solids.some((one) => b.solids.some((other) => covers(one, other)));
}

/** Everything that covers what it may not, each pair once; and the labels that stand on the line of travel. */
export function overlapsOf(marks: readonly Mark<'paper'>[]): {
  readonly overlaps: readonly Overlap[];
  readonly onLine: readonly Overlap[];
} {
  const things = marks.map(thingOf);
  const overlaps: Overlap[] = [];
  const onLine: Overlap[] = [];
  things.forEach((a, i) => {
    things.forEach((b, j) => {
      if (a.role === 'label' && b.role === 'line' && meet(a, b)) onLine.push({ what: a.name, with: b.name });
      if (!FORBIDDEN[a.role].includes(b.role) || (a.role === b.role && j <= i)) return;
      if (belongTogether(marks[i] as Mark<'paper'>, marks[j] as Mark<'paper'>)) return;
      if (leadsTo(a, b) || (a.role === 'leader' && leadsTo(b, a))) return;
      if (meet(a, b)) overlaps.push({ what: a.name, with: b.name });
    });
  });
  return { overlaps, onLine };
}
