import { describe, expect, test } from 'vitest';
import { partActs } from '../../../src/app/setout/acts.ts';
import { asBuiltAnswer } from '../../../src/app/setout/as-built-answer.ts';
import {
  moreId,
  moreRow,
  plannedRows,
  tapePlaces,
  typedReading,
  typedReadings,
} from '../../../src/app/setout/readings.ts';
import { feet, inches } from '../../../src/core/measure/quantity.ts';
import { setOutOf } from '../../../src/core/setout/plan-setout.ts';
import { readingWords } from '../../../src/core/setout/words/reading-words.ts';
import { survey as surveyOf } from '../../../src/core/survey.ts';
import { STARTERS } from '../../core/ride/courses.ts';

const survey = surveyOf((STARTERS.find(([name]) => name.startsWith('larkhollow-open')) as (typeof STARTERS)[0])[1]);
const plan = setOutOf(survey);
const parts = partActs(survey, plan);
const fan = parts.find(({ part }) => part.obstacles.some((id) => id.startsWith('fan'))) as (typeof parts)[0];
const rows = plannedRows(fan).flat();

/** What a tape shows for each row by the plan, and for one of them something else. */
function typed(changed?: { readonly id: string; readonly text: string }): Record<string, string> {
  const all = Object.fromEntries(rows.map(({ id, planned }) => [id, readingWords(Math.abs(planned), 'ft')]));
  return changed === undefined ? all : { ...all, [changed.id]: changed.text };
}

function answerTo(text: Record<string, string>) {
  const read = typedReadings(fan, text, { survey, crew: plan.crew }).map(({ reading }) => reading);
  return asBuiltAnswer({
    kind: 'as-built',
    course: survey.course,
    readings: read,
    held: [fan.part.steps[0].piece],
    letters: fan.part.letters,
  });
}

describe('what is typed for a tape', () => {
  const [row] = rows as [(typeof rows)[0]];

  test.each([
    ['', /length/],
    ['about six', /length/],
    [`-3"`, /below 0/],
    [`3' 14"`, /Write/],
    ['300', /further than 10' 0"/],
  ])('is refused with its reason: %s', (text, why) => {
    const read = typedReading(row, text, 'ft');
    expect(read.kind === 'refused' && read.why).toMatch(why);
  });

  test('is read in the unit of the tape, with the sign of its plan', () => {
    expect(typedReading({ ...row, planned: -1 }, '1 m', 'ft')).toMatchObject({ kind: 'read', value: -1 });
    expect(typedReading({ ...row, planned: 2 }, '2', 'm')).toMatchObject({ kind: 'read', value: 2 });
    expect(typedReading({ ...row, planned: feet(2) }, '2', 'ft')).toMatchObject({ kind: 'read', value: feet(2) });
  });
});

test('only what a tape reads has a row', () => {
  expect(rows.length).toBeGreaterThan(5);
  for (const { of, planned } of rows)
    expect(['level', 'in-line', 'square'].includes(of.kind) && planned === 0).toBe(false);
});

test('one more reading goes straight between two places, by their letters', () => {
  const places = tapePlaces(fan);
  expect(places.map(({ title }) => title)).toEqual(['End A', 'End B', 'End C', 'End D', 'End E', 'End F']);
  const [a, , , d] = places as [(typeof places)[0], unknown, unknown, (typeof places)[0]];
  const row = moreRow(fan, moreId(a, d), survey, plan.crew);
  expect(row).toMatchObject({ what: 'End A to End D, straight', isMore: true });
  expect(row?.planned).toBeGreaterThan(feet(6));
  expect(moreRow(fan, moreId(a, a), survey, plan.crew)).toBeUndefined();
  expect(moreRow(fan, 'straight-gone@0|gone@1', survey, plan.crew)).toBeUndefined();
});

describe('what the readings make of the fan', () => {
  test('nothing is wrong where the tape reads the plan', () => {
    const { moves, unreached, readings, undecided, pieces } = answerTo(typed());
    expect({ moves, unreached, undecided }).toEqual({ moves: [], unreached: [], undecided: [] });
    expect(answerTo(typed()).findings).toEqual([]);
    expect(readings.filter(({ standing }) => standing === 'wrong')).toEqual([]);
    for (const { name, off } of pieces) expect(off, name).toBeLessThan(inches(1));
  });

  test('a gap that is too wide has a move that mends it, in words', () => {
    const wide = rows.find(({ of }) => of.kind === 'gap' && of.grips.every((grip) => 'piece' in grip));
    const alone = Object.fromEntries(
      Object.entries(typed()).filter(([id]) => rows.some((row) => row.id === id && row.of.kind === 'gap')),
    );
    const text = readingWords((wide?.planned ?? 0) + inches(8), 'ft');
    const { moves, gaps, findings } = answerTo({ ...alone, [wide?.id ?? '']: text });
    expect(gaps.some(({ outside }) => outside > 0)).toBe(true);
    expect(moves.length).toBeGreaterThan(0);
    expect(findings.some((says) => says.includes('fan'))).toBe(true);
    expect(moves[0]).toMatch(/^Move .*pole \d .*\d.*\.$/);
  });

  test('a reading that is a foot off is named, where others control it', () => {
    const places = tapePlaces(fan);
    const more = places.flatMap((from, i) => places.slice(i + 1).map((to) => moreId(from, to)));
    const straight = more.flatMap((id) => moreRow(fan, id, survey, plan.crew) ?? []);
    const read = Object.fromEntries(straight.map(({ id, planned }) => [id, readingWords(planned, 'ft')]));
    const gap = rows.find(({ of }) => of.kind === 'gap');
    const off = readingWords((gap?.planned ?? 0) + feet(1), 'ft');
    const all = { ...typed({ id: gap?.id ?? '', text: off }), ...read };
    const { readings, undecided } = answerTo(all);
    const wrong = typedReadings(fan, all, { survey, crew: plan.crew }).filter(
      (_, i) => readings[i]?.standing === 'wrong',
    );
    expect(wrong.map(({ row }) => row.id)).toEqual([gap?.id]);
    expect(undecided).toEqual([]);
  });

  test('is plain data that goes to the page', () => {
    expect(structuredClone(answerTo(typed()))).toEqual(answerTo(typed()));
  });
});
