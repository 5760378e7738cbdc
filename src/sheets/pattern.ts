/** The exhibitors' pattern: the course to a stated scale, its numbers in words, and the usual cautions. */

import type { Bounds } from '../core/plane/ring.ts';
import type { Survey } from '../core/survey.ts';
import { cautions } from './cautions.ts';
import { CODE_OPTION, codeItems } from './code-note.ts';
import { type CourseDrawing, courseDrawing, hasInsetRoom } from './drawing.ts';
import { drawnPages } from './drawn-pages.ts';
import type { TextItem } from './flow.ts';
import { framePages } from './frame-pages.ts';
import { extent } from './ground.ts';
import type { PlacedInset } from './inset-places.ts';
import { insetSizes } from './insets.ts';
import { instructions } from './instructions.ts';
import { legendOf, plainLegendOf } from './legend.ts';
import type { PageContent } from './page-layout.ts';
import type { PaperTransform } from './paper-transform.ts';
import {
  chosenOf,
  type PageOptions,
  type Pages,
  type PaperInset,
  type Sheet,
  type SheetOption,
  type TooBig,
} from './sheet.ts';
import { classHead, displayTitle } from './title-block.ts';

/** A word of one letter stays with the word before it, and a short last word is not left alone on a line. */
function withNoBreakSpaces(text: string): string {
  return text.replace(/ (\p{L})(?=[\s,.;:]|$)/gu, '\u00a0$1').replace(/ (\S{1,6})$/, '\u00a0$1');
}

/** The usual choice first: whether gaps are written, and whether a plainer drawing stands beside one that is dense. */
const DIMENSIONS: SheetOption = {
  id: 'dimensions',
  title: 'Dimensions',
  choices: [
    { id: 'off', title: 'None' },
    { id: 'gaps', title: 'Gaps of the poles' },
  ],
};
const DRAWING: SheetOption = {
  id: 'drawing',
  title: 'Drawing',
  choices: [
    { id: 'automatic', title: 'Plain one too, if dense' },
    { id: 'signs', title: 'With all signs' },
    { id: 'plain', title: 'Plain one too' },
  ],
};

/** A drawing of which labels take more than this share is dense. An estimate, from looking at the starters. */
const DENSE = 0.22;
/** A pattern is read at a wall: what is small is drawn again in frames, so one page is worth a smaller drawing. */
const OVERLEAF = 2.1;

type Draw = (transform: PaperTransform, bounds: Bounds, row?: Bounds) => CourseDrawing;

function contentOf(survey: Survey, options: PageOptions, draw: Draw): PageContent {
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
    draw: (transform, bounds, row) => draw(transform, bounds, row).marks,
    overleaf: OVERLEAF,
    frames: (scale, turned) => insetSizes(survey, scale, turned),
    hasRoom: (transform) => hasInsetRoom(survey, transform),
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
  const dimensions = chosenOf(DIMENSIONS, options) === 'gaps' ? 'gaps' : 'off';
  const title = `Pattern: ${displayTitle(course)}`;
  const known = new Map<string, CourseDrawing>();
  let last: CourseDrawing | undefined;
  const content = contentOf(survey, options, (transform, bounds, row) => {
    const key = JSON.stringify([transform, bounds, row]);
    last =
      known.get(key) ??
      courseDrawing(survey, transform, { bounds, choices: { signs: 'all', dimensions, insets: row ?? 'ground' } });
    known.set(key, last);
    return last;
  });
  const pages = drawnPages(content, { course, title, options });
  if (pages.kind === 'too-big' || last === undefined) return pages;
  const choice = chosenOf(DRAWING, options);
  const isPlainWanted = choice === 'plain' || (choice === 'automatic' && last.crowding > DENSE);
  const isPlainShown = isPlainWanted && survey.layout.ride.legs.length > 0;
  const { scale = 0, origin } = pages.drawing ?? {};
  const [{ width, height }] = pages.pages;
  const frames = last.isWhole
    ? []
    : framePages(survey, {
        ...{ head: content.head, paper: { width, height }, scale, turned: origin?.turned === true },
        ...{ preceding: pages.pages.length, following: isPlainShown ? 1 : 0 },
      });
  const preceding = pages.pages.length + frames.length;
  const plain = isPlainShown ? drawnPages(plainContent(survey, preceding), { course, title, options }) : undefined;
  const further = [
    ...frames.map(({ page }) => page),
    ...(plain === undefined || plain.kind === 'too-big' ? [] : plain.pages),
  ];
  const told = [
    ...last.insets.map((inset) => insetTold(inset)),
    ...frames.flatMap(({ insets }, i) => insets.map((inset) => insetTold(inset, pages.pages.length + i))),
  ];
  if (further.length === 0) return withInsets(pages, told);
  // Once more, with the number of pages that it now has.
  const again = drawnPages({ ...content, following: further.length }, { course, title, options });
  if (again.kind === 'too-big') return again;
  return withInsets({ ...again, pages: [...again.pages, ...further] }, told);
}

/** The course once more, without signs and words, as large as a page has room for. */
function plainContent(survey: Survey, preceding: number): PageContent {
  const head = classHead(survey.course);
  return {
    head: { ...head, facts: [...head.facts, ['Drawing', 'poles, numbers and line']] },
    extent: extent(survey),
    legend: plainLegendOf(survey),
    draw: (transform, bounds) =>
      courseDrawing(survey, transform, { bounds, choices: { signs: 'plain', dimensions: 'off', insets: 'none' } })
        .marks,
    about: () => `${displayTitle(survey.course)}: a plain drawing of the course, with the numbers and the line.`,
    steps: [],
    notes: [],
    preceding,
  };
}

/** What is said of an inset; `page` where it is not that of the drawing. */
function insetTold({ inset, transform: { scale, x, y, turned } }: PlacedInset, page?: number): PaperInset {
  const told = { obstacle: inset.small.obstacle.obstacle.id, scale, origin: { x, y, turned } };
  return page === undefined ? told : { ...told, page };
}

function withInsets(pages: Pages, insets: readonly PaperInset[]): Pages {
  const { drawing } = pages;
  return drawing === undefined || insets.length === 0 ? pages : { ...pages, drawing: { ...drawing, insets } };
}

export const pattern: Sheet = { id: 'pattern', title: 'Pattern', options: [DIMENSIONS, DRAWING, CODE_OPTION], draw };
