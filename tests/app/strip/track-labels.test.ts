import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { stripGaps } from '../../../src/app/strip/track.ts';
import { numberPlaces, type StripLabel, stripLabels, stripWords } from '../../../src/app/strip/track-labels.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { type Survey, survey } from '../../../src/core/survey.ts';

const EDGE = 28;
const SEEDS = readdirSync('seeds/starters').filter((name) => name.endsWith('.course.json'));

function surveyOf(name: string): Survey {
  const reading = readCourse(readFileSync(`seeds/starters/${name}`, 'utf8'));
  if (reading.kind === 'refused') throw new Error(reading.why);
  return survey(reading.course);
}

function labelsAt(there: Survey, scale: number): readonly StripLabel[] {
  const { line, course } = there;
  const parts = { gaps: stripGaps(there), words: stripWords(line.elements), length: line.length };
  return stripLabels(parts, { scale, edge: EDGE, unit: course.unit });
}

/** Letters of 12 pixels in a plain font are hardly wider than this. */
const wide = (text: string) => text.length * 6.6;

describe.each(SEEDS)('the words under the ribbon of %s', (name) => {
  const there = surveyOf(name);
  test.each([334, 764, 1310, 3000, 9000])('stand clear of each other on a line of %i pixels', (pixels) => {
    const labels = labelsAt(there, pixels / there.line.length);
    for (const row of [0, 1]) {
      const own = labels.filter((label) => label.row === row).sort((a, b) => a.x - b.x);
      own.slice(1).forEach((label, index) => {
        const left = own[index];
        if (left === undefined) return;
        const apart = label.x - left.x - (wide(label.text) + wide(left.text)) / 2;
        expect(apart, `${left.text} | ${label.text}`).toBeGreaterThan(0);
      });
    }
    expect(labels.map(({ text }) => text)).toEqual(expect.arrayContaining(['Start', 'End']));
  });

  test('tell every gap by itself where there is room', () => {
    const labels = labelsAt(there, 90);
    expect(labels.filter(({ key }) => key.startsWith('gap '))).toHaveLength(there.line.gaps.length);
  });
});

test('gaps without room for each are told in one', () => {
  const there = surveyOf('larkhollow-novice.course.json');
  const texts = labelsAt(there, 1310 / there.line.length).map(({ text }) => text);
  expect(texts.filter((text) => /^\d gaps of \d/.test(text)).length).toBeGreaterThan(0);
});

test('numbers keep apart and inside, and stay where they are when they can', () => {
  const room = { apart: 26, most: 200 };
  expect(numberPlaces([10, 100, 150], room)).toEqual([10, 100, 150]);
  expect(numberPlaces([10, 12, 14, 100], room)).toEqual([10, 36, 62, 100]);
  expect(numberPlaces([100, 195, 199], room)).toEqual([100, 174, 200]);
});
