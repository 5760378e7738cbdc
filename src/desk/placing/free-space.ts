import type { Arena } from '../../core/course/course.ts';
import type { PlacedObstacle } from '../../core/course/placed.ts';
import { FOOT } from '../../core/measure/quantity.ts';
import { type Bounds, boundsIntersect } from '../../core/plane/ring.ts';
import { shiftBounds } from '../selection/selection.ts';

/** Ground that is left free around a newly placed obstacle: enough for a person to walk between. Estimate. */
const ELBOW = 2 * FOOT;
/** Ground to the next obstacle that courses leave, and half of it, which a crowded arena has. 24 ft: usual by the trade press; half: estimate. */
const ROOMS = [24 * FOOT, 12 * FOOT];
/** Ground to the wall that goes with them: a horse passes there. Estimate. */
const WALL_ROOM = 8 * FOOT;
/** Spacing of the places that are tried. */
const STEP = 2 * FOOT;

interface Shift {
  readonly x: number;
  readonly y: number;
}

/** The least shift along one axis that brings a span inside 0 … size; in the middle when it is too long. */
function inward(low: number, high: number, size: number): number {
  if (high - low > size) return size / 2 - (low + high) / 2;
  return low < 0 ? -low : Math.min(0, size - high);
}

/** The least shift that brings the box inside the arena. */
export function inwardShift(bounds: Bounds, arena: Arena): Shift {
  return { x: inward(bounds.minX, bounds.maxX, arena.length), y: inward(bounds.minY, bounds.maxY, arena.width) };
}

/** A shift at which the box has the ground about it that courses leave, where there is such a place; else as `freeShift`. */
export function roomyShift(bounds: Bounds, arena: Arena, others: readonly PlacedObstacle[]): Shift | null {
  const wide = {
    minX: bounds.minX - WALL_ROOM,
    maxX: bounds.maxX + WALL_ROOM,
    minY: bounds.minY - WALL_ROOM,
    maxY: bounds.maxY + WALL_ROOM,
  };
  const fits = wide.maxX - wide.minX <= arena.length && wide.maxY - wide.minY <= arena.width;
  for (const room of fits ? ROOMS : []) {
    const shift = freeShift(wide, arena, others, room - WALL_ROOM);
    if (shift !== null) return shift;
  }
  return freeShift(bounds, arena, others);
}

/**
 * The nearest shift at which the box is inside the arena and `room` away from everything there, searched in growing circles;
 * null when there is no such place.
 */
export function freeShift(bounds: Bounds, arena: Arena, others: readonly PlacedObstacle[], room = ELBOW): Shift | null {
  const farthest = Math.hypot(arena.length, arena.width);
  const free = (shift: Shift) => {
    const there = shiftBounds(bounds, shift.x, shift.y);
    return others.every((other) => !boundsIntersect(there, other.bounds, room));
  };
  for (let radius = 0; radius <= farthest; radius += STEP) {
    const around = Math.max(1, Math.round((2 * Math.PI * radius) / STEP));
    for (let index = 0; index < around; index += 1) {
      const angle = (2 * Math.PI * index) / around;
      const asked = { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
      const back = inwardShift(shiftBounds(bounds, asked.x, asked.y), arena);
      const shift = { x: asked.x + back.x, y: asked.y + back.y };
      if (free(shift)) return shift;
    }
  }
  return null;
}
