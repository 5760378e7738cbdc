/** The exhibitors' pattern: the course to a stated scale, its numbers in words, and the usual cautions. */
import type { Survey } from '../core/survey.ts';
import { cautions } from './cautions.ts';
import { CODE_OPTION, codeItems } from './code-note.ts';
import { drawing } from './drawing.ts';
import { drawnPages } from './drawn-pages.ts';
import type { TextItem } from './flow.ts';
import { extent } from './ground.ts';
import { instructions } from './instructions.ts';
import { legendOf } from './legend.ts';
import type { PageContent } from './page-layout.ts';
import type { PageOptions, Pages, Sheet, TooBig } from './sheet.ts';
import { classHead, displayTitle } from './title-block.ts';

/** A word of one letter stays with the word before it, and a short last word is not left alone on a line. */
function withNoBreakSpaces(text: string): string {
  return text.replace(/ (\p{L})(?=[\s,.;:]|$)/gu, '\u00a0$1').replace(/ (\S{1,6})$/, '\u00a0$1');
}

function contentOf(survey: Survey, options: PageOptions): PageContent {
  const steps = instructions(survey).map(
    ({ number, text }): TextItem => ({ kind: 'paragraph', text: withNoBreakSpaces(text), hang: `${number}.` }),
  );
  const notes = cautions(survey.course).map((item) => ({ ...item, text: withNoBreakSpaces(item.text) }));
  const items: readonly TextItem[] = steps.length === 0 ? [] : [{ kind: 'heading', text: 'The pattern' }, ...steps];
  const name = displayTitle(survey.course);
  const count = survey.layout.ride.legs.length;
  const numbered = `${count} numbered ${count === 1 ? 'obstacle' : 'obstacles'}`;
  return {
    head: classHead(survey.course),
    extent: extent(survey),
    legend: legendOf(survey),
    draw: (transform, bounds) => drawing(survey, transform, bounds),
    about: (page) =>
      page === 0
        ? `${name}: drawing of the course with ${numbered}, and the pattern in words.`
        : `${name}: the pattern in words, page ${page + 1}.`,
    steps: items,
    notes: [...notes, ...codeItems(survey.course, options)],
  };
}

function draw(survey: Survey, options: PageOptions): Pages | TooBig {
  const { course } = survey;
  return drawnPages(contentOf(survey, options), { course, title: `Pattern: ${displayTitle(course)}`, options });
}

export const pattern: Sheet = { id: 'pattern', title: 'Pattern', options: [CODE_OPTION], draw };
