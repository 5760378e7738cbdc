/** What of an obstacle departs from what its values build: measures set at one place, pieces taken out or changed by hand. */
import type { Constraint } from '../constraints/constraint.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import { buildObstacle } from '../obstacles/build.ts';
import { derivedHolds } from '../obstacles/derived-holds.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Piece } from '../pieces/piece.ts';
import { compose, type Pose, toLocal } from '../plane/pose.ts';

/** A measure that is held to another value than the obstacle's parameters give. */
export interface HoldException {
  readonly id: string;
  /** The parameter that it would follow; absent when it follows none by itself. */
  readonly param?: string;
  readonly hold: number;
}

export interface Departures {
  readonly holds: readonly HoldException[];
  /** Constraints that are only measured, that were dropped, and that were added; the first two by id. */
  readonly measured: readonly string[];
  readonly dropped: readonly string[];
  readonly added: readonly Constraint[];
  /** Pieces that were taken out, by id. */
  readonly missing: readonly string[];
  /** Where pieces lie, as seen from where the values put them; only those that lie elsewhere. */
  readonly moved: ReadonlyMap<string, Pose>;
  /** Values of single pieces that are not what the obstacle's values give them. */
  readonly changed: ReadonlyMap<string, Piece['values']>;
}

const NONE: Departures = {
  holds: [],
  measured: [],
  dropped: [],
  added: [],
  missing: [],
  moved: new Map(),
  changed: new Map(),
};

/** Less than this, metres and radians, is rounding. */
const SAME = 1e-9;

function isElsewhere({ x, y, angle }: Pose): boolean {
  return Math.max(Math.abs(x), Math.abs(y), Math.abs(Math.sin(angle / 2))) > SAME;
}

function ownValues(piece: Piece, like: Piece): Piece['values'] {
  return Object.fromEntries(Object.entries(piece.values).filter(([key, value]) => like.values[key] !== value));
}

const ORIGIN: Pose = { x: 0, y: 0, angle: 0 };

/** The obstacle as its values build it, wherever it lies: the same object while a piece of it is dragged. */
const usualOf = memoizeByIdentity((values: Obstacle['values'], kind: string, side: 1 | -1) =>
  buildObstacle(kind, kind, values, ORIGIN, side),
);

/** What departs from the values of an obstacle; nothing where its values do not build, as for one made by hand. */
export const departuresOf = memoizeByIdentity((obstacle: Obstacle): Departures => {
  const usual = usualOf(obstacle.values, obstacle.kind, obstacle.side);
  if ('why' in usual || Object.keys(obstacle.values).length === 0) return NONE;
  const derived = derivedHolds(obstacle);
  const pieces = new Map(obstacle.pieces.map((piece) => [piece.id, piece]));
  const built = new Map(usual.constraints.map((constraint) => [constraint.id, constraint]));
  const here = new Map(obstacle.constraints.map((constraint) => [constraint.id, constraint]));
  const missing = usual.pieces.flatMap(({ id }) => (pieces.has(id) ? [] : [id]));
  const isOnMissing = ({ grips }: Constraint) => grips.some((grip) => 'piece' in grip && missing.includes(grip.piece));
  const kept = obstacle.constraints.flatMap((constraint) => {
    const like = built.get(constraint.id);
    return like?.kind === constraint.kind ? [{ constraint, like }] : [];
  });
  return {
    holds: kept.flatMap(({ constraint: { id, hold }, like }): HoldException[] => {
      if (hold === undefined || like.hold === undefined || Math.abs(hold - like.hold) <= SAME) return [];
      const param = derived.get(id)?.param;
      return [{ id, hold, ...(param === undefined ? {} : { param }) }];
    }),
    measured: kept.flatMap(({ constraint: { id, hold }, like }) =>
      hold === undefined && like.hold !== undefined ? [id] : [],
    ),
    dropped: usual.constraints.flatMap((each) => (here.has(each.id) || isOnMissing(each) ? [] : [each.id])),
    added: obstacle.constraints.filter(({ id, kind }) => built.get(id)?.kind !== kind),
    missing,
    moved: new Map(
      usual.pieces.flatMap((like) => {
        const piece = pieces.get(like.id);
        const off = piece === undefined ? undefined : toLocal(like.pose, piece.pose);
        return off !== undefined && isElsewhere(off) ? [[like.id, off] as const] : [];
      }),
    ),
    changed: new Map(
      usual.pieces.flatMap((like) => {
        const piece = pieces.get(like.id);
        const own = piece === undefined ? {} : ownValues(piece, like);
        return Object.keys(own).length > 0 ? [[like.id, own] as const] : [];
      }),
    ),
  };
});

/**
 * The departures that mean nothing on the obstacle as it was built from other values, because what they are about is gone:
 * held measures, and by id the constraints that were added and the pieces that were changed.
 */
export function lostDepartures(
  { holds, added, changed }: Departures,
  next: Obstacle,
): { readonly holds: readonly HoldException[]; readonly others: readonly string[] } {
  const ids = new Set(next.constraints.map(({ id }) => id));
  const pieces = new Set(next.pieces.map(({ id }) => id));
  return {
    holds: holds.filter(({ id }) => !ids.has(id)),
    others: [
      ...added.flatMap(({ id }) => (ids.has(id) ? [] : [id])),
      ...[...changed.keys()].filter((id) => !pieces.has(id)),
    ],
  };
}

function withoutKeys(values: Piece['values'] | undefined, keys: readonly string[]): Piece['values'] | undefined {
  if (values === undefined) return undefined;
  const left = Object.entries(values).filter(([key]) => !keys.includes(key));
  return left.length === 0 ? undefined : Object.fromEntries(left);
}

/**
 * A newly built obstacle with the departures of the old one, as far as what they are about is still there; `reset` names
 * parameters whose own exceptions go. Its constraints may not be met yet.
 */
export function withDepartures(next: Obstacle, departures: Departures, reset: readonly string[]): Obstacle {
  const { missing, dropped, measured, added, moved, changed } = departures;
  const holds = new Map(
    departures.holds.flatMap(({ id, param, hold }) =>
      param !== undefined && reset.includes(param) ? [] : [[id, hold]],
    ),
  );
  const isReset =
    reset.length > 0 && departures.holds.some(({ param }) => param !== undefined && reset.includes(param));
  const pieces = next.pieces
    .filter(({ id }) => !missing.includes(id))
    .map((piece) => {
      const off = isReset ? undefined : moved.get(piece.id);
      const own = withoutKeys(changed.get(piece.id), reset);
      if (off === undefined && own === undefined) return piece;
      return {
        ...piece,
        pose: off === undefined ? piece.pose : compose(piece.pose, off),
        values: own === undefined ? piece.values : { ...piece.values, ...own },
      };
    });
  const there = new Set(pieces.map(({ id }) => id));
  const isThere = ({ grips }: Constraint) => grips.every((grip) => !('piece' in grip) || there.has(grip.piece));
  const constraints = next.constraints
    .filter((each) => !dropped.includes(each.id) && isThere(each))
    .map((each) => {
      if (measured.includes(each.id)) {
        const { hold: _, ...rest } = each;
        return rest;
      }
      const hold = holds.get(each.id);
      return hold === undefined || each.hold === undefined ? each : { ...each, hold };
    });
  const ids = new Set(constraints.map(({ id }) => id));
  const passages = next.passages.map((passage) => ({
    ...passage,
    stations: passage.stations.filter((station) => station.kind === 'turn' || there.has(station.piece)),
  }));
  return {
    ...next,
    pieces,
    constraints: [...constraints, ...added.filter((each) => !ids.has(each.id) && isThere(each))],
    passages: passages.filter(({ stations: [first] }) => first !== undefined && first.kind !== 'turn'),
  };
}
