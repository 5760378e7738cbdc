import type { ConstraintKind } from '../../core/constraints/constraint.ts';
import { dimensionOf } from '../../core/course/dimensions.ts';
import { obstacleOf, pieceOf } from '../../core/course/ids.ts';
import {
  isDriving,
  placedPieces,
  type ResolvedConstraint,
  resolvedConstraints,
} from '../../core/course/resolved-constraints.ts';
import { memoizeByText } from '../../core/memo/by-identity.ts';
import type { Point } from '../../core/plane/point.ts';
import type { Survey } from '../../core/survey.ts';
import type { Keys } from '../selection/selection.ts';
import { constraintWords, fractionWords } from './kept-words.ts';

/** An entry of the list of constraints of the selection: one constraint, or several alike with one value. */
export interface KeptConstraint {
  /** Constraints by their keys, at least one. */
  readonly keys: Keys;
  readonly kind: ConstraintKind;
  /** The value now, SI units; what it prints as, empty for a kind without a number. */
  readonly value: number;
  readonly text: string;
  /** It is enforced; otherwise it is only measured. */
  readonly holds: boolean;
  /** One sentence; for several alike, what they are and between which pieces. */
  readonly says: string;
  /** Where their dimension lines lie on the ground, one for each key; empty for a kind without a number. */
  readonly dimensions: readonly (readonly [Point, Point])[];
  /** A short name that nothing else here has. */
  readonly name: string;
}

/** Whether a constraint belongs to the selection: it is the obstacle's own, or grips one of its pieces. */
function isOf(holding: ResolvedConstraint, chosen: Keys): boolean {
  return holding.grips.some(
    (grip) => 'piece' in grip && (chosen.includes(grip.piece) || chosen.includes(obstacleOf(grip.piece))),
  );
}

/** What alike constraints have in common: the kind, the value and the places along the pieces, in one obstacle. */
function likeness(holding: ResolvedConstraint, text: string): string {
  const places = holding.grips.map((grip) => ('wall' in grip ? grip.wall : fractionWords(grip.at)));
  return [holding.owner ?? holding.key, holding.kind.id, text, ...places].join('|');
}

interface ListedHolding {
  readonly holding: ResolvedConstraint;
  readonly text: string;
  readonly value: number;
  /** Absent for a kind without a number. */
  readonly dimension?: readonly [Point, Point];
}

/**
 * Every constraint of what is chosen, those with a number first. Of a whole obstacle alike ones are one entry, so that a
 * long run shows one; of single pieces each stands for itself.
 */
export function keptConstraints({
  survey,
  chosen,
}: {
  readonly survey: Survey;
  readonly chosen: Keys;
}): readonly KeptConstraint[] {
  return constraintsOf(survey, chosen.join(' '));
}

const constraintsOf = memoizeByText((survey: Survey, keys: string): readonly KeptConstraint[] => {
  const chosen = keys === '' ? [] : keys.split(' ');
  const single = chosen.some((key) => pieceOf(key) !== undefined);
  const { arena, unit } = survey.course;
  const { layout } = survey;
  const around = { layout, arena, unit, pieces: placedPieces(layout) };
  const rows = resolvedConstraints(layout)
    .filter((holding) => !holding.kind.pins && isOf(holding, chosen))
    .map((holding): ListedHolding => {
      const tape = dimensionOf(holding, around);
      return tape === undefined
        ? { holding, value: 0, text: '' }
        : { holding, value: tape.value, text: tape.printed, dimension: [tape.from, tape.to] };
    });
  const alike = new Map<string, ListedHolding[]>();
  for (const row of rows) {
    const key = single ? row.holding.key : `${likeness(row.holding, row.text)} ${isDriving(row.holding)}`;
    alike.set(key, [...(alike.get(key) ?? []), row]);
  }
  const kept = [...alike.values()].map((each) => keptConstraint(survey, each));
  return [...kept.filter((each) => each.text !== ''), ...kept.filter((each) => each.text === '')];
});

function keptConstraint(survey: Survey, rows: readonly ListedHolding[]): KeptConstraint {
  const [first] = rows;
  if (first === undefined) throw new Error('keptConstraint: got no constraints');
  const { kind } = first.holding;
  const isHeld = isDriving(first.holding);
  const list = rows.map(({ holding }) => holding);
  return {
    keys: list.map(({ key }) => key),
    kind,
    value: first.value,
    text: first.text,
    holds: isHeld,
    // The words are for the list and the fields: a drag draws numbers only.
    get says(): string {
      return constraintWords(survey, list, first.text).says;
    },
    get name(): string {
      return constraintWords(survey, list, first.text).name;
    },
    dimensions: rows.flatMap(({ dimension: tape }) => (tape === undefined ? [] : [tape])),
  };
}
