import { describe, expect, test } from 'vitest';
import { currentLayout } from '../../../src/core/course/course.ts';
import { createDesk } from '../../../src/desk/editor.ts';
import { shelfObstacle } from '../../../src/desk/placing/custom-obstacles.ts';
import { expectDeskInvariants } from '../invariants.ts';
import { threeObstacles } from '../three-obstacles.ts';

function obstacle(desk: ReturnType<typeof createDesk>, id: string) {
  const found = currentLayout(desk.state().course).obstacles.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
}

describe('gathering', () => {
  test('makes one obstacle of chosen pieces where they lie, with what is kept among them', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-1', 'run-1/pole-2']);
    const places = desk.state().survey.pieces.filter(({ key }) => desk.state().chosen.includes(key));
    expect(desk.gather()).toBeUndefined();
    expectDeskInvariants(desk);
    expect(desk.state().chosen).toEqual(['free-1']);
    const made = desk.state().survey.pieces.filter((piece) => piece.obstacle === 'free-1');
    made.forEach((piece, i) => {
      expect(piece.pose.x).toBeCloseTo(places[i]?.pose.x ?? 0, 9);
      expect(piece.pose.y).toBeCloseTo(places[i]?.pose.y ?? 0, 9);
    });
    expect(obstacle(desk, 'free-1').constraints.map(({ kind }) => kind)).toEqual(['gap', 'parallel', 'ends-level']);
    expect(obstacle(desk, 'run-1').pieces).toHaveLength(2);
    desk.undo();
    expect(obstacle(desk, 'run-1').pieces).toHaveLength(4);
  });

  test('of whole obstacles leaves none of them, and the new one is ridden', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1', 'fan-1']);
    desk.gather();
    expectDeskInvariants(desk);
    const layout = currentLayout(desk.state().course);
    expect(layout.obstacles.map(({ id }) => id)).toEqual(['spoke-1', 'free-1']);
    expect(layout.ride.legs.map((leg) => leg.obstacle)).toEqual(['spoke-1', 'free-1']);
  });

  test('of nothing is refused', () => {
    expect(createDesk(threeObstacles()).gather()).toBe('Nothing is chosen');
  });
});

describe('the shelf', () => {
  test('takes a whole obstacle as it is, and places it again with all that holds it', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['fan-1']);
    const kept = shelfObstacle(desk.state());
    expect(kept).toBe(obstacle(desk, 'fan-1'));
    if (kept === null) throw new Error('nothing for the shelf');
    expect(desk.placeFromShelf(kept, { x: 12, y: 24 })).toBeUndefined();
    expectDeskInvariants(desk);
    expect(desk.state().chosen).toEqual(['fan-2']);
    expect(obstacle(desk, 'fan-2').constraints).toEqual(kept.constraints);
  });

  test('takes loose pieces as one obstacle, and leaves them where they lie', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-1', 'fan-1/pole-1']);
    const { course } = desk.state();
    expect(shelfObstacle(desk.state())?.pieces.map(({ id }) => id)).toEqual(['pole-1', 'pole-2']);
    expect(desk.state().course).toBe(course);
    desk.choose([]);
    expect(shelfObstacle(desk.state())).toBeNull();
  });

  test('places a fixed piece free', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    desk.togglePinned();
    const kept = shelfObstacle(desk.state());
    if (kept === null) throw new Error('nothing for the shelf');
    desk.placeFromShelf(kept, { x: 12, y: 24 });
    expect(obstacle(desk, 'run-2').pieces.some((piece) => piece.fixed)).toBe(false);
  });
});
