/** The exhibitors' pattern: the course to a stated scale, its numbers in words, and the usual cautions. */
import type { Course } from '../core/course/course.ts';
import type { Survey } from '../core/survey.ts';
import { cautions } from './cautions.ts';
import { composedPages } from './compose.ts';
import { drawing } from './drawing.ts';
import type { TextItem } from './flow.ts';
import { extent } from './ground.ts';
import { instructions } from './instructions.ts';
import { legendOf } from './legend.ts';
import { printable } from './lettering.ts';
import { type PageContent, type PageLayout, pageLayouts } from './page-layout.ts';
import type { Page, PageOptions, Pages, Sheet, TooBig } from './sheet.ts';
import { classHead, displayTitle } from './title-block.ts';

/** Denominators that people have rulers for, and coarser ones for what is larger than any arena. */
export const SCALES = [50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 600, 750, 1000, 1500, 2000, 2500, 5000, 10000];

/** A second page costs this factor in scale: a drawing half as large again is worth turning over for. */
const SECOND_PAGE = 1.5;

/** A word of one letter stays with the word before it, and a short last word is not left alone on a line. */
function withNoBreakSpaces(text: string): string {
  return text.replace(/ (\p{L})(?=[\s,.;:]|$)/gu, '\u00a0$1').replace(/ (\S{1,6})$/, '\u00a0$1');
}

function contentOf(survey: Survey): PageContent {
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
    notes,
  };
}

function layoutCost(plan: PageLayout): number {
  return plan.scale * (plan.pageCount > 1 ? SECOND_PAGE : 1);
}

/** The largest scale wins, one page before two, then the larger letters. */
function bestLayout(plans: readonly PageLayout[]): PageLayout | undefined {
  return plans.toSorted((a, b) => layoutCost(a) - layoutCost(b) || b.fontSize - a.fontSize)[0];
}

function tooBig(content: PageContent, { arena }: Course, options: PageOptions): TooBig {
  const plan = bestLayout(pageLayouts(content, options, SCALES));
  const nearest = plan?.scale ?? SCALES.at(-1) ?? 10000;
  const { length, width } = arena;
  const paper = options.paper === 'a4' ? 'A4' : 'Letter';
  const wanted = options.scale ?? nearest;
  const across = Math.round((1000 * length) / wanted);
  const down = Math.round((1000 * width) / wanted);
  const why = `At 1:${wanted} the arena is ${across} × ${down} mm on paper, more than ${paper} has room for. 1:${nearest} fits.`;
  return { kind: 'too-big', why, nearest };
}

/** One sentence for each sign on the pages that had to be replaced for want of a glyph. */
export function substitutionsOf(pages: readonly Page[]): readonly string[] {
  const texts = pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : [])));
  return [...new Set(texts.flatMap((text) => printable(text).substitutions))];
}

function draw(survey: Survey, options: PageOptions): Pages | TooBig {
  const content = contentOf(survey);
  const plan = bestLayout(pageLayouts(content, options, options.scale === undefined ? SCALES : [options.scale]));
  if (plan === undefined) return tooBig(content, survey.course, options);
  const { pages, transform } = composedPages(content, plan);
  const { course } = survey;
  return {
    kind: 'pages',
    title: `Pattern: ${displayTitle(course)}`,
    pages,
    drawing: { scale: plan.scale, origin: { x: transform.x, y: transform.y, turned: transform.turned } },
    card: { date: course.class.date, author: course.class.show },
    substitutions: substitutionsOf(pages),
  };
}

export const pattern: Sheet = { id: 'pattern', title: 'Pattern', draw };
