import { describe, expect, test } from 'vitest';
import { closerFindingsOf, findingsOf } from '../../../../src/core/checks/checks.ts';
import { FOOT } from '../../../../src/core/measure/quantity.ts';
import { OBSTACLE_KINDS } from '../../../../src/core/obstacles/obstacles.ts';
import { survey } from '../../../../src/core/survey.ts';
import { scene } from '../scene.ts';

const jogOvers = (feet: number) =>
  survey(scene([{ kind: 'run', at: [80, 50], values: { gap: feet * FOOT, poles: 5 } }]));
const prints = (of: ReturnType<typeof jogOvers>) => closerFindingsOf(of).filter(({ check }) => check === 'pole-prints');

describe('a hoof on a pole', () => {
  test('is told where the gaps make the horse step there, and not where they are right', () => {
    const told = prints(jogOvers(2.4));
    expect(told.length).toBeGreaterThan(0);
    expect(told[0]?.says).toMatch(
      /^(Pole \d of the set of jog-overs \(obstacle 1\) is where a (left|right) (fore|hind) foot comes down|Hooves come down \d times on poles [\d ,and]+ of the set of jog-overs \(obstacle 1\),) at a jog/,
    );
    expect(told[0]?.says).not.toContain('undefined');
    expect(prints(jogOvers(3.2))).toEqual([]);
  });

  test.each([
    ['an L of 24 in', { kind: 'back-l', values: { width: 2 * FOOT } }, /while backing/],
    ['a U of 24 in', { kind: 'back-u', values: { width: 2 * FOOT } }, /while backing/],
    ['a box of 4 ft', { kind: 'box', values: { side: 4 * FOOT } }, /at the halt, in the turn and at a walk/],
    ['a box of 4 ft 6 in', { kind: 'box', values: { side: 4.5 * FOOT } }, /in the turn/],
  ])('is told once for %s, and the fix that is offered cures it', (_, thing, ways) => {
    const course = scene([{ ...thing, at: [60, 50] }]);
    const told = prints(survey(course));
    expect(told.map(({ id }) => id)).toEqual([`pole-prints:${thing.kind}-1`]);
    expect(told[0]?.says).toMatch(ways);
    expect(told[0]?.places?.length).toBeGreaterThan(1);
    const [remedy] = told[0]?.remedies ?? [];
    expect(remedy === undefined ? told : prints(survey(remedy.apply(course)))).toEqual([]);
  });

  test('is not told of lanes and boxes that are built as is usual', () => {
    for (const { id } of OBSTACLE_KINDS) {
      const told = prints(survey(scene([{ kind: id, at: [90, 50] }])));
      expect(
        told.map(({ says }) => says),
        id,
      ).toEqual([]);
    }
  });

  test('waits for a closer look: a drag does not', () => {
    const of = jogOvers(2.4);
    expect(findingsOf(of).map(({ check }) => check)).not.toContain('pole-prints');
    const usual = findingsOf(of).map(({ id }) => id);
    expect(closerFindingsOf(of).map(({ id }) => id)).toEqual(expect.arrayContaining(usual));
  });
});
