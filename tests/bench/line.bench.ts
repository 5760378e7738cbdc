/** The line of travel: ways against a search that tries everything, and how quick and steady it is while things are moved. */

import { seededRandom } from '../../src/core/change/seeded-random.ts';
import { type Course, currentLayout } from '../../src/core/course/course.ts';
import { replaceLayout } from '../../src/core/course/layouts.ts';
import { STOCK_HORSE } from '../../src/core/horses/horses.ts';
import { minTurnRadius, preferredTurnRadius } from '../../src/core/horses/turns.ts';
import { FOOT } from '../../src/core/measure/quantity.ts';
import { type Path, pathLength } from '../../src/core/plane/path.ts';
import { approach } from '../../src/core/ride/approach.ts';
import { tightestRadius } from '../../src/core/ride/connection.ts';
import { PENALTY } from '../../src/core/ride/plain-paths.ts';
import { dragSurvey, survey } from '../../src/core/survey.ts';
import { STARTERS } from '../core/ride/courses.ts';
import { latticeLength } from '../core/ride/lattice.ts';
import { smallArena } from '../core/ride/small-arenas.ts';
import { percentile, type Row, row } from './row.ts';

const ARENAS = 200;
const EASY = preferredTurnRadius(STOCK_HORSE, 'jog');
const LEAST = minTurnRadius(STOCK_HORSE, 'jog');
/** Length and missing radius at their price. The oracle does not say how far it turns: circling is left out on both sides. */
function priced(path: Path): number {
  const radius = Math.min(EASY, Math.max(LEAST, tightestRadius(path)));
  return pathLength(path) + PENALTY.radius * (EASY - radius);
}

function arenas(): Row[] {
  let [longer, givenUp, compared, worst] = [0, 0, 0, 0];
  const took: number[] = [];
  const anchorName = 'allowed';
  for (let seed = 1; seed <= ARENAS; seed += 1) {
    const { small, obstacles, begin, finish } = smallArena(seed);
    const entrance = { wall: 'west', at: 1, width: 1 } as const;
    const arena = { title: 'Small', length: small.length, width: small.width, entrance };
    const context = { arena, obstacles, horse: STOCK_HORSE, fromEnd: undefined, toEnd: undefined };
    const ends = { straightAfter: false, straightBefore: false, bends: [] };
    const start = performance.now();
    const way = approach({ from: begin, to: finish, gait: 'jog', horse: STOCK_HORSE, ...ends }, context);
    took.push(performance.now() - start);
    const best = latticeLength(begin, finish, { radius: LEAST, small });
    if (best === undefined) continue;
    compared += 1;
    if (way.blocked !== undefined) givenUp += 1;
    const most = best + PENALTY.radius * (EASY - LEAST);
    const over = priced(way.path) - most;
    if (over > 1 && over > 0.05 * most) longer += 1;
    worst = Math.max(worst, over);
  }
  const count = (name: string, ours: number) => row(name, `of ${compared}`, { ours, anchor: 0, anchorName });
  return [
    count('ways dearer by over 5 % and 1 m than by trying everything', longer),
    count('ways given up where trying everything finds one', givenUp),
    row('the most that a way is dearer', 'm', { ours: worst, anchor: 1, anchorName }),
    ...[0.5, 0.99, 1].map((share) =>
      row(`one way from cold, p${share * 100}`, 'ms', { ours: percentile(took, share), anchor: 100, anchorName }),
    ),
  ];
}

function movedBy(course: Course, which: number, by: { x: number; y: number; angle: number }): Course {
  return replaceLayout(course, (layout) => ({
    ...layout,
    obstacles: layout.obstacles.map((each, i) =>
      i === which
        ? { ...each, pose: { x: each.pose.x + by.x, y: each.pose.y + by.y, angle: each.pose.angle + by.angle } }
        : each,
    ),
  }));
}

/** The course twice, side by side in an arena of double length, ridden one after the other: as many poles as a truck has. */
function doubled(of: Course): Course {
  const { length } = of.arena;
  const course = { ...of, arena: { ...of.arena, length: 2 * length } };
  return replaceLayout(course, (layout) => ({
    ...layout,
    obstacles: [
      ...layout.obstacles,
      ...layout.obstacles.map((each) => ({
        ...each,
        id: `${each.id}-again`,
        pose: { ...each.pose, x: each.pose.x + length },
      })),
    ],
    constraints: [],
    ride: {
      ...layout.ride,
      legs: [
        ...layout.ride.legs,
        ...layout.ride.legs.map((leg) => ({
          ...leg,
          id: `${leg.id}-again`,
          obstacle: `${leg.obstacle}-again`,
          bends: [],
        })),
      ],
    },
  }));
}

function poleCount(of: Course): number {
  return survey(of).pieces.filter(({ piece }) => piece.kind === 'pole').length;
}

/** Random moves and turns of whole obstacles, one after the other: things come to lie across each other. */
function walk(name: string, of: Course): Row[] {
  const roll = seededRandom(11);
  let course = of;
  survey(course);
  const took: number[] = [];
  for (let step = 0; step < 400; step += 1) {
    const { obstacles } = currentLayout(course);
    const which = Math.floor(roll() * obstacles.length);
    const by = { x: (roll() - 0.5) * 4, y: (roll() - 0.5) * 4, angle: (roll() - 0.5) * 0.8 };
    const next = movedBy(course, which, by);
    const at = currentLayout(next).obstacles[which]?.pose;
    const { length, width } = course.arena;
    if (at === undefined || at.x < 1 || at.y < 1 || at.x > length - 1 || at.y > width - 1) continue;
    course = next;
    const start = performance.now();
    survey(course);
    took.push(performance.now() - start);
  }
  const goal = { 0.5: 2, 0.99: 8, 1: 8 } as const;
  return ([0.5, 0.99, 1] as const).map((share) =>
    row(`${name}: ${took.length} random edits, p${share * 100}`, 'ms', {
      ours: percentile(took, share),
      anchor: goal[share],
      anchorName: 'goal',
    }),
  );
}

/** Drags of 20 ft in inches: how often the line jumps by more than 5 ft though both sides are clear. */
function drags(name: string, of: Course): Row[] {
  const roll = seededRandom(5);
  const begun = of;
  let [jumps, back] = [0, 0];
  const took: number[] = [];
  const rests: number[] = [];
  for (let drag = 0; drag < 20; drag += 1) {
    let course = begun;
    let surveyed = survey(course);
    let before = surveyed.line;
    const which = Math.floor(roll() * currentLayout(course).obstacles.length);
    const angle = roll() * 2 * Math.PI;
    const by = { x: (Math.cos(angle) * FOOT) / 12, y: (Math.sin(angle) * FOOT) / 12, angle: 0 };
    const at: { step: number; leg: number; change: number }[] = [];
    for (let step = 0; step < 240; step += 1) {
      course = movedBy(course, which, by);
      const start = performance.now();
      surveyed = dragSurvey(course, surveyed);
      took.push(performance.now() - start);
      const { line } = surveyed;
      for (const [i, element] of line.elements.entries()) {
        const was = before.elements[i];
        if (element.part === 'obstacle' || was === undefined) continue;
        const blocked = [...line.breaks, ...before.breaks].some(({ leg }) => leg === element.leg);
        const change = element.length - was.length;
        if (blocked || Math.abs(change) <= 5 * FOOT) continue;
        jumps += 1;
        const returns = at.some(
          (other) => other.leg === element.leg && step - other.step <= 5 && other.change * change < 0,
        );
        if (returns) back += 1;
        at.push({ step, leg: element.leg, change });
      }
      before = line;
    }
    const start = performance.now();
    survey(course);
    rests.push(performance.now() - start);
  }
  return [
    row(`${name}: jumps of over 5 ft in 20 drags of 20 ft`, 'jumps', { ours: jumps, anchor: 20, anchorName: 'goal' }),
    row(`${name}: of those that go back within five steps`, 'jumps', { ours: back, anchor: 0, anchorName: 'goal' }),
    ...[0.5, 0.99, 1].map((share) =>
      row(`${name}: a step of a drag, p${share * 100}`, 'ms', {
        ours: percentile(took, share),
        anchor: 8,
        anchorName: 'goal',
      }),
    ),
    row(`${name}: at rest after a drag, worst`, 'ms', { ours: percentile(rests, 1), anchor: 100, anchorName: 'goal' }),
  ];
}

export async function rows(): Promise<Row[]> {
  const kinds = STARTERS.find(([file]) => file === 'larkhollow-kinds-1.course.json');
  if (kinds === undefined) throw new Error('line.bench: the starter larkhollow-kinds-1 is gone');
  const large = doubled(kinds[1]);
  const largeName = `twice kinds-1, ${poleCount(large)} poles`;
  return [
    ...arenas(),
    ...walk(largeName, large),
    ...drags(largeName, large),
    ...STARTERS.flatMap(([file, of]) => {
      const name = file.replace('.course.json', '');
      return [...walk(name, of), ...drags(name, of)];
    }),
  ];
}
