import type { Param, Params, Value, Values } from '../pieces/params.ts';
import { completeValues } from '../pieces/params.ts';
import { mirrorImage, type Pose } from '../plane/pose.ts';
import type { Built, Infeasible, Obstacle, ObstacleKind } from './obstacle.ts';
import { obstacleKind } from './obstacles.ts';
import type { Station } from './passage.ts';
import { infeasible, lengthWords } from './refusal-words.ts';
import { swappedHands } from './wording.ts';

/** A value as a person reads it, without a course's unit. */
function valueWords(param: Param, value: Value): string {
  if (typeof value !== 'number') return `"${value}"`;
  switch (param.kind) {
    case 'length':
      return lengthWords(value);
    case 'angle':
      return `${Number(((value * 180) / Math.PI).toFixed(1))}°`;
    default:
      return String(Number(value.toFixed(4)));
  }
}

/** What is wrong with one value, and the nearest that is right. */
function outOfBounds(param: Param, value: Value): { readonly why: string; readonly nearest: Value } | undefined {
  if (param.kind === 'choice') {
    const known = Object.keys(param.options);
    if (typeof value === 'string' && known.includes(value)) return undefined;
    return { why: `${param.label}: ${valueWords(param, value)} is none of ${known.join(', ')}.`, nearest: param.usual };
  }
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    return { why: `${param.label}: ${valueWords(param, value)} is not a number.`, nearest: param.usual };
  }
  const nearest = Math.min(param.most, Math.max(param.least, param.kind === 'count' ? Math.round(value) : value));
  // A bound that was reached by arithmetic is still reached.
  if (Math.abs(nearest - value) <= 1e-9) return undefined;
  if (param.kind === 'count' && !Number.isInteger(value)) {
    return { why: `${param.label}: ${value} is not a whole number.`, nearest };
  }
  const bounds = `${valueWords(param, param.least)} to ${valueWords(param, param.most)}`;
  return { why: `${param.label}: ${valueWords(param, value)} is outside ${bounds}.`, nearest };
}

/** The values of a kind that lie outside its bounds, told together; undefined when all are inside. */
function boundsFault(params: Params, values: Values): Infeasible | undefined {
  const faults = Object.entries(params).flatMap(([key, param]) => {
    const fault = outOfBounds(param, values[key] ?? param.usual);
    return fault === undefined ? [] : [{ key, ...fault }];
  });
  if (faults.length === 0) return undefined;
  const nearest = Object.fromEntries(faults.map(({ key, nearest }) => [key, nearest]));
  return infeasible(faults.map(({ why }) => why).join(' '), nearest);
}

/**
 * The given values, and for the rest what is usual with them, such as a gap for the gait. Where nothing but a gait is given
 * and the usual numbers cannot be ridden in it, the nearest that can. A value that is given is never changed.
 */
export function usualValues(kind: ObstacleKind, given: Values): Values {
  const values = { ...completeValues(kind.params, given), ...kind.usual?.(given), ...given };
  if (boundsFault(kind.params, values) !== undefined) return values;
  const result = kind.build(values);
  if (result.kind === 'built' || result.nearest === undefined) return values;
  const isOnlyGait = Object.keys(given).every((key) => key === 'gait') && !Object.hasOwn(result.nearest, 'gait');
  return isOnlyGait ? { ...values, ...result.nearest } : values;
}

/**
 * Builds a kind from some of its values; the rest are usual. Every value is looked at first, and one outside its bounds
 * is refused by its label; the nearest values are always such that they build.
 */
export function buildKind(kind: ObstacleKind, given: Values): Built | Infeasible {
  const values = usualValues(kind, given);
  const fault = boundsFault(kind.params, values);
  if (fault === undefined) return kind.build(values);
  const inside = kind.build({ ...values, ...fault.nearest });
  if (inside.kind === 'built') return fault;
  return inside.nearest === undefined
    ? infeasible(fault.why, undefined)
    : infeasible(fault.why, { ...fault.nearest, ...inside.nearest });
}

/** Adding 0 turns −0 into 0, so that mirroring twice gives back the same numbers. */
function mirroredPose(local: Pose): Pose {
  const { x, y, angle } = mirrorImage(local);
  return { x, y: y + 0, angle: angle + 0 };
}

/** A station in the mirror image of its obstacle; twice gives back the same. */
export function mirroredStation(station: Station): Station {
  switch (station.kind) {
    case 'cross':
      return { ...station, way: station.way === 1 ? -1 : 1 };
    case 'reach':
      return { ...station, pose: mirroredPose(station.pose) };
    case 'turn':
      return { ...station, by: -station.by + 0 };
  }
}

/** The mirror image of what a kind builds, about the x axis of its frame. Twice gives back the same. */
export function mirroredBuilt(original: Built): Built {
  return {
    ...original,
    pieces: original.pieces.map((piece) => ({ ...piece, pose: mirroredPose(piece.pose) })),
    constraints: original.constraints.map((constraint) =>
      constraint.side === undefined ? constraint : { ...constraint, side: constraint.side === 1 ? -1 : 1 },
    ),
    passages: original.passages.map((passage) => ({
      ...passage,
      title: swappedHands(passage.title),
      stations: passage.stations.map(mirroredStation),
    })),
  };
}

/**
 * An obstacle as it is stored: built from some values of a kind (the rest are usual), its frame at `pose`; for side −1
 * the mirror image. Infeasible when a value is out of bounds, the kind refuses, or there is no such kind.
 */
export function buildObstacle(
  id: string,
  kind: string,
  given: Values,
  pose: Pose,
  side: 1 | -1 = 1,
): Obstacle | Infeasible {
  const known = obstacleKind(kind);
  if (known === undefined) return infeasible(`There is no obstacle of the kind "${kind}".`, undefined);
  const result = buildKind(known, given);
  if (result.kind === 'infeasible') return result;
  const { pieces, constraints, passages } = side === 1 ? result : mirroredBuilt(result);
  return { id, kind, values: usualValues(known, given), pose, side, pieces, constraints, passages };
}
