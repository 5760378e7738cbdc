/** Plans that change constraints: type a value, make one driving or reference, remove one, add one. */

import { type Draft, produce } from 'immer';
import type { Constraint } from '../../core/constraints/constraint.ts';
import { constraintKind } from '../../core/constraints/constraints.ts';
import { constraintResiduals, isMeasurable } from '../../core/constraints/residuals.ts';
import { applyResolution, type Conflict, type Resolution } from '../../core/course/conflict.ts';
import { type Course, currentLayout, type Layout } from '../../core/course/course.ts';
import { freeId, obstacleOf, pieceOf } from '../../core/course/ids.ts';
import { replaceLayout } from '../../core/course/layouts.ts';
import {
  grippedPoses,
  placedPieces,
  printMeasure,
  type ResolvedConstraint,
  resolvedConstraints,
} from '../../core/course/resolved-constraints.ts';
import { readAngle } from '../../core/measure/angle.ts';
import { readLength } from '../../core/measure/length.ts';
import type { NonEmpty } from '../../core/solve/problem.ts';
import { survey as surveyOf } from '../../core/survey.ts';
import { labels, messages } from '../../words/desk.ts';
import type { DeskState } from '../desk.ts';
import type { Plan } from '../plan.ts';
import type { Keys } from '../selection/selection.ts';
import { conflictWithDisplayNames, withDisplayNames } from './display-names.ts';
import { keptConstraints } from './kept-list.ts';
import type { DraftConstraint, PendingConflict } from './pending.ts';
import { solveCourse, stayingPiece } from './solve-course.ts';

/** Everything met is met within this: metres or radians. */
const MEASURE_TOLERANCE = 1e-9;

interface ConstraintChange {
  readonly staying: string | null;
  readonly label: string;
  readonly said: string;
  readonly chosen: Keys;
}

/** The step to a course in which the constraints changed: solved, or a conflict that waits for the person. */
export function solvedPlan(asked: Course, { staying, label, said, chosen }: ConstraintChange): Plan {
  const outcome = solveCourse(asked, staying);
  if (outcome.kind === 'solved') return { course: outcome.course, chosen, label, said };
  const survey = surveyOf(asked);
  if (outcome.kind === 'lost') return { refusal: withDisplayNames(outcome.says, survey) };
  const [first, ...rest] = outcome.conflicts;
  const conflicts: NonEmpty<Conflict> = [
    conflictWithDisplayNames(first, survey),
    ...rest.map((each) => conflictWithDisplayNames(each, survey)),
  ];
  return {
    conflict: { says: withDisplayNames(outcome.says, survey), conflicts: conflicts, asked, staying, label, said },
  };
}

/** Applies one resolution of a pending conflict and goes on with what was asked. */
export function resolvePendingPlan(
  { chosen }: DeskState,
  pending: PendingConflict,
  resolution: Pick<Resolution, 'does' | 'key'>,
): Plan {
  const asked = replaceLayout(pending.asked, (layout) => applyResolution(layout, resolution));
  return solvedPlan(asked, { ...pending, chosen });
}

/** Writes into the constraints that the keys name, wherever they are stored. */
export function editConstraints(course: Course, keys: Keys, change: (constraint: Draft<Constraint>) => void): Course {
  return replaceLayout(
    course,
    produce(({ obstacles, constraints }: Draft<Layout>) => {
      for (const key of keys) {
        const inside = pieceOf(key);
        const list =
          inside === undefined ? constraints : obstacles.find(({ id }) => id === obstacleOf(key))?.constraints;
        const found = list?.find(({ id }) => id === (inside ?? key));
        if (found !== undefined) change(found);
      }
    }),
  );
}

function holdingsIn({ survey }: Pick<DeskState, 'survey'>, keys: Keys): readonly ResolvedConstraint[] {
  return resolvedConstraints(survey.layout).filter(({ key }) => keys.includes(key));
}

function piecesIn(grips: Constraint['grips']): Keys {
  return grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : []));
}

/** What was typed for measures, SI, with the pieces that they grip; or why it cannot be read. */
export function readHold(
  state: DeskState,
  keys: Keys,
  text: string,
): { readonly value: number; readonly pieces: Keys } | { readonly refusal: string } {
  const holdings = holdingsIn(state, keys);
  const [first] = holdings;
  if (first === undefined) return { refusal: messages.noSuchMeasure() };
  const typed = first.kind.unit === 'rad' ? readAngle(text) : readLength(text, state.course.unit);
  if (typed.kind === 'refused') return { refusal: typed.why };
  if (typed.value < 0) return { refusal: messages.lessThanNothing(first.kind.title) };
  return { value: typed.value, pieces: holdings.flatMap(({ grips }) => piecesIn(grips)) };
}

/** Types the value of a constraint; the pieces are moved to meet it. */
export function setHoldPlan(state: DeskState, keys: Keys, text: string): Plan {
  const { course, survey, chosen } = state;
  const typed = readHold(state, keys, text);
  if ('refusal' in typed) return typed;
  const { value } = typed;
  const holdings = holdingsIn(state, keys);
  const [first] = holdings;
  if (first === undefined) return { refusal: messages.noSuchMeasure() };
  const asked = editConstraints(course, keys, (constraint) => {
    constraint.hold = value;
  });
  const staying = stayingPiece(survey, typed.pieces);
  const row = keptConstraints({ survey: surveyOf(asked), chosen }).find((each) => each.keys.includes(first.key));
  const now = row === undefined ? first.kind.title : row.holds ? row.says : row.name;
  const before = first.constraint.hold;
  const said =
    before === undefined || before === value
      ? now
      : messages.withWas(now, printMeasure(first.kind, before, course.unit));
  return solvedPlan(asked, { staying, chosen, label: labels.hold(first.kind.title), said });
}

/** Makes reference dimensions driving, at what they measure now. */
export function holdPlan(state: DeskState, keys: Keys): Plan {
  const { course, survey, chosen } = state;
  const pieces = placedPieces(survey.layout);
  const now = new Map(
    holdingsIn(state, keys).flatMap((holding) => {
      const held = grippedPoses(holding, course.arena, pieces);
      if (held === undefined) return [];
      const { kind, constraint } = holding;
      const side = constraint.side ?? 1;
      return [[holding, isMeasurable(kind, held, side) ? kind.measure(held, side) : Number.NaN] as const];
    }),
  );
  const [first] = now.keys();
  if (first === undefined) return { refusal: messages.noSuchMeasure() };
  if ([...now.values()].some(Number.isNaN)) return { refusal: messages.nothingToMeasure(first.kind.title) };
  let asked = course;
  for (const [{ key }, value] of now) {
    asked = editConstraints(asked, [key], (constraint) => {
      constraint.hold = value;
    });
  }
  return { course: asked, chosen, label: labels.hold(first.kind.title), said: messages.nowHeld(first.kind.title) };
}

/** Makes constraints reference dimensions: still measured, no longer enforced. */
export function measureOnlyPlan(state: DeskState, keys: Keys): Plan {
  const [first] = holdingsIn(state, keys);
  if (first === undefined) return { refusal: messages.noSuchMeasure() };
  const course = editConstraints(state.course, keys, (constraint) => {
    delete constraint.hold;
  });
  const { title } = first.kind;
  return { course, chosen: state.chosen, label: labels.measureOnly(title), said: messages.onlyMeasured(title) };
}

export function dropPlan(state: DeskState, keys: Keys): Plan {
  const [first] = holdingsIn(state, keys);
  if (first === undefined) return { refusal: messages.noSuchMeasure() };
  const course = keys.reduce(
    (now, key) => replaceLayout(now, (layout) => applyResolution(layout, { does: 'drop', key })),
    state.course,
  );
  const { title } = first.kind;
  return { course, chosen: state.chosen, label: labels.drop(title), said: messages.dropped(title) };
}

/** Applies a resolution of a conflict that the course already had. */
export function resolveExistingPlan(state: DeskState, resolution: Pick<Resolution, 'does' | 'key' | 'says'>): Plan {
  const course = replaceLayout(state.course, (layout) => applyResolution(layout, resolution));
  return { course, chosen: state.chosen, label: resolution.says.replace(/\.$/, ''), said: resolution.says };
}

/** Whether a constraint is met where the pieces lie now. */
export function isSatisfied(course: Course, { kind, grips, hold = 0, side = 1 }: DraftConstraint): boolean {
  const found = constraintKind(kind);
  const held = grippedPoses({ grips }, course.arena, placedPieces(currentLayout(course)));
  if (found === undefined || held === undefined) return false;
  return constraintResiduals(found, held, { hold, side }).every(({ value }) => Math.abs(value) < MEASURE_TOLERANCE);
}

/** Adds a constraint. One that is met already moves nothing; any other moves the pieces to it. */
export function keepPlan(state: DeskState, draft: DraftConstraint, says: string): Plan {
  const { course, survey, chosen } = state;
  const kind = constraintKind(draft.kind);
  if (kind === undefined) return { refusal: messages.noSuchMeasure() };
  const asked = replaceLayout(course, (layout) => ({
    ...layout,
    constraints: [
      ...layout.constraints,
      {
        ...draft,
        id: freeId(
          draft.kind,
          layout.constraints.map(({ id }) => id),
        ),
      },
    ],
  }));
  const change = { chosen, label: labels.keep(kind.title), said: messages.keeps(says) };
  if (isSatisfied(course, draft)) return { course: asked, ...change };
  return solvedPlan(asked, { ...change, staying: stayingPiece(survey, piecesIn(draft.grips)) });
}
