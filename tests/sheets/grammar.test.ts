/** Ways that no kind makes: their words come from the stations alone. And words among markers against the line itself. */
import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course, Leg } from '../../src/core/course/course.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import { freeObstacle } from '../../src/core/obstacles/custom/grouped.ts';
import type { Obstacle } from '../../src/core/obstacles/obstacle.ts';
import { crossStation, pieceOfKind, poseStation, turnStation } from '../../src/core/obstacles/parts.ts';
import type { Station } from '../../src/core/obstacles/passage.ts';
import type { Piece } from '../../src/core/pieces/piece.ts';
import { pathPoints } from '../../src/core/plane/path.ts';
import type { Point } from '../../src/core/plane/point.ts';
import { segmentIntersection, segmentPointDistance } from '../../src/core/plane/segment.ts';
import { type Survey, survey } from '../../src/core/survey.ts';
import { instructions } from '../../src/sheets/instructions.ts';

const HALF = Math.PI;
const QUARTER = Math.PI / 2;

/** A pole across the way at x, ridden over towards +x at its middle, the fraction 0.5. */
function pole(id: string, x: number, values = {}): Piece {
  return pieceOfKind(id, 'pole', values, { x, y: 0, angle: -QUARTER });
}

/** Pieces laid by hand, with one way over them, as the first number of a go. */
function laid(pieces: readonly Piece[], stations: readonly Station[]): Course {
  const lying = pieces.map((piece) => ({ piece, pose: { ...piece.pose, x: piece.pose.x + 30, y: 15 + piece.pose.y } }));
  const free = freeObstacle('own', lying, 'Own');
  // Pieces keep the ids that the stations name.
  const own: Obstacle = {
    ...free,
    pieces: free.pieces.map((piece, i) => ({ ...piece, id: pieces[i]?.id ?? piece.id })),
    passages: [{ id: 'own', title: 'as the designer calls it', gaits: ['walk'], stations }],
  };
  return addObstacle(blankCourse(), own);
}

function told(course: Course, change: Partial<Leg> = {}): string {
  const [layout] = course.layouts;
  const legs = layout.ride.legs.map((leg): Leg => ({ ...leg, gait: 'walk', approach: 'walk', ...change }));
  const ridden: Course = { ...course, layouts: [{ ...layout, ride: { ...layout.ride, legs } }] };
  return instructions(survey(ridden))[0]?.text.replace('From START, ', '') ?? '';
}

const OVER: readonly Station[] = [crossStation('a', 0.5, 1), crossStation('b', 0.5, 1)];

describe('a way that nobody has words for', () => {
  test.each<[string, readonly Piece[], readonly Station[], string]>([
    ['over poles', [pole('a', 0), pole('b', 1)], OVER, 'walk to and over the poles.'],
    [
      'over raised poles',
      [pole('a', 0, { raisedEnd: 0.15 }), pole('b', 1)],
      OVER,
      'walk to and over the raised poles.',
    ],
    [
      'over, about on the haunches, and backed',
      [pole('a', 0), pole('b', 1)],
      [
        ...OVER,
        poseStation('b', { x: 0, y: 2, angle: QUARTER }),
        turnStation(-HALF, 'haunches'),
        poseStation('b', { x: 0, y: 5, angle: -QUARTER }, 'back'),
      ],
      'walk to and over the poles, stop, turn on the haunches 180° to the right, and back straight.',
    ],
    [
      'up to a pole and backed away from it on a bend',
      [pole('a', 0)],
      [poseStation('a', { x: 0, y: -2, angle: QUARTER }), poseStation('a', { x: 1, y: -3, angle: HALF }, 'back')],
      'walk to the pole, stop, and back on a bend with the quarters to the right.',
    ],
    [
      'over one, about on the forehand, and over it again',
      [pole('a', 0)],
      [
        crossStation('a', 0.5, 1),
        poseStation('a', { x: 0, y: 2, angle: QUARTER }),
        turnStation(HALF, 'forehand'),
        crossStation('a', 0.5, -1),
      ],
      'walk to and over the pole, turn on the forehand 180° to the left, and walk over it.',
    ],
    [
      'sideways there and back',
      [pole('a', 0)],
      [
        poseStation('a', { x: -3, y: 0, angle: QUARTER }),
        poseStation('a', { x: 3, y: 0, angle: QUARTER }, 'side-pass'),
        turnStation(HALF, 'haunches'),
        poseStation('a', { x: -3, y: 0, angle: -QUARTER }, 'side-pass'),
      ],
      'walk to the pole, stop, side pass right over it, turn on the haunches 180° to the left, and side pass right over it again.',
    ],
    [
      'around one barrel',
      [pieceOfKind('a', 'barrel', {}, { x: 0, y: 0, angle: 0 })],
      [0, 1, 2, 3, 4, 5, 6, 7, 8].map((i) =>
        poseStation('a', {
          x: 3 * Math.cos((-i * HALF) / 2),
          y: 3 * Math.sin((-i * HALF) / 2),
          angle: (-i * HALF) / 2 - QUARTER,
        }),
      ),
      'walk to the barrel and twice around the barrel to the right.',
    ],
    [
      'over a pole and between two barrels',
      [
        pole('a', 0),
        pieceOfKind('l', 'barrel', {}, { x: 4, y: 2, angle: 0 }),
        pieceOfKind('r', 'barrel', {}, { x: 4, y: -2, angle: 0 }),
      ],
      [
        crossStation('a', 0.5, 1),
        poseStation('l', { x: 0, y: -1, angle: 0 }),
        poseStation('r', { x: 2, y: 2, angle: 0 }),
      ],
      'walk to and over the pole, and between A and B.',
    ],
    [
      'by hand at a post',
      [pieceOfKind('a', 'post', {}, { x: 0, y: 0, angle: 0 })],
      [poseStation('a', { x: 0, y: 1, angle: 0 }), poseStation('a', { x: 0, y: 1, angle: 0 }, 'work')],
      'walk to the post, stop, and work it on the right.',
    ],
  ])('%s', (_, pieces, stations, text) => {
    expect(told(laid(pieces, stations))).toBe(text);
  });

  test.each([
    [0, 'forehand', 1, 'turn on the forehand 360° to the left with the front feet inside'],
    [0, 'haunches', -1, 'turn on the haunches 360° to the right with the front feet inside'],
    [1, 'haunches', -1, 'turn on the haunches 360° to the right'],
  ] as const)('in a box %d m beyond its pole, on the %s, names the feet that are inside', (y, about, way, words) => {
    const box = buildObstacle('it', 'box', {}, { x: 30, y: 15, angle: 0.4 });
    if ('why' in box) throw new Error(box.why);
    const stations = [poseStation('south', { x: 0.3, y, angle: QUARTER }), turnStation(way * 2 * HALF, about)];
    const own = { ...box, passages: [{ id: 'own', title: 'own', gaits: ['walk'] as const, stations }] };
    expect(told(addObstacle(blankCourse(), own))).toBe(`walk to the box, stop, and ${words}.`);
  });

  test('names a fan raised where one of its poles is', () => {
    const fan = buildObstacle('it', 'fan', {}, { x: 30, y: 15, angle: 0 });
    if ('why' in fan) throw new Error(fan.why);
    const pieces = fan.pieces.map((piece, i) =>
      i === 1 ? { ...piece, values: { ...piece.values, raisedEnd: 0.2 } } : piece,
    );
    expect(told(addObstacle(blankCourse(), { ...fan, pieces }), { passage: 'right' })).toBe(
      'walk to and over the raised fan, turning right.',
    );
  });

  test('is told without the stations whose pieces are gone, and that there is none when all are', () => {
    const course = laid([pole('a', 0), pole('b', 1)], OVER);
    const without = (...ids: readonly string[]): Course => {
      const [layout] = course.layouts;
      const obstacles = layout.obstacles.map((each) => ({
        ...each,
        pieces: each.pieces.filter(({ id }) => !ids.includes(id)),
      }));
      return { ...course, layouts: [{ ...layout, obstacles }] };
    };
    expect(told(without('b'))).toBe('walk to and over the pole.');
    expect(told(without('a', 'b'))).toBe('This obstacle has lost the pieces of its way.');
  });

  test('has its other gait where that begins', () => {
    expect(told(laid([pole('a', 0), pole('b', 1)], OVER), { approach: 'jog' })).toBe(
      'jog to the poles, then walk over them.',
    );
  });
});

/** Every pair of markers between which the line passes, in order, found on the drawn line. */
function gatesOnLine({ line, pieces, letters }: Survey): readonly string[] {
  const markers = pieces.map(({ key, pose }) => ({ letter: letters.get(key) ?? '?', at: pose }));
  const points = line.elements
    .filter(({ part }) => part === 'obstacle')
    .flatMap(({ path }) => [...pathPoints(path, 0.07)]);
  const found = points.slice(1).flatMap((to, i) => {
    const from = points[i] as Point;
    return markers.flatMap((a, j) =>
      markers.slice(j + 1).flatMap((b) => {
        const isNextTo = markers.every(
          ({ at }) => at === a.at || at === b.at || segmentPointDistance([a.at, b.at], at) > 0.1,
        );
        if (!isNextTo || Math.hypot(to.x - from.x, to.y - from.y) < 1e-6) return [];
        return segmentIntersection([from, to], [a.at, b.at]) === undefined ? [] : [`${a.letter}${b.letter}`];
      }),
    );
  });
  // A sample on the line between two markers is met by the stroke before it and by the one after.
  return found.filter((gate, i) => gate !== found[i - 1]);
}

const MARKED = (['back-markers', 'serpentine'] as const).flatMap((kind) =>
  (kind === 'serpentine'
    ? [{ markers: 3 }, { markers: 6 }]
    : [{}, { shape: 'row' }, { shape: 'row', markers: 5 }]
  ).flatMap((values) =>
    ([1, -1] as const).flatMap((side) => {
      const built = buildObstacle('it', kind, values, { x: 30, y: 15, angle: 0.7 }, side);
      if ('why' in built) throw new Error(built.why);
      return built.passages.map(({ id }) => [kind, id, side, values, built] as const);
    }),
  ),
);

test.each(MARKED)(
  'the letters of %s, %s, side %s, %j are those that the line passes, in its order',
  (_, passage, __, ___, built) => {
    const course = addObstacle(blankCourse(), built);
    const [layout] = course.layouts;
    const [leg] = layout.ride.legs as readonly [Leg];
    const ridden: Course = {
      ...course,
      layouts: [{ ...layout, ride: { ...layout.ride, legs: [{ ...leg, passage }] } }],
    };
    const made = survey(ridden);
    const text = instructions(made)[0]?.text ?? '';
    const gates = gatesOnLine(made);
    const named = [...text.matchAll(/between (\w) and (\w)/g)].map(([, a, b]) => `${a}${b}`);
    if (named.length > 0) {
      expect(named).toEqual(gates);
      return;
    }
    // A serpentine: its first and last letters are those of the first and last gate, and the hand is that of the first marker.
    const [, first, last] = /through (\w).*?(\w) in a serpentine/.exec(text) ?? [];
    expect(gates[0]).toContain(first);
    expect(gates.at(-1)).toContain(last);
    expect(gates).toHaveLength(made.pieces.length - 1);
    const marker = made.pieces.find(({ key }) => made.letters.get(key) === first);
    const elements = made.line.elements.filter(({ part }) => part === 'obstacle');
    const nearest = elements
      .flatMap(({ path, move }) => pathPoints(path, 0.05).map((at, i, all) => ({ at, next: all[i + 1], move })))
      .filter(({ next }) => next !== undefined)
      .toSorted(
        (a, b) =>
          Math.hypot(a.at.x - (marker?.pose.x ?? 0), a.at.y - (marker?.pose.y ?? 0)) -
          Math.hypot(b.at.x - (marker?.pose.x ?? 0), b.at.y - (marker?.pose.y ?? 0)),
      )[0];
    if (nearest?.next === undefined || marker === undefined) throw new Error('the line has points');
    const { at, next, move } = nearest;
    const left = (next.x - at.x) * (marker.pose.y - at.y) - (next.y - at.y) * (marker.pose.x - at.x);
    const isLeft = move === 'back' ? left < 0 : left > 0;
    expect(text).toContain(`starting with ${first} on your ${isLeft ? 'left' : 'right'}`);
  },
);
