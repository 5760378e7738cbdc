/** A change-over as a routing problem: numbers only. Teams start at the truck, pick loads up, carry them, lay them. */
import type { Metres, Seconds } from '../measure/quantity.ts';
import { distance, type Point } from '../plane/point.ts';
import type { Crew, Load, Stop } from './change-over.ts';
import { USUAL_CREW } from './crew.ts';
import { handlingOf, isLong, loadAt, walkedBetween, walkedToTruck } from './loads.ts';
import type { Task } from './passes.ts';

/** How many people walk together. */
export type TeamSize = 1 | 2;

/**
 * Events are numbered 2i where task i is picked up and 2i + 1 where it is laid; the start is 2n. Matrices have a row of
 * 2n + 1 for each.
 */
export interface WalkProblem {
  /** Tasks. */
  readonly count: number;
  readonly metres: Float64Array;
  /** Seconds between two events, with empty hands and with something in them. */
  readonly empty: Float64Array;
  readonly loaded: Float64Array;
  /** Seconds that an event takes for a team of one and of two, by event. */
  readonly work: Readonly<Record<TeamSize, Float64Array>>;
  /** Of each task, 0 first, without gaps. */
  readonly pass: Int32Array;
  readonly passes: number;
  /** Of each task, in the share of one of several small things in one person's hands. */
  readonly bulk: Int32Array;
  /** What one person holds, in the same measure. */
  readonly hands: number;
}

/** For each team its events in order. */
export type Routes = readonly (readonly number[])[];

/** When each task is picked up and laid, what each team walks, and when it is done. */
export interface Schedule {
  readonly begins: readonly Seconds[];
  readonly ends: readonly Seconds[];
  readonly teamOf: readonly number[];
  readonly walked: readonly Metres[];
  readonly done: readonly Seconds[];
  readonly seconds: Seconds;
}

function placeOf(stop: Stop): Point {
  return stop.kind === 'ground' ? stop.load.pose : stop.at;
}

/** The load where it lies at a stop; undefined on the truck. */
function lyingAt(load: Load, stop: Stop): Load | undefined {
  if (stop.kind === 'truck') return undefined;
  return stop.kind === 'ground' ? stop.load : loadAt(load, stop.at);
}

/** The way under a load: of the carrier who walks further. */
function carriedWay({ load, from, to }: Task): Metres {
  const [lay, lies] = [lyingAt(load, from), lyingAt(load, to)];
  if (lay !== undefined && lies !== undefined) return Math.max(...walkedBetween(lay, lies));
  const end = lay ?? lies;
  return end === undefined ? 0 : Math.max(...walkedToTruck(end, placeOf(lay === undefined ? from : to)));
}

function liftTime({ from }: Task): Seconds {
  return from.kind === 'truck' ? USUAL_CREW.unload.value : USUAL_CREW.pickUp.value;
}

function layTime({ load, to }: Task, people: TeamSize): Seconds {
  if (to.kind === 'truck') return USUAL_CREW.stow.value;
  if (to.kind === 'aside') return USUAL_CREW.layAside.value;
  if (load.thing === 'riser') return USUAL_CREW.fit.value;
  if (!isLong(load)) return USUAL_CREW.set.value;
  return people === 2 ? USUAL_CREW.lay.two.value : USUAL_CREW.lay.alone.value;
}

/** The tasks as numbers. */
export function walkProblem(tasks: readonly Task[], { truckAt }: Crew): WalkProblem {
  const count = tasks.length;
  const places = [...tasks.flatMap(({ from, to }) => [placeOf(from), placeOf(to)]), truckAt];
  const size = places.length;
  const metres = new Float64Array(size * size);
  places.forEach((a, i) => {
    places.forEach((b, j) => {
      metres[i * size + j] = distance(a, b);
    });
  });
  for (const [i, task] of tasks.entries()) metres[2 * i * size + 2 * i + 1] = carriedWay(task);
  const { empty, loaded } = USUAL_CREW.walk;
  const work = (people: TeamSize) =>
    Float64Array.from(tasks.flatMap((task) => [liftTime(task), layTime(task, people)]));
  const hands = USUAL_CREW.atOnce.value;
  const bulk = tasks.map(({ load }) => (handlingOf(load).carriers === 'several' ? 1 : load.held.length * hands));
  return {
    count,
    metres,
    empty: metres.map((each) => each / empty.value),
    loaded: metres.map((each) => each / loaded.value),
    work: { 1: work(1), 2: work(2) },
    pass: Int32Array.from(tasks.map(({ pass }) => pass - 1)),
    passes: Math.max(0, ...tasks.map(({ pass }) => pass)),
    bulk: Int32Array.from(bulk),
    hands,
  };
}

/** Every way to make teams of one and two out of so many people; the largest teams first. */
export function divisions(people: number): readonly (readonly TeamSize[])[] {
  return Array.from({ length: Math.floor(people / 2) + 1 }, (_, singles) => {
    const pairs = Math.floor(people / 2) - singles;
    return Array.from({ length: people - pairs }, (_, team): TeamSize => (team < pairs ? 2 : 1));
  });
}

/** Whether some team can hold each load. */
export function canCarry({ bulk, hands }: WalkProblem, teams: readonly TeamSize[]): boolean {
  const most = Math.max(0, ...teams) * hands;
  return bulk.every((each) => each <= most);
}

/** When everything happens if the teams walk these routes. A pass begins when all teams have done the one before it. */
export function schedule(problem: WalkProblem, teams: readonly TeamSize[], routes: Routes): Schedule {
  const { count, metres, empty, loaded, work, pass, passes, bulk } = problem;
  const size = 2 * count + 1;
  const begins = new Array<Seconds>(count).fill(0);
  const ends = new Array<Seconds>(count).fill(0);
  const teamOf = new Array<number>(count).fill(0);
  const state = teams.map(() => ({ at: 2 * count, next: 0, held: 0, walked: 0, done: 0 }));
  let barrier: Seconds = 0;
  for (let now = 0; now < passes; now += 1) {
    let last = barrier;
    for (const [team, here] of state.entries()) {
      const route = routes[team] ?? [];
      let clock = barrier;
      for (let event = route[here.next]; event !== undefined; event = route[here.next]) {
        const task = event >> 1;
        if (pass[task] !== now) break;
        const leg = here.at * size + event;
        clock += (here.held > 0 ? loaded : empty)[leg] as number;
        here.walked += metres[leg] as number;
        if (event % 2 === 0) begins[task] = clock;
        clock += work[teams[team] as TeamSize][event] as number;
        if (event % 2 === 1) ends[task] = clock;
        here.held += (event % 2 === 0 ? 1 : -1) * (bulk[task] as number);
        teamOf[task] = team;
        here.at = event;
        here.next += 1;
        here.done = clock;
      }
      last = Math.max(last, clock);
    }
    barrier = last;
  }
  return {
    begins,
    ends,
    teamOf,
    walked: state.map(({ walked }) => walked),
    done: state.map(({ done }) => done),
    seconds: barrier,
  };
}
