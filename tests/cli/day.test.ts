import { describe, expect, test } from 'vitest';
import { changeClass, orderClasses } from '../../src/core/course/edit-day.ts';
import { DAY } from '../core/change/larkhollow-day.ts';
import { courseFile, runCli, smallCourse } from './run-cli.ts';

const FILE = 'seeds/starters/larkhollow-day.course.json';
const asDocument = runCli('day', FILE, '--json');

describe('day', () => {
  test('prints the timetable, what is not kept, the better order and what would save time', async () => {
    const { code, out, err } = await runCli('day', FILE);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Larkhollow, a day of trail: 6 classes in 7 h \d\d min\n/);
    expect(out).toMatch(/ 7:30 am +8:02 am +Walk-Jog Trail +Walk-jog pattern +First judge +9 +28 min\n/);
    expect(out).toContain('NOT KEPT  The classes of Second judge are in 3 blocks; one would be right.');
    const [, better = ''] = out.split('The better order ends');
    expect(better).toMatch(/^ 1 h \d\d min earlier\. No other order is better\.\n/);
    expect(better).not.toContain('NOT KEPT');
    expect(better).toContain('A crew of 4 to change over.');
    expect(out).toContain('Times are estimates');
  });

  test('is one JSON document with --json, whose parts are the whole', async () => {
    const { out } = await asDocument;
    const told = JSON.parse(out);
    expect(told.given.order).toEqual(DAY.day?.classes.map(({ id }) => id));
    expect(told.best.proven).toBe(true);
    expect(told.given.finish - told.given.starts).toBeCloseTo(told.total, 6);
    const parts = Object.values<number>(told.parts).reduce((sum, part) => sum + part, 0);
    expect(parts).toBeCloseTo(told.total, 6);
    expect(told.savings[0]).toMatchObject({ kind: 'order', saves: told.given.finish - told.best.finish });
  });

  test('says so when the classes stand in the best order', async () => {
    const { out } = await asDocument;
    const ordered = orderClasses(DAY, JSON.parse(out).best.order);
    const again = await runCli('day', courseFile(ordered));
    expect(again.out).toContain('The classes stand in the best order. No other order is better.');
  });

  test('tells of a fixed start that no order keeps', async () => {
    const early = changeClass(DAY, 'open', { startsAt: 7 * 3600 });
    const { out } = await runCli('day', courseFile(early));
    expect(out).toMatch(/NOT KEPT {2}Open Trail begins [\dh ]+ min after its set start\./);
  });

  test('refuses a course without a day and says how it gets one', async () => {
    const { code, err } = await runCli('day', courseFile(smallCourse()));
    expect(code).toBe(2);
    expect(err).toMatch(/has no classes of a day\. Plan it in the stage Change, or write "day" into the file/);
  });
});
