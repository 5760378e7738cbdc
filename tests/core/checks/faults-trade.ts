/** Planted faults that no rule book here prints a number for: designers' practice asks. */
import type { Course } from '../../../src/core/course/course.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import type { Fault } from './faults.ts';
import { judged, retaped, scene, type Thing } from './scene.ts';

const box = (feet: number): Course => scene([{ kind: 'box', at: [60, 50], values: { side: feet * FOOT } }]);
const raisedBy = (inches: number) => ({ raisedStart: inches * INCH, raisedEnd: inches * INCH });
const raisedRun = (gait: 'jog' | 'lope', inches: number): Course =>
  retaped(
    scene([{ kind: 'run', at: [80, 50], values: { gap: (gait === 'jog' ? 3 : 6.5) * FOOT, gait } }]),
    ['run-1/pole-1', 'run-1/pole-2', 'run-1/pole-3', 'run-1/pole-4'],
    raisedBy(inches),
  );

/** The mule book asks for a gate and more as well: house rules ask for none of it, so that only one thing can be missed. */
const without = (course: Course, but: string): Course =>
  judged(
    course,
    'mule-association',
    Object.fromEntries(
      ['mandatory.gate', 'mandatory.poles', 'mandatory.bridge', 'mandatory.backing', 'mandatory.walk']
        .filter((name) => name !== but)
        .map((name) => [name, { least: 0, reason: 'only one is tried' }]),
    ),
  );

/** Four obstacles that a jog suits; the last as it is given. */
const jogged = (last: Thing): Course =>
  scene([
    ...[20, 60, 100].map((x): Thing => ({ kind: 'run', at: [x, 50], leg: { gait: 'jog', approach: 'jog' } })),
    last,
  ]);

/** Six jog-overs side by side, so many feet apart, each ridden the other way than the one before. */
const hairpins = (feet: number): Course =>
  scene(
    [0, 1, 2, 3, 4, 5].map(
      (i): Thing => ({
        kind: 'run',
        at: [50 + feet * i, 40 + feet * (i % 2), i % 2 === 0 ? 0 : 180],
        values: { poles: 3 },
        leg: { gait: 'jog', approach: 'jog' },
      }),
    ),
  );

export const TRADE_FAULTS: readonly Fault[] = [
  {
    check: 'box-side',
    wrong: box(4),
    right: box(6),
    says: "The inside of the box (obstacle 1) is 4'; good practice asks for at least 5' 6\".",
    cured: true,
    measured: 4 * FOOT,
  },
  {
    check: 'box-side',
    wrong: box(5),
    right: box(5.5),
    says: "The inside of the box (obstacle 1) is 5'; good practice asks for at least 5' 6\".",
    cured: true,
    measured: 5 * FOOT,
  },
  {
    check: 'raised-lope',
    wrong: raisedRun('lope', 13),
    right: raisedRun('lope', 6),
    says: 'The highest pole of the set of lope-overs (obstacle 1) is 1\' 5"; good practice asks for at most 10".',
    cured: true,
    measured: 17 * INCH,
  },
  {
    check: 'raised-jog',
    wrong: raisedRun('jog', 12),
    right: raisedRun('jog', 5),
    says: 'The highest pole of the set of jog-overs (obstacle 1) is 1\' 4"; good practice asks for at most 9".',
    cured: true,
    measured: 16 * INCH,
  },
  {
    check: 'cramped',
    wrong: hairpins(10),
    right: jogged({ kind: 'run', at: [140, 50], leg: { gait: 'jog', approach: 'jog' } }),
    says: 'On the ways between the obstacles a go loses about 7 s in turns tighter than a horse makes with ease, most on the way to the set of jog-overs (obstacle ',
    cured: false,
  },
  {
    check: 'mandatory',
    wrong: without(jogged({ kind: 'run', at: [140, 50] }), 'mandatory.walk'),
    right: without(jogged({ kind: 'bridge', at: [140, 50] }), 'mandatory.walk'),
    says: 'The course has not got a walk; the book asks for one.',
    cured: false,
    measured: 0,
  },
];
