/** What changed, with the new and the old value: no number and no gait changes without a word. */
import { type Course, currentLayout } from '../core/course/course.ts';
import { departuresOf } from '../core/course/departures.ts';
import type { LengthUnit } from '../core/measure/quantity.ts';
import type { Obstacle } from '../core/obstacles/obstacle.ts';
import { obstacleKind } from '../core/obstacles/obstacles.ts';
import type { Params, Values } from '../core/pieces/params.ts';
import { capitalized } from '../core/text/sentence.ts';
import { printValue } from './commands/typed.ts';
import { messages } from './desk-words.ts';

/** Every parameter that differs: "gap is now 6' (was 3')". */
export function changesInWords(before: Values, after: Values, params: Params, unit: LengthUnit): readonly string[] {
  return Object.entries(params).flatMap(([key, param]) => {
    const [was, is] = [before[key] ?? param.usual, after[key] ?? param.usual];
    if (was === is) return [];
    return [messages.changedFrom(param.label, printValue(is, param, unit), printValue(was, param, unit))];
  });
}

/** The gaits over obstacles that changed, leg by leg; of one obstacle where it is named. */
export function gaitChanges(before: Course, after: Course, obstacle?: string): readonly string[] {
  // Another layout has legs of its own, though their ids may be the same.
  if (before.current !== after.current) return [];
  const legs = new Map(currentLayout(before).ride.legs.map((leg) => [leg.id, leg]));
  return currentLayout(after).ride.legs.flatMap((leg, place) => {
    const was = legs.get(leg.id);
    if (was === undefined || was.gait === leg.gait || (obstacle !== undefined && leg.obstacle !== obstacle)) return [];
    return [messages.gaitFrom(place + 1, leg.gait, was.gait)];
  });
}

/** The legs whose open way was taken otherwise than before: after an edit that `planned` other ways for them. */
export function wayChanges(before: Course, after: Course, planned: Course): readonly string[] {
  if (before.current !== after.current || planned === after) return [];
  const legs = new Map(currentLayout(before).ride.legs.map((leg) => [leg.id, leg]));
  const { obstacles, ride } = currentLayout(after);
  return ride.legs.flatMap(({ id, obstacle, passage }, place) => {
    const was = legs.get(id);
    const isTaken = currentLayout(planned).ride.legs[place]?.passage !== passage;
    if (was?.obstacle !== obstacle || was.passage === passage || !isTaken) return [];
    const passages = obstacles.find((each) => each.id === obstacle)?.passages ?? [];
    return [messages.wayTaken(place + 1, passages.find((each) => each.id === passage)?.title ?? passage)];
  });
}

/** Parameters of obstacles that are still there and have other values, each as a sentence. */
export function valueChanges(before: Course, after: Course): readonly string[] {
  const old = new Map(currentLayout(before).obstacles.map((obstacle) => [obstacle.id, obstacle]));
  return currentLayout(after).obstacles.flatMap((obstacle) => {
    const was = old.get(obstacle.id);
    if (was === undefined || was.values === obstacle.values) return [];
    const params = obstacleKind(obstacle.kind)?.params ?? {};
    return changesInWords(was.values, obstacle.values, params, after.unit).map(capitalized);
  });
}

/** By parameter, what of the obstacle departs from it: "One is 3' 2"." or "One is taken out." Empty for what agrees. */
export function exceptionsInWords(obstacle: Obstacle, unit: LengthUnit): Readonly<Record<string, string>> {
  const params = obstacleKind(obstacle.kind)?.params ?? {};
  const { holds, missing } = departuresOf(obstacle);
  const notes: Record<string, string[]> = {};
  for (const [key, param] of Object.entries(params)) {
    const values = holds.filter((each) => each.param === key).map(({ hold }) => printValue(hold, param, unit));
    for (const value of new Set(values)) {
      const count = values.filter((each) => each === value).length;
      notes[key] = [...(notes[key] ?? []), messages.exception(count, value)];
    }
  }
  const counted = Object.entries(params).find(([, param]) => param.kind === 'count')?.[0];
  if (counted !== undefined && missing.length > 0) {
    notes[counted] = [...(notes[counted] ?? []), messages.takenOut(missing.length)];
  }
  return Object.fromEntries(Object.entries(notes).map(([key, list]) => [key, list.join(' ')]));
}
