/** The set-up sheet: the arena with the first piece of every part, then each part with its steps, checks and gaps. */

import { printLength } from '../core/measure/length.ts';
import type { Ground } from '../core/setout/ground.ts';
import { setOutOf } from '../core/setout/plan-setout.ts';
import type { SetOut } from '../core/setout/setout.ts';
import { mergedSentences } from '../core/setout/words/merged-words.ts';
import {
  partNames,
  partTitle,
  SET_OUT_CAUTION,
  stepSentences,
  thingCounts,
  toolWords,
} from '../core/setout/words/setout-words.ts';
import type { Survey } from '../core/survey.ts';
import { capitalized, counted } from '../core/text/sentence.ts';
import { drawnPages } from './drawn-pages.ts';
import type { TextItem } from './flow.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';
import { PAGE_MARGIN, type PageContent, type PaperSize, paperSizes } from './page-layout.ts';
import { type PageOfBlocks, type SetOutGround, setOutPages } from './setout-pages.ts';
import { LAID_FIRST, setOutPlanDrawing, WALL_TAPE } from './setout-plan.ts';
import type { Page, PageOptions, Pages, Sheet, TooBig } from './sheet.ts';
import { substitutionsOf } from './substitutions.ts';
import { classHead, continuedTitle, displayTitle, footMarks } from './title-block.ts';
import { withWholeLengths } from './whole-lengths.ts';

/** Letter heights of the words, mm: they are carried, not hung. */
const FONT_SIZES = [4.4, 4.1, 3.8, 3.55, 3.3] as const;

function crewWords({ crew }: SetOut): string {
  const people = counted(crew.people, 'person', 'people');
  return `${people}, ${counted(crew.tapes, 'tape')} of ${printLength(crew.tape, crew.marked)}`;
}

/** How lengths are rounded, and what an arrow means: what is said once for all steps. */
function noteItems(plan: SetOut): readonly TextItem[] {
  const { marked, people } = plan.crew;
  const least = marked === 'ft' ? 'a quarter inch' : 'half a centimetre';
  const says = [
    'The bold piece lies and does not move. The tape’s zero end is on what is held; the new piece is moved to the reading.',
    `Readings are rounded to ${least}. Inside to inside means from near face to near face.`,
    'Chock every round pole on both sides, or bed it, and tape once more: it must not roll or move when it is touched.',
    'Check that each pole is straight: a warped one gives two different gaps.',
    'Do a check before the next step. Where it is off by more, tape again from the step before.',
    ...(people === 1 ? ['Alone: the zero end of the tape on a nail or under a weight, and go with the reel.'] : []),
    'Footing level and free of stones, nothing sharp or loose. Lift long poles with two.',
    SET_OUT_CAUTION,
  ];
  return [
    { kind: 'heading', text: 'Please note', size: SMALLEST_FONT_SIZE },
    ...says.map((text): TextItem => ({ kind: 'paragraph', text, hang: '–', size: SMALLEST_FONT_SIZE })),
  ];
}

function stepItems(survey: Survey, plan: SetOut, pageOf: (part: number) => number): readonly TextItem[] {
  const [part] = plan.parts;
  if (part === undefined) return [{ kind: 'paragraph', text: 'Nothing lies in this layout.' }];
  const keys = plan.parts.flatMap(({ steps }) => steps.map(({ piece }) => piece));
  const things = thingCounts(partNames(survey, plan, part), keys);
  return [
    { kind: 'heading', text: 'In this order' },
    ...plan.parts.map((each, i): TextItem => {
      const names = partNames(survey, plan, each);
      const [first] = each.steps;
      const [lay = '', ...tapes] = mergedSentences(stepSentences(names, first)).filter((sentence) =>
        /^(Lay|Set|Tape) /.test(sentence),
      );
      return {
        kind: 'paragraph',
        text: withWholeLengths(`${capitalized(partTitle(names))}, page ${pageOf(i + 1)}. ${[lay, ...tapes].join(' ')}`),
        hang: `${i + 1}.`,
      };
    }),
    { kind: 'heading', text: 'What is needed' },
    ...[...toolWords(survey, plan), `${things.join('; ')}.`].map(
      (text): TextItem => ({ kind: 'paragraph', text, hang: '–' }),
    ),
  ];
}

/** The parts on their pages. */
interface BlockPages {
  readonly paper: PaperSize;
  readonly blocks: readonly PageOfBlocks[];
}

function contentOf({ survey, plan, ground }: SetOutGround, { blocks }: BlockPages, before: number): PageContent {
  // Pages of the arena and its words come first.
  const pageOf = (part: number): number => before + 1 + blocks.findIndex(({ parts }) => parts.includes(part));
  const { course } = survey;
  const head = classHead(course);
  const name = displayTitle(course);
  const { length, width } = course.arena;
  return {
    head: {
      ...head,
      name: `Set-up: ${name}`,
      facts: [...head.facts.filter(([label]) => label !== 'Rule book'), ['Crew', crewWords(plan)]],
    },
    extent: { minX: 0, minY: 0, maxX: length, maxY: width },
    legend: {
      unit: plan.crew.marked,
      strokes: [
        { ...LAID_FIRST, name: 'Laid first', isPlain: true },
        { ...WALL_TAPE, name: 'Tape from a wall', isPlain: true },
      ],
      pieces: [],
    },
    draw: (transform, bounds) => setOutPlanDrawing(survey, { plan, ground, transform }, bounds),
    about: (page) =>
      page === 0
        ? `Set-up of ${name}: the arena with ${counted(plan.parts.length, 'part')} in the order of laying, each from the walls.`
        : `Set-up of ${name}: the parts in words, page ${page + 1}.`,
    steps: stepItems(survey, plan, pageOf),
    notes: noteItems(plan),
    fontSizes: FONT_SIZES,
    following: blocks.length,
  };
}

/** The parts on the paper held the way in which they take fewer pages; upright, as on a clipboard, where both take as many. */
function fewestPages(whole: SetOutGround, options: PageOptions): BlockPages {
  const [first, ...others] = paperSizes(options).map((paper) => ({ paper, blocks: setOutPages(whole, paper) }));
  if (first === undefined) throw new Error(`set-up: no paper ${options.paper}`);
  return others.reduce((best, each) => (each.blocks.length < best.blocks.length ? each : best), first);
}

/** The pages of the parts after the first pages, with their heads and feet. */
function partPages(survey: Survey, { blocks, paper: { width, height } }: BlockPages, before: number): readonly Page[] {
  const { course } = survey;
  const area = { x: PAGE_MARGIN, y: PAGE_MARGIN, width: width - 2 * PAGE_MARGIN };
  const name = `Set-up: ${displayTitle(course)}`;
  const count = before + blocks.length;
  return blocks.map(({ marks, titles }, i): Page => {
    return {
      width,
      height,
      marks: [
        ...continuedTitle({ name, date: course.class.date }, area).marks,
        ...marks,
        ...footMarks('Each drawing is to its own scale.', `Page ${before + i + 1} of ${count}`, {
          ...area,
          y: height - PAGE_MARGIN,
        }),
      ],
      about: `Set-up of ${displayTitle(course)}: how to lay ${titles.join(', ')}.`,
    };
  });
}

function draw(survey: Survey, options: PageOptions): Pages | TooBig {
  const { course, pieces } = survey;
  const plan = setOutOf(survey);
  const ground: Ground = { arena: course.arena, pieces: new Map(pieces.map((piece) => [piece.key, piece])) };
  const title = `Set-up: ${displayTitle(course)}`;
  const whole = { survey, plan, ground };
  const parts = fewestPages(whole, options);
  const drawnAfter = (before: number) => drawnPages(contentOf(whole, parts, before), { course, title, options });
  const alone = drawnAfter(1);
  if (alone.kind === 'too-big') return alone;
  // The numbers of the pages stand in the words, and the words take one page or two.
  const drawn = alone.pages.length === 1 ? alone : drawnAfter(alone.pages.length);
  if (drawn.kind === 'too-big') return drawn;
  const [first, ...rest] = drawn.pages;
  const pages: Pages['pages'] = [first, ...rest, ...partPages(survey, parts, drawn.pages.length)];
  return { ...drawn, pages, substitutions: substitutionsOf(pages) };
}

export const setUp: Sheet = { id: 'setout', title: 'Set-up', perLayout: true, draw };
