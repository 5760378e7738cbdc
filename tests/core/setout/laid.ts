/** Courses as a careless crew might lay them, and what a tape would read there. */
import type { Grip, ObservationKind } from '../../../src/core/constraints/constraint.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { INCH } from '../../../src/core/measure/quantity.ts';
import type { Pose } from '../../../src/core/plane/pose.ts';
import type { GroundReading } from '../../../src/core/setout/built/adjust.ts';
import { groundOf } from '../../../src/core/setout/built/adjust-equations.ts';
import { observedOn } from '../../../src/core/setout/ground.ts';
import type { Observable } from '../../../src/core/setout/setout.ts';
import { type Survey, survey } from '../../../src/core/survey.ts';
import { scene } from '../checks/scene.ts';

/** Four jog-overs in the middle of the usual arena; `run-1/pole-1` to `run-1/pole-4`. */
export const overs: Course = scene([{ kind: 'run', at: [100, 50] }]);

/** A fan of three at the jog. */
export const fanCourse: Course = scene([{ kind: 'fan', at: [100, 50] }]);

export const piece = (key: string, at = 0.5): Grip => ({ piece: key, at });

/** Something to observe on the side on which it was drawn. */
export function between(surveyed: Survey, kind: ObservationKind, grips: readonly [Grip, Grip]): Observable {
  const on = (side: 1 | -1) => ({ kind, grips, side });
  const isAhead = observedOn(groundOf(surveyed), on(1)).value >= observedOn(groundOf(surveyed), on(-1)).value;
  return on(isAhead ? 1 : -1);
}

/** What a tape reads of it where `poses` puts the pieces, less an error. */
export function taped(
  surveyed: Survey,
  observable: Observable,
  poses: ReadonlyMap<string, Pose>,
  { sigma = INCH / 4, error = 0 }: { readonly sigma?: number; readonly error?: number } = {},
): GroundReading {
  return { ...observable, read: observedOn(groundOf(surveyed), observable, poses).value + error, sigma };
}

/**
 * The poles of a run: each neighbour's gap at both ends, how far it is ahead, and the two diagonals; and the ends straight
 * over one pole.
 */
export function runObservables(course: Course, poles: number): readonly Observable[] {
  const surveyed = survey(course);
  const keys = Array.from({ length: poles }, (_, i) => `run-1/pole-${i + 1}`);
  const over = keys
    .slice(2)
    .flatMap((third, i) =>
      [0, 1].map((at) => between(surveyed, 'between', [piece(keys[i] as string, at), piece(third, at)])),
    );
  const neighbours = keys.slice(1).flatMap((second, i) => {
    const first = keys[i] as string;
    return [
      between(surveyed, 'gap', [piece(first, 0.05), piece(second, 0.05)]),
      between(surveyed, 'gap', [piece(first, 0.95), piece(second, 0.95)]),
      between(surveyed, 'level', [piece(first, 0), piece(second, 0)]),
      between(surveyed, 'between', [piece(first, 0), piece(second, 1)]),
      between(surveyed, 'between', [piece(first, 1), piece(second, 0)]),
    ];
  });
  return [...neighbours, ...over];
}

/** The poses as drawn, some of them shifted and turned in their own direction. */
export function moved(
  surveyed: Survey,
  moves: Readonly<Record<string, readonly [along: number, across: number, turn: number]>>,
): ReadonlyMap<string, Pose> {
  return new Map(
    surveyed.pieces.map(({ key, pose: { x, y, angle } }) => {
      const [along, across, turn] = moves[key] ?? [0, 0, 0];
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      return [key, { x: x + along * c - across * s, y: y + along * s + across * c, angle: angle + turn }];
    }),
  );
}
