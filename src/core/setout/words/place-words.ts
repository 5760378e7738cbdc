/** What a crew calls the things of a part, and the places on them: poles by number, ends by letter, walls by compass. */
import type { Grip, Wall } from '../../constraints/constraint.ts';
import { tradeNoun } from '../../course/obstacle-title.ts';
import type { PlacedPiece } from '../../course/placed.ts';
import type { LengthUnit, Metres } from '../../measure/quantity.ts';
import type { Figure } from '../../pieces/piece.ts';
import type { Survey } from '../../survey.ts';
import { uncapitalized } from '../../text/sentence.ts';
import { wallLength } from '../ground.ts';
import { isSmall } from '../observables.ts';
import type { SetOut, SetOutPart } from '../setout.ts';
import { readingWords } from './reading-words.ts';

/** What names the things of one part. */
export interface PartNames {
  readonly survey: Pick<Survey, 'course' | 'layout' | 'pieces' | 'numbers'>;
  readonly plan: Pick<SetOut, 'crew'>;
  readonly part: Pick<SetOutPart, 'obstacles' | 'letters'>;
}

/** Two places are the same within this, metres: a stripe is not painted finer. */
const SAME = 0.001;

export function namedUnit({ plan }: PartNames): LengthUnit {
  return plan.crew.marked;
}

/** The piece under a key. Throws where the layout has none: a plan is of its own layout. */
export function namedPiece({ survey }: PartNames, key: string): PlacedPiece {
  const piece = survey.pieces.find((each) => each.key === key);
  if (piece === undefined) throw new Error(`set-out: the layout has no piece ${key}`);
  return piece;
}

/** "the box"; with its number where the part has two of them. */
function shortName({ survey, part }: PartNames, id: string): string {
  const { layout, numbers } = survey;
  const nameOf = (each: string): string | undefined => {
    const obstacle = layout.obstacles.find((one) => one.id === each);
    return obstacle && (obstacle.name ?? `the ${tradeNoun(obstacle, layout)}`);
  };
  const name = nameOf(id) ?? id;
  const isAlone = part.obstacles.filter((each) => nameOf(each) === name).length < 2;
  return isAlone ? name : `${name} (obstacle ${(numbers.get(id) ?? []).join(' and ')})`;
}

/** "pole 2", "the gate"; "pole 2 of the box" where the part has several obstacles. */
export function partPieceWords(names: PartNames, key: string): string {
  const { survey, part } = names;
  const piece = namedPiece(names, key);
  const siblings = survey.pieces.filter((each) => each.obstacle === piece.obstacle && each.kind === piece.kind);
  const kind = uncapitalized(piece.kind.title);
  const own = siblings.length > 1 ? `${kind} ${siblings.indexOf(piece) + 1}` : `the ${kind}`;
  if (part.obstacles.length < 2) return own;
  const owner = shortName(names, piece.obstacle);
  const isAlone = survey.pieces.filter((each) => each.obstacle === piece.obstacle).length === 1;
  return isAlone ? owner : `${own} of ${owner}`;
}

/** A place on a thing, by what a crew looks for. */
export type NamedPlace =
  | { readonly kind: 'small' }
  | { readonly kind: 'end'; readonly letter: string }
  | { readonly kind: 'middle' }
  | { readonly kind: 'along'; readonly from: Metres; readonly letter: string; readonly stripe?: string };

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];

/** The painted stripes of a long thing, from and to, metres from its end A. */
function paintedStripes({ marks, length }: Figure): readonly (readonly [number, number])[] {
  return marks
    .flatMap((mark) =>
      mark.kind === 'area' && mark.ink === 'stripe' ? [mark.ring.map(({ x }) => x + length / 2)] : [],
    )
    .map((xs): readonly [number, number] => [Math.min(...xs), Math.max(...xs)])
    .sort((a, b) => a[0] - b[0]);
}

/** "where the second stripe begins", counted from an end; undefined where no stripe has an edge or its middle there. */
function stripeAt(stripes: readonly (readonly [number, number])[], from: Metres): string | undefined {
  for (const [i, [start, end]] of stripes.entries()) {
    const which = `the ${ORDINALS[i] ?? `${i + 1}th`} stripe`;
    if (Math.abs(from - start) < SAME) return `where ${which} begins`;
    if (Math.abs(from - end) < SAME) return `where ${which} ends`;
    if (Math.abs(from - (start + end) / 2) < SAME) return `at the middle of ${which}`;
  }
  return undefined;
}

/** Where a grip holds its thing. A wall has no place of its own. */
export function namedPlace(names: PartNames, grip: Grip): NamedPlace {
  if ('wall' in grip) throw new Error(`set-out: the ${grip.wall} wall is named by its corner`);
  const piece = namedPiece(names, grip.piece);
  if (isSmall(piece)) return { kind: 'small' };
  const { length } = piece.figure;
  const along = (grip.at ?? 0.5) * length;
  const isFirstHalf = along <= length / 2;
  const from = isFirstHalf ? along : length - along;
  const [a, b] = names.part.letters.get(grip.piece) ?? ['', ''];
  const letter = isFirstHalf ? a : b;
  if (from < SAME) return { kind: 'end', letter };
  if (length / 2 - from < SAME) return { kind: 'middle' };
  const stripes = paintedStripes(piece.figure);
  const counted = isFirstHalf ? stripes : stripes.map(([s, e]) => [length - e, length - s] as const).toReversed();
  const stripe = stripeAt(counted, from);
  return { kind: 'along', from, letter, ...(stripe !== undefined && { stripe }) };
}

/** The place with its thing: "end A", "the middle of pole 1", "the place 4' 0" in from end B", "the edge of marker 2". */
export function placeWords(names: PartNames, grip: Grip): string {
  if ('wall' in grip) return wallTitle(grip.wall);
  const thing = partPieceWords(names, grip.piece);
  const place = namedPlace(names, grip);
  switch (place.kind) {
    case 'small':
      return `the edge of ${thing}`;
    case 'end':
      return `end ${place.letter}`;
    case 'middle':
      return `the middle of ${thing}`;
    case 'along':
      return `the place ${inWords(names, place, `end ${place.letter}`)}`;
  }
}

function inWords(names: PartNames, { from, stripe }: Extract<NamedPlace, { kind: 'along' }>, ends: string): string {
  const told = `${readingWords(from, namedUnit(names))} in from ${ends}`;
  return stripe === undefined ? told : `${told} (${stripe})`;
}

/** A thing with its place: "pole 2 (4' 0" in from end D)", "pole 4 (at its middle)". */
function thingAt(names: PartNames, key: string, place: NamedPlace): string {
  const thing = partPieceWords(names, key);
  switch (place.kind) {
    case 'small':
      return thing;
    case 'end':
      return `${thing} (at end ${place.letter})`;
    case 'middle':
      return `${thing} (at its middle)`;
    case 'along':
      return `${thing} (${inWords(names, place, `end ${place.letter}`).replace(/ \((.*)\)$/, ', $1')})`;
  }
}

/** Two places that are alike but for their letters: "at ends A and C", "4' 0" in from ends B and D"; undefined: they are not. */
function alikeWords(names: PartNames, a: NamedPlace, b: NamedPlace): string | undefined {
  if (a.kind === 'end' && b.kind === 'end') return `at ends ${a.letter} and ${b.letter}`;
  if (a.kind === 'middle' && b.kind === 'middle') return 'at their middles';
  if (a.kind !== 'along' || b.kind !== 'along') return undefined;
  if (Math.abs(a.from - b.from) > SAME || a.stripe !== b.stripe) return undefined;
  return inWords(names, a, `ends ${a.letter} and ${b.letter}`);
}

/** Where a tape lies inside to inside: "pole 1 to pole 2, inside to inside, at ends A and C". */
export function spanWords(names: PartNames, from: Grip, to: Grip): string {
  if ('wall' in from || 'wall' in to) throw new Error('set-out: a span is between two pieces');
  const [a, b] = [namedPlace(names, from), namedPlace(names, to)];
  const [first, second] = [partPieceWords(names, from.piece), partPieceWords(names, to.piece)];
  const alike = alikeWords(names, a, b);
  if (alike !== undefined) return `${first} to ${second}, inside to inside, ${alike}`;
  return `${thingAt(names, from.piece, a)} to ${thingAt(names, to.piece, b)}, inside to inside`;
}

/** Places that are brought level, one after the other: "ends A and C", "the middles of pole 1 and pole 2". */
export function pairWords(names: PartNames, first: Grip, second: Grip): string {
  if ('wall' in first || 'wall' in second) throw new Error('set-out: a wall is not brought level');
  const [a, b] = [namedPlace(names, first), namedPlace(names, second)];
  if (a.kind === 'end' && b.kind === 'end') return `ends ${a.letter} and ${b.letter}`;
  if (a.kind === 'middle' && b.kind === 'middle') {
    return `the middles of ${partPieceWords(names, first.piece)} and ${partPieceWords(names, second.piece)}`;
  }
  const alike = alikeWords(names, a, b);
  return alike === undefined ? `${placeWords(names, first)} and ${placeWords(names, second)}` : `the places ${alike}`;
}

export function wallTitle(wall: Wall): string {
  return `the ${wall} wall`;
}

/** The corners of a wall, its start first: walls run counter-clockwise with the arena on their left. */
const CORNERS: Readonly<Record<Wall, readonly [string, string]>> = {
  south: ['west', 'east'],
  east: ['south', 'north'],
  north: ['east', 'west'],
  west: ['north', 'south'],
};

/** The corner of a wall at which so many metres from its start lie, or its nearer one. */
export function cornerWords(
  names: PartNames,
  wall: Wall,
  from: Metres,
): { readonly corner: string; readonly off: Metres } {
  const length = wallLength(names.survey.course, wall);
  const [start, end] = CORNERS[wall];
  return from <= length / 2
    ? { corner: `${start} corner`, off: from }
    : { corner: `${end} corner`, off: length - from };
}

/** The corner to which a tape along a wall runs. */
export function cornerAhead(wall: Wall, runs: 1 | -1): string {
  return `${CORNERS[wall][runs === 1 ? 1 : 0]} corner`;
}
