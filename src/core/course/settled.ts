import { type Draft, produce } from 'immer';
import type { LengthUnit } from '../measure/quantity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Piece } from '../pieces/piece.ts';
import { composed, type Pose, within, wrapped } from '../plane/pose.ts';
import { groups } from '../solve/groups.ts';
import type { Problem, Some } from '../solve/problem.ts';
import { solved } from '../solve/solved.ts';
import type { Arena, Layout } from './course.ts';
import { obstacleOf, pieceOf } from './keys.ts';
import { pieceKey } from './placed.ts';
import { holdingSentence, holdingsOf, type TiedLayout, tied } from './ties.ts';

/** A constraint that stands in the way: `key` is `obstacle/constraint`, or the layout's own id; `says` what it holds. */
export interface Culprit {
  readonly key: string;
  readonly says: string;
}

/**
 * `settled`: the layout with its constraints held; `freedoms` and `spare` are those of the part that was solved.
 * `clash`: `sets` cannot hold together, each as small as can be. `lost`: no answer was found; `worst` were not met.
 * On a clash or when lost nothing moves.
 */
export type Settled =
  | {
      readonly kind: 'settled';
      readonly layout: Layout;
      readonly freedoms: number;
      readonly spare: readonly Culprit[];
    }
  | { readonly kind: 'clash'; readonly sets: Some<Some<Culprit>>; readonly says: string }
  | { readonly kind: 'lost'; readonly worst: Some<Culprit>; readonly says: string };

/** Pieces that moved as one to within this, metres and radians, take their obstacle's frame along. */
const AS_ONE = 1e-11;

function someOf<Thing, Other>(list: Some<Thing>, change: (thing: Thing) => Other): Some<Other> {
  const [first, ...rest] = list;
  return [change(first), ...rest.map(change)];
}

/** Obstacles of which a layout constraint grips a piece, and those with a piece that stays. */
function heldObstacles(layout: Layout): ReadonlySet<string> {
  const inner = new Set(layout.constraints.map((constraint) => constraint.id));
  const held = holdingsOf(layout).flatMap(({ key, kind, grips }) =>
    inner.has(key) || kind.id === 'fixed' ? grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : [])) : [],
  );
  const fixed = layout.obstacles.filter(({ pieces }) => pieces.some((piece) => piece.fixed === true));
  return new Set([...held.map(obstacleOf), ...fixed.map(({ id }) => id)]);
}

/** Wishes for whole obstacles that nothing holds: they go there as they are, with nothing to solve. */
function carriedAway(layout: Layout, wishes: ReadonlyMap<string, Pose>): ReadonlyMap<string, Pose> {
  const whole = [...wishes].filter(([key]) => pieceOf(key) === undefined);
  if (whole.length === 0) return new Map();
  const held = heldObstacles(layout);
  const pulled = new Set([...wishes.keys()].filter((key) => pieceOf(key) !== undefined).map(obstacleOf));
  return new Map(whole.filter(([key]) => !held.has(key) && !pulled.has(key)));
}

/** The wishes left to the solver, each for one piece: an obstacle's is shared out to its pieces. */
function pieceWishes(layout: Layout, wishes: ReadonlyMap<string, Pose>): ReadonlyMap<string, Pose> {
  const shared = layout.obstacles.flatMap((obstacle) => {
    const frame = wishes.get(obstacle.id);
    if (frame === undefined) return [];
    return obstacle.pieces.map((piece) => [pieceKey(obstacle.id, piece.id), composed(frame, piece.pose)] as const);
  });
  return new Map([...shared, ...[...wishes].filter(([key]) => pieceOf(key) !== undefined)]);
}

/** The part of the problem that hangs on a wish. */
function touched(problem: Problem): Problem {
  const parts = groups(problem).filter(({ free }) => free.some(({ wish }) => wish !== undefined));
  const ids = new Set(parts.flatMap(({ free, still }) => [...free, ...still].map(({ id }) => id)));
  return { bodies: problem.bodies.filter(({ id }) => ids.has(id)), ties: parts.flatMap(({ ties }) => ties) };
}

/** The frame in which the piece, where it lies in its obstacle, comes to the ground pose. */
function frameFor(piece: Piece, ground: Pose): Pose {
  const turned = { x: 0, y: 0, angle: ground.angle - piece.pose.angle };
  const reach = composed(turned, piece.pose);
  return { x: ground.x - reach.x, y: ground.y - reach.y, angle: wrapped(turned.angle) };
}

function isAt(pose: Pose, there: Pose): boolean {
  const far = Math.max(Math.abs(pose.x - there.x), Math.abs(pose.y - there.y));
  return far <= AS_ONE && Math.abs(wrapped(pose.angle - there.angle)) <= AS_ONE;
}

/** Lays an obstacle's pieces at new ground poses; its frame goes along when all of them moved as one. */
function lay(obstacle: Draft<Obstacle>, moved: ReadonlyMap<string, Pose>): void {
  const [first] = obstacle.pieces;
  const lead = first === undefined ? undefined : moved.get(first.id);
  if (first !== undefined && lead !== undefined && moved.size === obstacle.pieces.length) {
    const frame = frameFor(first, lead);
    const asOne = obstacle.pieces.every((piece) => {
      const there = moved.get(piece.id);
      return there !== undefined && isAt(composed(frame, piece.pose), there);
    });
    if (asOne) {
      Object.assign(obstacle.pose, frame);
      return;
    }
  }
  for (const piece of obstacle.pieces) {
    const there = moved.get(piece.id);
    if (there === undefined) continue;
    const { x, y, angle } = within(obstacle.pose, there);
    Object.assign(piece.pose, { x, y, angle: wrapped(angle) });
  }
}

function withPoses(layout: Layout, poses: ReadonlyMap<string, Pose>, pieces: TiedLayout['pieces']): Layout {
  return produce(layout, ({ obstacles }) => {
    for (const obstacle of obstacles) {
      const moved = new Map<string, Pose>();
      for (const { id } of obstacle.pieces) {
        const key = pieceKey(obstacle.id, id);
        const pose = poses.get(key);
        if (pose !== undefined && pose !== pieces.get(key)?.pose) moved.set(id, pose);
      }
      lay(obstacle, moved);
    }
  });
}

/**
 * The layout with its constraints held and the wishes followed as far as they allow. A wish is the ground pose of a piece
 * (`fan-1/pole-2`) or of an obstacle's frame (`fan-1`). What hangs on a wish is solved and moves least, the rest keeps
 * the same objects; fixed pieces never move, wished or not. With no wishes everything is brought to hold.
 *
 * An obstacle that is wished whole, with no fixed piece and no constraint to others or the walls, is only carried: its
 * pieces keep their places in it to the bit. During a drag, give the layout from its beginning: the answer depends on
 * where the hand is and not on the way there.
 */
export function settled(
  layout: Layout,
  arena: Arena,
  wishes: ReadonlyMap<string, Pose>,
  { unit = 'ft' }: { readonly unit?: LengthUnit } = {},
): Settled {
  const away = carriedAway(layout, wishes);
  const start = produce(layout, ({ obstacles }) => {
    for (const obstacle of obstacles) obstacle.pose = away.get(obstacle.id) ?? obstacle.pose;
  });
  const left = new Map([...wishes].filter(([key]) => !away.has(key)));
  if (wishes.size > 0 && left.size === 0) return { kind: 'settled', layout: start, freedoms: 3 * away.size, spare: [] };
  const { problem, holdings, pieces } = tied(start, arena, pieceWishes(start, left));
  const culprit = (key: string): Culprit => {
    const holding = holdings.get(key);
    return { key, says: holding === undefined ? key : holdingSentence(holding, start, unit) };
  };
  const outcome = solved(wishes.size === 0 ? problem : touched(problem));
  switch (outcome.outcome) {
    case 'met':
      return {
        kind: 'settled',
        layout: withPoses(start, outcome.poses, pieces),
        freedoms: outcome.freedoms,
        spare: outcome.spare.map(culprit),
      };
    case 'clash': {
      const sets = someOf(outcome.culprits, (set) => someOf(set, culprit));
      const told = sets.map((set) => set.map(({ says }) => says).join(' '));
      return {
        kind: 'clash',
        sets,
        says: told
          .map((set) => `These cannot all hold: ${set} Change or drop one of them; nothing was moved.`)
          .join(' '),
      };
    }
    case 'lost': {
      const worst = someOf(outcome.worst, culprit);
      const said = worst.map(({ says }) => says).join(' ');
      return { kind: 'lost', worst, says: `No place was found where this holds: ${said} Nothing was moved.` };
    }
  }
}
