/** The ways of all legs chosen together, so that the whole ride costs least. */
import type { Leg } from '../course/course.ts';
import type { PlacedObstacle } from '../course/placed.ts';
import type { Radians, Seconds } from '../measure/quantity.ts';
import type { Passage } from '../obstacles/passage.ts';
import { sameWork } from '../obstacles/same-work.ts';
import { cachedPassage } from './cached-ways.ts';
import { type LayeredGraph, shortestLayeredPath } from './layered-graph.ts';
import { type LineInputs, NO_BENDS } from './line-of-travel.ts';
import type { PassageLine } from './passage-line.ts';
import { arrivalAt, arrivalAtEnd, departureAtStart, departureFrom, type WayQuery, wayBetween } from './way-between.ts';
import { leastWayPrice, passagePrice, wayPrice } from './way-price.ts';

/**
 * What a leg has to save before it is ridden otherwise than it is chosen, or, where nothing is chosen, than by the first of
 * its passages: equal ways stay as they are, and nobody changes a way for less. Estimate.
 */
const TRIFLE: Seconds = 0.5;
/** A line that bends less than this over an obstacle asks for no lead, radians: 15°. Estimate. */
const ASKS_LEAD: Radians = Math.PI / 12;

/** A way in which a leg may be ridden. */
interface State {
  readonly passage: string;
  readonly line: PassageLine;
  /** Whether the leg is ridden so now. */
  readonly isKept: boolean;
  /** What it is charged beside what it costs. */
  readonly charge: Seconds;
}

/** A leg that can be ridden, with the ways in which it may be. */
interface Layer {
  readonly index: number;
  readonly leg: Leg;
  readonly obstacle: PlacedObstacle;
  readonly states: readonly State[];
}

/** The signed turn of the ridden line over an obstacle, radians, to the left above 0. */
function bendOf({ elements }: PassageLine): Radians {
  return elements
    .filter(({ move }) => move === 'ride')
    .flatMap(({ path }) => path)
    .reduce((sum, { length, curvature }) => sum + length * curvature, 0);
}

/** Whether the line can be ridden on the lead that the designer has chosen for the leg. */
function suitsLead({ lead, gait }: Leg, line: PassageLine): boolean {
  if (lead === undefined || gait !== 'lope') return true;
  return (lead === 'left' ? 1 : -1) * bendOf(line) > -ASKS_LEAD;
}

/** Which legs may be ridden another way: all, or those only whose way the designer left open. */
export type Choosing = 'all' | 'open';

/** The passages that keep what the leg is. Words and bends of the designer's own are made for one passage: it is kept. */
function passagesFor(leg: Leg, { obstacle }: PlacedObstacle, choosing: Choosing): readonly Passage[] {
  const ridden = obstacle.passages.find(({ id }) => id === leg.passage);
  if (ridden === undefined) return [];
  const isKept = leg.words !== undefined || leg.bends.length > 0 || (choosing === 'open' && leg.openWay === undefined);
  if (isKept) return [ridden];
  return sameWork(obstacle, ridden).filter((each) => each === ridden || each.gaits.includes(leg.gait));
}

function layerOf(
  [index, leg]: readonly [number, Leg],
  { obstacles, horse }: LineInputs,
  choosing: Choosing,
): Layer | undefined {
  const obstacle = obstacles.find((each) => each.obstacle.id === leg.obstacle);
  if (obstacle === undefined) return undefined;
  const passages = passagesFor(leg, obstacle, choosing);
  // An open way does not depend on the one that was taken before: the same layout always has the same ways.
  const preferred = leg.openWay === true ? passages[0]?.id : leg.passage;
  const states = passages.flatMap(({ id: passage }): State[] => {
    const line = cachedPassage(obstacle, { ...leg, passage }, horse);
    const isKept = passage === leg.passage;
    if (line === undefined) return [];
    const charge = passage === preferred ? 0 : TRIFLE;
    return isKept || (line.breaks.length === 0 && suitsLead(leg, line)) ? [{ passage, line, isKept, charge }] : [];
  });
  return states.some(({ isKept }) => isKept) ? { index, leg, obstacle, states } : undefined;
}

/** What a way between two lines is cached under: the same object for the same two ends. */
const owners = new WeakMap<object, WeakMap<object, object>>();

function pairOwner(from: object, to: object): object {
  const known = owners.get(from) ?? new WeakMap<object, object>();
  owners.set(from, known);
  const owner = known.get(to) ?? {};
  known.set(to, owner);
  return owner;
}

/** An edge of the graph: the way that is sought, and what it is cached under. */
interface Edge {
  readonly way: WayQuery;
  readonly owner: object;
}

/** The ride as a graph: a layer for each leg that can be ridden, and an edge for each way between two of their states. */
function rideGraph(inputs: LineInputs, layers: readonly Layer[]): LayeredGraph {
  const { start, legs, end } = inputs.layout.ride;
  const last = legs.at(-1);
  const edge = (to: number, fromState: number, toState: number): Edge | undefined => {
    const [before, layer] = [layers[to - 1], layers[to]];
    const [left, reached] = [before?.states[fromState], layer?.states[toState]];
    const from =
      before === undefined || left === undefined
        ? departureAtStart(start)
        : departureFrom(before.obstacle.obstacle.id, left.line);
    // A way that the line takes as it is ridden now is known already, by its leg or the end.
    const isRidden = (left?.isKept ?? true) && (reached?.isKept ?? true);
    if (layer !== undefined && reached !== undefined) {
      const { leg, obstacle } = layer;
      const way = {
        from,
        to: arrivalAt(obstacle.obstacle.id, reached.line),
        gait: leg.approach,
        bends: leg.bends,
        passes: leg.passes,
      };
      return { way, owner: isRidden ? leg : pairOwner(left?.line ?? start, reached.line) };
    }
    if (end === undefined || last === undefined) return undefined;
    const way = { from, to: arrivalAtEnd(end), gait: last.gait, bends: NO_BENDS };
    return { way, owner: isRidden ? end : pairOwner(left?.line ?? start, end) };
  };
  const stateOf = (layer: number, state: number) => layers[layer]?.states[state];
  return {
    layers: layers.map(({ states }) => states.length),
    stateCost(layer, state) {
      const [of, its] = [layers[layer], stateOf(layer, state)];
      if (of === undefined || its === undefined) return 0;
      return passagePrice(of.obstacle, its.line, inputs) + its.charge;
    },
    leastEdgeCost(...at) {
      const its = edge(...at);
      return its === undefined ? 0 : leastWayPrice(its.way, inputs);
    },
    edgeCost(...at) {
      const its = edge(...at);
      return its === undefined ? 0 : wayPrice(wayBetween(its.owner, its.way, inputs), its.way, inputs);
    },
  };
}

/** A leg that is better ridden another way. */
export interface BetterWay {
  /** The leg's id, and its place in the go, 0 first. */
  readonly leg: string;
  readonly index: number;
  readonly passage: string;
}

/** The best ways of a ride. */
export interface BestWays {
  /**
   * The legs that are ridden otherwise, in the order of the go; every other leg keeps its way. Legs that follow each other
   * are one group: their saving is one. Groups do not depend on each other, because a leg between them keeps its ends.
   */
  readonly groups: readonly (readonly BetterWay[])[];
  /** How many ways were sought, of how many there are. */
  readonly sought: number;
  readonly edges: number;
}

/**
 * The ways in which the legs are ridden best, chosen together: a shortest path through the graph of the legs and their
 * passages. A leg keeps its obstacle, gait, approach, chosen lead and the kind of its work (`sameWork`); a leg with bends or
 * words of the designer's own keeps its passage. A way is charged by the seconds that it takes and the router's penalties,
 * and by `TRIFLE` where it is not the one that is chosen. The choice is exact for that price, because a way depends on
 * nothing but its two ends. The clock of the whole line may differ by a little: where a gait changes on a way depends on
 * the room there, and a change of lead on the bends further on.
 */
export function bestWays(inputs: LineInputs, choosing: Choosing = 'all'): BestWays {
  const { ride } = inputs.layout;
  const layers = [...ride.legs.entries()].flatMap((leg) => layerOf(leg, inputs, choosing) ?? []);
  const counts = [1, ...layers.map(({ states }) => states.length), 1];
  const edges = counts.slice(1).reduce((sum, count, i) => sum + count * (counts[i] ?? 1), 0);
  if (layers.every(({ states }) => states.length === 1)) return { groups: [], sought: 0, edges };
  const { states, edgesSought } = shortestLayeredPath(rideGraph(inputs, layers));
  const groups: BetterWay[][] = [];
  let isGroupOpen = false;
  for (const [i, { index, leg, states: of }] of layers.entries()) {
    const chosen = of[states[i] ?? 0];
    const isChanged = chosen !== undefined && !chosen.isKept;
    if (isChanged && !isGroupOpen) groups.push([]);
    if (isChanged) groups.at(-1)?.push({ leg: leg.id, index, passage: chosen.passage });
    isGroupOpen = isChanged;
  }
  return { groups, sought: edgesSought, edges };
}
