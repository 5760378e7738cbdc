import type { Grip, Wall } from '../../constraints/constraint.ts';
import type { Observation } from '../setout.ts';
import { namedPiece, namedPlace, type PartNames, partPieceWords, placeWords } from './place-words.ts';

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
export interface ToldObservation {
  readonly names: PartNames;
  readonly of: Observation;
  /** Which grip is of the piece that is laid. */
  readonly laid: 0 | 1;
  readonly figure: string;
}

/** The grip that is held, then the one that is laid. */
export function heldFirst({ of, laid }: ToldObservation): readonly [Grip, Grip] {
  return laid === 1 ? of.grips : [of.grips[1], of.grips[0]];
}

export function pieceOf(grip: Grip): string {
  if ('wall' in grip) throw new Error('set-out: a piece was asked for, and it is a wall');
  return grip.piece;
}

export function wallOf(grip: Grip): Wall {
  if (!('wall' in grip)) throw new Error(`set-out: a wall was asked for, and it is ${grip.piece}`);
  return grip.wall;
}

/** Where a grip holds its piece, 0 … 1. */
export function fractionOf(grip: Grip): number {
  return ('at' in grip ? grip.at : undefined) ?? 0.5;
}

export function thing({ names }: ToldObservation, grip: Grip): string {
  return partPieceWords(names, pieceOf(grip));
}

export function place({ names }: ToldObservation, grip: Grip): string {
  return placeWords(names, grip);
}

/** "pole": what kind of thing a grip holds. */
export function noun({ names }: ToldObservation, grip: Grip): string {
  return namedPiece(names, pieceOf(grip)).kind.title.toLowerCase();
}

/** The end of a long piece towards which its −x end looks, and the other one. */
export function endsOf({ names }: ToldObservation, grip: Grip): readonly [string, string] {
  return names.part.letters.get(pieceOf(grip)) ?? ['', ''];
}

/** A figure whose direction is told in words. */
export function withoutSign(figure: string): string {
  return figure.replace('−', '');
}

/** "the middle of marker 2", "end C": a point of a thing, not its edge. */
export function pointWords(told: ToldObservation, grip: Grip): string {
  const isMiddle = namedPlace(told.names, grip).kind === 'small';
  return isMiddle ? `the middle of ${thing(told, grip)}` : place(told, grip);
}
