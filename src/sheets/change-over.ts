/** The crew's sheet: what is carried where, with numbered arrows on a drawing to scale and each carry in words. */

import {
  type CarryNames,
  carryStops,
  changeOverCautions,
  countedLoads,
  loadWords,
  stopPlace,
  teamWords,
  truckLoads,
} from '../core/change/carry-words.ts';
import type { Carry, ChangeOver } from '../core/change/change-over.ts';
import { type ChangeEnds, carryNames } from '../core/change/layout-change-over.ts';
import { layoutById } from '../core/change/layout-survey.ts';
import type { Arena, Course, Layout } from '../core/course/course.ts';
import { type PlacedObstacle, placedObstacle } from '../core/course/placed.ts';
import { printMinutes } from '../core/measure/duration.ts';
import { printLength } from '../core/measure/length.ts';
import { ringBounds, unionBounds } from '../core/plane/ring.ts';
import { capitalized } from '../core/text/sentence.ts';
import { CARRIED, CARRIED_LATER, carryDrawing, OLD_PLACE } from './carry-drawing.ts';
import { drawnPages } from './drawn-pages.ts';
import type { TextItem } from './flow.ts';
import type { StrokeSample } from './legend.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';
import type { PageContent } from './page-layout.ts';
import type { PageOptions, Pages, TooBig } from './sheet.ts';
import { arenaInWords } from './title-block.ts';
import { withWholeLengths } from './whole-lengths.ts';

/** What becomes what, and how. */
export interface ChangeOverOptions extends ChangeEnds {
  readonly plan: ChangeOver;
  readonly options: PageOptions;
}

const NOTHING = 'the empty arena';
/** Letter heights, mm: it is carried, not hung. */
const FONT_SIZES = [4.4, 4.1, 3.8, 3.5] as const;

function carryItem(carry: Carry, names: CarryNames, arena: Arena): TextItem {
  const { from, to } = carryStops(carry, names);
  const each = printLength(carry.metres / carry.load.held.length, names.unit);
  const start = carry.from.kind === 'truck' ? from : `${from} (${stopPlace(carry.from, arena, names.unit)})`;
  const end = carry.to.kind === 'truck' ? to : `${to} (${stopPlace(carry.to, arena, names.unit)})`;
  const text = `${capitalized(loadWords(carry.load, names.unit))} from ${start} to ${end}, ${each}.`;
  return { kind: 'paragraph', text: withWholeLengths(text), hang: `${carry.number}.` };
}

/** The carries of one pass and team under their heading. */
function passItems(plan: ChangeOver, pass: number, team: number, names: CarryNames, arena: Arena): readonly TextItem[] {
  const own = plan.carries.filter((carry) => carry.pass === pass && carry.team === team);
  const people = plan.teams[team]?.people;
  if (own.length === 0 || people === undefined) return [];
  const done = printMinutes(Math.max(...own.map(({ ends }) => ends)));
  const title = [
    ...(plan.passes > 1 ? [`Pass ${pass}`] : []),
    ...(plan.teams.length > 1 ? [`Team ${team + 1}`] : []),
    `${teamWords(people)}, done after about ${done}`,
  ].join(', ');
  return [{ kind: 'heading', text: capitalized(title) }, ...own.map((carry) => carryItem(carry, names, arena))];
}

function stepItems(plan: ChangeOver, names: CarryNames, arena: Arena): readonly TextItem[] {
  const { out, back } = truckLoads(plan);
  if (plan.carries.length === 0) {
    return [{ kind: 'paragraph', text: `Nothing has to be carried: ${plan.stays.length} pieces lie right.` }];
  }
  const passes = Array.from({ length: plan.passes }, (_, i) => i + 1);
  const truck: readonly TextItem[] = [
    { kind: 'heading', text: 'The truck' },
    { kind: 'paragraph', text: `Comes from it: ${countedLoads(out, names.unit)}.` },
    { kind: 'paragraph', text: `Goes to it: ${countedLoads(back, names.unit)}.` },
  ];
  return [
    ...passes.flatMap((pass) => plan.teams.flatMap((_, team) => passItems(plan, pass, team, names, arena))),
    ...truck,
  ];
}

function noteItems(plan: ChangeOver): readonly TextItem[] {
  const says = [
    'Footing level and free of stones, poles secured against rolling, nothing sharp or loose. Lift long poles with two.',
    ...changeOverCautions(plan),
  ];
  return [
    { kind: 'heading', text: 'Please note', size: SMALLEST_FONT_SIZE },
    ...says.map((text): TextItem => ({ kind: 'paragraph', text, hang: '–', size: SMALLEST_FONT_SIZE })),
  ];
}

/** The strokes that occur, with what they mean. */
function strokes({ carries, passes }: ChangeOver): readonly StrokeSample[] {
  const arrows = carries.filter(({ from, to }) => from.kind !== 'truck' && to.kind !== 'truck');
  const later = arrows.some(({ pass }) => pass > 1);
  return [
    ...(carries.some(({ from }) => from.kind === 'ground')
      ? [{ ...OLD_PLACE, name: 'Lies there now', isPlain: true as const }]
      : []),
    ...(arrows.length > 0 ? [{ ...CARRIED, name: passes > 1 ? 'Carried in pass 1' : 'Carried' }] : []),
    ...(later ? [{ ...CARRIED_LATER, name: 'Carried later' }] : []),
  ];
}

function nameOf({ obstacle }: PlacedObstacle, layout: Layout): string {
  const names = layout.ride.legs.flatMap((leg, i) => (leg.obstacle === obstacle.id ? [String(i + 1)] : []));
  return names.length === 0 ? '' : `No. ${names.join(', ')}`;
}

/**
 * The pages of a change-over: the drawing, then the carries by pass and team, what the truck gives and takes, and the
 * cautions. Throws when the course has no such layout.
 */
export function changeOverPages(course: Course, { from, to, plan, options }: ChangeOverOptions): Pages | TooBig {
  const [before, after] = [from, to].map((id) => (id === null ? undefined : layoutById(course, id)));
  const [old, wanted] = [before, after].map((layout) => (layout?.obstacles ?? []).map(placedObstacle));
  const names = carryNames(course, { from, to });
  const [start, end] = [before?.title ?? NOTHING, after?.title ?? NOTHING];
  const name = `From ${start} to ${end}`;
  const { length, width } = course.arena;
  const piecesOf = (list: readonly PlacedObstacle[] = []) => list.flatMap(({ pieces }) => pieces);
  const arena = { minX: 0, minY: 0, maxX: length, maxY: width };
  const points = [...piecesOf(old), ...piecesOf(wanted)].flatMap(({ footprint }) => footprint);
  const crew = `${plan.crew.people === 1 ? 'One person' : `${plan.crew.people} people`}, about ${printMinutes(plan.seconds)}`;
  const content: PageContent = {
    head: {
      show: course.class.show,
      date: course.class.date,
      name,
      facts: [
        ['Course', course.title],
        ['Arena', arenaInWords(course)],
        ['Crew', crew],
        ['Stays', String(plan.stays.length)],
      ],
    },
    extent: unionBounds(arena, ringBounds([...points, plan.crew.truckAt])),
    legend: { unit: course.unit, strokes: strokes(plan), pieces: [], words: '+ from the truck   − to the truck' },
    draw: (transform, bounds) =>
      carryDrawing(
        {
          arena: course.arena,
          plan,
          before: piecesOf(old),
          after: piecesOf(wanted),
          names: (wanted ?? []).map((placed) => ({
            title: after === undefined ? '' : nameOf(placed, after),
            pieces: placed.pieces,
          })),
        },
        transform,
        bounds,
      ),
    about: (page) =>
      page === 0
        ? `${name}: drawing of the change-over with ${plan.carries.length} numbered carries, and each of them in words.`
        : `${name}: the carries in words, page ${page + 1}.`,
    steps: stepItems(plan, names, course.arena),
    notes: noteItems(plan),
    fontSizes: FONT_SIZES,
  };
  return drawnPages(content, { course, title: `Change-over: ${name}`, options });
}
