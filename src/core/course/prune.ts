import type { Grip } from '../constraints/constraint.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Passage, Station } from '../obstacles/passage.ts';
import type { Layout, Leg } from './course.ts';
import { chosenBy } from './keys.ts';
import { pieceKey } from './placed.ts';
import { kept, mapped } from './sharing.ts';

function stands(station: Station, pieces: ReadonlySet<string>): boolean {
  return station.kind === 'turn' || pieces.has(station.piece);
}

/** Whether a ride can begin with this station. */
function opens(station: Station | undefined): boolean {
  return station?.kind === 'cross' || (station?.kind === 'reach' && station.move === 'ride');
}

function pruned(passage: Passage, pieces: ReadonlySet<string>): Passage | undefined {
  const stations = kept(passage.stations, (station) => stands(station, pieces));
  if (stations === passage.stations) return passage;
  return opens(stations[0]) ? { ...passage, stations } : undefined;
}

/**
 * The obstacle without these pieces, without the constraints that grip them, and without the stations on them. A
 * passage that loses its beginning goes; undefined when no piece is left.
 */
function withoutPieces(obstacle: Obstacle, gone: ReadonlySet<string>): Obstacle | undefined {
  const pieces = kept(obstacle.pieces, (piece) => !gone.has(piece.id));
  if (pieces === obstacle.pieces) return obstacle;
  if (pieces.length === 0) return undefined;
  const left = new Set(pieces.map((piece) => piece.id));
  return {
    ...obstacle,
    pieces,
    constraints: kept(obstacle.constraints, (each) =>
      each.grips.every((grip) => !('piece' in grip) || left.has(grip.piece)),
    ),
    passages: obstacle.passages.flatMap((passage) => pruned(passage, left) ?? []),
  };
}

/** The layout without what the keys name, and without what hung on it: legs, constraints, stations. */
export function withoutKeys(layout: Layout, keys: readonly string[]): Layout {
  const { whole, pieces } = chosenBy(keys);
  const staying = kept(layout.obstacles, (obstacle) => !whole.has(obstacle.id));
  const thinned = mapped<Obstacle | undefined>(staying, (obstacle) => {
    const gone = obstacle && pieces.get(obstacle.id);
    return obstacle && gone ? withoutPieces(obstacle, gone) : obstacle;
  });
  const obstacles = thinned === staying ? staying : thinned.filter((obstacle) => obstacle !== undefined);
  return obstacles === layout.obstacles ? layout : tidied({ ...layout, obstacles });
}

/**
 * The layout with legs and constraints only on what exists. A leg whose passage is gone takes the obstacle's first;
 * a gait that its passage does not allow becomes the passage's usual one.
 */
export function tidied(layout: Layout): Layout {
  const byId = new Map(layout.obstacles.map((obstacle) => [obstacle.id, obstacle]));
  const keys = new Set(layout.obstacles.flatMap((each) => each.pieces.map((piece) => pieceKey(each.id, piece.id))));
  const held = (grip: Grip) => !('piece' in grip) || keys.has(grip.piece);
  const constraints = kept(layout.constraints, (constraint) => constraint.grips.every(held));
  const rideable = kept(layout.ride.legs, (leg) => (byId.get(leg.obstacle)?.passages.length ?? 0) > 0);
  const legs = mapped(rideable, (leg) => onPassage(leg, byId.get(leg.obstacle)?.passages ?? []));
  const ride = legs === layout.ride.legs ? layout.ride : { ...layout.ride, legs };
  return constraints === layout.constraints && ride === layout.ride ? layout : { ...layout, constraints, ride };
}

/** The leg on a passage that exists, in a gait that the passage allows. */
export function onPassage(leg: Leg, passages: readonly Passage[]): Leg {
  const passage = passages.find((each) => each.id === leg.passage) ?? passages[0];
  if (passage === undefined) return leg;
  const gait = passage.gaits.includes(leg.gait) ? leg.gait : (passage.gaits[0] ?? leg.gait);
  return passage.id === leg.passage && gait === leg.gait ? leg : { ...leg, passage: passage.id, gait };
}
