import type { Grip, ObservationKind, Wall } from '../constraints/constraint.ts';
import { capitalized } from '../text/sentence.ts';
import { isSmall } from './observables.ts';
import {
  cornerAhead,
  cornerWords,
  namedPiece,
  namedPlace,
  namedUnit,
  type PartNames,
  pairWords,
  partPieceWords,
  placeWords,
  spanWords,
  wallTitle,
} from './place-words.ts';
import { angleWords, isNothing, readingWords } from './reading-words.ts';
import { triangleWords } from './right-angle-words.ts';
import type { Observation } from './setout.ts';

/** One observation in words. */
export interface ObservationWords {
  /** What to do, as one sentence. */
  readonly says: string;
  /** What is measured, without its figure: follows "Check"; a whole clause, after "Check that", where there is no figure. */
  readonly measure: string;
  /** What the tape reads; absent where things are brought level, in line, square or together. */
  readonly figure?: string;
}

/** An observation with what is needed to word it. */
interface Told {
  readonly names: PartNames;
  readonly of: Observation;
  /** Which grip is of the piece that is laid. */
  readonly laid: 0 | 1;
  readonly figure: string;
}

/** The grip that is held, then the one that is laid. */
function heldFirst({ of, laid }: Told): readonly [Grip, Grip] {
  return laid === 1 ? of.grips : [of.grips[1], of.grips[0]];
}

function pieceOf(grip: Grip): string {
  if ('wall' in grip) throw new Error('set-out: a piece was asked for, and it is a wall');
  return grip.piece;
}

function wallOf(grip: Grip): Wall {
  if (!('wall' in grip)) throw new Error(`set-out: a wall was asked for, and it is ${grip.piece}`);
  return grip.wall;
}

/** Where a grip holds its piece, 0 … 1. */
function fractionOf(grip: Grip): number {
  return ('at' in grip ? grip.at : undefined) ?? 0.5;
}

function thing({ names }: Told, grip: Grip): string {
  return partPieceWords(names, pieceOf(grip));
}

function place({ names }: Told, grip: Grip): string {
  return placeWords(names, grip);
}

function gap(told: Told): ObservationWords {
  const measure = spanWords(told.names, ...heldFirst(told));
  return { says: `Tape ${told.figure} from ${measure}.`, measure, figure: told.figure };
}

function between(told: Told): ObservationWords {
  const [from, to] = heldFirst(told);
  const measure = `${place(told, from)} to ${place(told, to)}`;
  return { says: `Tape ${told.figure} straight from ${measure}.`, measure, figure: told.figure };
}

/** A thing whose middle is nearer to the line of a pole than this is in line with it, metres. */
const ON_LINE = 0.005;

/** From the side of the long piece to the small one, or back, as the tape runs from what is held. */
function beside(told: Told): ObservationWords {
  const [small, long] = told.of.grips;
  const [thick, wide] = [long, small].map((grip) => namedPiece(told.names, pieceOf(grip)).figure.width);
  const isOnLine = Math.abs(told.of.reading + ((thick ?? 0) + (wide ?? 0)) / 2) < ON_LINE;
  if (isOnLine)
    return inLine({
      ...told,
      of: { ...told.of, kind: 'in-line', grips: [long, small], reading: 0 },
      laid: told.laid === 0 ? 1 : 0,
    });
  const ends = [`the side of ${thing(told, long)}`, `the edge of ${thing(told, small)}`];
  const measure = `${(told.laid === 0 ? ends : ends.toReversed()).join(' to ')}, square to the ${noun(told, long)}`;
  return { says: `Tape ${told.figure} from ${measure}.`, measure, figure: told.figure };
}

/** "pole": what kind of thing a grip holds. */
function noun({ names }: Told, grip: Grip): string {
  return namedPiece(names, pieceOf(grip)).kind.title.toLowerCase();
}

function clear(told: Told): ObservationWords {
  const [small, long] = told.of.grips;
  const at = { piece: pieceOf(long), at: fractionOf(long) <= 0.5 ? 0 : 1 };
  const ends = [`the edge of ${thing(told, small)}`, place(told, at)];
  const measure = `${(told.laid === 1 ? ends : ends.toReversed()).join(' to ')}, along ${thing(told, long)}`;
  return { says: `Tape ${told.figure} from ${measure}.`, measure, figure: told.figure };
}

/** The end of a long piece towards which its −x end looks, and the other one. */
function endsOf({ names }: Told, grip: Grip): readonly [string, string] {
  return names.part.letters.get(pieceOf(grip)) ?? ['', ''];
}

/** A figure whose direction is told in words. */
function withoutSign(figure: string): string {
  return figure.replace('−', '');
}

/** "the middle of marker 2", "end C": a point of a thing, not its edge. */
function pointWords(told: Told, grip: Grip): string {
  const isMiddle = namedPlace(told.names, grip).kind === 'small';
  return isMiddle ? `the middle of ${thing(told, grip)}` : place(told, grip);
}

function ahead(told: Told): ObservationWords {
  const [long, other] = told.of.grips;
  if (isNothing(told.of)) {
    const [held, laid] = heldFirst(told).map((grip) => pointWords(told, grip));
    return {
      says: `Bring ${laid} square across from ${held}.`,
      measure: `${laid} is square across from ${held}`,
    };
  }
  const { length } = namedPiece(told.names, pieceOf(long)).figure;
  const { reading } = told.of;
  const figure = withoutSign(told.figure);
  const reached = fractionOf(long) * length + reading;
  const end = `end ${endsOf(told, long)[reading < 0 ? 0 : 1]}`;
  const isPast = reached < 0 || reached > length;
  const start = place(told, long);
  const along = `along the line of ${thing(told, long)}`;
  const past = start === end ? `past ${end}, ${along}` : `from ${start} past ${end}, ${along}`;
  const run = isPast ? past : `from ${start} towards ${end}`;
  const point = pointWords(told, other);
  const says =
    told.laid === 1
      ? `Tape ${figure} ${run}: ${point} is square across from there.`
      : `Shift ${thing(told, long)} lengthwise until the mark ${figure} ${run} is square across from ${point}.`;
  return { says, measure: `${run.replace(/^from /, '')} to where ${point} is square across`, figure };
}

function level(told: Told): ObservationWords {
  const [held, laid] = heldFirst(told);
  const { names, of } = told;
  if (isNothing(of)) {
    const pair = pairWords(names, held, laid);
    return { says: `Bring ${pair} level with each other.`, measure: `${pair} are level` };
  }
  const figure = withoutSign(told.figure);
  const [first, second] = of.grips;
  const [before, after] = of.reading > 0 ? [first, second] : [second, first];
  const [a, b] = endsOf(told, first);
  const direction = `from ${a} to ${b}`;
  const measure = `how far ${place(told, after)} is ahead of ${place(told, before)}, looking ${direction}`;
  return {
    says: `Shift ${thing(told, laid)} until ${place(told, after)} is ${figure} ahead of ${place(told, before)}, looking ${direction}.`,
    measure,
    figure,
  };
}

/** A small thing has no length to sight along: the sides of its base show its line. */
function inRow(told: Told): ObservationWords {
  const [held, laid] = heldFirst(told).map((grip) => thing(told, grip));
  const says = `Bring ${laid} into line with ${held}, sighting along the sides of their bases.`;
  return { says, measure: `${laid} is in line with ${held}` };
}

function inLine(told: Told): ObservationWords {
  const [line, other] = told.of.grips;
  const point = pointWords(told, other);
  if (isSmall(namedPiece(told.names, pieceOf(line)))) return inRow(told);
  if (isNothing(told.of)) {
    const measure = `${point} is in line with ${thing(told, line)}`;
    const says =
      told.laid === 1
        ? `Sight along ${thing(told, line)} and bring ${point} into its line.`
        : `Sight along ${thing(told, line)} and turn it until it points at ${point}.`;
    return { says, measure };
  }
  const figure = withoutSign(told.figure);
  const [a, b] = endsOf(told, line);
  const hand = told.of.reading > 0 ? 'left' : 'right';
  const measure = `the line of ${thing(told, line)} square to ${point}, on the ${hand} looking from ${a} to ${b}`;
  return { says: `Tape ${figure} from ${measure}.`, measure, figure };
}

function square(told: Told): ObservationWords {
  const [held, laid] = heldFirst(told).map((grip) => thing(told, grip));
  if (!isNothing(told.of)) {
    const measure = `${laid} stands at ${angleWords(told.of.reading)} to ${held}`;
    return { says: `Turn ${laid} until it stands at ${angleWords(told.of.reading)} to ${held}.`, measure };
  }
  const isByBoard = told.names.plan.crew.rightAngle === 'board';
  const triangle = isByBoard ? undefined : triangleWords(told.names, heldFirst(told).map(pieceOf));
  const how = triangle === undefined ? 'with the board' : `by 3-4-5: ${triangle}`;
  return { says: `Set ${laid} square to ${held} ${how}.`, measure: `${laid} is square to ${held}` };
}

function against(told: Told): ObservationWords {
  const [end, long] = told.of.grips;
  const side = `the side of ${thing(told, long)}`;
  if (!isNothing(told.of)) {
    const ends = [place(told, end), side];
    const measure = (told.laid === 0 ? ends.toReversed() : ends).join(' to ');
    return { says: `Tape ${told.figure} from ${measure}, square to it.`, measure, figure: told.figure };
  }
  const measure = `${place(told, end)} lies against ${side}`;
  const says =
    told.laid === 0
      ? `Push ${place(told, end)} up against ${side}.`
      : `Push ${side} up against ${place(told, end)} of ${thing(told, end)}.`;
  return { says, measure };
}

/** A piece is along a wall, or square to it, within this, as a share of its thickness. */
const SKEW = 0.02;

/** What of a piece is nearest to the wall at the gripped place. */
function nearSide(told: Told, grip: Grip, wall: Wall): string {
  const piece = namedPiece(told.names, pieceOf(grip));
  if (isSmall(piece)) return `the edge of ${thing(told, grip)}`;
  const turn = piece.pose.angle - (wall === 'south' || wall === 'north' ? 0 : Math.PI / 2);
  const lean = Math.abs(Math.cos(turn));
  if (lean < SKEW) return place(told, grip);
  if (lean <= 1 - SKEW) return `the near corner of ${place(told, grip)}`;
  const { kind } = namedPlace(told.names, grip);
  if (kind === 'along') return `the near side of ${place(told, grip)}`;
  return `the near side of ${thing(told, grip)} ${kind === 'end' ? `at ${place(told, grip)}` : 'at its middle'}`;
}

function offWall(told: Told): ObservationWords {
  const [grip, at] = told.of.grips;
  const wall = wallOf(at);
  const measure = `${wallTitle(wall)} to ${nearSide(told, grip, wall)}, square to the wall`;
  return { says: `Tape ${told.figure} from ${measure}.`, measure, figure: told.figure };
}

/** "its west corner", or how far from there a tape begins. */
function wallStart(told: Told, wall: Wall): string {
  const { corner, off } = cornerWords(told.names, wall, told.of.from ?? 0);
  return off < 0.001 ? `its ${corner}` : `the mark ${readingWords(off, namedUnit(told.names))} from its ${corner}`;
}

function alongWall(told: Told): ObservationWords {
  const [grip, at] = told.of.grips;
  const wall = wallOf(at);
  const start = wallStart(told, wall);
  const isCorner = start.startsWith('its');
  const ahead = isCorner ? '' : `, towards its ${cornerAhead(wall, told.of.runs ?? 1)}`;
  const point = pointWords(told, grip);
  const tape = `along ${wallTitle(wall)} from ${start}${ahead}`;
  return {
    says: `Tape ${told.figure} ${tape}, and mark it: ${point} is square out from the mark.`,
    measure: `${tape.slice('along '.length)} to where ${point} is square out`,
    figure: told.figure,
  };
}

function fromRail(told: Told): ObservationWords {
  const [grip, at] = told.of.grips;
  const wall = wallOf(at);
  const { corner, off } = cornerWords(told.names, wall, told.of.from ?? 0);
  const start =
    off < 0.001
      ? `the ${corner} of ${wallTitle(wall)}`
      : `the mark on ${wallTitle(wall)} ${readingWords(off, namedUnit(told.names))} from its ${corner}`;
  const measure = `${start} to ${place(told, grip)}`;
  return { says: `Tape ${told.figure} straight from ${measure}.`, measure, figure: told.figure };
}

const WORDS: Readonly<Record<ObservationKind, (told: Told) => ObservationWords>> = {
  gap,
  between,
  beside,
  clear,
  ahead,
  level,
  'in-line': inLine,
  square,
  against,
  'off-wall': offWall,
  'along-wall': alongWall,
  'from-rail': fromRail,
};

/** An observation as a crew is told it. `laid` is the key of the piece that is laid by it; what else it grips lies. */
export function observationWords(names: PartNames, of: Observation, laid: string): ObservationWords {
  const [first] = of.grips;
  const which = 'piece' in first && first.piece === laid ? 0 : 1;
  const words = WORDS[of.kind]({ names, of, laid: which, figure: readingWords(of.reading, namedUnit(names)) });
  return { ...words, says: capitalized(words.says) };
}
