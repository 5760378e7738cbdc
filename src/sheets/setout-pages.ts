/** The parts of a set-out one after the other on pages: small ones share a page, one with many steps takes several. */
import type { Mark } from '../core/plane/mark.ts';
import { ARTIFACT } from '../core/plane/role.ts';
import type { Ground } from '../core/setout/ground.ts';
import type { SetOut, SetOutPart, SetOutStep } from '../core/setout/setout.ts';
import { gapGroups } from '../core/setout/words/gap-groups.ts';
import { mergedSentences } from '../core/setout/words/merged-words.ts';
import type { PartNames } from '../core/setout/words/place-words.ts';
import { partNames, partTitle, stepWords, thingCounts } from '../core/setout/words/setout-words.ts';
import type { Survey } from '../core/survey.ts';
import { capitalized } from '../core/text/sentence.ts';
import { SMALLEST_SCALE } from './fitted-transform.ts';
import type { TextItem } from './flow.ts';
import { PAGE_MARGIN, type PaperSize } from './page-layout.ts';
import { type BlockRoom, type BlockTemplate, type SetOutSection, setBlock } from './setout-block.ts';
import type { DrawingSizes } from './setout-drawing.ts';
import { withWholeLengths } from './whole-lengths.ts';

/** What is put on one page, under its head. */
export interface PageOfBlocks {
  readonly marks: readonly Mark<'paper'>[];
  /** What stands on it: "the fan (obstacle 3)". */
  readonly titles: readonly string[];
  /** The numbers of the parts on it. */
  readonly parts: readonly number[];
}

/** How a block may take its page, the smallest first. */
const PORTRAIT: readonly BlockTemplate[] = [
  { words: 'beside', share: 0.5, height: 1 / 3 },
  { words: 'beside', share: 0.52, height: 1 / 2 },
  { words: 'below', share: 0.56, height: 1 },
  { words: 'below', share: 0.42, height: 1 },
];
const LANDSCAPE: readonly BlockTemplate[] = [
  { words: 'beside', share: 0.5, height: 1 / 2 },
  { words: 'beside', share: 0.6, height: 1 },
  { words: 'beside', share: 0.47, height: 1 },
];
/** Lengths at 14 points, then 12, then 10. */
const SIZES: readonly DrawingSizes[] = [
  { length: 4.95, letter: 4.6 },
  { length: 4.25, letter: 4.2 },
  { length: 3.6, letter: 3.8 },
];
const SPACE = 5;
const HEAD = 12;
const FOOT = 6;
const BOX = '\u25a1';

function stepItems(names: PartNames, step: SetOutStep): readonly TextItem[] {
  const { lay, hold, tapes, turn, raise, checks, weak } = stepWords(names, step);
  const told = [lay, hold, ...mergedSentences(tapes.map(({ says }) => says)), turn, ...raise];
  const text = told.filter((each) => each !== undefined).join(' ');
  return [
    { kind: 'paragraph', text, hang: `${step.number}.` },
    ...checks.map(({ says }): TextItem => ({ kind: 'paragraph', text: says, hang: BOX })),
    ...(weak === undefined ? [] : [{ kind: 'paragraph' as const, text: weak, hang: '!' }]),
  ];
}

/** The gaps between pieces of which the later one is laid in these steps. */
function gapItems(names: PartNames, survey: Survey, plan: SetOut, steps: readonly SetOutStep[]): readonly TextItem[] {
  const order = plan.parts.flatMap((part) => part.steps.map(({ piece }) => piece));
  const laid = new Set(steps.map(({ piece }) => piece));
  const own = plan.gaps.filter(({ keys }) => {
    const later = keys.toSorted((a, b) => order.indexOf(b) - order.indexOf(a))[0];
    return later !== undefined && laid.has(later) && keys.every((key) => names.part.letters.has(key));
  });
  if (own.length === 0) return [];
  return [
    { kind: 'heading', text: 'Gaps, inside to inside' },
    ...gapGroups(names, survey, own).map(
      ({ figure, band, where }): TextItem => ({
        kind: 'paragraph',
        text: `${figure}: ${where}. Must stay ${band}.`,
        hang: BOX,
      }),
    ),
  ];
}

/** A set-out with the ground on which it lies. */
export interface SetOutGround {
  readonly survey: Survey;
  readonly plan: SetOut;
  readonly ground: Ground;
}

function sectionOf(
  { survey, plan, ground }: SetOutGround,
  { part, number }: { readonly part: SetOutPart; readonly number: number },
  steps: readonly SetOutStep[],
): SetOutSection {
  const names = partNames(survey, plan, part);
  const isPartly = steps.length < part.steps.length;
  const [first, last] = [steps[0]?.number ?? 1, steps.at(-1)?.number ?? 1];
  const which = first === last ? `step ${first}` : `steps ${first} to ${last}`;
  const items = [...steps.flatMap((step) => stepItems(names, step)), ...gapItems(names, survey, plan, steps)];
  return {
    names,
    ground,
    title: `${number}. ${capitalized(partTitle(names))}${isPartly ? `, ${which}` : ''}`,
    things: `To fetch: ${thingCounts(
      names,
      steps.map(({ piece }) => piece),
    ).join('; ')}.`,
    steps,
    items: items.map((item) => ({ ...item, text: withWholeLengths(item.text) })),
  };
}

/** A block with the height that it takes, before it has its place: tried at the top of the page. */
interface Fitted {
  readonly section: SetOutSection;
  readonly template: BlockTemplate;
  readonly sizes: DrawingSizes;
}

/** A block of a part by the part's number. */
interface NumberedBlock extends Fitted {
  readonly number: number;
}

interface PageArea {
  readonly width: number;
  readonly height: number;
}

function heightOf({ height: share }: BlockTemplate, { height }: PageArea): number {
  const count = Math.round(1 / share);
  return (height - (count - 1) * SPACE) / count;
}

function roomOf(template: BlockTemplate, area: PageArea, y = 0): BlockRoom {
  return { x: PAGE_MARGIN, y: PAGE_MARGIN + HEAD + y, width: area.width, height: heightOf(template, area) };
}

/** The smallest block in which all words fit and no label covers anything; undefined: there is none. */
function fittedBlock(section: SetOutSection, area: PageArea, templates: readonly BlockTemplate[]): Fitted | undefined {
  for (const [j, template] of templates.entries()) {
    const isLargest = j === templates.length - 1;
    // Ten points only where the page has no more to give.
    for (const sizes of isLargest ? SIZES : SIZES.slice(0, -1)) {
      const { isWhole, isClear, scale } = setBlock(section, template, { room: roomOf(template, area), sizes });
      if (!isWhole) break;
      if (isClear && (isLargest || scale <= SMALLEST_SCALE)) return { section, template, sizes };
    }
  }
  return undefined;
}

/** The blocks of a part: one, or as many as its steps need. */
function blocksOf(
  whole: SetOutGround,
  part: { readonly part: SetOutPart; readonly number: number },
  {
    steps,
    area,
    templates,
  }: { readonly steps: readonly SetOutStep[]; readonly area: PageArea; readonly templates: readonly BlockTemplate[] },
): readonly NumberedBlock[] {
  const section = sectionOf(whole, part, steps);
  const fitted = fittedBlock(section, area, templates);
  if (fitted !== undefined) return [{ ...fitted, number: part.number }];
  const [largest, smallest] = [templates.at(-1), SIZES.at(-1)];
  if (largest === undefined || smallest === undefined) throw new Error('set-out: a page has a largest block');
  if (steps.length < 2) return [{ section, template: largest, sizes: smallest, number: part.number }];
  const half = Math.ceil(steps.length / 2);
  return [steps.slice(0, half), steps.slice(half)].flatMap((own) =>
    blocksOf(whole, part, { steps: own, area, templates }),
  );
}

function ruleMark(area: PageArea, y: number): Mark<'paper'> {
  const at = PAGE_MARGIN + HEAD + y - SPACE / 2;
  const points = [
    { x: PAGE_MARGIN, y: at },
    { x: PAGE_MARGIN + area.width, y: at },
  ];
  return { kind: 'line', ink: 'words', points, width: 0.3, role: ARTIFACT };
}

/** A page while it is filled; `y` is how deep. */
interface OpenPage {
  readonly marks: Mark<'paper'>[];
  readonly titles: string[];
  readonly parts: number[];
  y: number;
}

/** All parts, nearly in the order of the walk, on few pages. Each page leaves room for its head and foot. */
export function setOutPages(whole: SetOutGround, paper: PaperSize): readonly PageOfBlocks[] {
  const area = { width: paper.width - 2 * PAGE_MARGIN, height: paper.height - 2 * PAGE_MARGIN - HEAD - FOOT };
  const templates = paper.width > paper.height ? LANDSCAPE : PORTRAIT;
  const blocks = whole.plan.parts.flatMap((part, i) =>
    blocksOf(whole, { part, number: i + 1 }, { steps: part.steps, area, templates }),
  );
  const pages: OpenPage[] = [];
  for (const { section, template, sizes, number } of blocks) {
    const height = heightOf(template, area);
    // A small block goes back to a page with room: a sheet of paper for one gate is a waste.
    const known = pages.find(({ y }) => y > 0 && y + height <= area.height + 0.01);
    const page = known ?? { marks: [], titles: [], parts: [], y: 0 };
    if (known === undefined) pages.push(page);
    if (page.y > 0) page.marks.push(ruleMark(area, page.y));
    page.marks.push(...setBlock(section, template, { room: roomOf(template, area, page.y), sizes }).marks);
    page.titles.push(partTitle(section.names));
    page.parts.push(number);
    page.y += height + SPACE;
  }
  return pages.map(({ marks, titles, parts }) => ({ marks, titles: [...new Set(titles)], parts: [...new Set(parts)] }));
}
