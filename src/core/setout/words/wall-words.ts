/** Observations from the walls in words. */
import type { Grip, Wall } from '../../constraints/constraint.ts';
import { isSmall } from '../observables.ts';
import { cornerAhead, cornerWords, namedPiece, namedPlace, namedUnit, wallTitle } from './place-words.ts';
import { readingWords } from './reading-words.ts';
import {
  type ObservationWords,
  pieceOf,
  place,
  pointWords,
  type ToldObservation,
  thing,
  wallOf,
} from './told-observation.ts';

/** A piece is along a wall, or square to it, within this, as a share of its thickness. */
const SKEW = 0.02;

/** What of a piece is nearest to the wall at the gripped place. */
function nearSide(told: ToldObservation, grip: Grip, wall: Wall): string {
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

export function offWall(told: ToldObservation): ObservationWords {
  const [grip, at] = told.of.grips;
  const wall = wallOf(at);
  const measure = `${wallTitle(wall)} to ${nearSide(told, grip, wall)}, square to the wall`;
  return { says: `Tape ${told.figure} from ${measure}.`, measure, figure: told.figure };
}

/** "its west corner", or how far from there a tape begins. */
function wallStart(told: ToldObservation, wall: Wall): string {
  const { corner, off } = cornerWords(told.names, wall, told.of.from ?? 0);
  return off < 0.001 ? `its ${corner}` : `the mark ${readingWords(off, namedUnit(told.names))} from its ${corner}`;
}

export function alongWall(told: ToldObservation): ObservationWords {
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

export function fromRail(told: ToldObservation): ObservationWords {
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
