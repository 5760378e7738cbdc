/** The pages of an arrangement: the drawing in its frame, the head and foot, the words in their columns. */
import type { Mark } from '../core/plane/mark.ts';
import { drawing } from './drawing.ts';
import { flowed } from './flow.ts';
import { legendOf, strip } from './legend.ts';
import { SMALLEST_LETTERS } from './lettering.ts';
import { type Arrangement, type Content, EDGE, MARGIN } from './page-layout.ts';
import type { Frame } from './paper-transform.ts';
import type { Page } from './sheet.ts';
import { foot, smallTitle, titleBlock } from './title-block.ts';

/** The frame that puts the extent into the drawing's room, its edge left free. */
function frameFor({ extent }: Content, plan: Arrangement): Frame {
  const k = 1000 / plan.scale;
  const { minX, maxX, maxY } = plan.drawing;
  return plan.turned
    ? { scale: plan.scale, turned: true, x: maxX - EDGE + extent.minY * k, y: maxY - EDGE + extent.minX * k }
    : { scale: plan.scale, turned: false, x: minX + EDGE - extent.minX * k, y: maxY - EDGE + extent.minY * k };
}

function about(content: Content, page: number): string {
  const { course, layout } = content.survey;
  const name = course.class.title === '' ? course.title : course.class.title;
  const count = layout.ride.legs.length;
  if (page > 0) return `${name}: the pattern in words, page ${page + 1}.`;
  return `${name}: drawing of the course with ${count} numbered ${count === 1 ? 'obstacle' : 'obstacles'}, and the pattern in words.`;
}

/** The words with the page on which they stand. */
function wordsOf({ steps, notes }: Content, plan: Arrangement): readonly { page: number; mark: Mark<'paper'> }[] {
  if (plan.noteColumns.length === 0) return flowed([...steps, ...notes], plan.columns, plan.letters).marks;
  const below = flowed(notes, plan.noteColumns, SMALLEST_LETTERS).marks;
  return [...flowed(steps, plan.columns, plan.letters).marks, ...below];
}

/** A thin line over the notes. */
function noteRule(plan: Arrangement): readonly Mark<'paper'>[] {
  const first = plan.noteColumns[0];
  const last = plan.noteColumns.at(-1);
  if (first === undefined || last === undefined) return [];
  const y = first.y - 1;
  const points = [
    { x: first.x, y },
    { x: last.x + last.width, y },
  ];
  return [{ kind: 'line', ink: 'words', points, width: 0.2 }];
}

/** The pages of an arrangement, and the frame of its drawing. */
export function composed(content: Content, plan: Arrangement): { pages: readonly [Page, ...Page[]]; frame: Frame } {
  const { course } = content.survey;
  const frame = frameFor(content, plan);
  const area = { x: MARGIN, y: MARGIN, width: plan.width - 2 * MARGIN };
  const words = wordsOf(content, plan);
  const pageOf = (index: number, own: readonly Mark<'paper'>[]): Page => {
    const footArea = { ...area, y: plan.height - MARGIN };
    const here = words.flatMap(({ page, mark }) => (page === index ? [mark] : []));
    const marks = [...own, ...here, ...foot(plan.scale, { number: index + 1, count: plan.pageCount }, footArea)];
    return { width: plan.width, height: plan.height, marks, about: about(content, index) };
  };
  const head = titleBlock(course, plan.scale, area).marks;
  const legend = strip(legendOf(content.survey, plan.scale), plan.legend.width);
  const strokes = legend.marks(plan.legend.x, plan.legend.y);
  const drawn = drawing(content.survey, frame, plan.drawing);
  const first = pageOf(0, [...head, ...drawn, ...strokes, ...noteRule(plan)]);
  const rest = Array.from({ length: plan.pageCount - 1 }, (_, index) =>
    pageOf(index + 1, smallTitle(course, area).marks),
  );
  return { pages: [first, ...rest], frame };
}
