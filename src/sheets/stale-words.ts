/** Which of the designer's own sentences were written for a course that has changed since. */
import type { Survey } from '../core/survey.ts';
import { numberList } from '../core/text/sentence.ts';
import { madeInstructions } from './instructions.ts';

/** A sentence that may not be true any more. */
export interface StaleWords {
  readonly leg: string;
  /** Its number in the pattern. */
  readonly number: number;
  /** The designer's own. */
  readonly words: string;
  /** What the course said when they were written, and what it says now. */
  readonly said: string;
  readonly says: string;
}

/** The designer's sentences that are stale, in the order of the go. Words from files that do not know what they were written for never are. */
export function staleWords(survey: Survey): readonly StaleWords[] {
  const { legs } = survey.layout.ride;
  if (legs.every(({ wordsFor }) => wordsFor === undefined)) return [];
  return madeInstructions(survey).flatMap(({ leg, number, text: says }, index) => {
    const { words = '', wordsFor: said } = legs[index] ?? {};
    return said === undefined || said === says || words.trim() === '' ? [] : [{ leg, number, words, said, says }];
  });
}

/** One sentence about them; empty where there are none. */
export function staleWordsWarning(stale: readonly StaleWords[]): string {
  if (stale.length === 0) return '';
  const [which, verb] = stale.length === 1 ? ['Instruction', 'is'] : ['Instructions', 'are'];
  const numbers = numberList(stale.map(({ number }) => number));
  return `${which} ${numbers} ${verb} in the designer’s own words, and the course has changed since.`;
}
