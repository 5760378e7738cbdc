/** A number has one home: what is typed on a tape is the obstacle's parameter, or an exception that it carries and shows. */
import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../src/core/course/course.ts';
import { departuresOf } from '../../src/core/course/departures.ts';
import { dimensions } from '../../src/core/course/dimensions.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { addLeg } from '../../src/core/course/edit-ride.ts';
import { branchLayout } from '../../src/core/course/layouts.ts';
import { resolvedConstraints } from '../../src/core/course/resolved-constraints.ts';
import { FOOT, INCH } from '../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import { derivedHolds } from '../../src/core/obstacles/derived-holds.ts';
import type { Obstacle } from '../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { exceptionsInWords } from '../../src/desk/change-words.ts';
import { printValue } from '../../src/desk/commands/typed.ts';
import type { Desk } from '../../src/desk/desk.ts';
import { createDesk } from '../../src/desk/editor.ts';
import { expectDeskInvariants } from './invariants.ts';

function courseWith(kind: string, values = {}): Course {
  const built = buildObstacle(`${kind}-1`, kind, values, { x: 30, y: 15, angle: 0 });
  if ('why' in built) throw new Error(built.why);
  return addObstacle(blankCourse(), built);
}

function obstacleOn(desk: Desk): Obstacle {
  const [obstacle] = currentLayout(desk.state().course).obstacles;
  if (obstacle === undefined) throw new Error('no obstacle');
  return obstacle;
}

/** What the ground says, by constraint key: the measures as they lie, not as they are stored. */
function onGround(desk: Desk): ReadonlyMap<string, number> {
  const { course } = desk.state();
  const bare = currentLayout(course);
  const measured = {
    ...bare,
    obstacles: bare.obstacles.map((each) => ({
      ...each,
      constraints: each.constraints.map(({ hold: _, ...constraint }) => constraint),
    })),
  };
  return new Map(dimensions(measured, course.arena, course.unit).map(({ key, value }) => [key, value]));
}

const HELD = OBSTACLE_KINDS.flatMap((kind) => {
  const built = buildObstacle(`${kind.id}-1`, kind.id, {}, { x: 30, y: 15, angle: 0 });
  if ('why' in built) return [];
  const derived = derivedHolds(built);
  return [...new Set([...derived.values()].map(({ param }) => param))].map((param) => [kind.id, param] as const);
});

/** How many measures were tried as an exception: a test that tries none would show nothing. */
let exceptionsTried = 0;

test('most kinds that hold a number hold one of their parameters', () => {
  expect(HELD.length).toBeGreaterThan(20);
});

describe.each(HELD)('the %s: %s', (kind, param) => {
  const followers = (desk: Desk) => {
    const obstacle = obstacleOn(desk);
    const derived = derivedHolds(obstacle);
    return resolvedConstraints(currentLayout(desk.state().course)).filter(
      ({ constraint }) => derived.get(constraint.id)?.param === param && constraint.hold !== undefined,
    );
  };

  test('typed on the tapes of all that follow it is the number in the panel, and the ground says so', () => {
    const desk = createDesk(courseWith(kind));
    const about = OBSTACLE_KINDS.find(({ id }) => id === kind)?.params[param];
    if (about === undefined || about.kind === 'choice') throw new Error('no such number');
    const keys = followers(desk).map(({ key }) => key);
    const first = derivedHolds(obstacleOn(desk)).get(followers(desk)[0]?.constraint.id ?? '');
    if (first === undefined) throw new Error('nothing follows it');
    const step = about.kind === 'angle' ? Math.PI / 90 : INCH;
    const typed = first.hold + step;
    const text = about.kind === 'angle' ? `${(typed * 180) / Math.PI}°` : `${typed} m`;
    const before = obstacleOn(desk).values;
    const refusal = desk.setHold(keys, text);
    if (refusal !== undefined) {
      // What cannot be built is refused with its reason, and nothing has changed.
      expect(refusal.length).toBeGreaterThan(10);
      expect(obstacleOn(desk).values).toEqual(before);
      return;
    }
    const after = obstacleOn(desk);
    expect(Number(after.values[param])).toBeCloseTo(Number(before[param]) + step / first.slope, 6);
    expect(departuresOf(after).holds).toEqual([]);
    expect(exceptionsInWords(after, 'ft')).toEqual({});
    expect(desk.state().said).toContain('(was ');
    const ground = onGround(desk);
    for (const key of keys) expect(ground.get(key), key).toBeCloseTo(typed, 6);
    expectDeskInvariants(desk);
  });

  test('typed at one place of several is an exception: shown, and there after every other number changed, or asked about', () => {
    const desk = createDesk(courseWith(kind));
    const all = followers(desk);
    const [one] = all;
    const about = OBSTACLE_KINDS.find(({ id }) => id === kind)?.params;
    if (one === undefined || about === undefined || all.length < 2) return;
    const typed = (one.constraint.hold ?? 0) + 2 * INCH;
    const isAngle = about[param]?.kind === 'angle';
    if (isAngle || desk.setHold([one.key], `${typed} m`) !== undefined || desk.state().pendingConflict !== null) return;
    const carried = (on: Desk) => {
      const found = departuresOf(obstacleOn(on)).holds.find(({ id }) => id === one.constraint.id);
      const ground = onGround(on).get(one.key);
      return found !== undefined && ground !== undefined && Math.abs(ground - typed) < 1e-6;
    };
    exceptionsTried += 1;
    expect(carried(desk)).toBe(true);
    expect(exceptionsInWords(obstacleOn(desk), 'ft')[param]).toContain('One is ');
    for (const [other, its] of Object.entries(about)) {
      if (other === param || its.kind === 'choice') continue;
      const value = obstacleOn(desk).values[other];
      if (typeof value !== 'number') continue;
      const step =
        its.kind === 'count' ? 1 : its.kind === 'angle' ? Math.PI / 90 : its.kind === 'fraction' ? 0.02 : INCH;
      for (const next of [value + step, value - step]) {
        const again = createDesk(desk.state().course);
        const refusal = again.setValue(obstacleOn(again).id, other, printValue(next, its, 'ft'));
        const question = again.state().pendingQuestion;
        if (refusal !== undefined || again.state().pendingConflict !== null) continue;
        if (question !== null) expect(question.says).toMatch(/set by hand where the others are/);
        else expect(carried(again), `${other} ${next}`).toBe(true);
      }
    }
  });
});

test('at one place of several, nearly every measure can be an exception', () => {
  expect(exceptionsTried).toBeGreaterThanOrEqual(20);
});

describe('a run of four', () => {
  const run = () => createDesk(courseWith('run'));

  test('4 ft typed on all its gaps stays 4 ft when it gets a fifth pole', () => {
    const desk = run();
    desk.setHold(['run-1/gap-1', 'run-1/gap-2', 'run-1/gap-3'], "4'");
    expect(obstacleOn(desk).values.gap).toBeCloseTo(4 * FOOT, 9);
    expect(desk.state().said).toBe("The set of jog-overs (obstacle 1): gap is now 4' (was 3')");
    desk.setValue('run-1', 'poles', '5');
    const ground = onGround(desk);
    for (const gap of [1, 2, 3, 4]) expect(ground.get(`run-1/gap-${gap}`)).toBeCloseTo(4 * FOOT, 9);
  });

  test('keeps one gap of its own, shows it, and asks before it is lost', () => {
    const desk = run();
    desk.setHold(['run-1/gap-3'], `3' 2"`);
    expect(obstacleOn(desk).values.gap).toBeCloseTo(3 * FOOT, 9);
    expect(exceptionsInWords(obstacleOn(desk), 'ft')).toEqual({ gap: `One is 3' 2".` });
    desk.setValue('run-1', 'gap', `3' 6"`);
    const ground = onGround(desk);
    expect(ground.get('run-1/gap-1')).toBeCloseTo(3.5 * FOOT, 9);
    expect(ground.get('run-1/gap-3')).toBeCloseTo(3 * FOOT + 2 * INCH, 9);
    const before = desk.state().course;
    desk.setValue('run-1', 'poles', '3');
    expect(desk.state().course).toBe(before);
    expect(desk.state().pendingQuestion?.says).toBe(
      `This change leaves no place for one gap of 3' 2", set by hand where the others are 3' 6".`,
    );
    desk.answer(false);
    expect(desk.state().course).toBe(before);
    desk.setValue('run-1', 'poles', '3');
    desk.answer(true);
    expect(obstacleOn(desk).pieces).toHaveLength(3);
    expect(desk.state().pendingQuestion).toBeNull();
    desk.undo();
    expect(desk.state().course).toBe(before);
  });

  test('typed back to what the others are, it is no exception any more', () => {
    const desk = run();
    desk.setHold(['run-1/gap-2'], `3' 2"`);
    desk.setHold(['run-1/gap-2'], `3'`);
    expect(exceptionsInWords(obstacleOn(desk), 'ft')).toEqual({});
  });

  test('without its last pole has three poles; without its second it has four, of which one is taken out', () => {
    const desk = run();
    desk.choose(['run-1/pole-4']);
    desk.erase();
    expect(obstacleOn(desk).values.poles).toBe(3);
    expect(desk.state().said).toContain('Poles is now 3 (was 4)');
    desk.choose(['run-1/pole-2']);
    desk.erase();
    expect(exceptionsInWords(obstacleOn(desk), 'ft')).toEqual({ poles: 'One is taken out.' });
    desk.setValue('run-1', 'length', "10'");
    expect(obstacleOn(desk).pieces.map(({ id }) => id)).toEqual(['pole-1', 'pole-3']);
    expectDeskInvariants(desk);
  });

  test('set to a lope has lope-overs where it had the usual gap, and its own gap where it had one', () => {
    const usual = run();
    usual.setValue('run-1', 'gait', 'lope');
    expect(usual.state().said).toBe(
      "The set of jog-overs (obstacle 1): gap is now 6' (was 3'); gait is now Lope (was Jog); number 1 is ridden at a lope (was jog). The way to number 1 is ridden at a lope (was jog)",
    );
    const own = run();
    own.setValue('run-1', 'gap', `3' 3"`);
    own.setValue('run-1', 'gait', 'lope');
    expect(obstacleOn(own).values.gap).toBeCloseTo(3.25 * FOOT, 9);
  });

  test('its gait at Set and the gait over it at Ride are one number', () => {
    const desk = run();
    const [leg] = currentLayout(desk.state().course).ride.legs;
    desk.setGait(leg?.id ?? '', 'walk');
    expect(obstacleOn(desk).values.gait).toBe('walk');
    expect(currentLayout(desk.state().course).ride.legs[0]?.gait).toBe('walk');
    expect(desk.state().said).toContain('number 1 is ridden at a walk (was jog)');
    desk.setValue('run-1', 'gait', 'jog');
    expect(currentLayout(desk.state().course).ride.legs[0]?.gait).toBe('jog');
  });

  test('ridden twice, each way over it has a gait of its own, told once', () => {
    const desk = run();
    desk.edit('Ride it again', (course) => addLeg(course, 'run-1'));
    const [first, second] = currentLayout(desk.state().course).ride.legs;
    desk.setGait(second?.id ?? '', 'walk');
    expect(currentLayout(desk.state().course).ride.legs.map(({ gait }) => gait)).toEqual(['jog', 'walk']);
    expect(obstacleOn(desk).values.gait).toBe('jog');
    expect(first?.gait).toBe('jog');
    expect(desk.state().said).toBe('Number 2 is ridden at a walk (was jog)');
  });

  test('another layout with other gaits is no change of a gait', () => {
    const desk = run();
    desk.edit('Branch the layout', (course) => branchLayout(course));
    const [leg] = currentLayout(desk.state().course).ride.legs;
    desk.setGait(leg?.id ?? '', 'walk');
    const [other] = desk.state().course.layouts;
    desk.edit('Show the other', (course) => ({ ...course, current: other.id }));
    expect(desk.state().said).toBe('Show the other');
  });

  test('a number typed on the tapes is the number in the file, with no rounding error', () => {
    const desk = run();
    desk.setHold(['run-1/gap-1', 'run-1/gap-2', 'run-1/gap-3'], '3\' 7"');
    expect(String(obstacleOn(desk).values.gap)).toBe('1.0922');
  });

  test('a constraint that was added to a pole is asked about before the pole goes', () => {
    const desk = run();
    const constraint = { id: 'own-1', kind: 'parallel', grips: [{ piece: 'pole-1' }, { piece: 'pole-4' }] };
    desk.editLayout('Add one', (layout) => ({
      ...layout,
      obstacles: layout.obstacles.map((each) => ({ ...each, constraints: [...each.constraints, constraint] })),
    }));
    desk.setValue('run-1', 'poles', '3');
    expect(desk.state().pendingQuestion?.says).toContain('what was set by hand at own 1');
    desk.answer(true);
    expect(obstacleOn(desk).pieces).toHaveLength(3);
  });

  test('no gait changes without a word, whatever changed it', () => {
    const desk = createDesk(courseWith('back-lane'));
    const [leg] = currentLayout(desk.state().course).ride.legs;
    const obstacle = obstacleOn(desk);
    const jogged = obstacle.passages.find(({ gaits }) => gaits.includes('jog'));
    if (leg === undefined || jogged === undefined) throw new Error('no way at a jog');
    const ride = (passage: string, gait: 'jog' | 'walk') =>
      desk.editLayout('Ride it otherwise', (layout) => ({
        ...layout,
        ride: { ...layout.ride, legs: layout.ride.legs.map((each) => ({ ...each, passage, gait })) },
      }));
    ride(jogged.id, 'jog');
    expect(desk.state().said).toBe('Ride it otherwise. Number 1 is ridden at a jog (was walk)');
  });
});
