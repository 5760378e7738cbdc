import { type Draft, produce } from 'immer';
import type { NonEmpty } from '../solve/problem.ts';
import { andList, capitalized } from '../text/sentence.ts';
import type { Layout } from './course.ts';
import { obstacleOf, pieceOf } from './ids.ts';
import { gripName, pinnedPieces, resolvedConstraints } from './resolved-constraints.ts';

/**
 * A member of a conflict: `key` is `obstacle/constraint`, or the id of a constraint of the layout; `says` is its
 * sentence.
 */
export interface StatedConstraint {
  readonly key: string;
  readonly says: string;
}

/** A resolution: drop a constraint, or let a fixed piece move. */
export interface Resolution {
  readonly does: 'drop' | 'unpin';
  readonly key: string;
  readonly says: string;
}

/** Constraints that cannot hold together, though they could without any one of them. */
export interface Conflict {
  readonly members: NonEmpty<StatedConstraint>;
  readonly says: string;
  readonly resolutions: NonEmpty<Resolution>;
}

export function mapNonEmpty<Thing, Other>(list: NonEmpty<Thing>, change: (thing: Thing) => Other): NonEmpty<Other> {
  const [first, ...rest] = list;
  return [change(first), ...rest.map(change)];
}

function nameOf(layout: Layout, obstacle: string): string {
  return layout.obstacles.find(({ id }) => id === obstacle)?.name ?? obstacle.replaceAll('-', ' ');
}

interface GrippedParts {
  /** Whole obstacles of which the set grips several pieces: if they may change their shape, the set may be met. */
  readonly shaped: readonly string[];
  /** Fixed pieces that the set grips, or that keep a whole obstacle which it grips. */
  readonly pinned: readonly string[];
}

function grippedParts(members: NonEmpty<StatedConstraint>, layout: Layout, whole: ReadonlySet<string>): GrippedParts {
  const keys = new Set(members.map(({ key }) => key));
  const grips = resolvedConstraints(layout)
    .filter(({ key }) => keys.has(key))
    .flatMap((resolved) => resolved.grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : [])));
  const owners = [...new Set(grips)].map(obstacleOf).filter((each) => whole.has(each));
  return {
    shaped: [...new Set(owners.filter((each, i) => owners.indexOf(each) < i))],
    pinned: [...pinnedPieces(layout)].filter((key) => grips.includes(key) || owners.includes(obstacleOf(key))),
  };
}

/** A conflict in words, with its resolutions. `whole`: the obstacles that were moved as one body. */
export function conflictOf(
  members: NonEmpty<StatedConstraint>,
  { layout, whole }: { readonly layout: Layout; readonly whole: ReadonlySet<string> },
): Conflict {
  const { shaped, pinned } = grippedParts(members, layout, whole);
  const names = shaped.map((id) => nameOf(layout, id));
  const keeping =
    names.length === 0 ? '' : ` while ${andList(names)} ${names.length > 1 ? 'keep their' : 'keeps its'} shape`;
  const pieces = pinned.map((key) => gripName({ piece: key }, layout));
  const still =
    pieces.length === 0 ? '' : ` ${capitalized(andList(pieces))} ${pieces.length > 1 ? 'are' : 'is'} pinned.`;
  const lone = members.length === 1;
  const says =
    `${lone ? 'This cannot hold' : 'These cannot all hold'}${keeping}: ` +
    `${members.map((each) => each.says).join(' ')}${still} ` +
    `${lone ? 'Change or drop it' : 'Change or drop one of them'}; nothing was moved.`;
  const free = pinned.map((key, i): Resolution => ({ does: 'unpin', key, says: `Free ${pieces[i]}` }));
  const [first, ...rest] = mapNonEmpty(
    members,
    ({ key, says: what }): Resolution => ({ does: 'drop', key, says: `Drop: ${what}` }),
  );
  return { members, says, resolutions: [first, ...rest, ...free] };
}

export function notSolvedSentence(worst: NonEmpty<StatedConstraint>): string {
  return `No place was found where this holds: ${worst.map(({ says }) => says).join(' ')} Nothing was moved.`;
}

/** Takes a constraint out of a draft by its key. */
function drop({ constraints, obstacles }: Draft<Layout>, key: string): void {
  const owner = obstacles.find(({ id }) => id === obstacleOf(key));
  const inside = pieceOf(key);
  const list = inside === undefined ? constraints : owner?.constraints;
  const place = list?.findIndex(({ id }) => id === (inside ?? key)) ?? -1;
  if (place >= 0) list?.splice(place, 1);
}

/** The layout after a resolution; the same object when there is nothing left to drop or free. */
export function applyResolution(layout: Layout, { does, key }: Pick<Resolution, 'does' | 'key'>): Layout {
  return produce(layout, (draft) => {
    if (does === 'drop') return drop(draft, key);
    for (const each of pinsOf(layout, key)) drop(draft, each);
    const owner = draft.obstacles.find(({ id }) => id === obstacleOf(key));
    const piece = owner?.pieces.find(({ id }) => id === pieceOf(key));
    if (piece?.fixed !== undefined) delete piece.fixed;
  });
}

/** The constraints that fix a piece. */
function pinsOf(layout: Layout, piece: string): readonly string[] {
  return resolvedConstraints(layout).flatMap(({ key, kind, grips }) =>
    kind.pins && grips.some((grip) => 'piece' in grip && grip.piece === piece) ? [key] : [],
  );
}
