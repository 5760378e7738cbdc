import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { autosave, type Timer } from '../../src/storage/autosave.ts';
import type { ErrorMessage } from '../../src/storage/failure.ts';

const [a, b, c] = ['a', 'b', 'c'].map((title) => blankCourse({ title })) as [Course, Course, Course];

/** A timer that rings when the test says so. */
function handTimer() {
  const calls = new Set<() => void>();
  const timer: Timer = {
    after(_, call) {
      calls.add(call);
      return () => calls.delete(call);
    },
  };
  return {
    timer,
    set: () => calls.size,
    ring() {
      const due = [...calls];
      calls.clear();
      for (const call of due) call();
    },
  };
}

/** A keeper whose writes end when the test says so. */
function handKeeper() {
  const titles: string[] = [];
  let end: ((trouble: ErrorMessage) => void) | undefined;
  return {
    titles,
    keep(course: Course): Promise<ErrorMessage> {
      titles.push(course.title);
      return new Promise((resolve) => {
        end = resolve;
      });
    },
    async done(trouble?: string) {
      end?.(trouble);
      // Lets what waits for the write go on.
      for (let i = 0; i < 10; i += 1) await Promise.resolve();
    },
  };
}

function table() {
  const clock = handTimer();
  const keeper = handKeeper();
  const told: ErrorMessage[] = [];
  const saver = autosave({ save: keeper.keep, report: (trouble) => told.push(trouble), timer: clock.timer });
  return { clock, keeper, saver, told };
}

describe('autosave', () => {
  test('writes the last of several changes, once, when the timer rings', async () => {
    const { clock, keeper, saver, told } = table();
    saver.schedule(a);
    saver.schedule(b);
    expect(clock.set()).toBe(1);
    expect(keeper.titles).toEqual([]);
    clock.ring();
    expect(keeper.titles).toEqual(['b']);
    expect(saver.isSaved()).toBe(false);
    await keeper.done();
    expect(saver.isSaved()).toBe(true);
    expect(told).toEqual([undefined]);
  });

  test('is not put off by change after change', () => {
    const { clock, keeper, saver } = table();
    saver.schedule(a);
    saver.schedule(b);
    saver.schedule(c);
    clock.ring();
    expect(keeper.titles).toEqual(['c']);
  });

  test('writes one at a time, and what came during a write after it', async () => {
    const { clock, keeper, saver } = table();
    saver.schedule(a);
    clock.ring();
    saver.schedule(b);
    clock.ring();
    expect(keeper.titles).toEqual(['a']);
    await keeper.done();
    expect(keeper.titles).toEqual(['a', 'b']);
    await keeper.done();
    expect(saver.isSaved()).toBe(true);
  });

  test('flushed writes at once, and is done when the last course is kept', async () => {
    const { clock, keeper, saver } = table();
    saver.schedule(a);
    clock.ring();
    saver.schedule(b);
    let flushed = 0;
    const both = [saver.flush(), saver.flush()].map((each) => each.then(() => (flushed += 1)));
    expect(clock.set()).toBe(0);
    await keeper.done();
    expect(keeper.titles).toEqual(['a', 'b']);
    expect(flushed).toBe(0);
    await keeper.done();
    await Promise.all(both);
    expect(keeper.titles).toEqual(['a', 'b']);
    expect(flushed).toBe(2);
  });

  test('flushed with nothing to write is done', async () => {
    const { keeper, saver } = table();
    await saver.flush();
    expect(keeper.titles).toEqual([]);
  });

  test('tries again with the next flush what could not be kept, and tells both', async () => {
    const { clock, keeper, saver, told } = table();
    saver.schedule(a);
    clock.ring();
    await keeper.done('No room.');
    expect(saver.isSaved()).toBe(false);
    expect(keeper.titles).toEqual(['a']);
    const flushed = saver.flush();
    await keeper.done();
    await flushed;
    expect(keeper.titles).toEqual(['a', 'a']);
    expect(told).toEqual(['No room.', undefined]);
    expect(saver.isSaved()).toBe(true);
  });

  test('keeps the newer course when an older one could not be kept', async () => {
    const { clock, keeper, saver } = table();
    saver.schedule(a);
    clock.ring();
    saver.schedule(b);
    await keeper.done('No room.');
    clock.ring();
    expect(keeper.titles).toEqual(['a', 'b']);
  });

  test('tells a keeper that breaks as trouble', async () => {
    const told: ErrorMessage[] = [];
    const keep = () => Promise.reject(new Error('gone'));
    const saver = autosave({ save: keep, report: (trouble) => told.push(trouble), timer: handTimer().timer });
    saver.schedule(a);
    await saver.flush();
    expect(told).toEqual(['The course was not saved: Error: gone.']);
  });

  test('does not write what takes the place of a course that is kept, but writes it in place of one that is not', async () => {
    const { clock, keeper, saver } = table();
    saver.replace(a);
    saver.schedule(a);
    expect(clock.set()).toBe(0);
    saver.schedule(b);
    saver.replace(c);
    clock.ring();
    expect(keeper.titles).toEqual(['c']);
  });

  test('does not write the same course twice, nor after it was stopped', async () => {
    const { clock, keeper, saver } = table();
    saver.schedule(a);
    clock.ring();
    await keeper.done();
    saver.schedule(a);
    expect(clock.set()).toBe(0);
    saver.schedule(b);
    saver.stop();
    clock.ring();
    await saver.flush();
    expect(keeper.titles).toEqual(['a']);
  });
});
