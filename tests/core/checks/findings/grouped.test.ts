import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../../src/core/checks/check.ts';
import { findingsOf } from '../../../../src/core/checks/checks.ts';
import { bookComparison } from '../../../../src/core/checks/results/compared.ts';
import { unwaivedFindings, unwaiveFinding, waiveFinding } from '../../../../src/core/checks/results/waived.ts';
import { placeAt } from '../../../../src/core/course/edit-obstacles.ts';
import { FOOT, INCH } from '../../../../src/core/measure/quantity.ts';
import { survey } from '../../../../src/core/survey.ts';
import { findings, judged, retaped, saidBy, scene } from '../scene.ts';

const nine = scene([{ kind: 'run', at: [80, 50], values: { gap: 2.5 * FOOT, poles: 9 } }]);
const [WHOLE] = saidBy(nine, 'gap-band');
const GROUP = 'gap-band:run-1:jog:short';

describe('one mistake', () => {
  test('of one setting is one finding with all its places, and its fix cures all of them', () => {
    expect(saidBy(nine, 'gap-band').map(({ id }) => id)).toEqual([GROUP]);
    expect(WHOLE?.says).toMatch(/^Gaps 1 to 8 of the set of jog-overs \(obstacle 1\) are 2' 6"; a jog asks for/);
    expect(WHOLE?.places).toHaveLength(8);
    expect(WHOLE?.keys).toHaveLength(1 + 9);
    const [remedy] = WHOLE?.remedies ?? [];
    expect(remedy === undefined ? undefined : saidBy(remedy.apply(nine), 'gap-band')).toEqual([]);
  });

  test('is not mixed with another: gaps that are too short and too long, or short by different settings', () => {
    // The last pole is pushed out: the gap before it is too long, the others stay too short.
    const pushed = placeAt(nine, 'run-1/pole-9', { x: 93 * FOOT, y: 50 * FOOT, angle: Math.PI / 2 });
    expect(saidBy(pushed, 'gap-band').map(({ members }) => members?.length ?? 1)).toEqual(
      expect.arrayContaining([7, 1]),
    );
    const nearer = placeAt(nine, 'run-1/pole-9', { x: 91 * FOOT, y: 50 * FOOT, angle: Math.PI / 2 });
    expect(saidBy(nearer, 'gap-band').map(({ members }) => members?.length ?? 1)).toEqual(
      expect.arrayContaining([7, 1]),
    );
  });

  test('of two obstacles is two findings', () => {
    const two = scene([
      { kind: 'run', at: [50, 50], values: { gap: 2.5 * FOOT } },
      { kind: 'run', at: [120, 50], values: { gap: 2.5 * FOOT } },
    ]);
    expect(saidBy(two, 'gap-band')).toHaveLength(2);
  });

  test('of raised poles in a novice class is one finding', () => {
    const poles = [1, 2, 3, 4].map((number) => `run-1/pole-${number}`);
    const run = retaped(scene([{ kind: 'run', at: [80, 50] }]), poles, { raisedStart: 3 * INCH });
    const novice = { ...run, class: { ...run.class, level: 'novice' as const } };
    expect(saidBy(novice, 'level').map(({ says }) => says)).toEqual([
      'A novice class has no raised poles; this course has 4 raised poles.',
    ]);
  });
});

const reopened = (course: typeof nine, finding: Finding) => unwaiveFinding(course, finding);

describe('a waiver', () => {
  const openIds = (course: typeof nine) => unwaivedFindings(findings(course)).map(({ id }) => id);
  const members = WHOLE?.members ?? [];

  test('of the whole finding holds while there are several, and for the last of them', () => {
    const waived = waiveFinding(nine, GROUP, 'short horses');
    expect(openIds(waived)).not.toContain(GROUP);
    const one = scene([{ kind: 'run', at: [80, 50], values: { gap: 2.5 * FOOT, poles: 2 } }]);
    const [alone] = saidBy(one, 'gap-band');
    expect(alone?.id).toBe('gap-band:run-1/pole-1+run-1/pole-2:jog');
    const covered = waiveFinding(one, GROUP, 'short horses');
    expect(openIds(covered)).not.toContain(alone?.id);
    // To open it again removes the waiver that holds, whatever its id.
    const again = saidBy(covered, 'gap-band').reduce(reopened, covered);
    expect(openIds(again)).toContain(alone?.id);
  });

  test('of an older file, for one gap, still waives that gap and leaves the others open', () => {
    const older = waiveFinding(nine, members[2] ?? '', 'a hole in the ground');
    const told = saidBy(older, 'gap-band');
    expect(told.map(({ waived }) => waived)).toEqual(expect.arrayContaining([undefined, 'a hole in the ground']));
    expect(told.find(({ waived }) => waived === undefined)?.members).toHaveLength(7);
  });

  test('of an older file, for every gap, leaves nothing open', () => {
    const older = members.reduce((course, id) => waiveFinding(course, id, 'ponies'), nine);
    expect(openIds(older).filter((id) => id.startsWith('gap-band'))).toEqual([]);
    expect(saidBy(saidBy(older, 'gap-band').reduce(reopened, older), 'gap-band').map(({ id }) => id)).toEqual([GROUP]);
  });
});

test('two books tell the same mistake as one, whether it is one place or several', () => {
  // 20 in is short by one book and right by the other; at 14 in both complain.
  const walk = scene([{ kind: 'run', at: [80, 50], values: { gap: 14 * INCH, gait: 'walk' } }]);
  const { changed, onlyA } = bookComparison(judged(walk, 'mule-association'), 'mule-association', 'trade-press');
  expect(changed.map(({ a }) => a.check)).toContain('gap-band');
  expect(onlyA.map(({ check }) => check)).not.toContain('gap-band');
});

test('a drag tells the same as rest, by the checks that it has time for', () => {
  expect(findingsOf(survey(nine)).filter(({ check }) => check === 'gap-band')).toHaveLength(1);
});
