/** A drawing to scale with its words: the largest scale that fits, or the one that was asked for, or why not. */
import type { Course } from '../core/course/course.ts';
import { composedPages, paperTransform } from './compose.ts';
import type { TextItem } from './flow.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';
import { type PageContent, type PageLayout, pageLayouts } from './page-layout.ts';
import { PAPER_NAMES, type PageOptions, type Pages, type TooBig } from './sheet.ts';
import { substitutionsOf } from './substitutions.ts';
import { wholeNames } from './title-block.ts';

/** Denominators that people have rulers for, and coarser ones for what is larger than any arena. */
export const SCALES = [50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 600, 750, 1000, 1500, 2000, 2500, 5000, 10000];

/** A second page costs this factor in scale: a drawing half as large again is worth turning over for. */
const SECOND_PAGE = 1.5;

/** Frames for which the drawing would have to be smaller by this factor have a page of their own. */
const FRAMES_OVERLEAF = 1.7;

/** The largest scale wins, one page before two, then the larger letters. */
function bestLayout({ overleaf = SECOND_PAGE }: PageContent, plans: readonly PageLayout[]): PageLayout | undefined {
  const cost = ({ scale, pageCount }: PageLayout): number => scale * (pageCount > 1 ? overleaf : 1);
  return plans.toSorted((a, b) => cost(a) - cost(b) || b.fontSize - a.fontSize)[0];
}

/**
 * The best layout; where frames have no room in its drawing, the best with a row for them, unless the paper has none or the
 * drawing would become too small.
 */
function roomiestLayout(content: PageContent, options: PageOptions, scales: readonly number[]): PageLayout | undefined {
  const { frames, hasRoom, ...plain } = content;
  const plan = bestLayout(content, pageLayouts(plain, options, scales));
  if (plan === undefined || hasRoom === undefined || hasRoom(paperTransform(content, plan), plan.drawing)) return plan;
  const framed = bestLayout(content, pageLayouts(content, options, scales));
  return framed === undefined || framed.scale > FRAMES_OVERLEAF * plan.scale ? plan : framed;
}

function tooBig(content: PageContent, { arena }: Course, options: PageOptions): TooBig {
  const { frames: _, overleaf: __, ...plain } = content;
  const plan = bestLayout(plain, pageLayouts(plain, options, SCALES));
  const nearest = plan?.scale ?? SCALES.at(-1) ?? 10000;
  const { length, width } = arena;
  const paper = PAPER_NAMES[options.paper];
  const wanted = options.scale ?? nearest;
  const across = Math.round((1000 * length) / wanted);
  const down = Math.round((1000 * width) / wanted);
  const why = `At 1:${wanted} the arena is ${across} × ${down} mm on paper, more than ${paper} has room for. 1:${nearest} fits.`;
  return { kind: 'too-big', why, nearest };
}

/** The content with a note of each name that its head cuts. */
function withWholeNames(content: PageContent): PageContent {
  const notes = wholeNames(content.head).map(
    (text): TextItem => ({ kind: 'paragraph', text, hang: '–', size: SMALLEST_FONT_SIZE }),
  );
  return notes.length === 0 ? content : { ...content, notes: [...content.notes, ...notes] };
}

/** The pages of a drawing and its words. `title` is for the file's own metadata. */
export function drawnPages(
  given: PageContent,
  { course, title, options }: { readonly course: Course; readonly title: string; readonly options: PageOptions },
): Pages | TooBig {
  const content = withWholeNames(given);
  const scales = options.scale === undefined ? SCALES : [options.scale];
  const plan = roomiestLayout(content, options, scales);
  if (plan === undefined) return tooBig(content, course, options);
  const { pages, transform } = composedPages(content, plan);
  return {
    kind: 'pages',
    title,
    pages,
    drawing: { scale: plan.scale, origin: { x: transform.x, y: transform.y, turned: transform.turned } },
    card: { date: course.class.date, author: course.class.show },
    substitutions: substitutionsOf(pages),
  };
}
