import { describe, expect, test } from 'vitest';
import { waiveFinding } from '../../../../src/core/checks/results/waived.ts';
import { blankCourse } from '../../../../src/core/course/blank.ts';
import { judged, saidBy, scene, type Thing } from '../scene.ts';

const sidePasses = (count: number): readonly Thing[] =>
  Array.from({ length: count }, (_, i) => ({ kind: 'side-pass', at: [30 + 40 * i, 30] }));
const told = (things: readonly Thing[], entries: number, book = 'mule-association') =>
  saidBy(judged(scene(things, blankCourse({ class: { entries } })), book), 'slow-obstacle');
const weights = (count: number, entries: number) => told(sidePasses(count), entries).map(({ weight }) => weight);

describe('slow obstacles', () => {
  test.each([
    [1, 15, []],
    [1, 30, []],
    [1, 70, ['note']],
    [1, 90, ['should']],
    [4, 5, []],
    [4, 15, ['note']],
    [4, 30, ['should']],
    [4, 70, ['must']],
    [2, 70, ['should']],
    [2, 90, ['must']],
  ])('%d side passes with %d entries: %j', (count, entries, expected) => {
    expect(weights(count, entries)).toEqual(expected);
  });

  test('are one finding with the time of a go and of the class', () => {
    const [finding] = told(sidePasses(4), 70);
    expect(finding?.says).toMatch(
      /^4 slow obstacles take 1 min \d\d s of a go of \d min \d\d s; with 70 entries that is 1 h \d\d min of the class, and good practice asks for at most \d entries with so much\. The longest is the side pass \(obstacle \d\), 18 s\.$/,
    );
    expect(finding?.keys).toHaveLength(4);
  });

  test('waived one by one in an older file stay waived', () => {
    const course = scene(sidePasses(2), blankCourse({ class: { entries: 70 } }));
    const older = waiveFinding(
      waiveFinding(course, 'slow-obstacle:side-pass-1', 'a'),
      'slow-obstacle:side-pass-2',
      'b',
    );
    expect(saidBy(older, 'slow-obstacle').map(({ waived }) => waived)).toEqual(['a; b']);
  });

  test('count a gate only where no book demands it', () => {
    const gate: Thing = { kind: 'gate', at: [60, 50] };
    expect(told([gate], 70, 'mule-association')).toEqual([]);
    expect(told([gate], 70, 'trade-press')).toHaveLength(1);
  });
});
