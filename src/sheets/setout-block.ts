/** Some steps of a part as a block on a page: its title, its drawing, and the steps beside or below it. */
import type { Mark } from '../core/plane/mark.ts';
import type { Bounds } from '../core/plane/ring.ts';
import { asFigure, paragraph } from '../core/plane/role.ts';
import type { Ground } from '../core/setout/ground.ts';
import type { SetOutStep } from '../core/setout/setout.ts';
import type { PartNames } from '../core/setout/words/place-words.ts';
import { clearestDrawing } from './fitted-transform.ts';
import { type Column, flowedText, type TextItem } from './flow.ts';
import { fewLines, wrappedLines } from './lettering.ts';
import { type DrawingSizes, pictureExtent, setOutDrawing } from './setout-drawing.ts';
import { wordsMark } from './title-block.ts';

/** What a block is about. */
export interface SetOutSection {
  readonly names: PartNames;
  readonly ground: Ground;
  /** Large over the block: "2. The fan (obstacle 3)". */
  readonly title: string;
  /** What has to be fetched for it, in one sentence or none. */
  readonly things: string;
  readonly steps: readonly SetOutStep[];
  /** The steps in words, then the gaps. */
  readonly items: readonly TextItem[];
}

/** How a block divides its room: `share` is the drawing's, of the width where words stand beside it, else of the height. */
export interface BlockTemplate {
  readonly words: 'beside' | 'below';
  readonly share: number;
  /** Of the height of a page. */
  readonly height: number;
}

/** Where a block stands, mm. */
export interface BlockRoom {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface SetBlock {
  readonly marks: readonly Mark<'paper'>[];
  /** Denominator of its drawing. */
  readonly scale: number;
  /** All of its words found their place. */
  readonly isWhole: boolean;
  /** No label covers anything. */
  readonly isClear: boolean;
}

const TITLE = 5.4;
const THINGS = 3.6;
const GUTTER = 7;
/** Letter heights of steps, mm, the best first; the last is 10 points. */
const STEP_SIZES = [5, 4.6, 4.3, 4, 3.75, 3.55];
const COLUMN_GUTTER = 9;

/** The title, and under it what is to be fetched. */
function headMarks(
  { title, things }: SetOutSection,
  room: BlockRoom,
): { marks: readonly Mark<'paper'>[]; height: number } {
  const lines = things === '' ? [] : wrappedLines(things, room.width, { size: THINGS });
  const titles = fewLines(title, room.width, { size: TITLE, weight: 'bold', most: 2 });
  const [heading, role] = [{ tag: 'H2' } as const, paragraph()];
  const top = room.y + titles.length * TITLE * 1.2 - 0.2 * TITLE;
  const marks = [
    ...titles.map((line, i) =>
      wordsMark(line, room.x, room.y + (1 + i * 1.2) * TITLE, { size: TITLE, weight: 'bold', role: heading }),
    ),
    ...lines.map((line, i) => wordsMark(line, room.x, top + 2 + (i + 0.85) * THINGS * 1.3, { size: THINGS, role })),
  ];
  return { marks, height: top - room.y + 3 + lines.length * THINGS * 1.3 };
}

/** The room of the drawing, and the columns of the words, under the head. */
function divided({ words, share }: BlockTemplate, room: BlockRoom): { drawing: Bounds; columns: readonly Column[] } {
  const { x, y, width, height } = room;
  if (words === 'beside') {
    const own = width * share;
    return {
      drawing: { minX: x, maxX: x + own, minY: y, maxY: y + height },
      columns: [{ page: 0, x: x + own + GUTTER, y, width: width - own - GUTTER, height }],
    };
  }
  const own = height * share;
  const column = (width - COLUMN_GUTTER) / 2;
  return {
    drawing: { minX: x, maxX: x + width, minY: y, maxY: y + own },
    columns: [0, 1].map((i) => ({
      page: 0,
      x: x + i * (column + COLUMN_GUTTER),
      y: y + own + 3,
      width: column,
      height: height - own - 3,
    })),
  };
}

/** The block in its room, with the letters of its drawing at these sizes. Words are set as large as they fit. */
export function setBlock(
  section: SetOutSection,
  template: BlockTemplate,
  { room, sizes }: { readonly room: BlockRoom; readonly sizes: DrawingSizes },
): SetBlock {
  const head = headMarks(section, room);
  const under = { ...room, y: room.y + head.height, height: room.height - head.height };
  const { drawing, columns } = divided(template, under);
  const size = STEP_SIZES.find((each) => flowedText(section.items, columns, each).whole);
  const words = flowedText(section.items, columns, size ?? STEP_SIZES.at(-1) ?? 3.55);
  if (size === undefined) return { marks: [], scale: Number.POSITIVE_INFINITY, isWhole: false, isClear: false };
  const { names, ground, steps } = section;
  const picture = { names, ground, steps };
  const { transform, drawn } = clearestDrawing(pictureExtent(picture), drawing, (tried) =>
    setOutDrawing(picture, tried, { room: drawing, sizes }),
  );
  return {
    marks: [
      ...head.marks,
      ...asFigure(drawn.marks, `How it is laid: ${section.title}.`),
      ...words.marks.map(({ mark }) => mark),
    ],
    scale: transform.scale,
    isWhole: true,
    isClear: drawn.isClear,
  };
}
