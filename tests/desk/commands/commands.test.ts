import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import { point } from '../../../src/core/plane/point.ts';
import { boundsIntersect } from '../../../src/core/plane/ring.ts';
import { survey } from '../../../src/core/survey.ts';
import { createDesk } from '../../../src/desk/editor.ts';
import { expectDeskInvariants } from '../invariants.ts';
import { threeObstacles } from '../three-obstacles.ts';

function obstacle(course: Course, id: string) {
  const found = currentLayout(course).obstacles.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
}

describe('placing', () => {
  test.each(OBSTACLE_KINDS.map((kind) => kind.id))('%s, in the middle of an empty arena, chooses it', (kind) => {
    const desk = createDesk(blankCourse());
    expect(desk.place(kind, {}, point(30, 15))).toBeUndefined();
    expectDeskInvariants(desk);
    expect(desk.state().chosen).toEqual([`${kind}-1`]);
    expect(desk.state().said).toMatch(/^Placed .+ from the \w+ wall$/);
  });

  test('rides it last, when it is ridden', () => {
    const desk = createDesk(threeObstacles());
    desk.place('gate', {}, point(50, 25));
    expect(currentLayout(desk.state().course).ride.legs.at(-1)?.obstacle).toBe('gate-1');
  });

  test('where there is no room inside the arena moves it inside', () => {
    const desk = createDesk(blankCourse());
    desk.place('run', {}, point(60.5, 30));
    const [{ bounds } = { bounds: null }] = desk.state().survey.obstacles;
    const { length, width } = desk.state().course.arena;
    expect(bounds?.maxX).toBeLessThanOrEqual(length + 1e-6);
    expect(bounds?.maxY).toBeLessThanOrEqual(width + 1e-6);
  });

  test('on top of another goes to the nearest free ground, and says so', () => {
    const desk = createDesk(threeObstacles());
    desk.place('run', {}, point(15, 9));
    const all = desk.state().survey.obstacles;
    const fresh = all.find((each) => each.obstacle.id === 'run-2');
    for (const other of all) {
      if (other !== fresh && fresh !== undefined) expect(boundsIntersect(fresh.bounds, other.bounds, 0.5)).toBe(false);
    }
    expect(desk.state().said).toContain('on the nearest free ground');
  });

  test('what cannot be built is refused with the nearest that can, and changes nothing', () => {
    const desk = createDesk(threeObstacles());
    const before = desk.state();
    const why = desk.place('fan', { length: 8 * FOOT, innerGap: FOOT, gap: 6 * FOOT, gait: 'lope' }, point(30, 5));
    expect(why).toMatch(/too tight to lope/);
    expect(why).toMatch(/The nearest that works: .*inner gap.* 2' 8"/);
    expect(desk.state().course).toBe(before.course);
    expect(desk.state().history).toBe(before.history);
    expect(desk.state().said).toBe(why);
  });

  test('a kind that nobody knows is refused', () => {
    expect(createDesk(threeObstacles()).place('castle', {}, point(1, 1))).toBe('There is no obstacle kind “castle”.');
  });
});

describe('typing a measure', () => {
  test('changes the obstacle and keeps its place', () => {
    const desk = createDesk(threeObstacles());
    expect(desk.setValue('run-1', 'gap', `3' 6"`)).toBeUndefined();
    const run = obstacle(desk.state().course, 'run-1');
    expect(run.values.gap).toBeCloseTo(3.5 * FOOT, 9);
    expect(run.pose).toEqual({ x: 15, y: 9, angle: 0 });
    expect(desk.state().said).toBe(`The set of jog-overs (obstacle 1): gap is now 3' 6" (was 3')`);
    expectDeskInvariants(desk);
  });

  test('without a unit takes the unit of the course, and says so', () => {
    const desk = createDesk(threeObstacles());
    desk.setValue('run-1', 'gap', '3');
    expect(obstacle(desk.state().course, 'run-1').values.gap).toBeCloseTo(3 * FOOT, 9);
  });

  test.each([
    ['run-1', 'gap', 'wide', /wide/],
    ['run-1', 'gap', '', /./],
    ['run-1', 'gap', '100 ft', /^Gap must lie between 1' and 30'; 100' does not\.$/],
    ['run-1', 'poles', '2.5', /whole number/],
    ['run-1', 'poles', '40', /^Poles must lie between 1 and 12; 40 does not\.$/],
    ['fan-1', 'line', '3/2', /3\/2 is one or more/],
    ['run-1', 'gait', 'gallop', /is one of .+; “gallop” is none of them/],
    ['run-1', 'colour', 'red', /has no measure called “colour”/],
    ['box-9', 'gap', '3 ft', /There is no obstacle “box-9”/],
  ])('%s %s “%s” is refused with a reason, and the course stays', (id, param, text, why) => {
    const desk = createDesk(threeObstacles());
    const before = desk.state().course;
    expect(desk.setValue(id, param, text)).toMatch(why);
    expect(desk.state().course).toBe(before);
    expect(desk.state().said).toMatch(why);
  });

  test('that the kind refuses names the nearest that works', () => {
    const desk = createDesk(threeObstacles());
    const before = desk.state().course;
    expect(desk.setValue('fan-1', 'innerGap', '6 ft')).toMatch(/that is a run, not a fan.+The nearest that works/);
    expect(desk.state().course).toBe(before);
  });

  test('places a frame or turns it', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['fan-1']);
    expect(desk.setPose('fan-1', 'x', '25 ft')).toBeUndefined();
    expect(desk.setPose('fan-1', 'angle', '22.5 deg')).toBeUndefined();
    expect(obstacle(desk.state().course, 'fan-1').pose).toEqual({ x: 25 * FOOT, y: 20, angle: Math.PI / 8 });
    expect(desk.setPose('fan-1', 'angle', 'north')).toMatch(/is not an angle/);
    expect(desk.state().chosen).toEqual(['fan-1']);
  });
});

describe('the buttons', () => {
  test('take away an obstacle with its leg', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['fan-1']);
    desk.erase();
    expectDeskInvariants(desk);
    expect(currentLayout(desk.state().course).ride.legs.map((leg) => leg.obstacle)).toEqual(['run-1', 'spoke-1']);
    expect(desk.state().said).toBe('Deleted the fan (obstacle 2)');
  });

  test('copy to free ground inside the arena', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1', 'fan-1']);
    desk.duplicate();
    expectDeskInvariants(desk);
    expect(desk.state().chosen).toEqual(['run-2', 'fan-2']);
    const { survey: now, course } = desk.state();
    const [run, copy] = ['run-1', 'run-2'].map((id) => obstacle(course, id));
    expect(copy?.values).toEqual(run?.values);
    for (const { bounds } of now.obstacles) {
      expect(Math.min(bounds.minX, bounds.minY)).toBeGreaterThanOrEqual(-1e-6);
    }
  });

  test('mirror twice gives back the same course', () => {
    const desk = createDesk(threeObstacles());
    const before = desk.state().course;
    desk.choose(['fan-1']);
    desk.mirror();
    expect(desk.state().course).not.toEqual(before);
    desk.mirror();
    expect(desk.state().course).toEqual(before);
  });

  test('turn about the middle of what is chosen, and back', () => {
    const desk = createDesk(threeObstacles());
    const middle = () => {
      const [{ bounds } = { bounds: { minX: 0, maxX: 0 } }] = survey(desk.state().course).obstacles;
      return (bounds.minX + bounds.maxX) / 2;
    };
    desk.choose(['run-1']);
    const before = middle();
    desk.turn(Math.PI / 2);
    expect(middle()).toBeCloseTo(before, 6);
    expect(obstacle(desk.state().course, 'run-1').pose.angle).toBeCloseTo(Math.PI / 2, 9);
  });

  test('say so when nothing is chosen, and change nothing', () => {
    const desk = createDesk(threeObstacles());
    const { history } = desk.state();
    desk.erase();
    desk.duplicate();
    desk.mirror();
    desk.turn(1);
    desk.nudge(1, 1);
    expect(desk.state().history).toBe(history);
    expect(desk.state().said).toBe('Nothing is chosen');
  });
});

describe('the desk', () => {
  test('tells its listeners of each change until they stop', () => {
    const desk = createDesk(threeObstacles());
    let heard = 0;
    const stop = desk.subscribe(() => {
      heard += 1;
    });
    desk.switchStage('ride');
    desk.choose(['run-1']);
    expect(heard).toBe(2);
    stop();
    desk.switchStage('set');
    expect(heard).toBe(2);
  });

  test('gives the same state object until something changes', () => {
    const desk = createDesk(threeObstacles());
    expect(desk.state()).toBe(desk.state());
    expect(desk.state().survey).toBe(desk.state().survey);
    expect(desk.state().findings).toBe(desk.state().findings);
  });

  test('puts another course on the table with a history of its own', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    desk.nudge(INCH, 0);
    const other = blankCourse({ title: 'Larkhollow, Saturday' });
    desk.open(other);
    expectDeskInvariants(desk);
    expect(desk.state().course).toBe(other);
    expect(desk.state().chosen).toEqual([]);
    desk.undo();
    expect(desk.state().course).toBe(other);
    expect(desk.state().said).toBe('There is nothing to undo');
  });

  test('takes any other pure edit under a label, and none that changes nothing', () => {
    const desk = createDesk(threeObstacles());
    desk.edit('Rename', (course) => ({ ...course, title: 'New' }));
    desk.edit('Nothing', (course) => course);
    desk.editLayout('Nothing', (layout) => layout);
    expect(
      desk
        .state()
        .history.steps.map((step) => step.label)
        .slice(1),
    ).toEqual(['Rename']);
  });
});
