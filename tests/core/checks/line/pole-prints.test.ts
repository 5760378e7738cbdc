import { describe, expect, test } from 'vitest';
import { closerFindingsOf, findingsOf } from '../../../../src/core/checks/checks.ts';
import { FOOT } from '../../../../src/core/measure/quantity.ts';
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
      /^Pole \d of the run of poles \(obstacle 1\) is where a (left|right) (fore|hind) foot comes down at a jog/,
    );
    expect(told[0]?.says).not.toContain('undefined');
    expect(prints(jogOvers(3.2))).toEqual([]);
  });

  test('waits for a closer look: a drag does not', () => {
    const of = jogOvers(2.4);
    expect(findingsOf(of).map(({ check }) => check)).not.toContain('pole-prints');
    const usual = findingsOf(of).map(({ id }) => id);
    expect(closerFindingsOf(of).map(({ id }) => id)).toEqual(expect.arrayContaining(usual));
  });
});
