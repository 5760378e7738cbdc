/** What a crew is told of a change-over, in words that the command line, the sheets and the app have in common. */
import { type LayoutNames, obstacleWords, pieceWords } from '../checks/findings/thing-words.ts';
import type { Arena, Layout } from '../course/course.ts';
import { entranceMiddle } from '../course/entrance.ts';
import { placedObstacle } from '../course/placed.ts';
import { printMinutes } from '../measure/duration.ts';
import { printLength } from '../measure/length.ts';
import type { LengthUnit } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import { pieceKind } from '../pieces/pieces.ts';
import { thingWords } from '../pieces/thing-words.ts';
import { distance, type Point, TOUCH } from '../plane/point.ts';
import { numbersOf } from '../survey.ts';
import { andList } from '../text/sentence.ts';
import type { Carry, ChangeOver, Crew, Load, Stop } from './change-over.ts';
import { wantsTwo } from './loads.ts';

/** The two layouts whose things are named, and how lengths are printed. */
export interface CarryNames {
  readonly from: Layout;
  readonly to: Layout;
  readonly unit: LengthUnit;
}

const namesIn = memoizeByIdentity((layout: Layout): LayoutNames => {
  const pieces = layout.obstacles.flatMap((each) => placedObstacle(each).pieces);
  return { layout, pieces, numbers: numbersOf(layout) };
});

/** "12' pole", "8' pole, plain", "6" riser", "marker": what a crew looks for on the ground or on the truck. */
export function loadWords({ thing, piece, type }: Load, unit: LengthUnit): string {
  const kind = pieceKind(piece.kind);
  if (thing === 'riser' || kind === undefined) return riserWords(type, unit);
  return thingWords(kind, piece.values, unit);
}

/** The height stands in the type, in micrometres. */
function riserWords(type: string, unit: LengthUnit): string {
  return `${printLength(Number(/\d+$/.exec(type)?.[0] ?? 0) / 1e6, unit)} riser`;
}

/** "pole 2 of the fan (obstacle 3)", "the truck"; of a riser the end of the pole that it holds up. */
function stopWords(stop: Stop, layout: Layout): string {
  switch (stop.kind) {
    case 'truck':
      return 'the truck';
    case 'aside':
      return 'a free place aside';
    case 'ground':
      return groundWords(stop.load, namesIn(layout));
  }
}

function groundWords({ key, thing }: Load, names: LayoutNames): string {
  if (thing === 'piece') return pieceWords(names, key);
  const cut = key.lastIndexOf(':');
  return `the ${key.slice(cut + 1)} of ${pieceWords(names, key.slice(0, cut))}`;
}

/** Where a carry begins and where it ends, in words. */
export function carryStops({ from, to }: Carry, names: CarryNames): { readonly from: string; readonly to: string } {
  return { from: stopWords(from, names.from), to: stopWords(to, names.to) };
}

/** "12' pole from pole 2 of the jog-overs (obstacle 1) to pole 1 of the box (obstacle 4): 23' 4"", how far each carrier goes. */
export function carrySentence(carry: Carry, names: CarryNames): string {
  const { from, to } = carryStops(carry, names);
  const each = carry.metres / carry.load.held.length;
  return `${loadWords(carry.load, names.unit)} from ${from} to ${to}: ${printLength(each, names.unit)}`;
}

/** "12' 3" from the west wall and 8' from the south wall": the nearer wall of each two. */
export function wallWords({ x, y }: Point, arena: Arena, unit: LengthUnit): string {
  const [across, along] = [x <= arena.length / 2, y <= arena.width / 2];
  const ends = [
    `${printLength(across ? x : arena.length - x, unit)} from the ${across ? 'west' : 'east'} wall`,
    `${printLength(along ? y : arena.width - y, unit)} from the ${along ? 'south' : 'north'} wall`,
  ];
  return andList(ends);
}

/** Where the truck stands: "in the entrance", or by the walls. */
export function truckWords({ truckAt }: Crew, arena: Arena, unit: LengthUnit): string {
  return distance(truckAt, entranceMiddle(arena)) <= TOUCH ? 'in the entrance' : wallWords(truckAt, arena, unit);
}

/** Where the middle of a thing lies at a stop, by the walls; of the truck, where it stands. */
export function stopPlace(stop: Stop, arena: Arena, unit: LengthUnit): string {
  return wallWords(stop.kind === 'ground' ? stop.load.pose : stop.at, arena, unit);
}

/** "3 × 12' pole, 1 × gate": loads counted by what they are; "nothing" for none. */
export function countedLoads(loads: readonly Load[], unit: LengthUnit): string {
  const counts = new Map<string, number>();
  for (const load of loads) counts.set(loadWords(load, unit), (counts.get(loadWords(load, unit)) ?? 0) + 1);
  return counts.size === 0 ? 'nothing' : [...counts].map(([words, count]) => `${count} × ${words}`).join('; ');
}

/** What comes from the truck for good, and what goes to it; what only waits there is in neither. */
export function truckLoads({ carries }: ChangeOver): { readonly out: readonly Load[]; readonly back: readonly Load[] } {
  const out = carries.filter(({ from, to }) => from.kind === 'truck' && to.kind === 'ground');
  const back = carries.filter(({ from, to }) => from.kind === 'ground' && to.kind === 'truck');
  const waits = new Set(back.flatMap(({ load }) => (out.some((each) => each.load === load) ? [load] : [])));
  const without = (list: readonly Carry[]) => list.map(({ load }) => load).filter((load) => !waits.has(load));
  return { out: without(out), back: without(back) };
}

/** "two people", "one person". */
export function teamWords(people: 1 | 2): string {
  return people === 1 ? 'one person' : 'two people';
}

/** "What stays": each obstacle of the next layout with how many of its things lie right already. */
export function stayWords({ stays }: ChangeOver, names: CarryNames): readonly string[] {
  const counts = new Map<string, number>();
  for (const { to } of stays) counts.set(to.obstacle, (counts.get(to.obstacle) ?? 0) + 1);
  return [...counts].map(([id, count]) => `${obstacleWords(namesIn(names.to), id)}: ${count}`);
}

/** What the crew is to know before it begins. */
export function changeOverCautions({ crew, carries, passes, seconds }: ChangeOver): readonly string[] {
  if (carries.length === 0) return [];
  const alone = carries.filter(({ load }) => wantsTwo(load)).length;
  const isAlone = crew.people === 1 && alone > 0;
  return [
    `The times are estimates, ${printMinutes(seconds)} in all: nobody has timed this crew.`,
    ...(isAlone ? [`${alone === 1 ? '1 load wants' : `${alone} loads want`} two people, and the crew is one.`] : []),
    ...(passes > 1 ? ['A pass begins when the one before it is done: things lie where others still lay.'] : []),
    'What was carried is measured again before a horse goes in.',
  ];
}
