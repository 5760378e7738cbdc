import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { GrippedPose } from '../../../src/core/constraints/constraint.ts';
import { CONSTRAINT_KINDS, constraintKind } from '../../../src/core/constraints/constraints.ts';
import { axisPoint } from '../../../src/core/constraints/grip.ts';
import { compose, type Pose } from '../../../src/core/plane/pose.ts';

const pose = fc.record({
  x: fc.double({ min: -8, max: 8, noNaN: true }),
  y: fc.double({ min: -8, max: 8, noNaN: true }),
  angle: fc.double({ min: -7, max: 7, noNaN: true }),
});
const held: fc.Arbitrary<GrippedPose> = fc.record({
  pose,
  length: fc.double({ min: 0.2, max: 4, noNaN: true }),
  width: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
});
const side = fc.constantFrom<1 | -1>(1, -1);

function moved(thing: GrippedPose, by: Partial<Pose>): GrippedPose {
  const { x, y, angle } = thing.pose;
  return { ...thing, pose: { x: x + (by.x ?? 0), y: y + (by.y ?? 0), angle: angle + (by.angle ?? 0) } };
}

/** Where a derivative does not exist: a line angle at the end of its range, the switch-over of the gap, no distance. */
function smooth(
  kind: (typeof CONSTRAINT_KINDS)[number],
  things: readonly GrippedPose[],
  hold: number,
  way: 1 | -1,
): boolean {
  const steps = things.flatMap((_, i) => (['x', 'y', 'angle'] as const).map((axis) => [i, axis] as const));
  const here = kind.residuals(things, hold, way);
  const [a, b] = things.map(axisPoint);
  if (a !== undefined && b !== undefined && Math.hypot(b.x - a.x, b.y - a.y) < 0.05) return false;
  return steps.every(([i, axis]) =>
    [1e-4, -1e-4].every((by) =>
      kind
        .residuals(
          things.map((thing, j) => (i === j ? moved(thing, { [axis]: by }) : thing)),
          hold,
          way,
        )
        .every((there, r) => {
          const was = here[r];
          if (was === undefined) return false;
          const axisIndex = { x: 0, y: 1, angle: 2 }[axis];
          const slopeHere = was.gradient[i]?.[axisIndex] ?? 0;
          const slopeThere = there.gradient[i]?.[axisIndex] ?? 0;
          return Math.abs(there.value - was.value) < 0.05 && Math.abs(slopeThere - slopeHere) < 0.05;
        }),
    ),
  );
}

describe.each(CONSTRAINT_KINDS.map((kind) => [kind.id, kind] as const))('%s', (id, kind) => {
  const arbitrary = fc.tuple(
    fc.tuple(...kind.takes.map((what) => (what === 'wall' ? pose.map(heldAsWall) : held))),
    fc.double({ min: 0, max: 3, noNaN: true }),
    side,
  );

  test('is found by its id', () => expect(constraintKind(id)).toBe(kind));

  test('has derivatives that central differences agree with', () => {
    let checked = 0;
    fc.assert(
      fc.property(arbitrary, ([things, hold, way]) => {
        fc.pre(smooth(kind, things, hold, way));
        kind.residuals(things, hold, way).forEach((row, r) => {
          expect(row.gradient).toHaveLength(things.length);
          things.forEach((_, i) => {
            (['x', 'y', 'angle'] as const).forEach((axis, k) => {
              const at = (by: number) =>
                kind.residuals(
                  things.map((thing, j) => (i === j ? moved(thing, { [axis]: by }) : thing)),
                  hold,
                  way,
                )[r]?.value ?? Number.NaN;
              const step = 1e-5;
              const difference = (at(step) - at(-step)) / (2 * step);
              expect(Math.abs((row.gradient[i]?.[k] ?? Number.NaN) - difference)).toBeLessThan(1e-4);
              checked += 1;
            });
          });
        });
      }),
      { numRuns: 150 },
    );
    if (id !== 'fixed') expect(checked).toBeGreaterThan(300);
  });

  test('does not notice when everything is turned and shifted together', () => {
    fc.assert(
      fc.property(arbitrary, pose, ([things, hold, way], frame) => {
        const there = things.map((thing) => ({ ...thing, pose: compose(frame, thing.pose) }));
        const turned = kind.residuals(there, hold, way);
        const here = kind.residuals(things, hold, way);
        fc.pre(smooth(kind, things, hold, way));
        expect(turned).toHaveLength(here.length);
        here.forEach((row, r) => {
          expect(turned[r]?.value).toBeCloseTo(row.value, 8);
        });
      }),
    );
  });

  test('is held at zero by what it measures: its first equation, where it has several', () => {
    fc.assert(
      fc.property(arbitrary, ([things, , way]) => {
        const now = kind.measure(things, way);
        if (kind.unit === 'none') return;
        expect(Math.abs(kind.residuals(things, now, way)[0]?.value ?? 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('has its tape where it measures: as long as the value, for what is taped', () => {
    fc.assert(
      fc.property(arbitrary, ([things, , way]) => {
        if (kind.dimension === undefined) return;
        const [from, to] = kind.dimension(things, way);
        const value = Math.abs(kind.measure(things, way));
        if (id.startsWith('gap')) return;
        expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(value, 6);
      }),
    );
  });

  test('says a plain sentence', () => {
    const names = kind.takes.map((what, i) => (what === 'wall' ? 'the south wall' : `pole ${i + 1}`));
    const says = kind.sentence(names, '6′ 0″');
    expect(says.endsWith('.')).toBe(true);
    for (const name of names) expect(says).toContain(name);
    expect(says.includes('6′ 0″')).toBe(kind.unit !== 'none');
  });
});

function heldAsWall(frame: Pose): GrippedPose {
  return { pose: frame, length: 0, width: 0, at: 0.5 };
}
