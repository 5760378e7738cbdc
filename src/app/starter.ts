import { blankCourse } from '../core/course/blank.ts';
import type { Course } from '../core/course/course.ts';
import { added } from '../core/course/edits.ts';
import { FOOT, INCH } from '../core/measure/quantity.ts';
import { made } from '../core/obstacles/made.ts';
import type { Values } from '../core/pieces/params.ts';
import { pose } from '../core/plane/pose.ts';

const DEGREE = Math.PI / 180;

/** What lies where, in feet from the south-west corner. */
const SET: readonly { kind: string; values?: Values; x: number; y: number; turned?: number }[] = [
  { kind: 'gate', x: 40, y: 20 },
  { kind: 'run', values: { gait: 'jog' }, x: 90, y: 18 },
  { kind: 'fan', x: 165, y: 30, turned: 0 },
  { kind: 'bridge', x: 150, y: 78, turned: 180 },
  { kind: 'back-l', x: 95, y: 72 },
  { kind: 'run', values: { gait: 'walk', poles: 5, gap: 22 * INCH }, x: 40, y: 78, turned: 180 },
];

/** The course that a first visitor finds, until a seed takes its place. */
export function starter(): Course {
  const blank = blankCourse({
    title: 'Larkhollow morning trail',
    class: { show: 'Larkhollow Fairground', title: 'Novice trail', level: 'novice', date: '2027-05-08', entries: 14 },
  });
  return SET.reduce<Course>((course, { kind, values = {}, x, y, turned = 0 }) => {
    const count = course.layouts[0].obstacles.filter((each) => each.kind === kind).length + 1;
    const obstacle = made(`${kind}-${count}`, kind, values, pose(x * FOOT, y * FOOT, turned * DEGREE));
    return 'why' in obstacle ? course : added(course, obstacle);
  }, blank);
}
