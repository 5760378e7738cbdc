/** One planted fault for every check, with the same course set right: what is found, how it is told, whether a fix is offered. */
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { placeAt } from '../../../src/core/course/edit-obstacles.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import type { Values } from '../../../src/core/pieces/params.ts';
import { judged, retaped, scene, type Thing } from './scene.ts';

export interface Fault {
  readonly check: string;
  readonly wrong: Course;
  readonly right: Course;
  readonly says: string;
  /** Whether at least one fix is offered. */
  readonly cured: boolean;
  readonly measured?: number;
}

const RUN: Thing = { kind: 'run', at: [60, 50] };
const run = (values: Values): Course => scene([{ ...RUN, values }]);
const press = (things: readonly Thing[]): Course => judged(scene(things), 'trade-press');
const loped = { gait: 'lope', approach: 'lope' } as const;
const entered = (entries: number, things: readonly Thing[]): Course =>
  scene(things, blankCourse({ class: { entries } }));

const bridge = (values: Values): Thing => ({ kind: 'bridge', at: [60, 50], values });
const lane = (values: Values): Thing => ({ kind: 'back-lane', at: [60, 50], values });
const bothPoles = ['back-lane-1/pole-1', 'back-lane-1/pole-2'];
const raised = (inches: number): Values => ({ raisedStart: inches * INCH, raisedEnd: inches * INCH });
const walkOvers: Thing = { kind: 'run', at: [60, 50], values: { gap: 22 * INCH, gait: 'walk' } };
const onePole: Thing = { kind: 'run', at: [60, 50], values: { poles: 1, gait: 'walk' } };
const lopeOvers: Thing = { kind: 'run', at: [80, 50], values: { gap: 6 * FOOT, gait: 'lope' } };
const row = (count: number): Course =>
  scene(Array.from({ length: count }, (_, i) => ({ kind: 'bridge', at: [20 + i * 20, 50] as const })));
const SHORT_EVENING = { 'obstacle.seconds': { most: 15, reason: 'short evening' } };
const plant = (x: number, y: number): Thing => ({ kind: 'scenery', at: [x, y] });

export const FAULTS: readonly Fault[] = [
  {
    check: 'outside',
    wrong: scene([{ ...RUN, at: [60, 3] }]),
    right: scene([{ ...RUN, at: [60, 8] }]),
    says: "The set of jog-overs (obstacle 1) reaches 3' beyond the south wall; everything has to lie inside the arena.",
    cured: true,
    measured: -3 * FOOT,
  },
  {
    check: 'overlap',
    wrong: scene([RUN, { kind: 'run', at: [70, 60] }]),
    right: scene([RUN, { kind: 'run', at: [85, 50] }]),
    says: 'Pole 4 of the set of jog-overs (obstacle 1) and pole 1 of the set of jog-overs (obstacle 2) lie in one place; pieces may touch but not overlap.',
    cured: true,
  },
  {
    check: 'gap-band',
    wrong: run({ gap: 5.5 * FOOT }),
    right: run({ gap: 6.5 * FOOT }),
    says: "Gaps 1 to 3 of the set of jog-overs (obstacle 1) are 5' 6\"; a jog asks for 3' to 3' 6\" or a whole multiple.",
    cured: true,
    measured: 5.5 * FOOT,
  },
  {
    check: 'back-width',
    wrong: scene([lane({ width: 28 * INCH })]),
    right: scene([lane({ width: 30 * INCH })]),
    says: 'The lane of the back-through lane (obstacle 1) is 2\' 4"; the book asks for at least 2\' 6".',
    cured: true,
    measured: 28 * INCH,
  },
  {
    check: 'back-raised-width',
    wrong: retaped(scene([lane({ width: 32 * INCH })]), bothPoles, raised(6)),
    right: retaped(scene([lane({ width: 34 * INCH })]), bothPoles, raised(6)),
    says: 'The lane of the back-through lane (obstacle 1) is 2\' 8"; the book asks for at least 2\' 10".',
    // Built anew, the poles would lie on the ground: there the book asks for less.
    cured: true,
    measured: 32 * INCH,
  },
  {
    check: 'back-raised-height',
    wrong: judged(retaped(scene([lane({})]), bothPoles, raised(24)), 'trade-press'),
    right: judged(retaped(scene([lane({})]), bothPoles, raised(12)), 'trade-press'),
    says: "The highest pole of the back-through lane (obstacle 1) is 2' 4\"; the book asks for at most 2'.",
    cured: true,
    measured: 28 * INCH,
  },
  {
    check: 'bridge-width',
    wrong: scene([bridge({ width: 34 * INCH })]),
    right: scene([bridge({ width: 36 * INCH })]),
    says: "The width of the bridge (obstacle 1) is 2' 10\"; the book asks for at least 3'.",
    cured: true,
    measured: 34 * INCH,
  },
  {
    check: 'bridge-length',
    wrong: press([bridge({ length: 5 * FOOT })]),
    right: press([bridge({ length: 6 * FOOT })]),
    says: "The length of the bridge (obstacle 1) is 5'; the book asks for at least 6'.",
    cured: true,
    measured: 5 * FOOT,
  },
  {
    check: 'water-box-width',
    wrong: press([{ kind: 'water-box', at: [60, 50], values: { width: 26 * INCH } }]),
    right: press([{ kind: 'water-box', at: [60, 50] }]),
    says: 'The width of the water box (obstacle 1) is 2\' 2"; the book asks for at least 2\' 6".',
    cured: true,
    measured: 26 * INCH,
  },
  {
    check: 'water-box-length',
    wrong: press([{ kind: 'water-box', at: [60, 50], values: { length: 7 * FOOT } }]),
    right: press([{ kind: 'water-box', at: [60, 50] }]),
    says: "The length of the water box (obstacle 1) is 7'; the book asks for 4' to 6'.",
    cured: true,
    measured: 7 * FOOT,
  },
  {
    check: 'gate-opening',
    wrong: scene([{ kind: 'gate', at: [60, 50], values: { opening: 5 * FOOT } }]),
    right: scene([{ kind: 'gate', at: [60, 50] }]),
    says: "The opening of the gate (obstacle 1) is 5'; the book asks for at least 6'.",
    cured: true,
    measured: 5 * FOOT,
  },
  {
    check: 'box-side',
    wrong: press([{ kind: 'box', at: [60, 50], values: { side: 4.5 * FOOT } }]),
    right: press([{ kind: 'box', at: [60, 50] }]),
    says: "The inside of the box (obstacle 1) is 4' 6\"; the book asks for 5' to 6'.",
    cured: true,
    measured: 4.5 * FOOT,
  },
  {
    check: 'serpentine-spacing',
    wrong: scene([{ kind: 'serpentine', at: [60, 50], values: { gap: 9 * FOOT } }]),
    right: scene([{ kind: 'serpentine', at: [60, 50] }]),
    says: "Base to base, the room between two markers of the marker serpentine (obstacle 1) is 9'; the book asks for at least 10'.",
    cured: true,
    measured: 9 * FOOT,
  },
  {
    check: 'side-pass-room',
    wrong: placeAt(
      scene([{ kind: 'side-pass-between', at: [60, 50], values: { gap: 24 * INCH } }]),
      'side-pass-between-1/pole-2',
      { x: 60 * FOOT, y: 50 * FOOT + 12 * INCH, angle: 0 },
    ),
    right: scene([{ kind: 'side-pass-between', at: [60, 50], values: { gap: 24 * INCH } }]),
    says: "The room between the poles of the side pass between poles (obstacle 1) is 1' 10\"; the book asks for at least 2'.",
    cured: true,
    measured: 22 * INCH,
  },
  {
    check: 'side-pass-height',
    wrong: retaped(scene([{ kind: 'side-pass', at: [60, 50] }]), ['side-pass-1/pole-1'], raised(24)),
    right: retaped(scene([{ kind: 'side-pass', at: [60, 50] }]), ['side-pass-1/pole-1'], raised(18)),
    says: "The highest pole of the side pass (obstacle 1) is 2' 4\"; the book asks for at most 2'.",
    cured: true,
    measured: 28 * INCH,
  },
  {
    check: 'raised-walk-several',
    wrong: retaped(scene([walkOvers]), ['run-1/pole-1', 'run-1/pole-3'], raised(8)),
    right: retaped(scene([walkOvers]), ['run-1/pole-1', 'run-1/pole-3'], raised(6)),
    says: 'The highest pole of the set of walk-overs (obstacle 1) is 1\'; the book asks for at most 10".',
    cured: true,
    measured: 12 * INCH,
  },
  {
    check: 'raised-walk-single',
    wrong: retaped(scene([onePole]), ['run-1/pole-1'], raised(14)),
    right: retaped(scene([onePole]), ['run-1/pole-1'], raised(12)),
    says: 'The raised pole of the walk-over (obstacle 1) is 1\' 6"; the book asks for at most 1\' 4".',
    cured: true,
    measured: 18 * INCH,
  },
  {
    check: 'raised-lope',
    wrong: judged(retaped(scene([lopeOvers]), ['run-1/pole-2'], raised(8)), 'trade-press'),
    // Raised at one end only, its middle is 8 in up.
    right: judged(retaped(scene([lopeOvers]), ['run-1/pole-2'], { raisedStart: 8 * INCH }), 'trade-press'),
    says: 'The highest pole of the set of lope-overs (obstacle 1) is 1\'; the book asks for at most 10".',
    cured: true,
    measured: 12 * INCH,
  },
  {
    check: 'fan-inner-gap',
    wrong: scene([{ kind: 'fan', at: [60, 50], values: { innerGap: 10 * INCH } }]),
    right: scene([{ kind: 'fan', at: [60, 50] }]),
    says: 'At the inner ends, the gap of the fan (obstacle 1) is 10"; good practice asks for at least 1\'.',
    cured: true,
    measured: 10 * INCH,
  },
  {
    check: 'marker-clear',
    wrong: scene([{ kind: 'spoke', at: [60, 50], values: { clear: 18 * INCH } }]),
    right: scene([{ kind: 'spoke', at: [60, 50] }]),
    says: "The room between marker and pole in the spoke (obstacle 1) is 1' 6\"; good practice asks for at least 2'.",
    cured: true,
    measured: 18 * INCH,
  },
  {
    check: 'obstacle-count',
    wrong: row(3),
    right: row(4),
    says: 'The course has 3 obstacles; the book asks for 4 to 8.',
    cured: false,
    measured: 3,
  },
  {
    check: 'pole-count',
    wrong: press([{ ...RUN, values: { poles: 3 } }]),
    right: press([RUN]),
    says: 'The most poles are in the set of jog-overs (obstacle 1), 3; the book asks for at least 4 in one obstacle.',
    cured: false,
    measured: 3,
  },
  {
    check: 'obstacle-room',
    wrong: scene([bridge({}), { kind: 'water-box', at: [76, 50] }]),
    right: scene([bridge({}), { kind: 'water-box', at: [90, 50] }]),
    says: "The water box (obstacle 2) comes 2' 5¼\" of line after the bridge (obstacle 1); good practice asks for at least 10'.",
    cured: false,
  },
  {
    check: 'obstacle-time',
    wrong: judged(scene([lane({ length: 16 * FOOT })]), 'mule-association', SHORT_EVENING),
    right: judged(scene([bridge({})]), 'mule-association', SHORT_EVENING),
    says: 'The back-through lane (obstacle 1) takes about',
    cured: false,
  },
  {
    check: 'class-size',
    wrong: entered(26, [RUN]),
    right: entered(25, [RUN]),
    says: 'The class has 26 entries; the book asks for at most 25, and splits it above that.',
    cured: false,
    measured: 26,
  },
  {
    check: 'slow-obstacle',
    wrong: entered(35, [{ kind: 'side-pass', at: [60, 50] }]),
    right: entered(30, [{ kind: 'side-pass', at: [60, 50] }]),
    says: 'The side pass (obstacle 1) takes 18 s of a go of 32 s; with 35 entries that is 10 min 41 s of the class, and good practice asks for at most 32 entries with so much.',
    cured: false,
    measured: 35,
  },
  {
    check: 'truck',
    wrong: scene([
      { ...RUN, values: { poles: 9 } },
      { kind: 'run', at: [110, 50], values: { poles: 9 } },
    ]),
    right: scene([
      { ...RUN, values: { poles: 8 } },
      { kind: 'run', at: [110, 50], values: { poles: 8 } },
    ]),
    says: 'The course uses 18 of poles, 12 ft; the truck has 16, so 2 are missing.',
    cured: false,
    measured: 18,
  },
  {
    check: 'turn',
    wrong: replaceLayout(scene([{ kind: 'fan', at: [60, 50], values: { length: 8 * FOOT } }]), (layout) => ({
      ...layout,
      obstacles: layout.obstacles.map((obstacle) => ({
        ...obstacle,
        passages: obstacle.passages.map((passage) => ({ ...passage, gaits: ['jog', 'lope'] as const })),
      })),
      ride: { ...layout.ride, legs: layout.ride.legs.map((leg) => ({ ...leg, ...loped })) },
    })),
    right: scene([{ kind: 'fan', at: [60, 50], values: { length: 8 * FOOT } }]),
    says: 'The line through the fan (obstacle 1) turns on a radius of',
    cured: true,
  },
  {
    check: 'skew',
    wrong: placeAt(run({}), 'run-1/pole-1', { x: 54.5 * FOOT, y: 50 * FOOT, angle: Math.PI / 2 + 0.5 }),
    right: run({}),
    says: 'Pole 1 of the set of jog-overs (obstacle 1) is crossed',
    cured: true,
  },
  {
    check: 'landings',
    // One landing of 3 ft 4 in would be even at a jog; this pony takes less.
    wrong: { ...run({ gap: 3.5 * FOOT }), horse: 'pony' },
    right: run({ gap: 3.5 * FOOT }),
    says: 'Gaps 1 to 3 of the set of jog-overs (obstacle 1) are 3\' 6" along the line; at a jog the landings come out even at',
    cured: true,
    measured: 3.5 * FOOT,
  },
  {
    check: 'line-crosses',
    wrong: scene([{ ...RUN, at: [110, 50] }, plant(110, 50.2)]),
    right: scene([{ ...RUN, at: [110, 50] }, plant(110, 60)]),
    says: 'The line through the set of jog-overs (obstacle 1) goes through the scenery, which is not being ridden there.',
    cured: true,
  },
  {
    check: 'line-in-arena',
    wrong: scene([{ kind: 'mailbox', at: [60, 3] }]),
    right: scene([{ kind: 'mailbox', at: [60, 10] }]),
    says: 'The way to the mailbox (obstacle 1) comes to 2½" from the south wall; half a horse needs 1\'.',
    cured: true,
  },
  {
    check: 'breaks',
    wrong: scene([{ kind: 'mailbox', at: [60, 2.5] }]),
    right: run({}),
    says: 'Number 1 begins outside the arena.',
    cured: false,
  },
];
