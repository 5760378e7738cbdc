import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { levelChanges, practiceSentences, silences } from '../../../src/app/check/book-words.ts';
import { groupsOf } from '../../../src/app/check/groups.ts';
import { SWEEPS_PART } from '../../../src/app/check/later-checks.ts';
import { limitBehind, quantityOf } from '../../../src/app/check/limit-behind.ts';
import { clearanceWords, narrowestSweep, sweepFor } from '../../../src/app/check/sweep-words.ts';
import { closerFindingsOf } from '../../../src/core/checks/checks.ts';
import { waiveFinding } from '../../../src/core/checks/results/waived.ts';
import { limitsOf } from '../../../src/core/checks/rulebooks/rulebooks.ts';
import type { Course, Level } from '../../../src/core/course/course.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { survey } from '../../../src/core/survey.ts';

function seed(name: string): Course {
  const reading = readCourse(readFileSync(`seeds/starters/${name}.course.json`, 'utf8'));
  if (reading.kind === 'refused') throw new Error(reading.why);
  return reading.course;
}

const FAULTY = seed('practice-with-faults');
const facts = survey(FAULTY);
const findings = closerFindingsOf(facts);

describe('findings in groups', () => {
  test('by check are headed by what is asked', () => {
    const group = groupsOf(findings, facts, 'check').find(({ id }) => id === 'gap-band');
    expect(group?.title).toMatch(/^[A-Z].*[^.]$/);
    expect(group?.title).toContain(' ');
  });

  test.each(['obstacle', 'check'] as const)('by %s none is lost and none is told twice', (grouping) => {
    const ids = groupsOf(findings, facts, grouping).flatMap((group) => group.findings.map(({ id }) => id));
    expect(ids.toSorted()).toEqual(findings.map(({ id }) => id).toSorted());
  });

  test('by obstacle follow the order of the go, and the whole course comes last', () => {
    const groups = groupsOf(findings, facts, 'obstacle');
    const numbers = groups.flatMap(({ number }) => (number === undefined ? [] : [Number(number)]));
    expect(numbers.length).toBeGreaterThan(2);
    expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
    expect(groups.at(-1)).toMatchObject({ id: 'course', title: 'The whole course' });
  });

  test('have what is waived after what is open', () => {
    const group = groupsOf(findings, facts, 'obstacle')[0];
    const first = group?.findings[0];
    if (first === undefined) throw new Error('no finding');
    const later = survey(waiveFinding(FAULTY, first.id, 'as the show wants it'));
    const same = groupsOf(closerFindingsOf(later), later, 'obstacle').find(({ id }) => id === group?.id);
    expect(same?.findings.at(-1)).toMatchObject({ id: first.id, waived: 'as the show wants it' });
  });
});

describe('the limit behind a finding', () => {
  const limits = limitsOf(FAULTY);
  const behind = (check: string) => {
    const finding = findings.find((each) => each.check === check);
    if (finding === undefined) throw new Error(`nothing of ${check} is found`);
    return { finding, limit: limitBehind(finding, limits) };
  };

  test('is the one whose band and source are quoted', () => {
    const jog = behind('gap-band');
    expect(jog.limit?.name).toBe('gap.jog');
    expect(jog.limit?.limit.grade).toBe('A');
    expect(quantityOf(jog.finding, jog.limit)).toBe('length');
  });

  test('is absent where the course itself is the source', () => {
    const shortage = behind('truck');
    expect(shortage.limit).toBeUndefined();
    expect(quantityOf(shortage.finding, shortage.limit)).toBe('count');
  });
});

describe('what a book says and does not say', () => {
  test('is one sentence for each limit that nobody sets', () => {
    const says = silences(facts);
    expect(says).toContain('This book does not say anything about the length of a water box.');
    expect(says.every((each) => each.startsWith('This book does not say anything about'))).toBe(true);
    expect(new Set(says).size).toBe(says.length);
    expect(practiceSentences(FAULTY).join()).toMatch(/From a piece to the wall: at least 2'/);
  });

  test('changes with the level, and for an open class not at all', () => {
    const at = (level: Level) => levelChanges({ ...FAULTY, class: { ...FAULTY.class, level } });
    expect(at('open')).toEqual([]);
    expect(at('walk-jog')).toContainEqual(
      expect.objectContaining({ title: 'Parts of the course at the lope', here: 'none', open: 'no limit' }),
    );
  });
});

describe('the room to back and turn', () => {
  beforeAll(() => SWEEPS_PART.load());

  test('is told at the piece that is nearest', () => {
    const lane = narrowestSweep('back-lane-1', facts);
    if (lane === undefined) throw new Error('the lane is not swept');
    expect(lane.clear).toBeGreaterThan(0);
    expect(clearanceWords(lane, facts)).toMatch(/^4¾" to spare at pole \d of the back-through lane/);
    expect(clearanceWords({ ...lane, clear: -0.0254 }, facts)).toMatch(/^1" too little at /);
    expect(narrowestSweep('run-1', facts)).toBeUndefined();
  });

  test('stands in the card of a lane that is too narrow, and in no other', () => {
    const told = findings.filter((finding) => sweepFor(finding, facts) !== undefined);
    expect(told.map(({ check }) => check)).toEqual(['back-width']);
  });
});
