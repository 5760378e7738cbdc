/** For a limit of a rule book, the smallest course in which just that is measured, by its value in SI units. */
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { shiftByKeys } from '../../src/core/course/edit-obstacles.ts';
import type { Gait } from '../../src/core/horses/horse.ts';
import { FOOT, INCH } from '../../src/core/measure/quantity.ts';
import type { Values } from '../../src/core/pieces/params.ts';
import { survey } from '../../src/core/survey.ts';
import { retaped, scene, type Thing } from '../core/checks/scene.ts';

export interface LimitFixture {
  readonly check: string;
  /** Of several findings of the check the one that is meant. */
  readonly finding?: string;
  course(value: number): Course;
}

const at = (kind: string, values: Values, more: Partial<Thing> = {}): Course =>
  scene([{ kind, at: [100, 50], values, ...more }]);
const gaps = (gait: Gait): LimitFixture => ({
  check: 'gap-band',
  course: (gap) => at('run', { gap, gait, poles: 2 }),
});
/** Poles are 4 in thick, and that counts as height. */
const raised = (course: Course, keys: readonly string[], top: number): Course =>
  retaped(course, keys, { raisedStart: top - 4 * INCH, raisedEnd: top - 4 * INCH });
const run = (gait: Gait, poles: number): Course => {
  const gap = { walk: 22 * INCH, jog: 3 * FOOT, lope: 6 * FOOT }[gait];
  return at('run', { gap, gait, poles });
};
const sized = (check: string, kind: string, param: string, rest: Values = {}): LimitFixture => ({
  check,
  course: (value) => at(kind, { ...rest, [param]: value }),
});
const lane = (values: Values) => at('back-lane', values);
const bothPoles = ['back-lane-1/pole-1', 'back-lane-1/pole-2'];
const sidePass = at('side-pass', {});
/** Kinds refuse some sizes that a book allows: there one piece is carried to where it is measured. */
const carried = (course: Course, key: string, dx: number, dy: number): Course => shiftByKeys(course, [key], dx, dy);

const row = (count: number): Course =>
  scene(
    Array.from({ length: count }, (_, i) => ({
      kind: 'bridge',
      at: [30 + 22 * (i % 6), 30 + 35 * Math.floor(i / 6)] as const,
    })),
  );

/** Metres of line that a leg has before its obstacle. */
function room(course: Course, leg: number): number {
  const { elements } = survey(course).line;
  return elements
    .filter((each) => each.leg === leg && each.part === 'approach')
    .reduce((sum, { length }) => sum + length, 0);
}

const bridgeAndWater = scene([
  { kind: 'bridge', at: [60, 50] },
  { kind: 'water-box', at: [110, 50] },
]);

/** One obstacle straight ahead of the start: as much is shown as there is line. */
function shown(gait: 'jog' | 'lope', value: number): Course {
  const course = at('run', { gap: 6 * FOOT, gait, poles: 2 }, { leg: { gait, approach: gait } });
  const known = survey(course).line.shown.find((each) => each.gait === gait)?.longest ?? { from: 0, to: 0 };
  return shiftByKeys(course, ['run-1'], value - (known.to - known.from), 0);
}

export const LIMIT_FIXTURES: Readonly<Record<string, LimitFixture>> = {
  'gap.walk': gaps('walk'),
  'gap.walk.recommended': { check: 'gap-band', course: (gap) => at('run', { gap, gait: 'walk', poles: 2 }) },
  'gap.jog': gaps('jog'),
  'gap.lope': gaps('lope'),
  'raised.walk.several': {
    check: 'raised-walk-several',
    course: (top) => raised(run('walk', 3), ['run-1/pole-1', 'run-1/pole-2'], top),
  },
  'raised.walk.single': { check: 'raised-walk-single', course: (top) => raised(run('walk', 1), ['run-1/pole-1'], top) },
  'raised.jog': { check: 'raised-jog', course: (top) => raised(run('jog', 3), ['run-1/pole-2'], top) },
  'raised.lope': { check: 'raised-lope', course: (top) => raised(run('lope', 3), ['run-1/pole-2'], top) },
  'jump.height': { check: 'jump-height', course: (top) => raised(run('lope', 3), ['run-1/pole-2'], top) },
  'poles.count': { check: 'pole-count', course: (poles) => run('jog', poles) },
  'pole.length': {
    check: 'pole-length',
    course: (length) => retaped(at('run', { poles: 1 }), ['run-1/pole-1'], { length }),
  },
  'back.width': { check: 'back-width', course: (width) => lane({ width }) },
  'back.raised.width': {
    check: 'back-raised-width',
    course: (width) => retaped(lane({ width }), bothPoles, { raisedStart: 0.1, raisedEnd: 0.1 }),
  },
  'back.raised.height': { check: 'back-raised-height', course: (top) => raised(lane({}), bothPoles, top) },
  'side-pass.parallel': {
    check: 'side-pass-room',
    course: (gap) =>
      carried(at('side-pass-between', { gap: 30 * INCH }), 'side-pass-between-1/pole-2', 0, gap - 30 * INCH),
  },
  'side-pass.height': { check: 'side-pass-height', course: (top) => raised(sidePass, ['side-pass-1/pole-1'], top) },
  'serpentine.walk': {
    check: 'serpentine-walk',
    course: (gap) =>
      carried(at('serpentine', { gap: 6 * FOOT, gait: 'walk' }), 'serpentine-1/marker-2', gap - 6 * FOOT, 0),
  },
  'serpentine.jog': {
    check: 'serpentine-spacing',
    course: (gap) => carried(at('serpentine', { gap: 11 * FOOT }), 'serpentine-1/marker-2', gap - 11 * FOOT, 0),
  },
  'serpentine.markers': {
    check: 'serpentine-markers',
    course: (markers) => at('serpentine', { gap: 8 * FOOT, gait: 'walk', markers }),
  },
  'box.side': sized('box-side', 'box', 'side', { length: 12 * FOOT }),
  'square.pole': {
    check: 'square-pole',
    course: (length) => retaped(at('square-marker', {}), ['square-marker-1/south'], { length }),
  },
  'gate.opening': {
    check: 'gate-opening',
    course: (opening) => retaped(at('gate', {}), ['gate-1/gate'], { opening }),
  },
  'gate.height': sized('gate-height', 'gate', 'height'),
  'bridge.width': sized('bridge-width', 'bridge', 'width'),
  'bridge.length': sized('bridge-length', 'bridge', 'length'),
  'water-box.width': sized('water-box-width', 'water-box', 'width'),
  'water-box.length': sized('water-box-length', 'water-box', 'length'),
  'obstacle.room': {
    check: 'obstacle-room',
    course: (wanted) => shiftByKeys(bridgeAndWater, ['water-box-1'], wanted - room(bridgeAndWater, 1), 0),
  },
  'obstacles.count': { check: 'obstacle-count', course: row },
  'class.entries': {
    check: 'class-size',
    course: (entries) => scene([{ kind: 'bridge', at: [100, 50] }], blankCourse({ class: { entries } })),
  },
  'shown.jog': { check: 'gait-shown', finding: 'gait-shown:jog', course: (value) => shown('jog', value) },
  'shown.lope': { check: 'gait-shown', finding: 'gait-shown:lope', course: (value) => shown('lope', value) },
};
