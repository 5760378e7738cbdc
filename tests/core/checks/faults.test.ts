import { describe, expect, test } from 'vitest';
import { CHECKS } from '../../../src/core/checks/checks.ts';
import { FAULTS as FIRST_FAULTS } from './faults.ts';
import { MORE_FAULTS } from './faults-more.ts';
import { TRADE_FAULTS } from './faults-trade.ts';
import { findings, saidBy } from './scene.ts';

const FAULTS = [...FIRST_FAULTS, ...MORE_FAULTS, ...TRADE_FAULTS];

describe('planted faults', () => {
  test('there is one for every check', () => {
    // What takes a closer look has a test of its own.
    expect(
      CHECKS.filter(({ runs }) => runs !== 'closer')
        .map(({ id }) => id)
        .filter((id) => !FAULTS.some(({ check }) => check === id)),
    ).toEqual([]);
  });

  test.each(FAULTS)('$check is silent where the course is right', ({ check, right }) => {
    expect(saidBy(right, check).map(({ says }) => says)).toEqual([]);
  });

  test.each(FAULTS)('$check finds the fault and tells it', ({ check, wrong, says, measured }) => {
    const [first] = saidBy(wrong, check);
    expect(first?.says.slice(0, says.length)).toBe(says);
    if (measured !== undefined) expect(first?.measured).toBeCloseTo(measured, 9);
    expect(first?.because).not.toBe('');
    expect(first?.source).not.toBe('');
    expect(Number.isFinite(first?.at.x)).toBe(true);
  });

  test.each(FAULTS)('$check: every fix on offer mends it and breaks nothing', ({ check, wrong, cured }) => {
    const musts = new Set(findings(wrong).flatMap(({ id, weight }) => (weight === 'must' ? [id] : [])));
    const said = saidBy(wrong, check);
    expect(said.some(({ remedies }) => remedies.length > 0)).toBe(cured);
    for (const finding of said) {
      for (const remedy of finding.remedies) {
        const after = findings(remedy.apply(wrong));
        expect(
          after.map(({ id }) => id),
          remedy.says,
        ).not.toContain(finding.id);
        expect(after.filter(({ id, weight }) => weight === 'must' && !musts.has(id))).toEqual([]);
      }
    }
  });
});
