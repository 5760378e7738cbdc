import { describe, expect, test } from 'vitest';
import { changeLeg } from '../../src/core/course/edit-ride.ts';
import { replaceLayout } from '../../src/core/course/layouts.ts';
import { STARTERS } from '../core/ride/courses.ts';
import { courseFile, runCli, smallCourse } from './run-cli.ts';

/** Jog-overs 4 ft 6 in apart: a must under every book. */
const wide = () => courseFile(smallCourse({ gap: 1.3716 }));

describe('check', () => {
  test('exits 1 on a must and prints measured value, band and source', async () => {
    const { code, out } = await runCli('check', wide());
    expect(code).toBe(1);
    expect(out).toMatch(/MUST {2}1: .*4' 6"/);
    expect(out).toContain('Source: ');
  });

  test('prints the findings as one JSON document, fixes as their sentences', async () => {
    const { code, out } = await runCli('check', wide(), '--json');
    const told = JSON.parse(out);
    expect(code).toBe(1);
    expect(told).toMatchObject({ rulebook: 'mule-association', failOn: 'must' });
    const gap = told.findings.find((finding: { check: string }) => finding.check === 'gap-band');
    expect(gap.measured).toBeCloseTo(1.3716, 6);
    expect(gap.remedies.every((says: unknown) => typeof says === 'string')).toBe(true);
  });

  test('prints what the ride saves another way round, and the fix', async () => {
    const course = STARTERS.find(([name]) => name === 'larkhollow-open.course.json')?.[1];
    if (course === undefined) throw new Error('there is no open starter');
    const against = changeLeg(course, 'leg-7', { passage: 'turn-and-back' });
    const { code, out } = await runCli('check', courseFile(against));
    expect(code).toBe(0);
    expect(out).toMatch(
      /NOTE {2}7: The whole ride is \d+' and \d+ s less with the back-through L \(obstacle 7\) ridden "turn and back through the L from the other end"\./,
    );
    expect(out).toMatch(/Fix \(look first\): Ride it the better way: \d+' and \d+ s less/);
  });

  test('exits 0 on a course without a must', async () => {
    const { code, out } = await runCli('check', courseFile(smallCourse()), '--json');
    const weights = JSON.parse(out).findings.map((finding: { weight: string }) => finding.weight);
    expect(weights).not.toContain('must');
    expect(code).toBe(0);
  });

  test('fails on lighter findings when told to', async () => {
    const course = smallCourse();
    const file = courseFile(course);
    const { out } = await runCli('check', file, '--json');
    const lightest = JSON.parse(out).findings.length > 0 ? 1 : 0;
    expect((await runCli('check', file, '--fail-on', 'note')).code).toBe(lightest);
  });

  test('judges by another rule book when told to', async () => {
    const { out } = await runCli('check', wide(), '--rulebook', 'trade-press', '--json');
    expect(JSON.parse(out).rulebook).toBe('trade-press');
  });

  test('refuses a rule book or a weight that does not exist and lists what there is', async () => {
    const book = await runCli('check', wide(), '--rulebook', 'mule-asociation');
    expect(book).toMatchObject({ code: 2, out: '' });
    expect(book.err).toContain('Did you mean mule-association? There are: mule-association, trade-press,');
    const weight = await runCli('check', wide(), '--fail-on', 'shuld');
    expect(weight).toMatchObject({ code: 2, out: '' });
    expect(weight.err).toBe(
      '--fail-on: There is no weight "shuld". Did you mean should? There are: must, should, note.\n',
    );
  });

  test('a waived finding is printed with its reason and fails no run', async () => {
    const open = await runCli('check', wide(), '--json');
    const musts = JSON.parse(open.out).findings.filter((finding: { weight: string }) => finding.weight === 'must');
    const course = smallCourse({ gap: 1.3716 });
    const file = courseFile({
      ...course,
      waived: musts.map(({ id }: { id: string }) => ({ finding: id, reason: 'Only for the long-striding ones' })),
    });
    const { code, out } = await runCli('check', file);
    expect(code).toBe(0);
    expect(out).toMatch(/MUST, waived {2}1: .*\n {2}Waived: Only for the long-striding ones/);
  });

  test('sets a second rule book beside the first', async () => {
    const { out } = await runCli('check', wide(), '--compare', 'stock-horse');
    expect(out).toContain('American Mule Association beside American Stock Horse Association');
    expect(out).toMatch(/Gap between poles at the jog +3' to 3' 6" or a whole multiple +does not say/);
    const { compared } = JSON.parse((await runCli('check', wide(), '--compare', 'led', '--json')).out);
    expect(compared.books).toEqual(['mule-association', 'led']);
    expect((await runCli('check', wide(), '--compare', 'ledd')).code).toBe(2);
  });

  test('says what all safe fixes would do, where the hooves sweep, and who decides', async () => {
    const told = JSON.parse((await runCli('check', wide(), '--json')).out);
    expect(told.fixAll.did[0].did).toMatch(/^Set the gaps/);
    expect(Array.isArray(told.sweeps)).toBe(true);
    expect((await runCli('check', wide())).out).toContain('the judge decide');
  });

  test('an empty course is no mistake of the program', async () => {
    const empty = replaceLayout(smallCourse(), (layout) => ({
      ...layout,
      obstacles: [],
      ride: { ...layout.ride, legs: [] },
    }));
    const { code, out } = await runCli('check', courseFile(empty), '--json');
    expect([0, 1]).toContain(code);
    expect(Array.isArray(JSON.parse(out).findings)).toBe(true);
  });
});
