import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import {
  addObstacle,
  duplicateObstacles,
  eraseByKeys,
  flipObstacles,
  freshId,
  placeAt,
  rebuildObstacle,
  rotateByKeys,
  shiftByKeys,
} from '../../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../../src/core/course/edit-ride.ts';
import { branchLayout, replaceLayout } from '../../../src/core/course/layouts.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { compose, type Pose } from '../../../src/core/plane/pose.ts';
import { build, obstacle, obstacleIds, sampleCourse } from './sample.ts';

const legs = (course: Course) => currentLayout(course).ride.legs;
const groundPoses = ({ pose, pieces }: Obstacle): readonly Pose[] => pieces.map((piece) => compose(pose, piece.pose));
const rebuiltCourse = (course: Course, id: string, values: Record<string, number | string>): Course => {
  const next = rebuildObstacle(course, id, values);
  if ('why' in next) throw new Error(next.why);
  return next;
};

describe('an obstacle that is added', () => {
  test('is ridden last, by its first passage in its usual gait', () => {
    const course = sampleCourse();
    expect(
      legs(course).map(({ id, obstacle, passage, gait, approach }) => [id, obstacle, passage, gait, approach]),
    ).toEqual(
      ['fan-1', 'run-1', 'spoke-1'].map((id, index) => {
        const passage = obstacle(course, id).passages[0];
        return [`leg-${index + 1}`, id, passage?.id, passage?.gaits[0], passage?.gaits[0]];
      }),
    );
  });

  test('is come to at a walk when it is not ridden forward', () => {
    const run = build('run-1', 'run', { x: 5, y: 5, angle: 0 });
    const [passage] = run.passages;
    if (passage === undefined) throw new Error('a run has a passage');
    const back = { kind: 'reach', piece: 'pole-1', pose: { x: 0, y: 0, angle: 0 }, move: 'back' } as const;
    const backed = {
      ...run,
      passages: [{ ...passage, gaits: ['jog'] as const, stations: [...passage.stations, back] }],
    };
    expect(legs(addObstacle(blankCourse(), backed))[0]).toMatchObject({ gait: 'jog', approach: 'walk' });
  });

  test('has no leg when it has no passage', () => {
    const plant = { ...build('run-1', 'run', { x: 5, y: 5, angle: 0 }), passages: [] };
    expect(legs(addObstacle(blankCourse(), plant))).toEqual([]);
  });

  test('must have an id of its own', () => {
    const course = sampleCourse();
    expect(freshId(course, 'fan')).toBe('fan-2');
    expect(freshId(course, 'box')).toBe('box-1');
    expect(() => addObstacle(course, obstacle(course, 'fan-1'))).toThrow('fan-1 is in the layout already');
  });
});

describe('what is erased', () => {
  test('takes its legs and the constraints that grip it along', () => {
    const course = eraseByKeys(sampleCourse(), ['run-1']);
    expect(obstacleIds(course)).toEqual(['fan-1', 'spoke-1']);
    expect(legs(course).map((leg) => leg.obstacle)).toEqual(['fan-1', 'spoke-1']);
    expect(currentLayout(course).constraints).toEqual([]);
  });

  test('as a piece takes only what hung on that piece along', () => {
    const before = sampleCourse();
    const course = eraseByKeys(before, ['run-1/pole-1']);
    const run = obstacle(course, 'run-1');
    expect(run.pieces.map((piece) => piece.id)).not.toContain('pole-1');
    expect(run.pieces).toHaveLength(obstacle(before, 'run-1').pieces.length - 1);
    expect(JSON.stringify(run.constraints)).not.toContain('"pole-1"');
    expect(JSON.stringify(run.passages)).not.toContain('"pole-1"');
    expect(run.passages).toHaveLength(obstacle(before, 'run-1').passages.length);
    expect(legs(course)).toBe(legs(before));
    expect(currentLayout(course).constraints).toEqual([]);
    expect(obstacle(course, 'fan-1')).toBe(obstacle(before, 'fan-1'));
  });

  test('with the last piece is the whole obstacle', () => {
    const before = sampleCourse();
    const keys = obstacle(before, 'run-1').pieces.map((piece) => `run-1/${piece.id}`);
    expect(obstacleIds(eraseByKeys(before, keys))).toEqual(['fan-1', 'spoke-1']);
  });

  test('with the beginning of a passage takes the passage, and the leg goes to another', () => {
    const before = sampleCourse();
    const run = obstacle(before, 'run-1');
    const start = { kind: 'reach', piece: 'pole-1', pose: { x: 0, y: 0, angle: 0 }, move: 'ride' } as const;
    const back = { ...start, piece: 'pole-2', move: 'back' } as const;
    const lane = { id: 'lane', title: 'back through', gaits: ['walk'] as const, stations: [start, back] };
    const withLane = replaceLayout(before, (layout) => ({
      ...layout,
      obstacles: layout.obstacles.map((each) => (each === run ? { ...run, passages: [lane, ...run.passages] } : each)),
    }));
    const riding = changeLeg(withLane, 'leg-2', { passage: 'lane' });
    expect(legs(riding)[1]).toMatchObject({ passage: 'lane', gait: 'walk' });
    const after = eraseByKeys(riding, ['run-1/pole-1']);
    expect(obstacle(after, 'run-1').passages.map((passage) => passage.id)).not.toContain('lane');
    expect(legs(after)[1]?.passage).toBe(run.passages[0]?.id);
  });
});

describe('what is shifted', () => {
  test('moves by what was said, and nothing else is touched', () => {
    const before = branchLayout(sampleCourse());
    const after = shiftByKeys(before, ['fan-1'], 1.5, -2);
    expect(obstacle(after, 'fan-1').pose).toEqual({ x: 16.5, y: 8, angle: 0.5 });
    expect(obstacle(after, 'fan-1').pieces).toBe(obstacle(before, 'fan-1').pieces);
    expect(obstacle(after, 'run-1')).toBe(obstacle(before, 'run-1'));
    expect(currentLayout(after).constraints).toBe(currentLayout(before).constraints);
    expect(currentLayout(after).ride).toBe(currentLayout(before).ride);
    expect(after.layouts[0]).toBe(before.layouts[0]);
    expect(after.truck).toBe(before.truck);
  });

  test('as a piece moves on the ground by what was said, whichever way its obstacle lies', () => {
    const before = sampleCourse();
    const after = shiftByKeys(before, ['fan-1/pole-2'], 1, 2);
    const [was, is] = [before, after].map((course) => groundPoses(obstacle(course, 'fan-1')));
    expect(is?.[0]).toEqual(was?.[0]);
    expect(is?.[1]?.x).toBeCloseTo((was?.[1]?.x ?? 0) + 1, 8);
    expect(is?.[1]?.y).toBeCloseTo((was?.[1]?.y ?? 0) + 2, 8);
    expect(is?.[1]?.angle).toBeCloseTo(was?.[1]?.angle ?? 0, 12);
    expect(obstacle(after, 'fan-1').pieces[0]).toBe(obstacle(before, 'fan-1').pieces[0]);
  });

  test('moves once when an obstacle is chosen together with its piece', () => {
    const before = sampleCourse();
    expect(shiftByKeys(before, ['fan-1/pole-2', 'fan-1'], 1, 0)).toEqual(shiftByKeys(before, ['fan-1'], 1, 0));
  });

  test('takes the bends between two obstacles along only when both move', () => {
    const before = sampleCourse();
    expect(legs(shiftByKeys(before, ['run-1'], 1, 1))[1]?.bends).toEqual([{ x: 22, y: 16 }]);
    expect(legs(shiftByKeys(before, ['run-1', 'fan-1'], 1, 1))[1]?.bends).toEqual([{ x: 23, y: 17 }]);
  });

  test('there and back lies where it was, to the byte', () => {
    const before = shiftByKeys(sampleCourse(), ['fan-1', 'run-1'], 1e-9, 0);
    const step = fc.integer({ min: -20_000, max: 20_000 }).map((millimetres) => millimetres / 1000);
    fc.assert(
      fc.property(step, step, (dx, dy) => {
        const there = shiftByKeys(before, ['fan-1', 'run-1'], dx, dy);
        expect(JSON.stringify(shiftByKeys(there, ['fan-1', 'run-1'], -dx, -dy))).toBe(JSON.stringify(before));
      }),
    );
  });
});

describe('what is turned', () => {
  test('goes counter-clockwise about the point', () => {
    const course = placeAt(sampleCourse(), 'run-1', { x: 13, y: 4, angle: 0 });
    const after = obstacle(rotateByKeys(course, ['run-1'], Math.PI / 2, { x: 10, y: 0 }), 'run-1').pose;
    expect(after).toEqual({ x: 6, y: 3, angle: Math.PI / 2 });
  });

  test('four quarters round lies where it was', () => {
    const before = sampleCourse();
    let after = before;
    for (let i = 0; i < 4; i += 1) after = rotateByKeys(after, ['fan-1', 'run-1/pole-1'], Math.PI / 2, { x: 7, y: 3 });
    for (const id of ['fan-1', 'run-1']) {
      const [was, is] = [before, after].map((course) => groundPoses(obstacle(course, id)));
      is?.forEach((pose, i) => {
        expect(pose.x).toBeCloseTo(was?.[i]?.x ?? 0, 8);
        expect(pose.y).toBeCloseTo(was?.[i]?.y ?? 0, 8);
        expect(Math.cos(pose.angle - (was?.[i]?.angle ?? 0))).toBeCloseTo(1, 12);
      });
    }
  });
});

describe('what is flipped', () => {
  test('as one obstacle is its mirror image about its own x axis', () => {
    const before = sampleCourse();
    const after = flipObstacles(before, ['fan-1']);
    const [was, is] = [obstacle(before, 'fan-1'), obstacle(after, 'fan-1')];
    expect(is.side).toBe(-1);
    expect(is.pose).toBe(was.pose);
    was.pieces.forEach((piece, i) => {
      expect(is.pieces[i]?.pose.x).toBe(piece.pose.x);
      expect(is.pieces[i]?.pose.y).toBeCloseTo(-piece.pose.y, 12);
      expect(is.pieces[i]?.pose.angle).toBeCloseTo(-piece.pose.angle, 12);
    });
    expect(obstacle(after, 'run-1')).toBe(obstacle(before, 'run-1'));
  });

  test('is what its kind builds for the other side', () => {
    const before = sampleCourse();
    const after = flipObstacles(before, ['spoke-1']);
    expect(rebuiltCourse(after, 'spoke-1', {})).toEqual(after);
  });

  test('as several is the mirror image about the line along the arena through their middle', () => {
    const before = sampleCourse();
    const after = flipObstacles(before, ['fan-1', 'run-1', 'spoke-1/arm-1']);
    // Frames at y 10, 20 and 12: the line is y = 15.
    for (const id of ['fan-1', 'run-1', 'spoke-1']) {
      const [was, is] = [before, after].map((course) => groundPoses(obstacle(course, id)));
      is?.forEach((pose, i) => {
        expect(pose.x).toBeCloseTo(was?.[i]?.x ?? 0, 9);
        expect(pose.y).toBeCloseTo(30 - (was?.[i]?.y ?? 0), 9);
        expect(Math.cos(pose.angle + (was?.[i]?.angle ?? 0))).toBeCloseTo(1, 12);
      });
    }
    expect(currentLayout(after).constraints.map((constraint) => constraint.side)).toEqual([-1, undefined]);
    expect(legs(after)[1]?.lead).toBe('right');
  });

  test('in part keeps the side of a constraint that reaches beyond it', () => {
    expect(currentLayout(flipObstacles(sampleCourse(), ['fan-1'])).constraints[0]?.side).toBe(1);
  });

  test('twice has the same bytes', () => {
    const place = fc.integer({ min: 0, max: 60_000_000_000 }).map((nanometres) => nanometres / 1e9);
    const frame = fc.record({ x: place, y: place, angle: fc.double({ min: -3.1, max: 3.1, noNaN: true }) });
    const choice = fc.subarray(['fan-1', 'run-1', 'spoke-1'], { minLength: 1 });
    fc.assert(
      fc.property(frame, frame, frame, choice, (a, b, c, keys) => {
        let course = placeAt(sampleCourse(), 'fan-1', a);
        course = placeAt(placeAt(course, 'run-1', b), 'spoke-1', c);
        expect(JSON.stringify(flipObstacles(flipObstacles(course, keys), keys))).toBe(JSON.stringify(course));
      }),
    );
  });
});

describe('what is duplicated', () => {
  test('gets ids of its own, lies beside, and is ridden last in the same gait', () => {
    const before = changeLeg(sampleCourse(), 'leg-1', { gait: 'walk', approach: 'jog' });
    const { course, keys } = duplicateObstacles(before, ['fan-1', 'run-1/pole-1'], 2, 1);
    expect(keys).toEqual(['fan-2', 'run-2']);
    expect(obstacle(course, 'fan-2').pose).toEqual({ x: 17, y: 11, angle: 0.5 });
    expect(obstacle(course, 'fan-2').pieces).toBe(obstacle(before, 'fan-1').pieces);
    expect(legs(course).map((leg) => leg.id)).toEqual(['leg-1', 'leg-2', 'leg-3', 'leg-4', 'leg-5']);
    expect(legs(course)[3]).toMatchObject({ obstacle: 'fan-2', gait: 'walk', approach: 'jog', bends: [] });
  });

  test('is held together as the originals are', () => {
    const { course } = duplicateObstacles(sampleCourse(), ['fan-1', 'run-1'], 2, 1);
    const { constraints } = currentLayout(course);
    expect(constraints.map((constraint) => constraint.id)).toEqual(['gap-1', 'parallel-1', 'gap-2']);
    expect(constraints[2]).toMatchObject({
      grips: [
        { piece: 'fan-2/pole-1', at: 0.5 },
        { piece: 'run-2/pole-1', at: 0.5 },
      ],
      hold: 15,
      side: 1,
    });
  });

  test('is nothing when nothing is chosen', () => {
    const before = sampleCourse();
    const { course, keys } = duplicateObstacles(before, ['box-9'], 2, 1);
    expect(course).toBe(before);
    expect(keys).toEqual([]);
  });
});

describe('an obstacle that is built anew', () => {
  test('keeps its place, side, name, fixed pieces and legs', () => {
    let before = flipObstacles(sampleCourse(), ['fan-1']);
    before = replaceLayout(before, (layout) => ({
      ...layout,
      obstacles: layout.obstacles.map((each) =>
        each.id === 'fan-1'
          ? {
              ...each,
              name: 'Sun',
              pieces: each.pieces.map((piece) => (piece.id === 'pole-2' ? { ...piece, fixed: true as const } : piece)),
            }
          : each,
      ),
    }));
    const after = rebuiltCourse(before, 'fan-1', { poles: 4 });
    const fan = obstacle(after, 'fan-1');
    expect(fan).toMatchObject({ name: 'Sun', side: -1, pose: obstacle(before, 'fan-1').pose, values: { poles: 4 } });
    expect(fan.pieces.map((piece) => piece.fixed)).toEqual([undefined, true, undefined, undefined]);
    expect(legs(after)).toEqual(legs(before));
    expect(obstacle(after, 'run-1')).toBe(obstacle(before, 'run-1'));
    expect(currentLayout(after).constraints).toBe(currentLayout(before).constraints);
  });

  test('lets go of the constraints on pieces that it no longer has', () => {
    const before = replaceLayout(sampleCourse(), (layout) => ({
      ...layout,
      constraints: [
        { id: 'parallel-9', kind: 'parallel', grips: [{ piece: 'run-1/pole-4' }, { piece: 'fan-1/pole-1' }] },
      ],
    }));
    expect(currentLayout(rebuiltCourse(before, 'run-1', { poles: 4 })).constraints).toHaveLength(1);
    expect(currentLayout(rebuiltCourse(before, 'run-1', { poles: 3 })).constraints).toEqual([]);
  });

  test('for another gait takes the legs that rode its usual gait along', () => {
    const before = sampleCourse();
    expect(legs(before)[1]).toMatchObject({ gait: 'jog', approach: 'jog' });
    const after = rebuiltCourse(before, 'run-1', { gait: 'lope' });
    expect(legs(after)[1]).toMatchObject({ gait: 'lope', approach: 'lope' });
    const own = changeLeg(before, 'leg-2', { gait: 'walk' });
    expect(legs(rebuiltCourse(own, 'run-1', { gait: 'lope' }))[1]).toMatchObject({ gait: 'walk' });
  });

  test('is refused with the reason of its kind, and nothing changes', () => {
    expect(rebuildObstacle(sampleCourse(), 'run-1', { poles: 99 })).toMatchObject({
      kind: 'infeasible',
      nearest: { poles: 12 },
    });
  });

  test('must exist', () => {
    expect(() => rebuildObstacle(sampleCourse(), 'fan-9', {})).toThrow('no obstacle fan-9');
  });
});

describe('what is posed', () => {
  test('has its frame where it was put', () => {
    expect(obstacle(placeAt(sampleCourse(), 'fan-1', { x: 1, y: 2, angle: 3 }), 'fan-1').pose).toEqual({
      x: 1,
      y: 2,
      angle: 3,
    });
  });

  test('as a piece lies on the ground where it was put', () => {
    const after = obstacle(placeAt(sampleCourse(), 'fan-1/pole-2', { x: 1, y: 2, angle: 3 }), 'fan-1');
    const pose = groundPoses(after)[1];
    expect(pose?.x).toBeCloseTo(1, 12);
    expect(pose?.y).toBeCloseTo(2, 12);
    expect(pose?.angle).toBeCloseTo(3, 12);
  });

  test('must exist', () => {
    expect(() => placeAt(sampleCourse(), 'fan-1/pole-9', { x: 0, y: 0, angle: 0 })).toThrow(
      'fan-1 has no piece pole-9',
    );
  });
});

test('a course that was edited is frozen, and the one before it is left as it was', () => {
  const before = sampleCourse();
  const bytes = JSON.stringify(before);
  const after = rotateByKeys(shiftByKeys(before, ['fan-1', 'run-1'], 1, 1), ['spoke-1/arm-1'], 1, { x: 0, y: 0 });
  expect(JSON.stringify(before)).toBe(bytes);
  expect(Object.isFrozen(obstacle(after, 'fan-1').pose)).toBe(true);
  expect(() => Object.assign(obstacle(after, 'spoke-1').pieces[0] ?? {}, { kind: 'gate' })).toThrow(TypeError);
});

test('an edit that leaves all where it is returns the same course', () => {
  const before = sampleCourse();
  expect(placeAt(before, 'fan-1', { ...obstacle(before, 'fan-1').pose })).toBe(before);
  expect(shiftByKeys(before, ['fan-1'], 1e-12, 0)).toBe(before);
});

test('an edit of what is not there returns the same course', () => {
  const before = sampleCourse();
  const keys = ['box-1', 'fan-1/pole-99'];
  expect(eraseByKeys(before, keys)).toBe(before);
  expect(shiftByKeys(before, keys, 1, 1)).toBe(before);
  expect(rotateByKeys(before, keys, 1, { x: 0, y: 0 })).toBe(before);
  expect(flipObstacles(before, ['box-1'])).toBe(before);
  expect(shiftByKeys(before, ['fan-1'], 0, 0)).toBe(before);
  expect(replaceLayout(before, (layout) => layout)).toBe(before);
});
