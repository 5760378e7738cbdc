import { type Draft, produce } from 'immer';
import type { LengthUnit } from '../measure/quantity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Piece } from '../pieces/piece.ts';
import { composed, type Pose, within, wrapped } from '../plane/pose.ts';
import type { Outcome, Some, Wishes } from '../solve/problem.ts';
import { solved } from '../solve/solve.ts';
import { type Clash, type Culprit, clashOf, lostWords, someOf } from './conflict.ts';
import type { Arena, Layout } from './course.ts';
import { obstacleOf, pieceOf } from './ids.ts';
import { pieceKey } from './placed.ts';
import { fixedPieces, holdingSentence, holdingsOf } from './resolved-constraints.ts';
import { wholeObstacles } from './rigid.ts';
import { type TiedLayout, tied } from './solver-problem.ts';

/**
 * `settled`: the layout with its constraints held. `clash`: sets that cannot hold together, each with what may be dropped.
 * `lost`: no answer was found; `worst` were not met. On a clash or when lost nothing moves.
 */
export type Settled =
  | { readonly kind: 'settled'; readonly layout: Layout }
  | { readonly kind: 'clash'; readonly clashes: Some<Clash>; readonly says: string }
  | { readonly kind: 'lost'; readonly worst: Some<Culprit>; readonly says: string };

/** Pieces that moved as one to within this, metres and radians, take their obstacle's frame along. */
const AS_ONE = 1e-11;

/** Obstacles of which a layout constraint grips a piece, and those with a piece that stays. */
function heldObstacles(layout: Layout): ReadonlySet<string> {
  const gripped = holdingsOf(layout).flatMap(({ owner, grips }) =>
    owner === undefined ? grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : [])) : [],
  );
  return new Set([...gripped, ...fixedPieces(layout)].map(obstacleOf));
}

/** Wishes for whole obstacles that nothing holds: they go there as they are, with nothing to solve. */
function carriedAway(layout: Layout, wishes: Wishes): Wishes {
  const whole = [...wishes].filter(([key]) => pieceOf(key) === undefined);
  if (whole.length === 0) return new Map();
  const held = heldObstacles(layout);
  const pulled = new Set([...wishes.keys()].filter((key) => pieceOf(key) !== undefined).map(obstacleOf));
  return new Map(whole.filter(([key]) => !held.has(key) && !pulled.has(key)));
}

/** The wishes left to the solver, each for one body: that for an obstacle which is not whole is shared out to its pieces. */
function bodyWishes(layout: Layout, wishes: Wishes, whole: ReadonlySet<string>): Wishes {
  const shared = layout.obstacles.flatMap((obstacle) => {
    const frame = wishes.get(obstacle.id);
    if (frame === undefined) return [];
    if (whole.has(obstacle.id)) return [[obstacle.id, frame] as const];
    return obstacle.pieces.map((piece) => [pieceKey(obstacle.id, piece.id), composed(frame, piece.pose)] as const);
  });
  return new Map([...shared, ...[...wishes].filter(([key]) => pieceOf(key) !== undefined)]);
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
      obstacle.pose = frame;
      return;
    }
  }
  for (const piece of obstacle.pieces) {
    const there = moved.get(piece.id);
    if (there === undefined) continue;
    const { x, y, angle } = within(obstacle.pose, there);
    piece.pose = { x, y, angle: wrapped(angle) };
  }
}

function withPoses(layout: Layout, poses: ReadonlyMap<string, Pose>, { pieces, whole }: TiedLayout): Layout {
  const moved = (obstacle: Obstacle) =>
    new Map(
      obstacle.pieces.flatMap(({ id }) => {
        const key = pieceKey(obstacle.id, id);
        const pose = poses.get(key);
        return pose === undefined || pose === pieces.get(key)?.pose ? [] : [[id, pose] as const];
      }),
    );
  return produce(layout, ({ obstacles }) => {
    layout.obstacles.forEach((before, i) => {
      const obstacle = () => obstacles[i] as Draft<Obstacle>;
      if (!whole.has(before.id)) {
        const there = moved(before);
        if (there.size > 0) lay(obstacle(), there);
        return;
      }
      const frame = poses.get(before.id) ?? before.pose;
      if (frame !== before.pose) obstacle().pose = { x: frame.x, y: frame.y, angle: wrapped(frame.angle) };
    });
  });
}

const bounds = new WeakMap<Layout, { readonly arena: Arena; readonly by: Map<string, TiedLayout> }>();

/**
 * The layout as bodies and ties, with some obstacles loosened: the same object for the same layout, as in the steps of a
 * drag. Without `loosened` all are.
 */
function bound(layout: Layout, arena: Arena, loosened?: ReadonlySet<string>): TiedLayout {
  const before = bounds.get(layout);
  const known = before?.arena === arena ? before : { arena, by: new Map<string, TiedLayout>() };
  if (known !== before) bounds.set(layout, known);
  const key = loosened === undefined ? 'all' : `some ${[...loosened].join(' ')}`;
  const made = known.by.get(key) ?? tied(layout, arena, loosened && wholeObstacles(layout, loosened));
  known.by.set(key, made);
  return made;
}

/**
 * The layout with its constraints held and the wishes followed as far as they allow. A wish is the ground pose of a piece
 * (`fan-1/pole-2`) or of an obstacle's frame (`fan-1`). What hangs on a wish is solved and moves least, the rest keeps
 * the same objects; fixed pieces never move, wished or not. With no wishes everything is brought to hold.
 *
 * An obstacle moves as one rigid body, its pieces in their places in it to the bit, unless a single piece of it is wished,
 * the layout ties its pieces to one another, or its own measures do not hold; one with a fixed piece stays. Only when
 * whole obstacles cannot meet what is held are they given up, and their pieces move by their own measures alone.
 *
 * During a drag, give the layout from its beginning (the same object): the answer depends on where the hand is and not on
 * the way there.
 */
export function settled(
  layout: Layout,
  arena: Arena,
  wishes: Wishes,
  { unit = 'ft' }: { readonly unit?: LengthUnit } = {},
): Settled {
  const away = carriedAway(layout, wishes);
  const start = produce(layout, ({ obstacles }) => {
    layout.obstacles.forEach(({ id }, i) => {
      const frame = away.get(id);
      if (frame !== undefined) (obstacles[i] as Draft<Obstacle>).pose = frame;
    });
  });
  const left = new Map([...wishes].filter(([key]) => !away.has(key)));
  if (wishes.size > 0 && left.size === 0) return { kind: 'settled', layout: start };
  const pulled = [...left.keys()].filter((key) => pieceOf(key) !== undefined).map(obstacleOf);
  const whole = bound(start, arena, new Set(pulled));
  const outcome = solved(whole.problem, bodyWishes(start, left, whole.whole));
  if (outcome.outcome === 'met') return { kind: 'settled', layout: withPoses(start, outcome.poses, whole) };
  const pieces = bound(start, arena);
  const taken = whole.whole.size === 0 ? outcome : solved(pieces.problem, bodyWishes(start, left, pieces.whole));
  if (taken.outcome === 'met') return { kind: 'settled', layout: withPoses(start, taken.poses, pieces) };
  return outcome.outcome === 'clash'
    ? told(outcome, { layout: start, whole: whole.whole, unit })
    : told(taken, { layout: start, whole: pieces.whole, unit });
}

interface Telling {
  readonly layout: Layout;
  readonly whole: ReadonlySet<string>;
  readonly unit: LengthUnit;
}

function told(outcome: Exclude<Outcome, { outcome: 'met' }>, { layout, whole, unit }: Telling): Settled {
  const all = holdingsOf(layout);
  const culprit = (key: string): Culprit => {
    const holding = all.find((each) => each.key === key);
    return { key, says: holding === undefined ? key : holdingSentence(holding, layout, unit) };
  };
  const place = ({ key }: Culprit) => all.findIndex((each) => each.key === key);
  if (outcome.outcome === 'lost') {
    const worst = someOf(outcome.worst, culprit);
    return { kind: 'lost', worst, says: lostWords(worst) };
  }
  const clashes = someOf(outcome.culprits, (set) => {
    const [first, ...rest] = someOf(set, culprit).toSorted((a, b) => place(a) - place(b));
    return clashOf(first === undefined ? [culprit(set[0])] : [first, ...rest], { layout, whole });
  });
  return { kind: 'clash', clashes, says: clashes.map(({ says }) => says).join(' ') };
}
