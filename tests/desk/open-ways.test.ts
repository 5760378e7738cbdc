import { describe, expect, test } from 'vitest';
import { closerFindingsOf } from '../../src/core/checks/checks.ts';
import { blankCourse } from '../../src/core/course/blank.ts';
import { type Course, currentLayout, type Leg } from '../../src/core/course/course.ts';
import { moveCrossings } from '../../src/core/course/edit-crossings.ts';
import { addLeg, changeLeg, reorderLeg } from '../../src/core/course/edit-ride.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { writeCourse } from '../../src/core/files/write.ts';
import { takeOpenWays } from '../../src/core/ride/open-ways.ts';
import { survey } from '../../src/core/survey.ts';
import { createDesk } from '../../src/desk/editor.ts';
import { threeObstacles, threeOpenObstacles } from './three-obstacles.ts';

const legsOf = (course: Course): readonly Leg[] => currentLayout(course).ride.legs;
const waysOf = (course: Course) => legsOf(course).map(({ passage }) => passage);
const settled = (course: Course) => takeOpenWays(course, { ...survey(course), arena: course.arena });

describe('a way that the designer left open', () => {
  test('is taken so that nothing better is found, and again when something moves', () => {
    const desk = createDesk(blankCourse());
    desk.place('fan', {}, { x: 40, y: 20 });
    desk.place('bridge', {}, { x: 20, y: 24 });
    expect(legsOf(desk.state().course).map(({ openWay }) => openWay)).toEqual([true, true]);
    const better = () => closerFindingsOf(desk.state().survey).filter(({ check }) => check === 'better-way');
    const taken = new Set<string>();
    for (const [x, y, angle] of [
      ['40', '20', '0'],
      ['45', '8', '90'],
      ['15', '15', '180'],
      ['30', '15', '-90'],
    ] as const) {
      desk.setPose('fan-1', 'x', `${x} m`);
      desk.setPose('fan-1', 'y', `${y} m`);
      desk.setPose('fan-1', 'angle', angle);
      expect(better()).toEqual([]);
      taken.add(waysOf(desk.state().course).join());
    }
    expect(taken.size).toBeGreaterThan(1);
  });

  test('depends on the layout alone, not on the ways before', () => {
    const open = threeOpenObstacles();
    const one = settled(open);
    const turned = {
      ...one.layouts[0],
      ride: { ...one.layouts[0].ride, legs: legsOf(one).map((leg) => ({ ...leg, passage: other(one, leg) })) },
    };
    expect(waysOf(settled({ ...one, layouts: [turned] }))).toEqual(waysOf(one));
    expect(settled(one)).toBe(one);
  });

  test('stays open through a drag, is taken when the drag ends, and is told', () => {
    const desk = createDesk(threeOpenObstacles());
    desk.choose(['run-1']);
    desk.nudge(0.1, 0);
    const { course, said } = desk.state();
    expect(waysOf(course)).toEqual(waysOf(settled(course)));
    const changed = legsOf(threeOpenObstacles()).findIndex(({ passage }, i) => passage !== waysOf(course)[i]);
    expect(changed).toBeGreaterThanOrEqual(0);
    expect(said).toContain(`Number ${changed + 1} goes another way now: `);
    desk.undo();
    expect(waysOf(desk.state().course)).toEqual(waysOf(threeOpenObstacles()));
  });

  test('is chosen by naming a passage, and kept then; it can be opened again', () => {
    const desk = createDesk(settled(threeOpenObstacles()));
    const [, fan] = legsOf(desk.state().course);
    if (fan === undefined) throw new Error('there are three');
    const best = fan.passage;
    const against = other(desk.state().course, fan);
    desk.edit('Choose', (course) => changeLeg(course, fan.id, { passage: against }));
    expect(legsOf(desk.state().course)[1]).toMatchObject({ passage: against });
    expect(legsOf(desk.state().course)[1]).not.toHaveProperty('openWay');
    desk.choose(['run-1']);
    desk.nudge(0.1, 0);
    expect(waysOf(desk.state().course)[1]).toBe(against);
    desk.edit('Leave it open', (course) => changeLeg(course, fan.id, { openWay: true }));
    expect(waysOf(desk.state().course)[1]).toBe(best);
  });

  test('stays open when gait or lead are chosen, and keeps its passage where words or bends are made for it', () => {
    const open = threeOpenObstacles();
    const jogged = changeLeg(open, 'leg-2', { gait: 'walk' });
    expect(legsOf(jogged)[1]).toMatchObject({ openWay: true });
    expect(waysOf(settled(open))[1]).toBe('right');
    expect(waysOf(settled(changeLeg(open, 'leg-2', { words: 'Jog over the fan' })))[1]).toBe('left');
    expect(waysOf(settled(changeLeg(open, 'leg-2', { bends: [{ x: 20, y: 15 }] })))[1]).toBe('left');
    // The line over the poles is moved on one passage only.
    expect(waysOf(settled(moveCrossings(open, 'leg-2', new Map([[0, 0.4]]))))[1]).toBe('left');
  });

  test('is opened by riding once more and by a copy, and follows the order of the go', () => {
    const desk = createDesk(threeOpenObstacles());
    desk.edit('Once more', (course) => addLeg(course, 'run-1'));
    expect(legsOf(desk.state().course)[3]).toMatchObject({ obstacle: 'run-1', openWay: true });
    desk.edit('Reorder', (course) => reorderLeg(course, 'leg-4', 0));
    const { course } = desk.state();
    expect(waysOf(course)).toEqual(waysOf(settled(course)));
    const chosen = createDesk(threeObstacles());
    chosen.choose(['fan-1']);
    chosen.duplicate();
    expect(legsOf(chosen.state().course).at(-1)).not.toHaveProperty('openWay');
  });

  test('is in the file, and a file without it has chosen ways', () => {
    const open = threeOpenObstacles();
    const read = readCourse(writeCourse(open));
    expect(read.kind === 'read' && read.course).toEqual(open);
    const old = readCourse(writeCourse(threeObstacles()));
    if (old.kind !== 'read') throw new Error('refused');
    expect(writeCourse(old.course)).not.toContain('openWay');
    expect(settled(old.course)).toBe(old.course);
  });
});

/** Another passage of the leg's obstacle. */
function other(course: Course, leg: Leg): string {
  const obstacle = currentLayout(course).obstacles.find(({ id }) => id === leg.obstacle);
  return obstacle?.passages.find(({ id }) => id !== leg.passage)?.id ?? leg.passage;
}
