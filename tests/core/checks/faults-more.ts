/** More planted faults: the course as a whole, leads, levels, what is crooked, and what the horse sweeps over. */
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Course, Leg, Level, Ride } from '../../../src/core/course/course.ts';
import { placeAt, shiftByKeys } from '../../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../../src/core/course/edit-ride.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import type { Fault } from './faults.ts';
import { judged, retaped, scene, type Thing } from './scene.ts';

const RUN: Thing = { kind: 'run', at: [60, 50] };
const GATE: Thing = { kind: 'gate', at: [30, 50] };
const LANE: Thing = { kind: 'back-lane', at: [100, 50] };
const BRIDGE: Thing = { kind: 'bridge', at: [130, 50] };
const WATER: Thing = { kind: 'water-box', at: [155, 50] };
const raised = (inches: number) => ({ raisedStart: inches * INCH, raisedEnd: inches * INCH });
const lopeOvers: Thing = { kind: 'run', at: [80, 50], values: { gap: 6 * FOOT, gait: 'lope' } };
const walked: Partial<Leg> = { gait: 'walk', approach: 'walk' };
const serpentine = (gap: number, more = {}): Thing => ({
  kind: 'serpentine',
  at: [80, 50],
  values: { gap: gap * FOOT, gait: 'walk', ...more },
  leg: walked,
});
const by = (book: string, things: readonly Thing[]): Course => judged(scene(things), book);
const atLevel = (level: Level, things: readonly Thing[]): Course => scene(things, blankCourse({ class: { level } }));
const rode = (course: Course, change: Partial<Ride>): Course =>
  replaceLayout(course, (layout) => ({ ...layout, ride: { ...layout.ride, ...change } }));
const named = (course: Course, name: string): Course =>
  replaceLayout(course, (layout) => ({ ...layout, obstacles: layout.obstacles.map((each) => ({ ...each, name })) }));
const entered = (entries: number): Course => scene([RUN], blankCourse({ class: { entries } }));
const lopedRuns = (leads: readonly ('left' | 'right')[]): Course =>
  scene(
    leads.map((lead, i) => ({
      kind: 'run',
      at: [60 + 80 * i, 50],
      values: { gap: 6 * FOOT, gait: 'lope' },
      // Between them the horse jogs, so that it takes up the other lead without a change.
      leg: { gait: 'lope', approach: 'jog', lead },
    })),
  );
const lopedFan = (lead: 'left' | 'right'): Course =>
  changeLeg(scene([{ kind: 'fan', at: [80, 40], values: { gait: 'lope' } }]), 'leg-1', { lead, approach: 'jog' });

/** Two barrels where the poles of a lane lie; so many inches between them. */
function barrels(inches: number): Course {
  const across = 22.5 * INCH;
  const lane = scene([{ ...LANE, values: { width: inches * INCH + across - 4 * INCH } }]);
  return replaceLayout(lane, (layout) => ({
    ...layout,
    obstacles: layout.obstacles.map((obstacle) => ({
      ...obstacle,
      pieces: obstacle.pieces.map((piece) => ({
        ...piece,
        kind: 'barrel',
        values: { diameter: 23 * INCH, height: 35 * INCH },
      })),
    })),
  }));
}

/** Lope-overs whose middle lies so many feet along the arena, on the left lead. */
function lopeOversAt(x: number, leg: Partial<Leg> = {}): Thing {
  return { kind: 'run', at: [x, 50], values: { gap: 6 * FOOT, gait: 'lope' }, leg: { lead: 'left', ...leg } };
}

export const MORE_FAULTS: readonly Fault[] = [
  {
    check: 'start-end',
    wrong: rode(scene([RUN]), { start: { x: -1, y: 10, angle: 0 } }),
    right: scene([RUN]),
    says: 'The start of the go lies outside the arena; it wants free ground inside the walls.',
    cured: false,
  },
  {
    check: 'entrance-clear',
    wrong: scene([{ kind: 'scenery', at: [4, 50] }]),
    right: scene([{ kind: 'scenery', at: [14, 50] }]),
    says: "The scenery lies in the way of the entrance; good practice asks for at least 8' of free ground before it.",
    cured: true,
  },
  {
    check: 'lean',
    wrong: judged(scene([{ kind: 'serpentine', at: [80, 50] }]), 'mule-association', {
      lean: { most: Math.PI / 18, reason: 'wet ground' },
    }),
    right: scene([{ kind: 'serpentine', at: [80, 50] }]),
    says: 'The line through the marker serpentine (obstacle 1) makes a horse lean by',
    cured: true,
  },
  {
    check: 'lead',
    wrong: lopedFan('right'),
    right: lopedFan('left'),
    says: 'At the fan (obstacle 1) the right lead is ridden on a bend to the left',
    cured: true,
  },
  {
    check: 'lead-stated',
    wrong: by('stock-horse', [{ kind: 'run', at: [60, 50], values: { gap: 6 * FOOT, gait: 'lope' } }]),
    right: changeLeg(
      by('stock-horse', [{ kind: 'run', at: [60, 50], values: { gap: 6 * FOOT, gait: 'lope' } }]),
      'leg-1',
      { lead: 'left' },
    ),
    says: 'The lope to the set of lope-overs (obstacle 1) has no lead, and no bend that gives one; the book asks for the lead to be stated.',
    cured: true,
  },
  {
    check: 'rhythm',
    wrong: shiftByKeys(scene([lopeOversAt(80)]), ['run-1/pole-4'], 10 * INCH, 0),
    right: scene([lopeOversAt(80)]),
    says: "Between pole 3 of the set of lope-overs (obstacle 1) and pole 4 of the set of lope-overs (obstacle 1) a step at a lope is 6' 10\", and 6' in the others.",
    cured: true,
    measured: 82 * INCH,
  },
  {
    check: 'transition-room',
    wrong: scene([RUN, lopeOversAt(90, { approach: 'jog' })]),
    right: scene([RUN, lopeOversAt(100, { approach: 'jog' })]),
    says: 'From a jog to a lope at the set of lope-overs (obstacle 2) takes a horse ',
    cured: true,
  },
  {
    check: 'transition-room',
    wrong: scene([lopeOversAt(60), { kind: 'back-lane', at: [90, 50], leg: { approach: 'lope' } }]),
    right: scene([lopeOversAt(60), { kind: 'back-lane', at: [100, 50], leg: { approach: 'lope' } }]),
    says: 'From a lope to a halt at the back-through lane (obstacle 2) takes a horse ',
    cured: true,
  },
  {
    check: 'transition-room',
    wrong: scene([{ kind: 'bridge', at: [60, 50] }, lopeOversAt(80)]),
    right: scene([{ kind: 'bridge', at: [60, 50] }, lopeOversAt(100)]),
    says: 'From a walk to a lope at the set of lope-overs (obstacle 2) takes a horse ',
    cured: true,
  },
  {
    check: 'room-beyond',
    wrong: scene([lopeOversAt(183)]),
    right: scene([lopeOversAt(175)]),
    says: 'After the last pole of the set of lope-overs (obstacle 1) the wall is 7\' 6" away; a horse at a lope wants ',
    cured: true,
    measured: 7.5 * FOOT,
  },
  {
    check: 'room-beyond',
    wrong: scene([lopeOversAt(17)]),
    right: scene([lopeOversAt(40)]),
    says: 'Before the first pole of the set of lope-overs (obstacle 1) the wall is ',
    cured: true,
  },
  {
    // No book asks: it is only noted.
    check: 'lead-stated',
    wrong: scene([{ kind: 'run', at: [60, 50], values: { gap: 6 * FOOT, gait: 'lope' } }]),
    right: lopedRuns(['left', 'right']),
    says: 'The lope to the set of lope-overs (obstacle 1) has no lead, and no bend that gives one.',
    cured: true,
  },
  {
    check: 'one-lead',
    wrong: lopedRuns(['left', 'left']),
    right: lopedRuns(['left', 'right']),
    says: 'All lope of the course, ',
    cured: true,
  },
  {
    check: 'uneven-gap',
    wrong: placeAt(scene([RUN]), 'run-1/pole-4', { x: 65 * FOOT, y: 50 * FOOT, angle: Math.PI / 2 + 0.02 }),
    right: scene([RUN]),
    says: 'Between pole 3 of the set of jog-overs (obstacle 1) and pole 4 of the set of jog-overs (obstacle 1) the two ends differ by 3"; good practice asks for at most 1".',
    cured: true,
    measured: 12 * FOOT * Math.sin(0.02),
  },
  {
    check: 'crossing-end',
    wrong: scene([{ ...RUN, values: { line: 0.1 } }]),
    right: scene([{ ...RUN, values: { line: 0.2 } }]),
    says: "Poles 1 to 4 of the set of jog-overs (obstacle 1) are crossed as near as 1' 2½\" to their ends; good practice asks for at least 2'.",
    cured: true,
    measured: 1.2 * FOOT,
  },
  {
    check: 'pole-length',
    wrong: by('trade-press', [{ ...RUN, values: { length: 13 * FOOT } }]),
    right: by('trade-press', [RUN]),
    says: "The length of a pole of the set of jog-overs (obstacle 1) is 13'; the book asks for 3' to 12'.",
    cured: true,
    measured: 13 * FOOT,
  },
  {
    check: 'back-clearance',
    wrong: scene([{ kind: 'back-l', at: [60, 50], values: { width: 28 * INCH } }]),
    right: scene([{ kind: 'back-l', at: [60, 50], values: { width: 30 * INCH } }]),
    says: 'Turning in the back-through L (obstacle 1), hooves that stand',
    cured: true,
  },
  {
    check: 'back-barrel-width',
    wrong: barrels(30),
    right: barrels(40),
    says: 'The lane of the back-through lane (obstacle 1) is',
    cured: false,
  },
  {
    check: 'square-pole',
    wrong: retaped(by('led', [{ kind: 'square-marker', at: [80, 50] }]), ['square-marker-1/south'], {
      length: 11 * FOOT,
    }),
    right: by('led', [{ kind: 'square-marker', at: [80, 50] }]),
    says: "The length of a pole of the square with a marker (obstacle 1) is 11'; the book asks for at least 12'.",
    cured: true,
    measured: 11 * FOOT,
  },
  {
    check: 'serpentine-walk',
    wrong: shiftByKeys(by('led', [serpentine(6)]), ['serpentine-1/marker-2'], -2.5 * FOOT, 0),
    right: shiftByKeys(by('led', [serpentine(6)]), ['serpentine-1/marker-2'], -1.5 * FOOT, 0),
    says: "Base to base, the room between two markers of the marker serpentine (obstacle 1) is 3' 6\"; the book asks for at least 4'.",
    cured: true,
    measured: 3.5 * FOOT,
  },
  {
    check: 'serpentine-markers',
    wrong: by('led', [serpentine(8, { markers: 3 })]),
    right: by('led', [serpentine(8, { markers: 4 })]),
    says: 'The number of markers of the marker serpentine (obstacle 1) is 3; the book asks for at least 4.',
    cured: false,
    measured: 3,
  },
  {
    check: 'gate-height',
    wrong: by('led', [{ ...GATE, values: { height: 44 * INCH } }]),
    right: by('led', [{ ...GATE, values: { height: 48 * INCH } }]),
    says: "The height of the gate (obstacle 1) is 3' 8\"; the book asks for at least 4'.",
    cured: true,
    measured: 44 * INCH,
  },
  {
    check: 'raised-jog',
    wrong: retaped(by('ground-poles', [{ ...RUN, values: { gap: 1.3 } }]), ['run-1/pole-2'], raised(6)),
    right: retaped(by('ground-poles', [{ ...RUN, values: { gap: 1.3 } }]), ['run-1/pole-2'], raised(5)),
    says: 'The highest pole of the set of jog-overs (obstacle 1) is 10"; the book asks for at most 9".',
    cured: true,
    measured: 10 * INCH,
  },
  {
    check: 'jump-height',
    wrong: retaped(scene([lopeOvers]), ['run-1/pole-2'], raised(15)),
    right: retaped(scene([lopeOvers]), ['run-1/pole-2'], raised(14)),
    says: 'The highest pole of the set of lope-overs (obstacle 1) is 1\' 7"; the book asks for at most 1\' 6".',
    cured: true,
    measured: 19 * INCH,
  },
  {
    check: 'mandatory',
    wrong: by('ewu', [RUN, LANE, BRIDGE, WATER]),
    right: by('ewu', [GATE, RUN, LANE, BRIDGE, WATER]),
    says: 'The course has not got a gate; the book asks for one.',
    cured: false,
    measured: 0,
  },
  {
    check: 'forbidden',
    wrong: named(by('ewu', [BRIDGE]), 'the see-saw'),
    right: named(by('ewu', [BRIDGE]), 'the plank bridge'),
    says: 'The see-saw (obstacle 1) seems to be one of see-saws and moving bridges, by its name; the book forbids them.',
    cured: false,
  },
  {
    check: 'level',
    wrong: atLevel('walk-jog', [lopeOvers]),
    right: atLevel('open', [lopeOvers]),
    says: 'A walk-jog class has no obstacles at the lope; this course has 1 obstacle at the lope.',
    cured: true,
    measured: 1,
  },
  {
    check: 'gait-shown',
    wrong: by('stock-horse', [RUN]),
    right: by('stock-horse', [
      { ...RUN, at: [100, 50] },
      { ...lopeOvers, at: [180, 50] },
    ]),
    says: "There is no lope in the course; the book asks for at least 50' of it in one piece.",
    cured: false,
    measured: 0,
  },
  {
    check: 'alignment',
    wrong: scene([{ ...RUN, at: [60, 50, 2] }]),
    right: scene([{ ...RUN, at: [60, 50, 10] }]),
    says: 'The set of jog-overs (obstacle 1) lies 2° off square to the walls; less than 3° looks like a mistake.',
    cured: true,
    measured: Math.PI / 90,
  },
  {
    check: 'class-time',
    wrong: entered(900),
    right: entered(100),
    says: '900 entries at about',
    cured: false,
  },
];
