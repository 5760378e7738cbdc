import { describe, expect, test } from 'vitest';
import { bookComparison } from '../../../../src/core/checks/results/compared.ts';
import { applySafeRemedies } from '../../../../src/core/checks/results/safe-fixes.ts';
import { unwaivedFindings, unwaiveFinding, waiveFinding } from '../../../../src/core/checks/results/waived.ts';
import { readCourse } from '../../../../src/core/files/read.ts';
import { writeCourse } from '../../../../src/core/files/write.ts';
import { FOOT, INCH } from '../../../../src/core/measure/quantity.ts';
import { findings, judged, retaped, saidBy, scene } from '../scene.ts';

const BAD = scene([
  { kind: 'run', at: [60, 50], values: { gap: 4.4 * FOOT } },
  { kind: 'bridge', at: [110, 50], values: { width: 34 * INCH } },
  { kind: 'back-lane', at: [150, 50, 2], values: { width: 28 * INCH } },
]);
const BRIDGE = 'bridge-width:bridge-1';

describe('a waived finding', () => {
  const course = waiveFinding(BAD, BRIDGE, '  The old bridge is all there is ');

  test('stays in the list with its reason and no longer counts as open', () => {
    const finding = findings(course).find(({ id }) => id === BRIDGE);
    expect(finding?.waived).toBe('The old bridge is all there is');
    expect(unwaivedFindings(findings(course)).map(({ id }) => id)).not.toContain(BRIDGE);
    expect(unwaivedFindings(findings(BAD)).map(({ id }) => id)).toContain(BRIDGE);
  });

  test('is written to the file and read back; a file without waivers stays as it is', () => {
    const back = readCourse(writeCourse(course));
    expect(back.kind === 'read' ? back.course.waived : back).toEqual(course.waived);
    expect(writeCourse(unwaiveFinding(course, { id: BRIDGE }))).toBe(writeCourse(BAD));
    expect(unwaiveFinding(course, { id: BRIDGE })).not.toHaveProperty('waived');
  });

  test('has one reason, the last', () => {
    expect(waiveFinding(course, BRIDGE, 'Judge agreed').waived).toEqual([{ finding: BRIDGE, reason: 'Judge agreed' }]);
  });

  test('is left alone when all is fixed', () => {
    expect(applySafeRemedies(course).did.map(({ finding }) => finding)).not.toContain(BRIDGE);
  });
});

describe('fixing all that is safe', () => {
  const { course, did, left } = applySafeRemedies(BAD);

  test('mends what it says it mends, and brings nothing new', () => {
    expect(did.length).toBeGreaterThanOrEqual(4);
    const after = findings(course).map(({ id }) => id);
    for (const { finding, did: what } of did) expect(after, what).not.toContain(finding);
    const before = new Set(findings(BAD).map(({ id }) => id));
    expect(findings(course).filter(({ id, weight }) => weight !== 'note' && !before.has(id))).toEqual([]);
    expect(left).toEqual(unwaivedFindings(findings(course)).map(({ id }) => id));
  });

  test('changes nothing where nothing is wrong that it may mend', () => {
    expect(applySafeRemedies(course).did).toEqual([]);
    expect(applySafeRemedies(course).course).toBe(course);
  });

  test('sets gaps and leaves raised poles raised', () => {
    const run = scene([{ kind: 'run', at: [60, 50], values: { gap: 4.4 * FOOT } }]);
    const high = retaped(run, ['run-1/pole-2'], { raisedStart: 6 * INCH, raisedEnd: 6 * INCH });
    const built = saidBy(high, 'gap-band')[0]?.remedies.find(({ says }) => says.startsWith('Set the gaps'));
    expect(built?.safe).toBe(true);
    const after = applySafeRemedies(high).course;
    expect(saidBy(after, 'gap-band')).toEqual([]);
    const pole = after.layouts[0].obstacles[0]?.pieces.find(({ id }) => id === 'pole-2');
    expect(pole?.values.raisedStart).toBeCloseTo(6 * INCH, 9);
  });

  test('never takes a gait away: that is the designer’s to do', () => {
    const lope = { gait: 'lope', approach: 'lope' } as const;
    const things = [{ kind: 'run', at: [60, 50], values: { gap: 6 * FOOT, gait: 'lope' }, leg: lope }] as const;
    const walkJog = { ...scene(things), class: { ...BAD.class, level: 'walk-jog' as const } };
    expect(saidBy(walkJog, 'level')[0]?.remedies.length).toBeGreaterThan(0);
    expect(applySafeRemedies(walkJog).course.layouts[0].ride.legs[0]).toMatchObject(lope);
  });
});

describe('two rule books on one course', () => {
  const lane = scene([{ kind: 'back-lane', at: [60, 50], values: { width: 29 * INCH } }]);

  test('differ where one of them asks for more', () => {
    const { onlyA, onlyB, limits } = bookComparison(lane, 'mule-association', 'trade-press');
    expect(onlyA.map(({ check }) => check)).toContain('back-width');
    expect(onlyB.map(({ check }) => check)).not.toContain('back-width');
    const width = limits.find(({ name }) => name === 'back.width');
    expect([width?.a?.least, width?.b?.least]).toEqual([30, 28]);
    expect(limits.map(({ name }) => name)).not.toContain('bridge.width');
  });

  test('tell a finding of both with both bands', () => {
    const narrow = scene([{ kind: 'back-lane', at: [60, 50], values: { width: 26 * INCH } }]);
    const { changed } = bookComparison(narrow, 'mule-association', 'trade-press');
    const pair = changed.find(({ a }) => a.check === 'back-width');
    expect(pair?.a.allowed?.least).toBeCloseTo(30 * INCH, 9);
    expect(pair?.b.allowed?.least).toBeCloseTo(28 * INCH, 9);
  });

  test('are alike when they are the same, and what a book does not say is left out of it', () => {
    const same = bookComparison(lane, 'led', 'led');
    expect([same.onlyA, same.onlyB, same.changed, same.limits]).toEqual([[], [], [], []]);
    const { limits } = bookComparison(lane, 'stock-horse', 'led');
    expect(limits.find(({ name }) => name === 'shown.lope')).not.toHaveProperty('b');
    expect(limits.map(({ name }) => name)).not.toContain('wall.clear');
  });

  test('leave the course as it is, and an unknown book is a mistake of the program', () => {
    expect(judged(lane, 'mule-association').rulebook.id).toBe('mule-association');
    expect(() => bookComparison(lane, 'mule-association', 'nobody')).toThrow('there is no rule book nobody');
  });
});
