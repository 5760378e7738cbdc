import { describe, expect, test } from 'vitest';
import type { Course } from '../../../src/core/course/course.ts';
import { speed } from '../../../src/core/horses/horse.ts';
import { poseAt } from '../../../src/core/plane/path.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { goings, transitionTime } from '../../../src/core/ride/clock.ts';
import type { LineElement } from '../../../src/core/ride/line.ts';
import { linePlaces } from '../../../src/core/ride/line-places.ts';
import { type Survey, survey } from '../../../src/core/survey.ts';
import { RANDOM_COURSES, STARTERS } from './courses.ts';

const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);

function expectLengths({ line }: Survey): void {
  let along = 0;
  for (const { from, length, path } of line.elements) {
    expect(from).toBeCloseTo(along, 9);
    expect(length).toBeCloseTo(sum(path.map((stretch) => stretch.length)), 9);
    along += length;
  }
  expect(along).toBeCloseTo(line.length, 9);
}

/** Every metre at the speed of its gait, and every transition and settling once. */
function expectSeconds({ line, horse }: Survey): void {
  for (const { move, gait, length, moving } of line.elements) {
    if (move === 'ride') expect(moving).toBeCloseTo(length / speed(horse, gait), 9);
  }
  const settled = (element: LineElement): number =>
    element.move === 'back' ? horse.back.settle.value : element.move === 'side-pass' ? horse.sidePass.settle.value : 0;
  const whole =
    sum(line.elements.map((each) => each.moving + settled(each))) +
    sum(line.transitions.map(({ before, after }) => transitionTime(before, after, horse)));
  expect(line.clock.go).toBeCloseTo(whole, 6);
  expect(sum(line.elements.map(({ seconds }) => seconds))).toBeCloseTo(whole, 6);
}

function expectPlaces({ line, horse }: Survey): void {
  const all = goings(line.elements);
  const changes = line.elements.flatMap((element, i) => {
    const before = all[i - 1] ?? 'standing';
    const after = all[i] ?? 'standing';
    return before === after ? [] : [{ before, after, at: element.from }];
  });
  expect(line.transitions.map(({ before, after }) => [before, after])).toEqual(
    changes.map(({ before, after }) => [before, after]),
  );
  for (const [i, { at, pose }] of line.transitions.entries()) {
    expect(at).toBeCloseTo(changes[i]?.at ?? Number.NaN, 6);
    const element = line.elements.findLast(({ from, length }) => from <= at + 1e-9 && length > 0);
    if (element !== undefined) expect(distance(poseAt(element.path, at - element.from), pose)).toBeLessThan(1e-6);
  }
  const clear = horse.wheelbase.value / 2;
  for (const { at, before, after } of line.transitions) {
    if (before === 'standing' || after === 'standing') continue;
    const host = line.elements.filter(({ from, length }) => from <= at + 1e-6 && at <= from + length + 1e-6);
    expect(host.some(({ part }) => part !== 'obstacle')).toBe(true);
    // Where the way is long enough for both changes, the hooves are off the poles at its ends.
    const way = line.elements.filter(({ leg, part }) =>
      host.some((each) => each.leg === leg && each.part === part && part !== 'obstacle'),
    );
    if (sum(way.map(({ length }) => length)) < 12) continue;
    for (const crossing of line.crossings) expect(Math.abs(crossing.at - at)).toBeGreaterThanOrEqual(clear - 1e-6);
  }
}

function expectListed({ line }: Survey): void {
  const events = linePlaces(line).flatMap((place) => place.events.map((event) => ({ at: place.at, event })));
  const transitions = events.flatMap(({ at, event }) => (event.kind === 'transition' ? [[at, event.transition]] : []));
  expect(transitions.map(([, transition]) => transition)).toEqual(line.transitions);
  for (const [i, [at]] of transitions.entries()) expect(at).toBeCloseTo(line.transitions[i]?.at ?? Number.NaN, 5);
  const changes = events.flatMap(({ event }) => (event.kind === 'lead' ? [event.change] : []));
  expect(changes).toEqual(line.leadNotes.filter(({ kind }) => kind === 'change').sort((a, b) => a.from - b.from));
}

/** Every lope has its lead from beginning to end, or a note says that it is open. */
function expectLeads({ line }: Survey): void {
  const loped = line.elements.filter(({ move, gait }) => move === 'ride' && gait === 'lope');
  const open = line.leadNotes.filter(({ kind }) => kind === 'open');
  expect(sum(line.leads.map(({ from, to }) => to - from))).toBeCloseTo(sum(loped.map(({ length }) => length)), 6);
  for (const { from, to, lead } of line.leads) {
    const isOpen = open.some((note) => note.from <= from + 1e-6 && to <= note.to + 1e-6);
    expect(isOpen).toBe(lead === null);
  }
  // Where the lope is taken up, its words have the lead.
  for (const { events, words } of linePlaces(line)) {
    for (const [i, event] of events.entries()) {
      if (event.kind !== 'transition' || event.transition.after !== 'lope') continue;
      const { at } = event.transition;
      const isOpen = open.some((note) => note.from <= at + 1e-6 && at < note.to - 1e-6);
      expect(words[i]).toMatch(isOpen ? /^lope$/ : /^lope, (left|right) lead$/);
    }
  }
  const known = sum(line.shownLeads.map(({ total }) => total)) + sum(open.map(({ from, to }) => to - from));
  expect(known).toBeCloseTo(sum(loped.map(({ length }) => length)), 6);
}

const LAWS: readonly (readonly [string, (of: Survey) => void])[] = [
  ['have the length of the line', expectLengths],
  ['have the time of each metre in its gait, and of each transition once', expectSeconds],
  ['change their gait where the transitions have their places, off the poles', expectPlaces],
  ['have every transition and change of lead among the places', expectListed],
  ['have a lead where they are loped, or are told to be open', expectLeads],
];

describe.each(LAWS)('the elements %s', (_, law) => {
  test.each(STARTERS)('of %s', (__, course: Course) => law(survey(course)));

  test('of a hundred random courses', () => {
    for (const course of RANDOM_COURSES) law(survey(course));
  });
});

test('the random courses have every change of gait, halts, changes of lead and open leads', () => {
  const lines = RANDOM_COURSES.map((course) => survey(course).line);
  const seen = new Set(
    lines.flatMap(({ transitions }) => transitions.map(({ before, after }) => `${before} ${after}`)),
  );
  expect(seen.size).toBe(12);
  const notes = new Set(lines.flatMap(({ leadNotes }) => leadNotes.map(({ kind }) => kind)));
  expect(notes).toEqual(new Set(['wrong-lead', 'counter-lope', 'change', 'open']));
});
