import type { Arena } from '../../course/course.ts';
import { shiftByKeys } from '../../course/edit-obstacles.ts';
import type { Metres } from '../../measure/quantity.ts';
import type { Pose } from '../../plane/pose.ts';
import { type Bounds, boundsIntersect, ringContains } from '../../plane/ring.ts';
import type { Survey } from '../../survey.ts';
import { capitalized } from '../../text/sentence.ts';
import type { Check, RawFinding } from '../check.ts';
import { askerWords, bandWords, valueWords } from '../findings/finding-words.ts';
import { obstacleWords, pieceWords } from '../findings/thing-words.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

/** The ground before the opening, so deep. */
function groundBeforeEntrance({ length, width, entrance }: Arena, depth: Metres): Bounds {
  const [from, to] = [entrance.at - entrance.width / 2, entrance.at + entrance.width / 2];
  switch (entrance.wall) {
    case 'west':
      return { minX: 0, maxX: depth, minY: from, maxY: to };
    case 'east':
      return { minX: length - depth, maxX: length, minY: from, maxY: to };
    case 'south':
      return { minX: from, maxX: to, minY: 0, maxY: depth };
    case 'north':
      return { minX: from, maxX: to, minY: width - depth, maxY: width };
  }
}

/** How far a piece has to go into the arena to leave the ground free. */
function shiftInwards(free: Bounds, piece: Bounds, { entrance }: Arena): { readonly dx: number; readonly dy: number } {
  switch (entrance.wall) {
    case 'west':
      return { dx: free.maxX - piece.minX, dy: 0 };
    case 'east':
      return { dx: free.minX - piece.maxX, dy: 0 };
    case 'south':
      return { dx: 0, dy: free.maxY - piece.minY };
    case 'north':
      return { dx: 0, dy: free.minY - piece.maxY };
  }
}

/** Horses come in and go out here between two goes, and so does the crew with its truck. */
export const entranceClear: Check = {
  id: 'entrance-clear',
  says: 'The ground before the entrance is free.',
  because: 'A horse that comes in over somebody’s poles has met the course before its go began.',
  weight: 'should',
  limits: ['entrance.clear'],
  findings(survey, limits) {
    const limit = limits['entrance.clear'];
    if (limit === undefined) return [];
    const { arena, unit } = survey.course;
    const free = groundBeforeEntrance(arena, bandOf(limit).least ?? 0);
    return survey.obstacles.flatMap((obstacle): RawFinding[] => {
      if (!boundsIntersect(free, obstacle.bounds, -1e-3)) return [];
      const inside = obstacle.pieces.filter((piece) => boundsIntersect(free, piece.bounds, -1e-3));
      const [first] = inside;
      if (first === undefined) return [];
      const { id } = obstacle.obstacle;
      const { dx, dy } = shiftInwards(free, obstacle.bounds, arena);
      return [
        {
          id: `entrance-clear:${id}`,
          check: 'entrance-clear',
          weight: limit.weight ?? entranceClear.weight,
          says: `${capitalized(pieceWords(survey, first.key))} lies in the way of the entrance; ${askerWords(limit)} ${bandWords(limit, unit)} of free ground before it.`,
          because: entranceClear.because,
          at: { x: first.pose.x, y: first.pose.y },
          misfit: 'obstacle',
          keys: [id, ...inside.map(({ key }) => key)],
          allowed: bandOf(limit),
          source: limit.source,
          proposals: [
            {
              says: `Move ${obstacleWords(survey, id)} ${valueWords('length', Math.hypot(dx, dy), unit)} away from the entrance`,
              edit: (course) => shiftByKeys(course, [id], dx, dy),
            },
          ],
        },
      ];
    });
  },
};

function faultOf(survey: Survey, pose: Pose): string | undefined {
  const { length, width } = survey.course.arena;
  if (pose.x < 0 || pose.y < 0 || pose.x > length || pose.y > width) return 'lies outside the arena';
  const under = survey.pieces.find((piece) => piece.figure.stands !== 'deck' && ringContains(piece.footprint, pose));
  return under === undefined ? undefined : `lies on ${pieceWords(survey, under.key)}`;
}

export const startEnd: Check = {
  id: 'start-end',
  says: 'The go begins and ends where a horse can stand.',
  because: 'A rider who cannot stand where the pattern begins has to begin somewhere else.',
  weight: 'must',
  limits: [],
  findings(survey) {
    const { start, end, legs } = survey.layout.ride;
    if (legs.length === 0) return [];
    const ends = [
      { name: 'start', pose: start } as const,
      ...(end === undefined ? [] : [{ name: 'end', pose: end } as const]),
    ];
    return ends.flatMap(({ name, pose }): RawFinding[] => {
      const fault = faultOf(survey, pose);
      if (fault === undefined) return [];
      return [
        {
          id: `start-end:${name}`,
          check: 'start-end',
          weight: startEnd.weight,
          says: `The ${name} of the go ${fault}; it wants free ground inside the walls.`,
          because: startEnd.because,
          at: { x: pose.x, y: pose.y },
          misfit: name,
          keys: [],
          source: 'the ground plan',
          proposals: [],
        },
      ];
    });
  },
};
