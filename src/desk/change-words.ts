/** What changed, with the new and the old value: no number and no gait changes without a word. */
import { gapWords, obstacleWords } from '../core/checks/findings/thing-words.ts';
import { type Course, currentLayout } from '../core/course/course.ts';
import { departuresOf } from '../core/course/departures.ts';
import { printLength } from '../core/measure/length.ts';
import type { LengthUnit } from '../core/measure/quantity.ts';
import type { Obstacle } from '../core/obstacles/obstacle.ts';
import { obstacleKind } from '../core/obstacles/obstacles.ts';
import type { Params, Values } from '../core/pieces/params.ts';
import type { Gap } from '../core/ride/line.ts';
import { survey } from '../core/survey.ts';
import { capitalized, uncapitalized } from '../core/text/sentence.ts';
import { byEarWords } from '../words/by-ear.ts';
import { messages } from '../words/desk.ts';
import { printValue } from './commands/typed.ts';

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

/** What else was changed about a leg: the gait and the lead of it, the chosen way, its place in the order. */
export function legChanges(before: Course, after: Course): readonly string[] {
  if (before.current !== after.current) return [];
  const [old, now] = [currentLayout(before), currentLayout(after)];
  const places = new Map(old.ride.legs.map(({ id }, place) => [id, place]));
  const stay = now.ride.legs.filter(({ id }) => places.has(id));
  const isReordered = stay.length === old.ride.legs.length && stay.length === now.ride.legs.length;
  return now.ride.legs.flatMap((leg, place) => {
    const was = old.ride.legs[places.get(leg.id) ?? -1];
    if (was === undefined) return [];
    const passages = now.obstacles.find(({ id }) => id === leg.obstacle)?.passages ?? [];
    const titleOf = (passage: string) => passages.find(({ id }) => id === passage)?.title ?? passage;
    const number = place + 1;
    const wasNumber = (places.get(leg.id) ?? place) + 1;
    return [
      ...(isReordered && wasNumber !== number
        ? [
            byEarWords.place(
              number,
              wasNumber,
              obstacleWords({ layout: now, pieces: [], numbers: new Map() }, leg.obstacle),
            ),
          ]
        : []),
      ...(was.approach === leg.approach ? [] : [byEarWords.wayGait(number, leg.approach, was.approach)]),
      ...(was.lead === leg.lead
        ? []
        : [byEarWords.lead(number, leg.lead ?? byEarWords.leadOfBend, was.lead ?? byEarWords.leadOfBend)]),
      ...(was.passage === leg.passage || leg.openWay === true
        ? []
        : [byEarWords.passage(number, titleOf(leg.passage), titleOf(was.passage))]),
    ];
  });
}

/** So many gaps are read out one by one; of more, only how many there are. */
const MOST_GAPS = 3;

/** The gaps that changed because something in their obstacle moved, those that are alike together: "gap 1 of … is 2' 10" (was 3')". */
export function gapChanges(before: Course, after: Course): readonly string[] {
  if (before.current !== after.current || before.unit !== after.unit) return [];
  const [old, now] = [currentLayout(before).obstacles, currentLayout(after).obstacles];
  const valuesOf = new Map(old.map(({ id, values }) => [id, values]));
  // A value that was typed has been said with the one before; the gaps follow it.
  const moved = new Set(now.filter((each) => valuesOf.get(each.id) === each.values).map(({ id }) => id));
  if (now.every((each) => old.includes(each))) return [];
  const key = (gap: Gap) => `${gap.leg} ${gap.keys.join(' ')}`;
  const was = new Map(survey(before).line.gaps.map((gap) => [key(gap), gap.taped]));
  const alike = new Map<string, { readonly gaps: Gap[]; readonly length: string; readonly was: string }>();
  for (const gap of survey(after).line.gaps) {
    const taped = was.get(key(gap));
    if (taped === undefined || !moved.has(gap.obstacle)) continue;
    const [length, wasLength] = [printLength(gap.taped, after.unit), printLength(taped, after.unit)];
    if (length === wasLength) continue;
    const known = alike.get(`${gap.leg} ${length} ${wasLength}`);
    if (known === undefined) alike.set(`${gap.leg} ${length} ${wasLength}`, { gaps: [gap], length, was: wasLength });
    else known.gaps.push(gap);
  }
  const said = [...alike.values()].map(({ gaps, length, was: wasLength }) =>
    byEarWords.gapsAre(uncapitalized(gapWords(survey(after), gaps)), gaps.length, length, wasLength),
  );
  const more = said.length - MOST_GAPS;
  return more > 0 ? [...said.slice(0, MOST_GAPS), byEarWords.more(more)] : said;
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
