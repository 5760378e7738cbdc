import { describe, expect, test } from 'vitest';
import * as checker from '../../src/core/checks/checks.ts';
import { currentLayout } from '../../src/core/course/course.ts';
import { changeLeg, reorderLeg } from '../../src/core/course/edit-ride.ts';
import { FOOT, INCH } from '../../src/core/measure/quantity.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { ringContains } from '../../src/core/plane/ring.ts';
import { gapChanges, legChanges } from '../../src/desk/change-words.ts';
import { description, reading } from '../../src/desk/description.ts';
import { createDesk } from '../../src/desk/editor.ts';
import { palette } from '../../src/desk/placing/palette.ts';
import { chosenWallDistances, wallDistances } from '../../src/desk/placing/wall-distances.ts';
import { outlines } from '../../src/desk/selection/outlines.ts';
import { threeObstacles } from './three-obstacles.ts';

describe('the description for a screen reader', () => {
  test('of nothing tells how much there is, and no more', () => {
    expect(description(createDesk(threeObstacles(), checker).state())).toBe(
      'Nothing is chosen. 3 obstacles, 5 findings.',
    );
  });

  test('of what is chosen tells its name and its place from the corner that everything is counted from', () => {
    const desk = createDesk(threeObstacles(), checker);
    desk.choose(['run-1']);
    expect(description(desk.state())).toBe(
      `Chosen: the set of jog-overs (obstacle 1), 49' 2½" from the west wall, 29' 6¼" from the south wall.`,
    );
    desk.choose(['run-1', 'fan-1', 'spoke-1']);
    expect(description(desk.state())).toMatch(/^Chosen: 3 obstacles, .+ from the west wall, .+ from the south wall\.$/);
  });
});

describe('an obstacle read out', () => {
  test('has its gait, place, heading, gaps and the way from the last one', () => {
    const state = createDesk(threeObstacles(), checker).state();
    expect(reading({ survey: state.survey, findings: [] }, 'run-1')).toMatch(
      /^The set of jog-overs \(obstacle 1\), jog, 49' 2½" from the west wall, 29' 6¼" from the south wall, heading 0°, 3 gaps of 3', \S.* along the line from the start\.$/,
    );
    expect(reading({ survey: state.survey, findings: [] }, 'fan-1')).toMatch(
      /^The fan \(obstacle 2\), .+ along the line from the set of jog-overs \(obstacle 1\)\.$/,
    );
  });

  test('has the lead of its lope', () => {
    const desk = createDesk(threeObstacles(), checker);
    const [leg] = currentLayout(desk.state().course).ride.legs;
    desk.setGait(leg?.id ?? '', 'lope');
    desk.edit('Lead', (course) => changeLeg(course, leg?.id ?? '', { lead: 'left' }));
    expect(reading(desk.state(), 'run-1')).toContain('lope on the left lead');
  });

  test('has its findings, and not those of another', () => {
    const desk = createDesk(threeObstacles(), checker);
    desk.setValue('run-1', 'gap', `2' 6"`);
    expect(reading(desk.state(), 'run-1')).toMatch(/\d findings?: .*Gaps 1 to 3 of the set of jog-overs/);
    expect(reading(desk.state(), 'spoke-1')).not.toContain('set of jog-overs (obstacle 1) are');
  });

  test('of a piece tells whose it is', () => {
    const state = createDesk(threeObstacles(), checker).state();
    expect(reading(state, 'fan-1/pole-2')).toMatch(/^Pole 2 of the fan \(obstacle 2\), .+ heading \S+°\.$/);
  });

  test('is what is said when it is chosen', () => {
    const desk = createDesk(threeObstacles(), checker);
    desk.choose(['run-1']);
    expect(desk.state().said).toMatch(/^Chose the set of jog-overs \(obstacle 1\), jog, .+ heading 0°/);
    desk.choose(['run-1', 'fan-1']);
    expect(desk.state().said).toBe('Chose the set of jog-overs (obstacle 1) and the fan (obstacle 2)');
  });
});

describe('what has changed', () => {
  test('by a drag of one pole says each gap with what it was', () => {
    const desk = createDesk(threeObstacles(), checker);
    // Nothing is kept, so that the pole goes by itself.
    desk.editLayout('Loose', (layout) => ({
      ...layout,
      obstacles: layout.obstacles.map((each) => ({ ...each, constraints: [] })),
    }));
    desk.choose(['run-1/pole-4']);
    desk.nudge(2 * INCH, 0);
    expect(desk.state().said).toContain(`Gap 3 of the set of jog-overs (obstacle 1) is 3' 2" (was 3')`);
    expect(desk.state().said).not.toContain('Gap 1');
  });

  test('says gaps that changed alike together, and nothing where none did', () => {
    const course = threeObstacles();
    const wider = createDesk(course);
    wider.setValue('run-1', 'gap', `3' 2"`);
    expect(gapChanges(course, wider.state().course)).toEqual([]);
    const moved = createDesk(course);
    moved.choose(['run-1/pole-1', 'run-1/pole-2']);
    moved.nudge(0, 0);
    expect(gapChanges(course, moved.state().course)).toEqual([]);
  });

  test('of a leg says its new and its old lead and place', () => {
    const course = threeObstacles();
    const [first] = currentLayout(course).ride.legs;
    const id = first?.id ?? '';
    expect(legChanges(course, changeLeg(course, id, { lead: 'right' }))).toEqual([
      'the lead at number 1 is right (was from the bend)',
    ]);
    expect(legChanges(course, reorderLeg(course, id, 1))).toEqual([
      'the fan is number 1 (was 2)',
      'the set of jog-overs is number 2 (was 1)',
    ]);
  });
});

describe('the tapes to the walls', () => {
  test('run square from each wall to the nearest side', () => {
    const arena = createDesk(threeObstacles(), checker).state().course.arena;
    const tapes = wallDistances({ minX: 3 * FOOT, maxX: 10 * FOOT, minY: 60 * FOOT, maxY: 90 * FOOT }, arena, 'ft');
    expect(tapes.map(({ wall, text, near }) => [wall, text, near])).toEqual([
      ['west', "3'", true],
      ['east', "190'", false],
      ['south', "60'", false],
      ['north', "10'", true],
    ]);
    for (const { from, to, length } of tapes) expect(Math.hypot(from.x - to.x, from.y - to.y)).toBeCloseTo(length, 9);
  });

  test('are not drawn while nothing is chosen', () => {
    const desk = createDesk(threeObstacles(), checker);
    expect(chosenWallDistances(desk.state())).toEqual([]);
    desk.choose(['run-1']);
    expect(chosenWallDistances(desk.state())).toHaveLength(4);
  });
});

describe('the outlines', () => {
  test('hold every footprint of what is chosen, turned with it', () => {
    const desk = createDesk(threeObstacles(), checker);
    desk.choose(['fan-1']);
    desk.turn(0.3);
    const [outline] = outlines(desk.state());
    const pieces = desk.state().survey.pieces.filter((piece) => piece.obstacle === 'fan-1');
    expect(pieces.length).toBeGreaterThan(2);
    for (const corner of pieces.flatMap((piece) => piece.footprint)) {
      expect(ringContains(outline?.ring ?? [], corner)).toBe(true);
    }
  });
});

describe('the palette', () => {
  test('offers every kind once, in the group that it names, and no empty group', () => {
    const offered = palette().flatMap((set) => set.kinds);
    expect([...offered].sort((a, b) => a.id.localeCompare(b.id))).toEqual(
      [...OBSTACLE_KINDS].sort((a, b) => a.id.localeCompare(b.id)),
    );
    const [known] = OBSTACLE_KINDS;
    if (known === undefined) throw new Error('no kinds');
    const two = palette([{ ...known, id: 'novelty', family: 'markers' }, known]);
    expect(two.map((set) => set.title)).toEqual(['Over poles', 'Markers']);
  });
});
