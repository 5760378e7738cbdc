/** Which held measures of an obstacle are one of its parameters. */
import { INCH } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Param, Values } from '../pieces/params.ts';
import { buildKind } from './build.ts';
import type { Built, Obstacle } from './obstacle.ts';
import { obstacleKind } from './obstacles.ts';

/** A held measure that follows one parameter: `hold` is what the values give, and changes by `slope` with the parameter. */
export interface DerivedHold {
  readonly param: string;
  readonly hold: number;
  readonly slope: number;
}

/** A smaller change of a hold is rounding, metres or radians. */
const SAME = 1e-9;
const DEGREE = Math.PI / 180;

function built(obstacle: Obstacle, values: Values): Built | undefined {
  const kind = obstacleKind(obstacle.kind);
  const result = kind === undefined ? undefined : buildKind(kind, values);
  return result?.kind === 'built' ? result : undefined;
}

function holdsOf({ constraints }: Built): ReadonlyMap<string, number> {
  return new Map(constraints.flatMap(({ id, hold }) => (hold === undefined ? [] : [[id, hold] as const])));
}

/** How far a parameter is moved to see what follows it. */
function stepOf(param: Param): number {
  if (param.kind === 'length') return INCH / 4;
  if (param.kind === 'angle') return DEGREE / 4;
  return param.kind === 'fraction' ? 0.01 : 0;
}

/** By constraint id, how fast each hold changes with the parameter; undefined where neither way builds. */
function slopesOf(obstacle: Obstacle, key: string, param: Param): ReadonlyMap<string, number> | undefined {
  const { values } = obstacle;
  const value = values[key];
  const base = built(obstacle, values);
  if (base === undefined || typeof value !== 'number') return undefined;
  const before = holdsOf(base);
  for (const step of [stepOf(param), -stepOf(param)]) {
    const next = step === 0 ? undefined : built(obstacle, { ...values, [key]: value + step });
    if (next === undefined) continue;
    const after = holdsOf(next);
    return new Map([...before].map(([id, hold]) => [id, ((after.get(id) ?? hold) - hold) / step]));
  }
  return undefined;
}

/**
 * The held measures that follow one length or angle of the obstacle and nothing else, by constraint id, as its values
 * give them. Found by building: each number is moved a little, and what moves with it is its.
 */
export const derivedHolds = memoizeByIdentity((obstacle: Obstacle): ReadonlyMap<string, DerivedHold> => {
  const base = built(obstacle, obstacle.values);
  const kind = obstacleKind(obstacle.kind);
  if (base === undefined || kind === undefined) return new Map();
  const slopes = Object.entries(kind.params).flatMap(([key, param]) => {
    const found = slopesOf(obstacle, key, param);
    return found === undefined ? [] : [{ key, kind: param.kind, found }];
  });
  const derived = new Map<string, DerivedHold>();
  for (const [id, hold] of holdsOf(base)) {
    const movers = slopes.filter(({ found }) => Math.abs(found.get(id) ?? 0) > SAME);
    const [only, more] = movers;
    if (only === undefined || more !== undefined || only.kind === 'fraction') continue;
    derived.set(id, { param: only.key, hold, slope: only.found.get(id) ?? 1 });
  }
  return derived;
});
