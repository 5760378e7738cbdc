import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { deflateSync, strToU8 } from 'fflate';
import { describe, expect, test } from 'vitest';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { eraseByKeys, flipObstacles, rotateByKeys, shiftByKeys } from '../../../src/core/course/edit-obstacles.ts';
import { courseFromLink, courseLink } from '../../../src/core/files/course-link.ts';
import { DICTIONARY } from '../../../src/core/files/link/link-dictionary.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { type Survey, survey } from '../../../src/core/survey.ts';
import { base64Url } from '../../../src/core/text/base64.ts';
import { sampleCourse } from '../course/sample.ts';

const BASE = 'https://trail.example/polewright/';

function coursesIn(folder: string): readonly (readonly [string, Course])[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.course.json'))
    .map((name) => {
      const reading = readCourse(readFileSync(`${folder}/${name}`, 'utf8'));
      if (reading.kind === 'refused') throw new Error(reading.why);
      return [name.replace('.course.json', ''), reading.course];
    });
}

const STARTERS = coursesIn('seeds/starters');
const FIXTURES = [...coursesIn('seeds/fixtures/obstacles'), ...coursesIn('seeds/fixtures/constraints')];

function hashOf(link: string): string {
  return link.slice(link.indexOf('#'));
}

function opened(course: Course): Course {
  const reading = courseFromLink(hashOf(courseLink(course, BASE)));
  if (reading.kind === 'refused') throw new Error(reading.why);
  expect(reading.repairs).toEqual([]);
  return reading.course;
}

/** Metres: what a link may change of a ride. */
const CHANGE = 0.0002;

/** Everything of a ride that has a length, metres, and everything that must be the same. */
function rideOf({ line, pieces, numbers, letters }: Survey) {
  return {
    metres: [
      ...pieces.flatMap(({ footprint }) => footprint.flatMap(({ x, y }) => [x, y])),
      ...line.elements.flatMap(({ from, length }) => [from, length]),
      ...line.crossings.flatMap(({ at, pose }) => [at, pose.x, pose.y]),
      ...line.gaps.flatMap(({ taped, ridden, landings }) => [taped, ridden, landings.each]),
      ...line.transitions.flatMap(({ at, length, room }) => [at, length, room]),
    ],
    same: {
      pieces: pieces.map(({ key }) => key),
      elements: line.elements.map(({ leg, part, move, gait }) => [leg, part, move, gait]),
      crossings: line.crossings.map(({ key }) => key),
      landings: line.gaps.map(({ landings }) => landings.count),
      leads: line.leads.map(({ lead, bend }) => [lead, bend]),
      breaks: line.breaks.map(({ leg, why }) => [leg, why]),
      numbers: [...numbers],
      letters: [...letters],
    },
  };
}

function expectSameRide(there: Course, here: Course): void {
  const [a, b] = [rideOf(survey(there)), rideOf(survey(here))];
  expect(a.same).toEqual(b.same);
  const off = a.metres.map((value, i) => Math.abs(value - (b.metres[i] ?? Number.NaN)));
  expect(Math.max(0, ...off)).toBeLessThan(CHANGE);
}

describe('a course in a link', () => {
  test.each(STARTERS)('rides the same when it is opened: %s', (_, course) => {
    expectSameRide(opened(course), course);
  });

  test.each(FIXTURES)('has the same obstacles and relations: %s', (_, course) => {
    const [there, here] = [currentLayout(opened(course)), currentLayout(course)];
    expect(there.obstacles.map(({ id }) => id)).toEqual(here.obstacles.map(({ id }) => id));
    expect(there.constraints.length).toBe(here.constraints.length);
    expectSameRide(opened(course), course);
  });

  test.each(STARTERS)('is short enough for a code that a phone can scan: %s', (_, course) => {
    expect(courseLink(course, BASE).length).toBeLessThan(720);
  });

  test('keeps who made it and for which class, and leaves out what is nobody’s business', () => {
    const [, open] = STARTERS.find(([name]) => name === 'larkhollow-day') ?? [];
    if (open === undefined) throw new Error('the starter with a day is missing');
    const entry = { id: 'entry-1', number: '7', rider: 'Somebody', horse: 'Some horse' };
    const course = { ...open, class: { ...open.class, list: [entry] }, waived: [{ finding: 'x', reason: 'y' }] };
    const there = opened(course);
    expect(there).toMatchObject({ title: open.title, unit: open.unit, notes: open.notes, rulebook: open.rulebook });
    expect(there.class).toEqual(open.class);
    expect(there.layouts).toHaveLength(1);
    expect(there.layouts[0].title).toBe(currentLayout(open).title);
    for (const field of ['day', 'waived', 'crew']) expect(there).not.toHaveProperty(field);
    expect(JSON.stringify(there)).not.toContain('Somebody');
    const lying = currentLayout(open).obstacles.reduce((all, { pieces }) => all + pieces.length, 0);
    expect(there.truck.reduce((all, { count }) => all + count, 0)).toBe(lying);
    expect(survey(there).truck.every(({ left }) => left === 0)).toBe(true);
  });

  test('rides the same whatever was moved, turned, mirrored and taken away', () => {
    const metres = fc.double({ min: -4, max: 4, noNaN: true });
    const some = fc.subarray(['fan-1', 'run-1', 'spoke-1', 'run-1/pole-2', 'fan-1/pole-1']);
    const edit = fc.oneof(
      fc.tuple(some, metres, metres).map(
        ([on, dx, dy]) =>
          (now: Course) =>
            shiftByKeys(now, on, dx, dy),
      ),
      fc.tuple(some, metres).map(
        ([on, by]) =>
          (now: Course) =>
            rotateByKeys(now, on, by, { x: 10, y: 10 }),
      ),
      some.map((on) => (now: Course) => flipObstacles(now, on)),
      some.map((on) => (now: Course) => eraseByKeys(now, on.slice(0, 1))),
    );
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) => {
        const course = edits.reduce((now, change) => change(now), sampleCourse());
        const there = opened(course);
        expect(courseLink(there, BASE)).toBe(courseLink(opened(there), BASE));
        const [a, b] = [survey(there), survey(course)];
        expect(a.pieces.map(({ key }) => key)).toEqual(b.pieces.map(({ key }) => key));
        for (const [i, { footprint }] of a.pieces.entries()) {
          for (const [k, at] of footprint.entries()) {
            const other = b.pieces[i]?.footprint[k] ?? { x: Number.NaN, y: Number.NaN };
            expect(Math.hypot(at.x - other.x, at.y - other.y)).toBeLessThan(CHANGE);
          }
        }
      }),
      { numRuns: 40 },
    );
  });
});

const [[, plain] = []] = STARTERS;
if (plain === undefined) throw new Error('there is no starter');
const LINK = hashOf(courseLink(plain, BASE));

/** A packed course, whatever it holds, as a link whose checksum is right. */
function asLink(value: unknown): string {
  const text = strToU8(JSON.stringify(value) ?? '');
  let crc = 0xffff;
  for (const byte of text) {
    crc ^= byte << 8;
    for (let bit = 0; bit < 8; bit += 1) crc = ((crc << 1) ^ (crc & 0x8000 ? 0x1021 : 0)) & 0xffff;
  }
  const squeezed = deflateSync(text, { level: 9, dictionary: strToU8(DICTIONARY) });
  return `#course=1.${base64Url(new Uint8Array([crc >> 8, crc & 255, ...squeezed]))}`;
}

const FORM = {
  title: 'T',
  unit: 'ft',
  arena: plain.arena,
  horse: 'stock-horse',
  rulebook: plain.rulebook,
  class: plain.class,
  name: 'Layout 1',
  start: [3, 3, 0],
  legs: [],
  proof: [0, 0],
};

describe('a link that is not whole', () => {
  test('is refused wherever it was cut off', () => {
    for (let length = 0; length < LINK.length; length += 1) {
      expect(courseFromLink(LINK.slice(0, length)), String(length)).toMatchObject({ kind: 'refused' });
    }
  });

  test('is refused where one sign was changed', () => {
    for (let at = 10; at < LINK.length; at += 1) {
      const other = LINK.charAt(at) === 'A' ? 'B' : 'A';
      const reading = courseFromLink(LINK.slice(0, at) + other + LINK.slice(at + 1));
      // The last sign of base64 has bits that say nothing.
      if (reading.kind === 'read') expect(at).toBe(LINK.length - 1);
    }
  });

  test('is told as damaged, and one of a newer program as that', () => {
    expect(courseFromLink(LINK.slice(0, 90))).toMatchObject({ why: expect.stringContaining('damaged') });
    expect(courseFromLink(LINK.replace('#course=1.', '#course=2.'))).toMatchObject({
      why: expect.stringContaining('newer Polewright'),
    });
  });

  test('never throws, whatever it holds', () => {
    expect(courseFromLink(asLink({ ...FORM, obstacles: [] }))).toMatchObject({ kind: 'read' });
    const odd = fc.oneof(fc.jsonValue(), fc.constantFrom('run', 'gate', '__proto__', 'constructor', 1e9, -1));
    const item = fc.oneof(
      odd,
      fc.tuple(fc.nat(9), fc.dictionary(fc.string(), odd)),
      fc.record({ id: odd, pose: odd, values: odd, stations: odd, grips: odd }, { requiredKeys: [] }),
    );
    const own = fc.record(
      { id: odd, side: fc.constantFrom(-1, 1), bare: odd, pieces: fc.array(item), passages: fc.array(item) },
      { requiredKeys: [] },
    );
    const obstacle = fc.tuple(odd, odd, fc.double(), fc.double(), fc.dictionary(fc.string(), odd), own);
    const leg = fc.tuple(fc.integer(), fc.integer(), fc.integer(), fc.integer(), fc.dictionary(fc.string(), odd));
    fc.assert(
      fc.property(fc.oneof(fc.string(), odd), (value) => {
        expect(['read', 'refused']).toContain(courseFromLink(typeof value === 'string' ? value : asLink(value)).kind);
      }),
    );
    fc.assert(
      fc.property(fc.array(obstacle), fc.array(leg), odd, (obstacles, legs, unit) => {
        expect(courseFromLink(asLink({ ...FORM, unit, obstacles, legs })).kind).toMatch(/read|refused/);
      }),
    );
  });

  test('is refused when what it builds is not what was packed', () => {
    const obstacles = [['run', 10, 10, 0]];
    expect(courseFromLink(asLink({ ...FORM, obstacles, proof: [1, 12] }))).toMatchObject({
      why: expect.stringContaining('another version of Polewright'),
    });
  });
});

/** Links that were handed out. A line may be added and none may be changed: a link on a printed page has to open. */
const HANDED_OUT = readFileSync('tests/core/files/links-1.txt', 'utf8').trim().split('\n');

test.each(HANDED_OUT.map((line) => line.split(' ') as [string, string]))('still opens: %s', (_, hash) => {
  expect(courseFromLink(hash)).toMatchObject({ kind: 'read', repairs: [] });
});
