/** The pages of a layout: the drawing under its transform, the head and footer, the words in their columns. */
import type { Mark } from '../core/plane/mark.ts';
import { ARTIFACT } from '../core/plane/role.ts';
import { flowedText } from './flow.ts';
import { legendBar } from './legend.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';
import { DRAWING_EDGE, PAGE_MARGIN, type PageContent, type PageLayout } from './page-layout.ts';
import type { PaperTransform } from './paper-transform.ts';
import type { Page } from './sheet.ts';
import { continuedTitle, footer, titleBlock } from './title-block.ts';

/** The transform that puts the extent into the drawing's space, its edge left free. */
export function paperTransform({ extent }: PageContent, plan: PageLayout): PaperTransform {
  const k = 1000 / plan.scale;
  const { minX, maxX, maxY } = plan.drawing;
  return plan.turned
    ? {
        scale: plan.scale,
        turned: true,
        x: maxX - DRAWING_EDGE + extent.minY * k,
        y: maxY - DRAWING_EDGE + extent.minX * k,
      }
    : {
        scale: plan.scale,
        turned: false,
        x: minX + DRAWING_EDGE - extent.minX * k,
        y: maxY - DRAWING_EDGE + extent.minY * k,
      };
}

/** The words with the page on which they stand. */
function wordsOf({ steps, notes }: PageContent, plan: PageLayout): readonly { page: number; mark: Mark<'paper'> }[] {
  if (plan.noteColumns.length === 0) return flowedText([...steps, ...notes], plan.columns, plan.fontSize).marks;
  const below = flowedText(notes, plan.noteColumns, SMALLEST_FONT_SIZE).marks;
  return [...flowedText(steps, plan.columns, plan.fontSize).marks, ...below];
}

/** A thin line over the notes. */
function noteRule(plan: PageLayout): readonly Mark<'paper'>[] {
  const first = plan.noteColumns[0];
  const last = plan.noteColumns.at(-1);
  if (first === undefined || last === undefined) return [];
  const y = first.y - 1;
  const points = [
    { x: first.x, y },
    { x: last.x + last.width, y },
  ];
  return [{ kind: 'line', ink: 'words', points, width: 0.2, role: ARTIFACT }];
}

/** The pages of a layout, and the transform of its drawing. */
export function composedPages(
  content: PageContent,
  plan: PageLayout,
): { pages: readonly [Page, ...Page[]]; transform: PaperTransform } {
  const { head, preceding: before = 0 } = content;
  const transform = paperTransform(content, plan);
  const area = { x: PAGE_MARGIN, y: PAGE_MARGIN, width: plan.width - 2 * PAGE_MARGIN };
  const words = wordsOf(content, plan);
  const pageOf = (index: number, own: readonly Mark<'paper'>[]): Page => {
    const footArea = { ...area, y: plan.height - PAGE_MARGIN };
    const here = words.flatMap(({ page, mark }) => (page === index ? [mark] : []));
    const marks = [
      ...own,
      ...here,
      ...footer(
        plan.scale,
        { number: before + index + 1, count: before + plan.pageCount + (content.following ?? 0) },
        footArea,
      ),
    ];
    return { width: plan.width, height: plan.height, marks, about: content.about(index) };
  };
  const title = titleBlock(head, plan.scale, area).marks;
  const legend = legendBar(content.legend, plan.scale, plan.legend.width);
  const strokes = legend.marks(plan.legend.x, plan.legend.y);
  const drawn = content.draw(transform, plan.drawing, plan.row);
  const first = pageOf(0, [...title, ...drawn, ...strokes, ...noteRule(plan)]);
  const rest = Array.from({ length: plan.pageCount - 1 }, (_, index) =>
    pageOf(index + 1, continuedTitle(head, area).marks),
  );
  return { pages: [first, ...rest], transform };
}
