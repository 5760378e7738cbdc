/** Hand-made observations on a run, a marker and a pole at an angle, for the tests of the sentences. */
import type { Grip, GrippedPose, ObservationKind } from '../../../src/core/constraints/constraint.ts';
import { grippedWall } from '../../../src/core/constraints/grip.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { FOOT, INCH, type LengthUnit } from '../../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Values } from '../../../src/core/pieces/params.ts';
import { wallLength } from '../../../src/core/setout/ground.ts';
import { observed } from '../../../src/core/setout/observe.ts';
import type { Observable, Observation, SetOut, SetOutCrew, SetOutPart } from '../../../src/core/setout/setout.ts';
import { type Survey, survey } from '../../../src/core/survey.ts';

/** A crew of two with two tapes of 50 ft, or alone with one. */
export function crewWith(more: Partial<SetOutCrew> = {}): SetOutCrew {
  return { people: 2, tapes: 2, tape: 50 * FOOT, marked: 'ft', rightAngle: 'board', ...more };
}

export interface Stand {
  readonly kind: string;
  readonly values?: Values;
  /** x and y in feet, heading in degrees. */
  readonly at: readonly [number, number, number];
}

/** A course of obstacles where they are put, in feet. */
export function courseOf(stands: readonly Stand[], unit: LengthUnit = 'ft'): Course {
  return stands.reduce<Course>((course, { kind, values = {}, at: [x, y, degrees] }, i) => {
    const pose = { x: x * FOOT, y: y * FOOT, angle: (degrees * Math.PI) / 180 };
    const built = buildObstacle(`${kind}-${i + 1}`, kind, values, pose);
    if ('why' in built) throw new Error(built.why);
    return addObstacle(course, built);
  }, blankCourse({ unit }));
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** A part of these obstacles: all their long pieces lettered, a step without observations for each piece. */
export function bareParts(of: Survey, obstacles: readonly [string, ...string[]]): SetOutPart {
  const pieces = of.pieces.filter(({ obstacle }) => obstacles.includes(obstacle));
  const long = pieces.filter(({ kind }) => kind.extent === 'long');
  const letters = new Map(
    long.map(({ key }, i) => [key, [LETTERS[2 * i] ?? '?', LETTERS[2 * i + 1] ?? '?'] as const] as const),
  );
  const error = { along: 0.01, across: 0.01, turn: 0.005, end: 0.02 };
  const steps = pieces.map(({ key }, i) => ({
    number: i + 1,
    piece: key,
    held: [],
    observations: [],
    checks: [],
    error,
  }));
  const [first, ...rest] = steps;
  if (first === undefined) throw new Error('a part has a piece');
  return { obstacles, steps: [first, ...rest], place: error, letters };
}

export function planOf(part: SetOutPart, crew = crewWith()): SetOut {
  return { crew, parts: [part], built: new Map(), gaps: [], worstGap: 0, walked: 0 };
}

function grippedPose(of: Survey, grip: Grip): GrippedPose {
  if ('wall' in grip) return grippedWall(of.course.arena, grip.wall);
  const piece = of.pieces.find(({ key }) => key === grip.piece);
  if (piece === undefined) throw new Error(`no piece ${grip.piece}`);
  return { pose: piece.pose, length: piece.figure.length, width: piece.figure.width, at: grip.at ?? 0.5 };
}

/** What a tape reads where the pieces lie, rounded to a quarter inch. */
export function observationOf(
  of: Survey,
  kind: ObservationKind,
  grips: readonly [Grip, Grip],
  more: Partial<Observable> = {},
): Observation {
  const observable: Observable = { kind, grips, side: 1, ...more };
  const [first, second] = grips.map((grip) => grippedPose(of, grip));
  if (first === undefined || second === undefined) throw new Error('two grips');
  const isSmall = (grip: Grip) =>
    'piece' in grip && of.pieces.find(({ key }) => key === grip.piece)?.kind.extent === 'small';
  const wall = 'wall' in grips[1] ? wallLength(of.course, grips[1].wall) : 0;
  const small = [isSmall(grips[0]), isSmall(grips[1])] as const;
  const { value } = observed(observable, { gripped: [first, second], small }, wall);
  const step = INCH / 4;
  return { ...observable, exact: value, reading: Math.round(value / step) * step, sigma: 0.01 };
}

/** Two runs, a spoke about its marker, a gate, an L and a T: something of everything that is taped. */
export const MIXED: Survey = survey(
  courseOf([
    { kind: 'run', values: { poles: 3, gap: 3 * FOOT, gait: 'jog' }, at: [40, 30, 0] },
    { kind: 'spoke', at: [90, 50, 0] },
    { kind: 'back-l', at: [140, 50, 0] },
    { kind: 'gate', at: [30, 70, 90] },
    { kind: 'raised-run', at: [150, 20, 0] },
    { kind: 'side-pass-t', at: [60, 80, 0] },
  ]),
);
