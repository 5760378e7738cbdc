/** Obstacles made by hand: pieces in any position, ridden in an order that a person chose. */
import type { Gait } from '../../horses/horse.ts';
import { feet } from '../../measure/quantity.ts';
import type { Piece } from '../../pieces/piece.ts';
import { distance, type Point } from '../../plane/point.ts';
import { ORIGIN, type Pose, toLocal } from '../../plane/pose.ts';
import { ringBounds } from '../../plane/ring.ts';
import type { Obstacle } from '../obstacle.ts';
import { crossStation, footprintOf, pairs } from '../parts.ts';
import type { Passage, Station } from '../passage.ts';

/** A piece where it lies on the ground. */
export interface PieceOnGround {
  readonly piece: Piece;
  readonly pose: Pose;
}

/**
 * Up to these distances from middle to middle a walk, then a jog is usual; beyond, a lope. They lie between the
 * published bands.
 */
const WALKED = feet(2.8);
const JOGGED = feet(4.8);

/** The gait that poles so far from each other are likely laid for, then the others. */
function likelyGaits(poles: readonly Piece[]): readonly Gait[] {
  const ways = pairs(poles).map(([a, b]) => distance(a.pose, b.pose));
  const shortest = Math.min(...ways);
  const all: readonly Gait[] = ['walk', 'jog', 'lope'];
  const usual = shortest <= WALKED || ways.length === 0 ? 'walk' : shortest <= JOGGED ? 'jog' : 'lope';
  return [usual, ...all.filter((gait) => gait !== usual)];
}

/**
 * Over poles in their middles, in the order of their ids, each in the direction of travel: the chord from the pole before
 * to the pole after. A single pole is crossed towards its +y side. Ids of what is no pole, or not there, are passed over;
 * absent when none is left.
 */
export function passageThrough(
  pieces: readonly Piece[],
  order: readonly string[],
  title = 'over the poles',
): Passage | undefined {
  const poles = order.flatMap((id) => pieces.filter((piece) => piece.id === id && piece.kind === 'pole'));
  if (poles.length === 0) return undefined;
  const stations = poles.map((pole, i): Station => {
    const from: Point = (poles[i - 1] ?? pole).pose;
    const to: Point = (poles[i + 1] ?? pole).pose;
    const ahead = Math.cos(pole.pose.angle) * (to.y - from.y) - Math.sin(pole.pose.angle) * (to.x - from.x);
    return crossStation(pole.id, 0.5, ahead < 0 ? -1 : 1);
  });
  return { id: 'forward', title, gaits: likelyGaits(poles), stations };
}

/** The same way, ridden from its other end. */
function reversed(passage: Passage): Passage {
  const stations = passage.stations
    .toReversed()
    .map((station): Station => (station.kind === 'cross' ? { ...station, way: station.way === 1 ? -1 : 1 } : station));
  return { ...passage, id: 'return', title: `${passage.title} from the other end`, stations };
}

/** Both ways over pieces in the order of their ids; none where there is no pole. */
export function passagesThrough(
  pieces: readonly Piece[],
  order: readonly string[],
  title?: string,
): readonly Passage[] {
  const forward = passageThrough(pieces, order, title);
  return forward === undefined ? [] : [forward, reversed(forward)];
}

/**
 * An obstacle of pieces as they lie on the ground, whatever they were part of: its frame at their middle, the pieces named
 * anew by kind in the order given, ridden over its poles in that order. Nothing is held. Throws when there is no piece.
 */
export function freeObstacle(id: string, lying: readonly PieceOnGround[], name: string): Obstacle {
  if (lying.length === 0) throw new Error(`freeObstacle: ${id} needs at least one piece`);
  const { minX, minY, maxX, maxY } = ringBounds(lying.flatMap(({ piece, pose }) => footprintOf({ ...piece, pose })));
  const frame: Pose = { ...ORIGIN, x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const counts = new Map<string, number>();
  const pieces = lying.map(({ piece, pose }): Piece => {
    const number = (counts.get(piece.kind) ?? 0) + 1;
    counts.set(piece.kind, number);
    return { ...piece, id: `${piece.kind}-${number}`, pose: toLocal(frame, pose) };
  });
  return {
    id,
    kind: 'free',
    name,
    values: {},
    pose: frame,
    side: 1,
    pieces,
    constraints: [],
    passages: passagesThrough(
      pieces,
      pieces.map((piece) => piece.id),
    ),
  };
}
