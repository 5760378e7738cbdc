import { describe, expect, test } from 'vitest';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { addLeg, changeLeg, removeLeg, reorderLeg } from '../../../src/core/course/edit-ride.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { sampleCourse } from './sample.ts';

const legs = (course: Course) => currentLayout(course).ride.legs;

describe('the legs of a ride', () => {
  const order = (course: Course) => legs(course).map((leg) => leg.obstacle);

  test.each<[string, number, readonly string[]]>([
    ['leg-3', 0, ['spoke-1', 'fan-1', 'run-1']],
    ['leg-1', 1, ['run-1', 'fan-1', 'spoke-1']],
    ['leg-1', 99, ['run-1', 'spoke-1', 'fan-1']],
    ['leg-2', -5, ['run-1', 'fan-1', 'spoke-1']],
  ])('%s can be ridden as number %i', (leg, to, expected) => {
    expect(order(reorderLeg(sampleCourse(), leg, to))).toEqual(expected);
  });

  test('stay the same object when a leg is put where it is', () => {
    const before = sampleCourse();
    expect(reorderLeg(before, 'leg-2', 1)).toBe(before);
  });

  test('stay the same object when nothing about one is changed', () => {
    const before = sampleCourse();
    expect(changeLeg(before, 'leg-2', { lead: 'left', words: 'Jog over' })).toBe(before);
    expect(changeLeg(before, 'leg-1', { lead: undefined, words: undefined })).toBe(before);
  });

  test('are ridden in the usual gait for one that their passage does not allow', () => {
    const usual = legs(sampleCourse())[0]?.gait;
    const course = replaceLayout(sampleCourse(), (layout) => ({
      ...layout,
      obstacles: layout.obstacles.map((each) => ({
        ...each,
        passages: each.passages.map((passage) => ({
          ...passage,
          gaits: passage.gaits.filter((gait) => gait !== 'walk'),
        })),
      })),
    }));
    expect(legs(changeLeg(course, 'leg-1', { gait: 'walk' }))[0]?.gait).toBe(usual);
  });

  test('know what their words were written for as long as they have those words', () => {
    const worded = changeLeg(sampleCourse(), 'leg-1', { words: 'Trot on.', wordsFor: 'Jog over the poles.' });
    expect(legs(worded)[0]).toMatchObject({ words: 'Trot on.', wordsFor: 'Jog over the poles.' });
    expect(legs(changeLeg(worded, 'leg-1', { gait: 'walk' }))[0]).toHaveProperty('wordsFor');
    for (const words of [undefined, 'Trot along.']) {
      expect(legs(changeLeg(worded, 'leg-1', { words }))[0]).not.toHaveProperty('wordsFor');
    }
  });

  test('lose a lead or words when told so', () => {
    const leg = legs(changeLeg(sampleCourse(), 'leg-2', { lead: undefined, words: undefined }))[1];
    expect(leg).not.toHaveProperty('lead');
    expect(leg).not.toHaveProperty('words');
  });

  test('are one more for an obstacle that is ridden twice, each with an id of its own', () => {
    const course = addLeg(sampleCourse(), 'fan-1');
    expect(order(course)).toEqual([...order(sampleCourse()), 'fan-1']);
    const ids = legs(course).map((leg) => leg.id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('ride the passage that is asked for', () => {
    const [first] = currentLayout(sampleCourse()).obstacles;
    const passage = first?.passages.at(-1)?.id ?? '';
    expect(legs(addLeg(sampleCourse(), first?.id ?? '', passage)).at(-1)?.passage).toBe(passage);
  });

  test('that are taken out leave their obstacle where it is and the others as they were', () => {
    const before = sampleCourse();
    const course = removeLeg(before, 'leg-2');
    expect(legs(course)).toEqual(legs(before).filter((leg) => leg.id !== 'leg-2'));
    expect(currentLayout(course).obstacles).toBe(currentLayout(before).obstacles);
  });

  test('that are taken out can be ridden again', () => {
    const [leg] = legs(sampleCourse());
    const course = addLeg(removeLeg(sampleCourse(), leg?.id ?? ''), leg?.obstacle ?? '');
    expect(order(course).at(-1)).toBe(leg?.obstacle);
    expect(legs(course)).toHaveLength(legs(sampleCourse()).length);
  });

  test('must exist', () => {
    expect(() => removeLeg(sampleCourse(), 'leg-9')).toThrow('no leg leg-9');
    expect(() => addLeg(sampleCourse(), 'moat-1')).toThrow('no obstacle moat-1');
    expect(() => addLeg(sampleCourse(), 'fan-1', 'moat')).toThrow('fan-1 has no passage moat');
    expect(() => changeLeg(sampleCourse(), 'leg-9', {})).toThrow('no leg leg-9');
    expect(() => reorderLeg(sampleCourse(), 'leg-9', 0)).toThrow('no leg leg-9');
  });
});
