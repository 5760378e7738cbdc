import { type Draft, produce } from 'immer';
import type { Arena, Course, Layout } from '../course/course.ts';
import { countThere } from '../course/piece-count.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { obstacleKind } from '../obstacles/obstacles.ts';
import { completeValues, type Params, type Values } from '../pieces/params.ts';
import { pieceKind } from '../pieces/pieces.ts';

/** Puts the usual value where one is missing that every past file had; the same object when none is missing. */
function withMissingValues(params: Params, values: Values, report: (missing: string) => void): Values {
  const missing = Object.keys(params).filter((key) => values[key] === undefined && params[key]?.later === undefined);
  if (missing.length === 0) return values;
  report(missing.join(', '));
  return completeValues(params, values);
}

function repairObstacle(obstacle: Draft<Obstacle>, report: (what: string) => void): void {
  const here = `"${obstacle.id}"`;
  obstacle.values = withMissingValues(obstacleKind(obstacle.kind)?.params ?? {}, obstacle.values, (missing) =>
    report(`Obstacle ${here} had no ${missing}; the usual was taken.`),
  );
  for (const piece of obstacle.pieces) {
    piece.values = withMissingValues(pieceKind(piece.kind)?.params ?? {}, piece.values, (missing) =>
      report(`Piece "${piece.id}" of ${here} had no ${missing}; the usual was taken.`),
    );
  }
}

/** Puts the entrance on its wall: a wall that was shortened may have left it behind, or be narrower than it. */
function repairArena({ length, width, entrance }: Draft<Arena>, report: (what: string) => void): void {
  const wall = entrance.wall === 'north' || entrance.wall === 'south' ? length : width;
  if (entrance.width > wall) {
    report(
      `The entrance was ${entrance.width} m wide in the ${entrance.wall} wall, which is ${wall} m long; it takes the whole wall now.`,
    );
    entrance.width = wall;
    entrance.at = wall / 2;
  }
  if (entrance.at <= wall) return;
  report(
    `The entrance was ${entrance.at} m along the ${entrance.wall} wall, which is ${wall} m long; it is at its end now.`,
  );
  entrance.at = wall;
}

/** Sets a count to the pieces that are there, where just these are what the kind builds for another count. */
function repairCount(obstacle: Draft<Obstacle>, report: (what: string) => void): void {
  const there = countThere(obstacle);
  if (there === undefined) return;
  const { param, count } = there;
  report(
    `Obstacle "${obstacle.id}" said ${obstacle.values[param]} for ${param} and holds ${count}; it says ${count} now.`,
  );
  obstacle.values = { ...obstacle.values, [param]: count };
}

/** Puts legs into a gait that their passage has: its usual one where the file has another. */
function repairGaits(layout: Draft<Layout>, report: (what: string) => void): void {
  for (const leg of layout.ride.legs) {
    const obstacle = layout.obstacles.find(({ id }) => id === leg.obstacle);
    const passage = obstacle?.passages.find(({ id }) => id === leg.passage);
    const usual = passage?.gaits[0];
    if (passage === undefined || usual === undefined || passage.gaits.includes(leg.gait)) continue;
    report(
      `Leg "${leg.id}" rode "${leg.obstacle}" at a ${leg.gait}, which its passage "${leg.passage}" does not have; it is a ${usual} now.`,
    );
    leg.gait = usual;
  }
}

/**
 * The course with small gaps filled where nothing is lost by it, and a sentence for each. It is frozen here, so that
 * the first edit does not have to freeze it during a drag.
 */
export function repair(course: Course): { readonly course: Course; readonly repairs: readonly string[] } {
  const repairs: string[] = [];
  const report = (what: string) => repairs.push(what);
  const whole = produce(course, (draft) => {
    repairArena(draft.arena, report);
    const [first] = draft.layouts;
    if (!draft.layouts.some((layout) => layout.id === draft.current)) {
      report(`The file shows the layout "${draft.current}", which it does not hold; "${first.id}" is shown.`);
      draft.current = first.id;
    }
    for (const layout of draft.layouts) {
      for (const obstacle of layout.obstacles) {
        repairObstacle(obstacle, report);
        repairCount(obstacle, report);
      }
      repairGaits(layout, report);
    }
  });
  return { course: whole, repairs };
}
