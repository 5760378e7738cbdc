/** Suggested constraints: from the selection, after a snap, and from the tape. */

import { centresLevel } from '../../core/constraints/centres-level.ts';
import type { Wall } from '../../core/constraints/constraint.ts';
import { constraintKind } from '../../core/constraints/constraints.ts';
import { equalGaps } from '../../core/constraints/equal-gaps.ts';
import { gap } from '../../core/constraints/gap.ts';
import { inLine } from '../../core/constraints/in-line.ts';
import { parallel } from '../../core/constraints/parallel.ts';
import { square } from '../../core/constraints/square.ts';
import { pieceOf } from '../../core/course/ids.ts';
import type { PlacedPiece } from '../../core/course/placed.ts';
import { constraintSuggestions } from '../../core/course/suggested.ts';
import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { TOUCH } from '../../core/plane/point.ts';
import type { Survey } from '../../core/survey.ts';
import { messages } from '../../words/desk.ts';
import { deskNames } from '../../words/desk-names.ts';
import { wallDistances } from '../placing/wall-distances.ts';
import { boundsOfPieces, chosenPieces, type Keys } from '../selection/selection.ts';
import type { Snap } from '../snapping/guide.ts';
import {
  type ConstraintCandidate,
  directionCandidates,
  distanceCandidate,
  isKept,
  isLong,
  nearestPair,
  offWallCandidate,
  wallAngleCandidate,
} from './constraint-candidates.ts';
import type { KeepSuggestion } from './pending.ts';

interface Named {
  readonly unit: LengthUnit;
  /** How the sentence names what is gripped: "it", "these two". */
  readonly name: string;
}

const SQUARE = 1e-6;

function wallAngleWords({ value }: ConstraintCandidate, wall: Wall, name: string): string {
  if (Math.abs(Math.sin(value)) < SQUARE) return messages.keepAlong(name, wall);
  if (Math.abs(Math.cos(value)) < SQUARE) return messages.keepSquareTo(name, wall);
  return messages.keepAtAngle(name, printAngle(value), wall);
}

function wallSuggestions(
  survey: Survey,
  pieces: readonly PlacedPiece[],
  { unit, name }: Named,
): readonly KeepSuggestion[] {
  const bounds = boundsOfPieces(pieces);
  const { arena } = survey.course;
  if (bounds === null) return [];
  const near = wallDistances(bounds, arena, unit).filter((each) => each.near);
  const distances = near.flatMap(({ wall }): KeepSuggestion[] => {
    const found = offWallCandidate(pieces, wall, arena);
    if (found === null || found.value < 0) return [];
    return [{ says: messages.keepOff(name, printLength(found.value, unit), wall), draft: found.draft }];
  });
  const pole = pieces.find(isLong);
  const [wall] = [...near].sort((a, b) => a.length - b.length).map((each) => each.wall);
  if (pole === undefined || wall === undefined) return distances;
  const angle = wallAngleCandidate(pole, wall, arena);
  return [...distances, { says: wallAngleWords(angle, wall, name), draft: angle.draft }];
}

function directionWords({ draft, value }: ConstraintCandidate, name: string): string {
  switch (draft.kind) {
    case parallel.id:
      return messages.keepParallel(name);
    case inLine.id:
      return messages.keepInLine(name);
    case centresLevel.id:
      return messages.keepLevel(name);
    case square.id:
      return messages.keepSquare(name);
    default:
      return messages.keepTurned(name, printAngle(value));
  }
}

/** Suggestions between two pieces: their distance inside to inside, and their directions. */
export function pairSuggestions(
  [first, second]: readonly [PlacedPiece, PlacedPiece],
  { unit, name }: Named,
): readonly KeepSuggestion[] {
  const distance = distanceCandidate(first, second);
  const apart =
    distance === null
      ? []
      : [{ says: messages.keepApart(name, printLength(distance.value, unit)), draft: distance.draft }];
  const lie = directionCandidates(first, second).map((each) => ({
    says: directionWords(each, name),
    draft: each.draft,
  }));
  return [...apart, ...lie];
}

/** Three poles whose gaps are the same. */
function equalGapSuggestion(survey: Survey, pieces: readonly PlacedPiece[]): readonly KeepSuggestion[] {
  const [first, second, third, more] = pieces;
  if (first === undefined || second === undefined || third === undefined || more !== undefined) return [];
  const before = distanceCandidate(first, second);
  const after = distanceCandidate(second, third);
  if (before?.draft.kind !== gap.id || after?.draft.kind !== gap.id) return [];
  if (before.draft.side !== after.draft.side || Math.abs(before.value - after.value) > TOUCH) return [];
  const grips = pieces.map((piece) => ({ piece: piece.key, at: 0.5 }));
  const { side } = before.draft;
  const length = printLength(before.value, survey.course.unit);
  return [
    { says: messages.keepEqual(length), draft: { kind: equalGaps.id, grips, ...(side === undefined ? {} : { side }) } },
  ];
}

/** The pieces that each chosen key stands for. */
function partsOf(survey: Survey, chosen: Keys): readonly (readonly PlacedPiece[])[] {
  return chosen.map((key) => chosenPieces(survey, [key])).filter((pieces) => pieces.length > 0);
}

/** The constraints that the selection meets now. One that exists already is not suggested again. */
export function keepSuggestions({
  survey,
  chosen,
}: {
  readonly survey: Survey;
  readonly chosen: Keys;
}): readonly KeepSuggestion[] {
  const { unit } = survey.course;
  const parts = partsOf(survey, chosen);
  const [one, other, more] = parts;
  const all = (): readonly KeepSuggestion[] => {
    if (one === undefined) return [];
    if (other === undefined) return wallSuggestions(survey, one, { unit, name: 'it' });
    if (more !== undefined) return equalGapSuggestion(survey, parts.flat());
    const pair = nearestPair(one, other);
    return pair === null ? [] : pairSuggestions(pair, { unit, name: deskNames.theseTwo });
  };
  return all().filter(({ draft }) => !isKept(survey, draft));
}

/** Further constraints between what is chosen. One that is not met yet says so: adding it moves the pieces there. */
export function moreSuggestions({
  survey,
  chosen,
}: {
  readonly survey: Survey;
  readonly chosen: Keys;
}): readonly KeepSuggestion[] {
  const { arena, unit } = survey.course;
  const usual = keepSuggestions({ survey, chosen }).map(({ draft }) => draft);
  const keys = chosen.filter((key) => !key.includes(':'));
  return constraintSuggestions({ layout: survey.layout, arena, unit }, keys)
    .filter(({ constraint }) => !constraintKind(constraint.kind)?.pins && !isKept(survey, constraint))
    .filter(({ constraint }) => !usual.some((draft) => draft.kind === constraint.kind))
    .map(({ constraint: { id: _, ...draft }, says, isMet }) => ({
      says: isMet ? says : messages.bringsThere(says),
      draft,
    }));
}

/** The pole of the selection that a direction or a line refers to. */
function poleOf(survey: Survey, chosen: Keys): PlacedPiece | undefined {
  return chosenPieces(survey, chosen).find(isLong);
}

/** A constraint that keeps the snap that just held; null where no constraint can, or one does already. */
export function snapSuggestion(survey: Survey, chosen: Keys, snaps: readonly Snap[]): KeepSuggestion | null {
  const { arena, unit } = survey.course;
  for (const snap of snaps) {
    const suggestion = ((): KeepSuggestion | null => {
      if (snap.to === 'wall') {
        const found = offWallCandidate(chosenPieces(survey, chosen), snap.wall, arena);
        return found === null || found.value < -TOUCH
          ? null
          : { says: messages.keepOff('it', printLength(found.value, unit), snap.wall), draft: found.draft };
      }
      const pole = poleOf(survey, chosen);
      if (pole === undefined) return null;
      if (snap.to === 'wall-angle') {
        const found = wallAngleCandidate(pole, 'south', arena);
        return { says: wallAngleWords(found, 'south', 'it'), draft: found.draft };
      }
      const mine = survey.pieces.find((each) => each.key === snap.mine) ?? pole;
      const theirs = survey.pieces.find((each) => each.key === snap.theirs);
      const [found] = theirs === undefined ? [] : directionCandidates(theirs, mine);
      const name = pieceOf(chosen[0] ?? '') === undefined ? deskNames.theTwoPoles : deskNames.neighbour;
      return found === undefined ? null : { says: directionWords(found, name), draft: found.draft };
    })();
    if (suggestion !== null && !isKept(survey, suggestion.draft)) return suggestion;
  }
  return null;
}
