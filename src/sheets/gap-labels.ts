/** The gaps of an obstacle as it is taped, in one label: "3 × 3' 0"", or each where they differ. */
import { printLength } from '../core/measure/length.ts';
import type { Gap } from '../core/ride/line.ts';
import type { Survey } from '../core/survey.ts';
import { onPaper, type PaperTransform } from './paper-transform.ts';
import { type Label, wordLabel } from './pattern-labels.ts';

/** Neighbouring gaps of one length. */
function groupsOf(gaps: readonly Gap[], words: (gap: Gap) => string): readonly (readonly Gap[])[] {
  const groups: Gap[][] = [];
  for (const gap of gaps) {
    const last = groups.at(-1);
    const before = last?.[0];
    if (last !== undefined && before?.leg === gap.leg && words(before) === words(gap)) last.push(gap);
    else groups.push([gap]);
  }
  return groups;
}

/** One label for each row of equal gaps, about its middle. */
export function gapLabels(survey: Survey, transform: PaperTransform): readonly Label[] {
  const words = ({ taped }: Gap): string => printLength(taped, survey.course.unit);
  return groupsOf(survey.line.gaps, words).flatMap((group) => {
    const [first] = group;
    const middle = group[Math.floor((group.length - 1) / 2)];
    if (first === undefined || middle === undefined) return [];
    const [a, b] = middle.ends;
    const at = onPaper(transform, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
    return [wordLabel(group.length === 1 ? words(first) : `${group.length} × ${words(first)}`, at)];
  });
}
