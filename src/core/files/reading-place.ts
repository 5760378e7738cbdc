import type { Grip, Wall } from '../constraints/constraint.ts';
import { readFraction } from '../measure/count.ts';
import { readLength } from '../measure/length.ts';
import type { Metres } from '../measure/quantity.ts';
import { fromWallStart } from '../setout/built/as-built-observable.ts';
import type { Survey } from '../survey.ts';
import { andList } from '../text/sentence.ts';

/** A place that a tape was held to. */
export interface ReadingPlace {
  readonly kind: 'place';
  readonly grip: Grip;
  /** Of a wall: where on it the tape begins, metres from its start. */
  readonly from?: Metres;
  /** It names a piece and no place on it. */
  readonly isWhole: boolean;
}

type PlaceRefusal = { readonly kind: 'refused'; readonly why: string };

/** What names of places are read by. */
export interface PlaceNames {
  readonly survey: Survey;
  /** Letters of the ends of long pieces, `[at 0, at 1]`, by key. */
  readonly letters: ReadonlyMap<string, readonly [string, string]>;
}

const WALLS: readonly Wall[] = ['south', 'east', 'north', 'west'];
const EXAMPLE = 'a place such as fan-1/pole-2, fan-1/pole-2 B, fan-1/pole-2 at 2/3, wall south or wall south from west';

function refused(why: string): PlaceRefusal {
  return { kind: 'refused', why };
}

/** The ends of a wall, by the walls that they lie at: where it is counted from, and the other. */
function endsOf(wall: Wall): readonly [Wall, Wall] {
  return wall === 'south' || wall === 'north' ? ['west', 'east'] : ['south', 'north'];
}

/** `wall south`, `wall south from west`, `wall south at 25'`: counted from its west or south end. */
function wallPlace(words: string, { survey: { course } }: PlaceNames): ReadingPlace | PlaceRefusal {
  const [, name = '', how, where = ''] = /^(\S*)(?:\s+(from|at)\s+(.+))?$/.exec(words) ?? [];
  const wall = WALLS.find((each) => each === name);
  if (wall === undefined) return refused(`There is no wall "${words}". There are: ${WALLS.join(', ')}.`);
  const { length, width } = course.arena;
  const long = wall === 'south' || wall === 'north' ? length : width;
  const place = (at: Metres): ReadingPlace => ({
    kind: 'place',
    grip: { wall },
    from: fromWallStart(wall, at, long),
    isWhole: false,
  });
  if (how === undefined) return { kind: 'place', grip: { wall }, isWhole: true };
  const [near, far] = endsOf(wall);
  if (how === 'from') {
    if (where === near) return place(0);
    if (where === far) return place(long);
    return refused(`The ${wall} wall has no ${where} end. Write from ${near} or from ${far}.`);
  }
  const read = readLength(where, course.unit);
  if (read.kind === 'refused') return refused(`On the ${wall} wall: ${read.why}`);
  if (read.value < 0 || read.value > long) {
    return refused(`The ${wall} wall has no place at ${where}: count from its ${near} end, inside of the arena.`);
  }
  return place(read.value);
}

/** Where on a piece: an end by its letter, the middle, or a share from the end with the first letter. */
function shareOf(where: string, key: string, { letters, survey }: PlaceNames): number | PlaceRefusal {
  if (/^middle$/i.test(where)) return 0.5;
  const own = letters.get(key);
  const end = own?.indexOf(where.replace(/^end\s+/i, '').toUpperCase()) ?? -1;
  if (end >= 0) return end;
  const share = /^at\s+(.+)$/i.exec(where)?.[1];
  if (share !== undefined) {
    const read = readFraction(share);
    return read.kind === 'read' ? read.value : refused(read.why);
  }
  const kind = survey.pieces.find((piece) => piece.key === key)?.kind.title.toLowerCase() ?? 'piece';
  const ends = own === undefined ? `${key}, a ${kind}, has no ends` : `The ends of ${key} are ${own[0]} and ${own[1]}`;
  return refused(`${key} has no place "${where}". ${ends}; or write middle, or at 2/3.`);
}

/** Reads the name of a place: a piece by its key, with an end's letter or a share of it; or a wall. */
export function readPlace(text: string, names: PlaceNames): ReadingPlace | PlaceRefusal {
  const plain = text.trim().replace(/\s+/g, ' ');
  const wall = /^wall (.*)$/i.exec(plain)?.[1];
  if (wall !== undefined) return wallPlace(wall.toLowerCase(), names);
  const [, key = '', where] = /^(\S+)(?: (.+))?$/.exec(plain) ?? [];
  const piece = names.survey.pieces.find((each) => each.key === key);
  if (piece === undefined) {
    const owner = key.split('/')[0];
    const like = names.survey.pieces.filter(({ obstacle }) => obstacle === owner).map((each) => each.key);
    const right = like.length === 0 ? `Write ${EXAMPLE}` : `It has ${andList(like)}`;
    return refused(`The layout has no piece "${plain === '' ? text : key}". ${right}.`);
  }
  if (where === undefined) return { kind: 'place', grip: { piece: key }, isWhole: true };
  const at = shareOf(where, key, names);
  return typeof at === 'number' ? { kind: 'place', grip: { piece: key, at }, isWhole: false } : at;
}
