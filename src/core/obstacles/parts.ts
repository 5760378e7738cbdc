/** What several kinds of obstacles are made from: their poles, their parameters, and the stations on them. */
import type { Constraint, Grip } from '../constraints/constraint.ts';
import { GAITS, type Gait } from '../horses/horse.ts';
import { STOCK_HORSE } from '../horses/horses.ts';
import { minTurnRadius as leastTurnOf, tightestTurnRadius } from '../horses/turns.ts';
import { feet, inches, type Metres, type Radians } from '../measure/quantity.ts';
import {
  type ChoiceParam,
  choiceValue,
  completeValues,
  type NumberParam,
  type Param,
  type Params,
  type Values,
} from '../pieces/params.ts';
import type { Piece } from '../pieces/piece.ts';
import { pieceKind } from '../pieces/pieces.ts';
import { type Pose, toLocal, toWorld } from '../plane/pose.ts';
import { type Ring, ringBounds } from '../plane/ring.ts';
import type { Move, Pivot, Station } from './passage.ts';

/** How far before a mouth or an edge the middle of the hoof base stands when all four feet are clear of it. Estimate. */
export const CLEAR_DISTANCE: Metres = 1;
/** From the middle of the horse to what the rider works with a hand: half a body and an arm. Estimate. */
export const BESIDE: Metres = 0.75;

export function degrees(value: number): Radians {
  return (value * Math.PI) / 180;
}

/** Length and thickness of an obstacle's poles. 12 ft, 4 in: common practice, no source. */
export const POLE_PARAMS = {
  length: { kind: 'length', label: 'Pole length', usual: feet(12), least: feet(4), most: feet(16) },
  thickness: { kind: 'length', label: 'Pole thickness', usual: inches(4), least: inches(2), most: inches(8) },
} as const satisfies Params;

/** The gap of poles that the line crosses on a curve. */
export function curveGapParam(usual: Metres, least: Metres): NumberParam {
  const says = 'Inside to inside, where the line crosses.';
  return { kind: 'length', label: 'Gap', says, usual, least, most: feet(14) };
}

/** Where the line of a curve crosses its poles. */
export function curveLineParam(bounds: Pick<NumberParam, 'usual' | 'least' | 'most'>): NumberParam {
  const says = 'How far along the poles the horse goes, from their inner ends.';
  return { kind: 'fraction', label: 'Line at', says, ...bounds };
}

/** The side of a marker's square foot. 1 ft: common practice, no source. */
export const MARKER_BASE = {
  kind: 'length',
  label: 'Marker base',
  usual: feet(1),
  least: inches(6),
  most: feet(2),
} as const satisfies Param;

/** The gait that an obstacle is set for. */
export function gaitParam(usual: Gait): ChoiceParam {
  const says = 'The gait that it is set for.';
  return { kind: 'choice', label: 'Gait', says, usual, options: { walk: 'Walk', jog: 'Jog', lope: 'Lope' } };
}

/**
 * The usual gap of a row of poles for the gait that is given. American Mule Association, rule 216: walk-overs 20 to 24 in,
 * jog-overs 3 to 3 ft 6 in, lope-overs 6 to 7 ft.
 */
export function gapForGait(given: Values): Values {
  const gaps: Readonly<Record<string, Metres>> = { walk: feet(2), jog: feet(3), lope: feet(6) };
  const gap = gaps[String(given.gait)];
  return gap === undefined ? {} : { gap };
}

export function chosenGait(values: Values): Gait {
  const chosen = choiceValue(values, 'gait');
  const gait = GAITS.find((each) => each === chosen);
  if (gait === undefined) throw new Error(`chosenGait: expected one of ${GAITS.join(', ')}, got ${chosen}`);
  return gait;
}

/** What the horse can do in this gait: the smallest radius of its line, metres. */
export function stockMinTurnRadius(gait: Gait): Metres {
  return leastTurnOf(STOCK_HORSE, gait);
}

/** What no horse can do in this gait, ridden or led: the line bends on no smaller radius, metres. */
export function stockTightestTurnRadius(gait: Gait): Metres {
  return tightestTurnRadius(STOCK_HORSE, gait);
}

/** For a refusal that a slower gait would cure: "Or ride it at a jog as it lies." */
export function slowerGaitHint(values: Values, fits: (tried: Values) => boolean): string {
  const slower = GAITS.slice(0, GAITS.indexOf(chosenGait(values))).toReversed();
  const gait = slower.find((each) => fits({ ...values, gait: each }));
  return gait === undefined ? '' : ` Or ride it at a ${gait} as it lies.`;
}

/** The gait that was chosen, then the others that can be ridden on the radius, slow to fast. */
export function gaitsOn(values: Values, radius: Metres = Number.POSITIVE_INFINITY): readonly Gait[] {
  const chosen = chosenGait(values);
  return [chosen, ...GAITS.filter((gait) => gait !== chosen && stockMinTurnRadius(gait) <= radius)];
}

/** A piece with all its values; what is not given is usual. */
export function pieceOfKind(id: string, kind: string, given: Values, pose: Pose): Piece {
  const known = pieceKind(kind);
  if (known === undefined) throw new Error(`pieceOfKind: there is no piece kind "${kind}"`);
  return { id, kind, values: completeValues(known.params, given), pose: withoutNegativeZero(pose) };
}

/** Adding 0 turns −0 into 0: files and mirrors know no −0. */
function withoutNegativeZero({ x, y, angle }: Pose): Pose {
  return { x: x + 0, y: y + 0, angle: angle + 0 };
}

export function constraintOf(
  id: string,
  kind: string,
  grips: readonly Grip[],
  with_: { readonly hold?: number; readonly side?: 1 | -1 } = {},
): Constraint {
  return { id, kind, grips, ...with_ };
}

export function crossStation(piece: string, fraction: number, way: 1 | -1): Station {
  return { kind: 'cross', piece, fraction, way };
}

export function poseStation(piece: string, pose: Pose, move: Exclude<Move, 'turn'> = 'ride'): Station {
  return { kind: 'reach', piece, pose: withoutNegativeZero(pose), move };
}

/** A pose in the obstacle's frame, anchored to one of its pieces. */
export function poseStationOn(piece: Piece, pose: Pose, move: Exclude<Move, 'turn'> = 'ride'): Station {
  return poseStation(piece.id, toLocal(piece.pose, pose), move);
}

export function turnStation(by: number, about?: Pivot): Station {
  return { kind: 'turn', by: by + 0, ...(about === undefined ? {} : { about }) };
}

/** Each item with the one after it. */
export function pairs<T>(items: readonly T[]): readonly (readonly [T, T])[] {
  return items.slice(1).map((item, i) => [items[i] as T, item] as const);
}

/** What a piece covers, in the frame of its obstacle. */
export function footprintOf({ kind, values, pose }: Piece): Ring {
  return (pieceKind(kind)?.figure(values).footprint ?? []).map((point) => toWorld(pose, point));
}

/** The pieces moved together so that the middle of what they cover is the origin. */
export function centredPieces(pieces: readonly Piece[]): Piece[] {
  const { minX, minY, maxX, maxY } = ringBounds(pieces.flatMap(footprintOf));
  const dx = (minX + maxX) / 2;
  const dy = (minY + maxY) / 2;
  return pieces.map((piece) => ({
    ...piece,
    pose: withoutNegativeZero({ x: piece.pose.x - dx, y: piece.pose.y - dy, angle: piece.pose.angle }),
  }));
}

/** How far from where the axes of two poles cross their ends lie, when the ends touch: `between` is their angle. */
export function cornerSetback(thickness: Metres, between: number): Metres {
  return thickness / 2 / Math.sin(between / 2);
}

/**
 * Two poles whose ends touch in a corner that opens evenly to both: ends level, and no distance between. The angle is a
 * constraint of its own.
 */
export function cornerConstraints(
  id: string,
  [a, atA]: readonly [string, number],
  [b, atB]: readonly [string, number],
): Constraint[] {
  const grips = [
    { piece: a, at: atA },
    { piece: b, at: atB },
  ];
  return [constraintOf(`level-${id}`, 'ends-level', grips), constraintOf(`corner-${id}`, 'apart', grips, { hold: 0 })];
}
