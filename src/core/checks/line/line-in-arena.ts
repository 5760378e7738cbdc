import type { Wall } from '../../constraints/constraint.ts';
import type { Arena } from '../../course/course.ts';
import { shiftByKeys } from '../../course/edit-obstacles.ts';
import { FOOT } from '../../measure/quantity.ts';
import type { Point } from '../../plane/point.ts';
import type { LineElement } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Proposal, RawFinding } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { linePartWords, obstacleWords } from '../findings/thing-words.ts';
import { halfWidth } from '../geometry/half-width.ts';
import { chordsOf } from '../geometry/path-chords.ts';
import { BAND_TOLERANCE } from '../rulebooks/band.ts';
import { slowerProposals } from './breaks.ts';

interface NearestWall {
  readonly element: LineElement;
  readonly at: Point;
  readonly wall: Wall;
  readonly clearance: number;
  readonly needs: number;
}

/** Metres from each wall, negative outside. */
function distancesToWalls(arena: Arena, { x, y }: Point): readonly (readonly [Wall, number])[] {
  return [
    ['west', x],
    ['south', y],
    ['east', arena.length - x],
    ['north', arena.width - y],
  ];
}

/** Whether the point is in the opening where horses come in, which is no wall. */
function atEntrance({ entrance }: Arena, wall: Wall, { x, y }: Point): boolean {
  if (wall !== entrance.wall) return false;
  const along = wall === 'west' || wall === 'east' ? y : x;
  return Math.abs(along - entrance.at) <= entrance.width / 2;
}

/** Whether some of the element may be nearer to a wall than half the horse's width: most of them are not. */
function mayTouchWall({ horse, course: { arena } }: Survey, element: LineElement): boolean {
  const needs = halfWidth(horse, element, 'standing');
  const { minX, minY, maxX, maxY } = chordsOf(element.path).bounds;
  return minX < needs || minY < needs || maxX > arena.length - needs || maxY > arena.width - needs;
}

/** The place of the leg that is nearest to a wall, of those nearer than half the horse's width. */
function nearestWall(survey: Survey, elements: readonly LineElement[]): NearestWall | undefined {
  const { arena } = survey.course;
  let worst: NearestWall | undefined;
  for (const element of elements) {
    const needs = halfWidth(survey.horse, element, 'standing');
    for (const at of chordsOf(element.path).points) {
      for (const [wall, room] of distancesToWalls(arena, at)) {
        if (room >= needs - BAND_TOLERANCE || room >= (worst?.clearance ?? Number.POSITIVE_INFINITY)) continue;
        if (!atEntrance(arena, wall, at)) worst = { element, at, wall, clearance: room, needs };
      }
    }
  }
  return worst;
}

const INWARD: Readonly<Record<Wall, Point>> = {
  west: { x: 1, y: 0 },
  south: { x: 0, y: 1 },
  east: { x: -1, y: 0 },
  north: { x: 0, y: -1 },
};

/** Moving what is ridden away from the wall, by the missing room and then by some feet more. */
function moveInProposals(
  survey: Survey,
  { wall, clearance: room, needs }: NearestWall,
  obstacle: string,
): readonly Proposal[] {
  const { unit } = survey.course;
  const { x, y } = INWARD[wall];
  return [0, 4, 8].map((feet) => {
    const by = Math.ceil((needs - room) / (FOOT / 2)) * (FOOT / 2) + feet * FOOT;
    return {
      idea: 'move',
      says: `Move ${obstacleWords(survey, obstacle)} ${valueWords('length', by, unit)} away from the ${wall} wall`,
      edit: (course) => shiftByKeys(course, [obstacle], x * by, y * by),
    };
  });
}

/** Of one part of a leg; `near` are the elements that may touch a wall. */
function lineInArenaFindings(
  survey: Survey,
  near: readonly LineElement[],
  { leg, part }: Pick<LineElement, 'leg' | 'part'>,
): RawFinding[] {
  const ridden = survey.layout.ride.legs[leg];
  const worst = nearestWall(
    survey,
    near.filter((element) => element.leg === leg && element.part === part),
  );
  if (worst === undefined || ridden === undefined) return [];
  const { unit } = survey.course;
  const way = linePartWords(survey, part, ridden.obstacle);
  const needs = valueWords('length', worst.needs, unit);
  return [
    {
      id: `line-in-arena:${ridden.id}:${part}`,
      check: 'line-in-arena',
      weight: 'must',
      says:
        worst.clearance < 0
          ? `${way} leaves the arena by ${valueWords('length', -worst.clearance, unit)} at the ${worst.wall} wall.`
          : `${way} comes to ${valueWords('length', worst.clearance, unit)} from the ${worst.wall} wall; half a horse needs ${needs}.`,
      because: lineInArena.because,
      at: worst.at,
      leg,
      keys: [ridden.obstacle],
      measured: worst.clearance,
      allowed: { least: worst.needs },
      source: survey.horse.bodyWidth.source,
      proposals: [
        ...moveInProposals(survey, worst, ridden.obstacle),
        ...(part === 'approach' ? slowerProposals(survey, leg, 'approach') : []),
      ],
    },
  ];
}

const PARTS = ['approach', 'obstacle', 'finish'] as const;

export const lineInArena: Check = {
  id: 'line-in-arena',
  says: 'The line stays inside the arena, half a horse from its walls.',
  because: 'A horse that has no room along the wall cuts the turn or stops.',
  weight: 'must',
  limits: [],
  findings(survey) {
    const near = survey.line.elements.filter((element) => mayTouchWall(survey, element));
    if (near.length === 0) return [];
    return survey.layout.ride.legs.flatMap((_, leg) =>
      PARTS.flatMap((part) => lineInArenaFindings(survey, near, { leg, part })),
    );
  },
};
