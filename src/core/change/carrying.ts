import type { Metres } from '../measure/quantity.ts';
import { type Assignment, assignment } from './assignment.ts';
import type { ChangeOver, Crew, Load, Stop } from './change-over.ts';
import { USUAL_CREW } from './crew.ts';
import { liesRight, metresBetween, offBy, walkedToTruck } from './loads.ts';

/** A load, where it is taken from, and where it goes. `metres` are those of all its carriers. */
export interface Errand {
  /** As it lies in the end; of one that goes to the truck, as it lay. */
  readonly load: Load;
  readonly from: Stop;
  readonly to: Stop;
  readonly metres: Metres;
}

/** Which thing goes where, with the least carrying. */
export interface Carrying {
  readonly stays: ChangeOver['stays'];
  readonly errands: readonly Errand[];
  readonly metres: Metres;
  readonly cost: Metres;
  /** The dual bound. */
  readonly leastCost: Metres;
}

const CHARGE = USUAL_CREW.charge.value;

function sum(values: readonly number[]): number {
  return values.reduce((all, each) => all + each, 0);
}

/** What it costs to bring a thing from one place to another of its type: nothing when it lies right already. */
export function carryingCost(from: Load, to: Load): Metres {
  return liesRight(from, to) ? 0 : CHARGE + metresBetween(from, to);
}

/** What it costs to bring a thing to the truck, or from it. */
export function truckCost(load: Load, truckAt: Crew['truckAt']): Metres {
  return CHARGE + sum(walkedToTruck(load, truckAt));
}

/**
 * The costs of one type: a row for each thing that lies there, a column for each place. Where things are over, columns
 * stand for the truck, and where places are, rows do. It is enough to send so many to the truck and fetch so many as
 * the counts differ by: to send one away and to fetch another for a place costs no less than to carry it there, as
 * each carrier's way by the truck is no shorter than the straight one (triangle inequality), and it is picked up twice.
 */
function costsOf(from: readonly Load[], to: readonly Load[], truckAt: Crew['truckAt']): number[][] {
  const spare = Math.max(0, from.length - to.length);
  const wanted = Math.max(0, to.length - from.length);
  const fetched = to.map((place) => truckCost(place, truckAt));
  return [
    ...from.map((load) => {
      const sent = truckCost(load, truckAt);
      return [...to.map((place) => carryingCost(load, place)), ...Array.from({ length: spare }, () => sent)];
    }),
    ...Array.from({ length: wanted }, () => fetched),
  ];
}

function byType(loads: readonly Load[]): ReadonlyMap<string, readonly Load[]> {
  const groups = new Map<string, Load[]>();
  for (const load of loads) {
    const group = groups.get(load.type);
    if (group === undefined) groups.set(load.type, [load]);
    else group.push(load);
  }
  return groups;
}

/** A row's thing and a column's place, either of which may be the truck, as an errand; undefined where it stays. */
function errandOf(load: Load | undefined, place: Load | undefined, truckAt: Crew['truckAt']): Errand | undefined {
  const truck: Stop = { kind: 'truck', at: truckAt };
  if (load === undefined) {
    if (place === undefined) return undefined;
    const metres = sum(walkedToTruck(place, truckAt));
    return { load: place, from: truck, to: { kind: 'ground', load: place }, metres };
  }
  const from: Stop = { kind: 'ground', load };
  if (place === undefined) return { load, from, to: truck, metres: sum(walkedToTruck(load, truckAt)) };
  if (liesRight(load, place)) return undefined;
  return { load: place, from, to: { kind: 'ground', load: place }, metres: metresBetween(load, place) };
}

function dualBound({ rowPotentials, columnPotentials }: Assignment): number {
  return sum(rowPotentials) + sum(columnPotentials);
}

/** The choice of which thing goes where that costs least: each type is chosen for itself, as nothing joins two types. */
export function leastCarrying(from: readonly Load[], to: readonly Load[], truckAt: Crew['truckAt']): Carrying {
  const [lying, wanted] = [byType(from), byType(to)];
  const stays: ChangeOver['stays'][number][] = [];
  const errands: Errand[] = [];
  let [cost, leastCost] = [0, 0];
  for (const type of [...new Set([...lying.keys(), ...wanted.keys()])].sort()) {
    const [things, places] = [lying.get(type) ?? [], wanted.get(type) ?? []];
    const chosen = assignment(costsOf(things, places, truckAt));
    cost += chosen.total;
    leastCost += dualBound(chosen);
    for (const [row, column] of chosen.pairs) {
      const [load, place] = [things[row], places[column]];
      const errand = errandOf(load, place, truckAt);
      if (errand !== undefined) errands.push(errand);
      else if (load !== undefined && place !== undefined)
        stays.push({ from: load, to: place, off: offBy(load, place) });
    }
  }
  return { stays, errands, metres: sum(errands.map(({ metres }) => metres)), cost, leastCost };
}
