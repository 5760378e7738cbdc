import { describe, expect, test } from 'vitest';
import { currentLayout } from '../../../src/core/course/course.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { resolvedConstraints } from '../../../src/core/course/resolved-constraints.ts';
import { INCH } from '../../../src/core/measure/quantity.ts';
import { isSatisfied } from '../../../src/desk/constraints/constraint-edits.ts';
import { keepSuggestions } from '../../../src/desk/constraints/constraint-suggestions.ts';
import { constraintStatusOf, freedomDescription } from '../../../src/desk/constraints/freedom.ts';
import { type KeptConstraint, keptConstraints } from '../../../src/desk/constraints/kept-list.ts';
import type { Desk } from '../../../src/desk/desk.ts';
import { createDesk } from '../../../src/desk/editor.ts';
import { expectDeskInvariants } from '../invariants.ts';
import { pointerDriver } from '../pointer-driver.ts';
import { threeObstacles } from '../three-obstacles.ts';

function piece(desk: Desk, key: string) {
  const found = desk.state().survey.pieces.find((each) => each.key === key);
  if (found === undefined) throw new Error(`no ${key}`);
  return found.pose;
}

function kept(desk: Desk, name: RegExp): KeptConstraint {
  const found = keptConstraints(desk.state()).find((each) => name.test(`${each.name} ${each.text}`));
  if (found === undefined) {
    throw new Error(
      `nothing kept like ${name}: ${keptConstraints(desk.state()).map((each) => `${each.name} ${each.text}`)}`,
    );
  }
  return found;
}

/** Keeps the first thing offered that reads so. */
function keep(desk: Desk, says: RegExp): void {
  const offers = keepSuggestions(desk.state());
  const offer = offers.find((each) => says.test(each.says));
  if (offer === undefined) throw new Error(`no offer like ${says}: ${offers.map((each) => each.says).join(' | ')}`);
  expect(desk.keep(offer)).toBeUndefined();
}

describe('what is kept of what is chosen', () => {
  test('is one entry for alike measures of a whole obstacle, with a tape for each', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    const gaps = keptConstraints(desk.state()).filter((each) => each.kind.id === 'gap');
    expect(gaps.map((each) => [each.text, each.keys.length, each.dimensions.length])).toEqual([[`3'`, 3, 3]]);
    expect(gaps[0]?.says).toBe(
      'Gap, inside to inside in the middle, 3 alike: pole 1 to pole 2, pole 2 to pole 3, pole 3 to pole 4.',
    );
  });

  test('is each measure for itself for a single piece, and only its own', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-1']);
    expect(keptConstraints(desk.state()).filter((each) => each.text !== '')).toMatchObject([
      { keys: ['run-1/gap-1'], says: `The gap between pole 1 and pole 2 is 3', inside to inside in the middle.` },
    ]);
  });

  test('tells two gaps of one fan apart by where they are taped', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['fan-1']);
    const names = keptConstraints(desk.state()).map((each) => each.name);
    expect(new Set(names).size).toBe(names.length);
    expect(names.slice(0, 2)).toEqual([
      'Gap, inside to inside at two thirds, 2 alike',
      'Gap, inside to inside at the ends, 2 alike',
    ]);
  });

  test('has tapes as long as what they read', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    for (const [from, to] of kept(desk, /^Gap/).dimensions) {
      expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(3 * 0.3048, 9);
    }
  });
});

describe('a typed measure', () => {
  test('moves the later pole and leaves the one that the horse comes to first', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-1']);
    const legs = currentLayout(desk.state().course).obstacles.find(({ id }) => id === 'run-1')?.passages[0]?.stations;
    const first = legs?.[0]?.kind === 'turn' ? undefined : legs?.[0]?.piece;
    expect(first).toBe('pole-1');
    const [one, two, three] = ['pole-1', 'pole-2', 'pole-3'].map((id) => piece(desk, `run-1/${id}`));
    expect(desk.setHold(kept(desk, /^Gap/).keys, `3' 6"`)).toBeUndefined();
    expectDeskInvariants(desk);
    expect(piece(desk, 'run-1/pole-1')).toEqual(one);
    for (const [id, before] of [
      ['pole-2', two],
      ['pole-3', three],
    ] as const) {
      expect(piece(desk, `run-1/${id}`).x - (before?.x ?? 0), id).toBeCloseTo(6 * INCH, 8);
    }
    expect(desk.state().said).toContain(`3' 6"`);
    desk.undo();
    expect(piece(desk, 'run-1/pole-2')).toEqual(two);
  });

  test('moves the other one when a pole is fixed', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-2']);
    expect(desk.togglePinned()).toBe(true);
    const [one, two] = ['pole-1', 'pole-2'].map((id) => piece(desk, `run-1/${id}`));
    desk.setHold(kept(desk, /pole 1 to pole 2/).keys, `3' 6"`);
    expect(piece(desk, 'run-1/pole-2')).toEqual(two);
    expect((one?.x ?? 0) - piece(desk, 'run-1/pole-1').x).toBeCloseTo(6 * INCH, 8);
  });

  test('of several alike sets them all', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    desk.setHold(kept(desk, /^Gap/).keys, `4'`);
    expect(keptConstraints(desk.state()).filter((each) => each.kind.id === 'gap')).toMatchObject([{ text: `4'` }]);
    expect(piece(desk, 'run-1/pole-4').x - piece(desk, 'run-1/pole-3').x).toBeCloseTo(52 * INCH, 8);
  });

  test('that is no length, or less than nothing, is refused and changes nothing', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    const { course } = desk.state();
    const { keys } = kept(desk, /^Gap/);
    expect(desk.setHold(keys, 'six paces')).toMatch(/Write/);
    expect(desk.setHold(keys, `-1'`)).toBeDefined();
    expect(desk.setHold(['gone'], `3'`)).toBe('That is no longer kept here.');
    expect(desk.state().course).toBe(course);
  });
});

describe('keeping more', () => {
  test('of an obstacle and a wall changes nothing at first, and holds from then on', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    const before = currentLayout(desk.state().course).obstacles;
    keep(desk, /off the south wall$/);
    expect(currentLayout(desk.state().course).obstacles).toBe(before);
    const at = piece(desk, 'run-1/pole-1');
    desk.nudge(0, 1);
    expect(Math.abs(piece(desk, 'run-1/pole-1').y - at.y)).toBeLessThan(0.001);
  });

  test('of two pieces offers their gap and how they lie, and nothing that is kept already', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-1', 'run-1/pole-3']);
    expect(keepSuggestions(desk.state()).map((each) => each.says)).toEqual([
      `Keep these two 6' 4" apart`,
      'Keep these two parallel',
      'Keep the middles of these two level',
    ]);
    keep(desk, /apart$/);
    expect(keepSuggestions(desk.state()).map((each) => each.says)).not.toContain(`Keep these two 6' 4" apart`);
  });

  test('of what follows from the rest is named as spare', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-1', 'run-1/pole-3']);
    keep(desk, /parallel$/);
    expect(constraintStatusOf(desk.state().course).redundant.map((each) => each.key)).toEqual(['parallel-1']);
  });

  test('between two obstacles ties them, and one comes along with the other', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1', 'spoke-1']);
    const offers = keepSuggestions(desk.state());
    expect(offers.length).toBeGreaterThan(0);
    for (const offer of offers) expect(desk.keep(offer)).toBeUndefined();
    expectDeskInvariants(desk);
    expect(currentLayout(desk.state().course).constraints).toHaveLength(offers.length);
  });

  test('of three poles with the same gaps offers to keep them equal', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-1', 'run-1/pole-2', 'run-1/pole-3']);
    expect(keepSuggestions(desk.state()).map((each) => each.says)).toEqual([
      `Keep the two gaps between them equal (3' now)`,
    ]);
  });

  test('stays when the obstacle is built anew, and is brought to hold with its new shape', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    keep(desk, /off the south wall$/);
    expect(desk.setValue('run-1', 'length', `10'`)).toBeUndefined();
    const row = kept(desk, /^Clear of the wall/);
    expect(row.holds).toBe(true);
    const rest = constraintStatusOf(desk.state().course);
    expect(rest.conflicts).toEqual([]);
    const pole = desk.state().survey.pieces.find((each) => each.key === 'run-1/pole-1');
    expect((pole?.pose.y ?? 0) - 5 * 0.3048).toBeCloseTo(row.value, 6);
  });
});

describe('holding, only measuring and dropping', () => {
  test('what only measures lets the pieces go and reads on', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-1']);
    const { keys } = kept(desk, /^Gap/);
    desk.measureOnly(keys);
    expect(kept(desk, /^Gap/).holds).toBe(false);
    desk.nudge(-0.1, 0);
    const row = kept(desk, /^Gap/);
    expect(row.value).toBeCloseTo(3 * 0.3048 + 0.1, 6);
    desk.hold(keys);
    expect(kept(desk, /^Gap/)).toMatchObject({ holds: true, value: row.value });
  });

  test('what is dropped is gone, and comes back with undo', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    const count = resolvedConstraints(currentLayout(desk.state().course)).length;
    desk.drop(kept(desk, /^Gap/).keys);
    expect(resolvedConstraints(currentLayout(desk.state().course))).toHaveLength(count - 3);
    desk.undo();
    expect(resolvedConstraints(currentLayout(desk.state().course))).toHaveLength(count);
  });
});

describe('what cannot all hold', () => {
  /** The run is held off both long walls, so that neither distance can change alone. */
  function wedged(): Desk {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    keep(desk, /off the south wall$/);
    const pole = desk.state().survey.pieces.find((each) => each.key === 'run-1/pole-1');
    const { width } = desk.state().course.arena;
    desk.keep({
      says: 'Keep it off the north wall',
      draft: {
        kind: 'off-wall',
        grips: [{ piece: 'run-1/pole-1', at: 0.5 }, { wall: 'north' }],
        hold: width - (pole?.pose.y ?? 0),
      },
    });
    return desk;
  }

  test('is named with its ways out, and nothing moves until one is taken', () => {
    const desk = wedged();
    expect(desk.state().pendingConflict).toBeNull();
    const { course } = desk.state();
    const { keys } = kept(desk, /south wall/);
    expect(desk.setHold(keys, `5'`)).toMatch(/Drop one/);
    const { pendingConflict: standoff } = desk.state();
    expect(desk.state().course).toBe(course);
    expect(standoff?.says).toMatch(/south wall.*north wall|north wall.*south wall/s);
    expect(standoff?.says).toMatch(/^These cannot all hold: Pole 1 of the set of jog-overs \(obstacle 1\) is 5' clear/);
    expect(standoff?.says).not.toMatch(/run 1/);
    expect(standoff?.conflicts[0].resolutions.length).toBeGreaterThanOrEqual(2);
    desk.resolve();
    expect(desk.state()).toMatchObject({ pendingConflict: null, said: 'Left everything as it was' });
    expect(desk.state().course).toBe(course);
  });

  test('goes on as asked when one of them is dropped', () => {
    const desk = wedged();
    const { keys } = kept(desk, /south wall/);
    desk.setHold(keys, `5'`);
    const offer = desk.state().pendingConflict?.conflicts[0].resolutions.find((each) => each.says.includes('north'));
    if (offer === undefined) throw new Error('no offer to drop the north wall');
    desk.resolve(offer);
    expect(desk.state().pendingConflict).toBeNull();
    expect(kept(desk, /south wall/)).toMatchObject({ text: `5'`, holds: true });
    expect(keptConstraints(desk.state()).some((each) => /north wall/.test(each.name))).toBe(false);
    expectDeskInvariants(desk);
  });
});

describe('fixing', () => {
  test('a whole obstacle by F fixes its pieces; the drag of a pole then says that it is fixed', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    pointerDriver(desk).press('f');
    expect(
      desk
        .state()
        .survey.pieces.filter((each) => each.piece.fixed)
        .map((each) => each.obstacle),
    ).toEqual(['run-1', 'run-1', 'run-1', 'run-1']);
    expect(freedomDescription(desk.state().course, 'run-1')).toBe('Held firmly.');
    pointerDriver(desk).press('f');
    expect(desk.state().survey.pieces.some((each) => each.piece.fixed)).toBe(false);
  });
});

describe('what an obstacle can still do', () => {
  test('is said in plain words', () => {
    const desk = createDesk(threeObstacles());
    expect(freedomDescription(desk.state().course, 'run-1')).toBe('Can still slide and turn; keeps its shape.');
    expect(freedomDescription(desk.state().course, 'spoke-1')).toBe('Can still slide and turn; keeps its shape.');
    desk.choose(['run-1']);
    keep(desk, /off the south wall$/);
    keep(desk, /square to the south wall$|along the south wall$/);
    expect(freedomDescription(desk.state().course, 'run-1')).toBe('Can still slide along the arena; keeps its shape.');
    keep(desk, /off the west wall$/);
    expect(freedomDescription(desk.state().course, 'run-1')).toBe('Held firmly.');
  });
});

describe('a pole dragged inside its obstacle', () => {
  test('keeps every measure of the fan to the last bit that anybody could tape', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['fan-1/pole-1']);
    const at = piece(desk, 'fan-1/pole-1');
    pointerDriver(desk, { loose: true, after: expectDeskInvariants }).drag([at.x, at.y], [at.x - 1.4, at.y + 0.9]);
    const end = piece(desk, 'fan-1/pole-1');
    expect(Math.hypot(end.x - at.x, end.y - at.y)).toBeGreaterThan(0.5);
    const { course } = desk.state();
    const held = resolvedConstraints(currentLayout(course)).filter(({ owner }) => owner === 'fan-1');
    expect(held.length).toBeGreaterThan(4);
    for (const { constraint, grips } of held)
      expect(isSatisfied(course, { ...constraint, grips }), constraint.id).toBe(true);
  });

  test('stops where a measure stops it, and says which', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-1']);
    desk.togglePinned();
    desk.choose(['run-1/pole-2']);
    const at = piece(desk, 'run-1/pole-2');
    pointerDriver(desk, { loose: true, after: expectDeskInvariants })
      .down(at.x, at.y)
      .move(at.x + 0.5, at.y)
      .move(at.x + 1, at.y);
    expect(desk.state().guides.map((guide) => guide.says)).toEqual([
      `Held: The gap between pole 1 and pole 2 is 3', inside to inside in the middle`,
    ]);
    pointerDriver(desk).cancel();
  });
});

describe('an obstacle that is held to a wall', () => {
  test('is dragged along it, keeps its heading, and the desk says what stops it', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1']);
    keep(desk, /off the south wall$/);
    const at = piece(desk, 'run-1/pole-1');
    const angle = desk.state().survey.obstacles[0]?.obstacle.pose.angle;
    pointerDriver(desk, { loose: true, after: expectDeskInvariants })
      .down(at.x, at.y)
      .move(at.x + 1, at.y + 2)
      .move(at.x + 3, at.y + 4);
    expect(desk.state().guides[0]?.says).toMatch(
      /^Held: Pole \d of the set of jog-overs \(obstacle 1\) is .* south wall$/,
    );
    pointerDriver(desk, { loose: true })
      .move(at.x + 3, at.y + 4)
      .up();
    const end = piece(desk, 'run-1/pole-1');
    expect(end.x).toBeCloseTo(at.x + 3, 6);
    expect(end.y).toBeCloseTo(at.y, 6);
    expect(desk.state().survey.obstacles[0]?.obstacle.pose.angle).toBeCloseTo(angle ?? 9, 9);
  });
});

describe('while a clash stands in the course', () => {
  test('a drag of what it holds moves nothing, says so, and one of it can be dropped', () => {
    const course = replaceLayout(threeObstacles(), (layout) => ({
      ...layout,
      constraints: [1, 2].map((hold) => ({
        id: `off-wall-${hold}`,
        kind: 'off-wall',
        grips: [{ piece: 'run-1/pole-1', at: 0.5 }, { wall: 'south' as const }],
        hold,
      })),
    }));
    const desk = createDesk(course);
    const at = piece(desk, 'run-1/pole-1');
    pointerDriver(desk, { loose: true, after: expectDeskInvariants }).drag([at.x, at.y], [at.x + 2, at.y + 2]);
    expect(desk.state().course).toBe(course);
    expect(desk.state().said).toMatch(/cannot all hold/);
    const [clash] = constraintStatusOf(desk.state().course).conflicts;
    expect(clash?.says).toContain('Pole 1 of the set of jog-overs (obstacle 1)');
    const offer = clash?.resolutions[0];
    if (offer === undefined) throw new Error('no way out is offered');
    desk.resolve(offer);
    expect(constraintStatusOf(desk.state().course).conflicts).toEqual([]);
    expect(currentLayout(desk.state().course).constraints).toHaveLength(1);
  });
});
