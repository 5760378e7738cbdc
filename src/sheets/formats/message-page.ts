/** The drawing of a course as one picture for a phone: large letters for its width, the title above and a caution below. */
import { asFigure } from '../../core/plane/role.ts';
import type { Survey } from '../../core/survey.ts';
import { drawing } from '../drawing.ts';
import { extent } from '../ground.ts';
import { legendBar, legendOf } from '../legend.ts';
import { wrappedLines } from '../lettering.ts';
import type { PaperTransform } from '../paper-transform.ts';
import type { Page } from '../sheet.ts';
import { displayTitle, wordsMark } from '../title-block.ts';

/**
 * Millimetres. The letters of a drawing are made for paper in the hand; on this width they are, on a phone of 390 dots, 12
 * dots high.
 */
const WIDTH = 100;
const MARGIN = 4;
/** Room round the ground for signs outside the rail. */
const EDGE = 6.5;
/** A picture that is longer than this is drawn smaller: a phone shows it in two looks. */
const LONGEST_DRAWING = 200;
const TITLE = 5.6;
const SMALL = 3.6;
const CAUTION = 'For a look ahead. Where this picture and the posted pattern do not agree, the posted pattern holds.';

interface Lines {
  readonly texts: readonly string[];
  readonly size: number;
  readonly weight: 'regular' | 'bold';
}

function linesOf(text: string, size: number, weight: Lines['weight']): Lines {
  return { texts: text === '' ? [] : wrappedLines(text, WIDTH - 2 * MARGIN, { size, weight }), size, weight };
}

const LEADING = 1.25;

function heightOf(blocks: readonly Lines[]): number {
  return blocks.reduce((sum, { texts, size }) => sum + texts.length * size * LEADING, 0);
}

function linesAt(blocks: readonly Lines[], top: number) {
  let y = top;
  return blocks.flatMap(({ texts, size, weight }) =>
    texts.map((text) => {
      y += size * LEADING;
      return wordsMark(text, MARGIN, y - size * (LEADING - 1), { size, weight });
    }),
  );
}

/** The ground as large as the width allows, turned a quarter where that makes it larger. */
function transformIn({ minX, minY, maxX, maxY }: ReturnType<typeof extent>, top: number) {
  const [along, across] = [maxX - minX, maxY - minY];
  const room = WIDTH - 2 * EDGE;
  const perMetre = (turned: boolean) => {
    const [wide, high] = turned ? [across, along] : [along, across];
    return Math.min(room / wide, (LONGEST_DRAWING - 2 * EDGE) / high);
  };
  const turned = perMetre(true) > perMetre(false);
  const k = perMetre(turned);
  const [wide, high] = turned ? [across, along] : [along, across];
  const left = (WIDTH - wide * k) / 2;
  const bottom = top + EDGE + high * k;
  const transform: PaperTransform = turned
    ? { scale: 1000 / k, turned, x: left + wide * k + minY * k, y: bottom + minX * k }
    : { scale: 1000 / k, turned, x: left - minX * k, y: bottom + minY * k };
  return { transform, height: high * k + 2 * EDGE };
}

/** The picture as a page. It is to no scale that anybody measures by, so none is stated. */
export function messagePage(survey: Survey): Page {
  const { course } = survey;
  const title = displayTitle(course) === '' ? course.title : displayTitle(course);
  const second = [title === course.title ? '' : course.title, course.class.show]
    .filter((each) => each !== '')
    .join(', ');
  const head = [linesOf(title, TITLE, 'bold'), linesOf(second, SMALL, 'regular')];
  const foot = [linesOf(CAUTION, SMALL, 'regular')];
  const top = MARGIN + heightOf(head);
  const { transform, height } = transformIn(extent(survey), top);
  const ground = { minX: 0, maxX: WIDTH, minY: top, maxY: top + height };
  const legend = legendBar({ ...legendOf(survey), isPicture: true }, transform.scale, WIDTH - 2 * MARGIN);
  const below = ground.maxY + legend.height + 1;
  const about = `${title}: drawing of the course.`;
  return {
    width: WIDTH,
    height: Math.ceil(below + heightOf(foot) + MARGIN),
    marks: [
      ...linesAt(head, MARGIN),
      ...asFigure(drawing(survey, transform, ground), about),
      ...legend.marks(MARGIN, ground.maxY),
      ...linesAt(foot, below),
    ],
    about,
  };
}
