/** Which held measures of an obstacle are one of its parameters. */
import { INCH } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Param, Values } from '../pieces/params.ts';
import { buildKind } from './build.ts';
import type { Built, Obstacle, ObstacleKind } from './obstacle.ts';
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

function built(kind: ObstacleKind, values: Values): Built | undefined {
  const result = buildKind(kind, values);
  return result.kind === 'built' ? result : undefined;
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
function slopesOf(
  kind: ObstacleKind,
  values: Values,
  { key, param }: { readonly key: string; readonly param: Param },
): ReadonlyMap<string, number> | undefined {
  const value = values[key];
  const base = built(kind, values);
  if (base === undefined || typeof value !== 'number') return undefined;
  const before = holdsOf(base);
  for (const step of [stepOf(param), -stepOf(param)]) {
    const next = step === 0 ? undefined : built(kind, { ...values, [key]: value + step });
    if (next === undefined) continue;
    const after = holdsOf(next);
    return new Map([...before].map(([id, hold]) => [id, ((after.get(id) ?? hold) - hold) / step]));
  }
  return undefined;
}

const byValues = memoizeByIdentity((values: Values, kind: ObstacleKind): ReadonlyMap<string, DerivedHold> => {
  const base = built(kind, values);
  if (base === undefined) return new Map();
  const slopes = Object.entries(kind.params).flatMap(([key, param]) => {
    const found = slopesOf(kind, values, { key, param });
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

const NONE: ReadonlyMap<string, DerivedHold> = new Map();

/**
 * The held measures that follow one length or angle of the obstacle and nothing else, by constraint id, as its values
 * give them. Found by building: each number is moved a little, and what moves with it is its. The same map while the
 * obstacle's values are the same, so a drag does not build again.
 */
export function derivedHolds({ kind, values }: Obstacle): ReadonlyMap<string, DerivedHold> {
  const known = obstacleKind(kind);
  return known === undefined ? NONE : byValues(values, known);
}
