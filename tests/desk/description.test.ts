import { describe, expect, test } from 'vitest';
import { FOOT } from '../../src/core/measure/quantity.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { ringContains } from '../../src/core/plane/ring.ts';
import { description } from '../../src/desk/description.ts';
import { createDesk } from '../../src/desk/editor.ts';
import { palette } from '../../src/desk/placing/palette.ts';
import { chosenWallDistances, wallDistances } from '../../src/desk/placing/wall-distances.ts';
import { outlines } from '../../src/desk/selection/outlines.ts';
import { threeObstacles } from './three-obstacles.ts';

describe('the description for a screen reader', () => {
  test('of nothing tells what there is', () => {
    expect(description(createDesk(threeObstacles()).state())).toBe('Nothing is chosen, 3 obstacles, a go of 3 legs.');
  });

  test('of an obstacle tells its number, gait, pieces, place and heading', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    expect(description(desk.state())).toMatch(
      /^The run of poles \(obstacle 1\), jog, 4 pieces, .+ from the west wall, .+ from the south wall, at 0°\.$/,
    );
  });

  test('of a piece tells whose it is', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['fan-1/pole-2']);
    expect(description(desk.state())).toMatch(/^Pole 2 of the fan \(obstacle 2\), .+ at \S+°\.$/);
  });

  test('of several counts them', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1', 'fan-1', 'spoke-1']);
    expect(description(desk.state())).toMatch(/^3 obstacles chosen, /);
  });
});

describe('the tapes to the walls', () => {
  test('run square from each wall to the nearest side', () => {
    const arena = createDesk(threeObstacles()).state().course.arena;
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
    const desk = createDesk(threeObstacles());
    expect(chosenWallDistances(desk.state())).toEqual([]);
    desk.choose(['run-1']);
    expect(chosenWallDistances(desk.state())).toHaveLength(4);
  });
});

describe('the outlines', () => {
  test('hold every footprint of what is chosen, turned with it', () => {
    const desk = createDesk(threeObstacles());
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
