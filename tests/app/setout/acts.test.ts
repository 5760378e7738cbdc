import { describe, expect, test } from 'vitest';
import { actPlace, partActs } from '../../../src/app/setout/acts.ts';
import { setOutOf } from '../../../src/core/setout/plan-setout.ts';
import { readingWords } from '../../../src/core/setout/words/reading-words.ts';
import { survey as surveyOf } from '../../../src/core/survey.ts';
import { STARTERS } from '../../core/ride/courses.ts';

const survey = surveyOf((STARTERS.find(([name]) => name.startsWith('larkhollow-open')) as (typeof STARTERS)[0])[1]);
const plan = setOutOf(survey);
const parts = partActs(survey, plan);

describe('the acts of a plan', () => {
  test('are every observation and every check, once each, in the order of the plan', () => {
    const observed = parts.flatMap(({ acts }) => acts.flatMap(({ of }) => (of === undefined ? [] : [of])));
    const planned = plan.parts.flatMap(({ steps }) => steps.flatMap((step) => [...step.observations, ...step.checks]));
    expect(observed).toEqual(planned);
  });

  test('have the figure that the tape reads, and a word where it reads nothing', () => {
    for (const { isRead, figure, of } of parts.flatMap(({ acts }) => acts)) {
      expect(figure, `${of?.kind} ${of?.reading}`).not.toBe('');
      if (isRead && of !== undefined) expect(figure).toBe(readingWords(Math.abs(of.reading), 'ft'));
    }
  });

  test('are all told apart', () => {
    const ids = parts.flatMap(({ acts }) => acts.map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('are followed from the first to the last and back', () => {
    const seen: string[] = [];
    let place = actPlace(parts, undefined);
    for (; place?.after !== undefined; place = actPlace(parts, place.after)) seen.push(place.act.id);
    expect(seen.length + 1).toBe(parts.reduce((sum, { acts }) => sum + acts.length, 0));
    for (; place?.before !== undefined; place = actPlace(parts, place.before)) expect(place.before).toBe(seen.pop());
    expect(seen).toEqual([]);
  });

  test('of chosen obstacles are those of their parts; where none is known, all', () => {
    const [, second] = plan.parts;
    expect(partActs(survey, plan, second?.obstacles).map(({ part }) => part)).toEqual([second]);
    expect(partActs(survey, plan, ['unheard-of'])).toHaveLength(plan.parts.length);
  });
});
