import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import { setCrew } from '../../src/core/course/edit-crew.ts';
import { shiftByKeys } from '../../src/core/course/edit-obstacles.ts';
import { branchLayout } from '../../src/core/course/layouts.ts';
import { courseFile, runCli, smallCourse } from './run-cli.ts';

const lying = () => smallCourse();
/** The bridge a metre further, the jog-overs where they were. */
const wanted = () => shiftByKeys(smallCourse(), ['bridge-1'], 1, 0);

describe('change', () => {
  test('says what is carried, by whom, and that the times are estimates', async () => {
    const { code, out, err } = await runCli('change', courseFile(lying()), courseFile(wanted()));
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain(
      '1 to carry, 4 to leave; 6\' 6¾" under loads, and no other choice of what goes where costs less (proven); about',
    );
    expect(out).toContain('for 2 people (estimate).');
    expect(out).toContain('The truck stands in the entrance.');
    expect(out).toContain('Pass 1, team 1, two people');
    expect(out).toContain("1. 8' bridge from the bridge (obstacle 2) to the bridge (obstacle 2): 3' 3¼\"");
    expect(out).toMatch(
      /from 62' 2½" from the east wall and 49' 2½" from the south wall; to 58' 11" from the east wall/,
    );
    expect(out).toContain(
      'From the truck: nothing\nTo the truck: nothing\nStays: the set of jog-overs (obstacle 1): 4\n',
    );
    expect(out).toContain('The times are estimates');
    expect(out).toContain('measured again before a horse goes in');
  });

  test('prints one JSON document in SI units', async () => {
    const { out } = await runCli('change', courseFile(lying()), courseFile(wanted()), '--crew', '4', '--json');
    const told = JSON.parse(out);
    expect(told).toMatchObject({
      from: { course: 'Larkhollow Fairground: practice', layout: 'layout-1' },
      crew: { people: 4, truckAt: { x: 0, y: 15.24 } },
      passes: 1,
      truck: { out: [], back: [] },
    });
    expect(told.metres).toBeCloseTo(2, 9);
    expect(told.leastCost).toBeCloseTo(told.cost, 9);
    expect(told.carries[0]).toMatchObject({
      number: 1,
      words: "8' bridge",
      from: { kind: 'ground', key: 'bridge-1/bridge' },
    });
    expect(told.carries[0].ends).toBeCloseTo(told.seconds, 9);
    expect(told.stays.length).toBe(4);
  });

  test('brings everything from the truck to an empty arena', async () => {
    const empty = courseFile(blankCourse({ title: 'Empty' }));
    const { out } = await runCli('change', empty, courseFile(lying()));
    expect(out).toContain("From the truck: 4 × 12' pole; 1 × 8' bridge\nTo the truck: nothing\nStays: nothing");
    const back = await runCli('change', courseFile(lying()), empty);
    expect(back.out).toContain("From the truck: nothing\nTo the truck: 4 × 12' pole; 1 × 8' bridge\n");
  });

  test('says so when nothing is carried', async () => {
    const { code, out } = await runCli('change', courseFile(lying()), courseFile(lying()));
    expect(code).toBe(0);
    expect(out).toContain('The two lie the same on the ground: nothing is carried.');
  });

  test('takes two layouts of one file, by id or by title', async () => {
    const two = shiftByKeys(branchLayout(lying(), { title: 'Afternoon' }), ['bridge-1'], 1, 0);
    const file = courseFile(two);
    const { out } = await runCli('change', file, '--from', 'layout-1', '--to', 'Afternoon');
    expect(out).toMatch(
      /^Larkhollow Fairground: practice, Layout 1, into Larkhollow Fairground: practice, Afternoon\n/,
    );
    expect(out).toContain('1 to carry, 4 to leave');
    const alone = await runCli('change', file);
    expect(alone).toMatchObject({ code: 2, out: '' });
    expect(alone.err).toBe('change wants two files, or one with --from and --to: the layouts in it.\n');
    const wrong = await runCli('change', file, '--from', 'layout-3');
    expect(wrong.err).toContain('There is no layout "layout-3". Did you mean layout-1? There are: layout-1, layout-2.');
  });

  test('takes the crew of the course that comes next, and cautions one who carries alone', async () => {
    const next = courseFile(setCrew(wanted(), { people: 1, truckAt: { x: 3, y: -1 } }));
    const { out } = await runCli('change', courseFile(lying()), next);
    expect(out).toContain('for 1 person (estimate).');
    expect(out).toContain('The truck stands 9\' 10" from the west wall and −3\' 3¼" from the south wall.');
    expect(out).toContain('1 load wants two people, and the crew is one.');
  });

  test('refuses another arena and a crew of five', async () => {
    const other = courseFile(blankCourse({ arena: { ...lying().arena, length: 60 } }));
    const far = await runCli('change', courseFile(lying()), other);
    expect(far).toMatchObject({ code: 2, out: '' });
    expect(far.err).toContain("The arenas differ: Arena is 200' by 100', Arena is 196' 10¼\" by 100'.");
    const five = await runCli('change', courseFile(lying()), courseFile(wanted()), '--crew', '5');
    expect(five.err).toBe('--crew is "5"; a crew is of 1, 2, 3 or 4.\n');
    const none = await runCli('change');
    expect(none.code).toBe(2);
  });
});
