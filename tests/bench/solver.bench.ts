/**
 * The solver beside planegcs, the constraint solver of an open CAD program, on one scene in one run: a pole that is fixed and
 * a chain of poles, each parallel to the one before with its point at two-thirds 72 in off that one's line; the last one is
 * dragged along in 60 steps. planegcs keeps its system from step to step (`set_sketch_param`), each size in a fresh instance.
 * Then drags that bend, and a whole course of sixty poles from the pointer to the survey.
 */
import { blankCourse } from '../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../src/core/course/course.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { replaceLayout } from '../../src/core/course/layouts.ts';
import { placedObstacle } from '../../src/core/course/placed.ts';
import { solveLayout } from '../../src/core/course/solve-layout.ts';
import { FOOT, INCH } from '../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import type { Problem } from '../../src/core/solve/problem.ts';
import { solve } from '../../src/core/solve/solve.ts';
import { survey } from '../../src/core/survey.ts';
import { chain, fan, LENGTH, pole, run, THICKNESS, tie, wishing } from '../core/solve/poles.ts';
import { drawnPole, planegcs, pointOn } from '../published/planegcs.ts';
import { percentile, type Row, row, timed } from './row.ts';

const FRAME = { anchor: 1000 / 60, anchorName: 'a frame at 60 Hz' };
const STEPS = 60;
const OFF = 72 * INCH;
const STEP = 0.02;
const AT = 2 / 3;

const bodyAt = (i: number) => ({ x: 0.8 * (i % 2), y: i * OFF, angle: 0 });

/** Our side of the scene: the same two equations a pole as planegcs has. */
function offLines(count: number): Problem {
  const names = Array.from({ length: count }, (_, i) => `p${i}`);
  return {
    bodies: names.map((id, i) => pole(id, bodyAt(i), i === 0 ? { weight: Number.POSITIVE_INFINITY } : {})),
    constraints: names.slice(1).flatMap((id, i) => {
      const pair = [id, names[i] ?? ''];
      return [tie('parallel', pair), tie('beside', pair, { at: AT, hold: OFF - THICKNESS })];
    }),
  };
}

/** Milliseconds of each step of a drag of the last body; the drag is repeated so that the machine is warm. */
function dragged(scene: Problem, by: { x: number; y: number }, rounds: number): number[] {
  const last = scene.bodies[scene.bodies.length - 1];
  if (last === undefined) throw new Error('the scene has no bodies');
  const { x, y, angle } = last.pose;
  const times = timed(
    STEPS * (rounds + 1),
    (i) => wishing(scene, last.id, { x: x + by.x * (i % STEPS), y: y + by.y * (i % STEPS), angle }),
    ([problem, wishes]) => {
      const { outcome } = solve(problem, wishes);
      if (outcome !== 'met') throw new Error(`the drag came out as ${outcome}`);
    },
  );
  return times.slice(STEPS);
}

async function oracleDragged(count: number, rounds: number): Promise<number[]> {
  const last = bodyAt(count - 1);
  const oracle = await planegcs((sketch) => {
    sketch.param('x', last.x + LENGTH / 2);
    sketch.param('y', last.y);
    const poles = Array.from({ length: count }, (_, i) =>
      drawnPole(sketch, bodyAt(i), { length: LENGTH, fixed: i === 0 }),
    );
    poles.slice(1).forEach((each, i) => {
      const before = poles[i] ?? each;
      const { x, y } = bodyAt(i + 1);
      sketch.add({ type: 'parallel', l1_id: before.line, l2_id: each.line });
      const grip = pointOn(sketch, each, { x: x + (AT - 0.5) * LENGTH, y, fromEnd: AT * LENGTH });
      sketch.add({ type: 'p2l_distance', p_id: grip, l_id: before.line, distance: OFF });
    });
    const end = poles[count - 1]?.to ?? '';
    sketch.add({ type: 'coordinate_x', p_id: end, x: 'x', temporary: true });
    sketch.add({ type: 'coordinate_y', p_id: end, y: 'y', temporary: true });
  });
  oracle.solve();
  const times = timed(
    STEPS * rounds,
    (i) => last.x + LENGTH / 2 + STEP * (i % STEPS),
    (x) => {
      oracle.wrapper.set_sketch_param('x', x);
      if (!oracle.solve()) throw new Error(`planegcs lost the chain of ${count}`);
    },
  );
  oracle.close();
  return times;
}

async function besideOracle(): Promise<Row[]> {
  const rows: Row[] = [];
  const ours = new Map<number, number>();
  for (const [count, rounds] of [
    [6, 10],
    [20, 3],
    [60, 1],
  ] as const) {
    const mine = dragged(offLines(count), { x: STEP, y: 0 }, 20);
    const theirs = await oracleDragged(count, rounds);
    for (const share of [0.5, 0.95]) {
      const numbers = { ours: percentile(mine, share), anchor: percentile(theirs, share), anchorName: 'planegcs' };
      if (share === 0.5) {
        ours.set(count, numbers.ours);
        rows.push(
          row(`times faster, chain of ${count}`, 'times', {
            ours: numbers.anchor / numbers.ours,
            anchor: { 6: 10, 20: 30, 60: 100 }[count],
            anchorName: 'goal, at least',
          }),
        );
      }
      rows.push(row(`drag step, chain of ${count}`, `ms p${share * 100}`, numbers));
    }
  }
  rows.push(
    row('our cost from 20 to 60 poles', 'times', {
      ours: (ours.get(60) ?? 0) / (ours.get(20) ?? 1),
      anchor: 4,
      anchorName: 'goal, at most',
    }),
  );
  return rows;
}

/** Twelve runs of five poles on 150 × 300 ft, ridden one after the other; a third stand off the south wall. */
function sixtyPoles(): Course {
  const arena = { title: 'Large', length: 300 * FOOT, width: 150 * FOOT } as const;
  let course: Course = { ...blankCourse(), arena: { ...arena, entrance: { wall: 'west', at: 6, width: 4 } } };
  for (let i = 0; i < 12; i++) {
    const place = { x: 12 + 22 * (i % 4), y: 7 + 15 * Math.floor(i / 4), angle: 0.2 * (i % 3) };
    const obstacle = buildObstacle(`run-${i + 1}`, i % 3 === 1 ? 'fan' : 'run', { poles: 5 }, place);
    if ('why' in obstacle) throw new Error(obstacle.why);
    course = addObstacle(course, obstacle);
  }
  const walls = [1, 2, 3, 4].map((i) => {
    return {
      id: `wall-${i}`,
      kind: 'clear-of-wall',
      grips: [{ piece: `run-${i}/pole-1` }, { wall: 'south' as const }],
      hold: 1,
    };
  });
  return replaceLayout(course, (layout) => ({ ...layout, constraints: walls }));
}

function pointerRows(): Row[] {
  const course = sixtyPoles();
  const layout = currentLayout(course);
  const poles = layout.obstacles.flatMap((each) => placedObstacle(each).pieces);
  const piece = poles[0];
  const whole = layout.obstacles[2];
  if (piece === undefined || whole === undefined) throw new Error('the course is empty');
  survey(course);
  const cases = [
    [`one pole of ${poles.length}`, piece.key, piece.pose],
    ['a whole obstacle that is clear of a wall', whole.id, whole.pose],
  ] as const;
  return cases.flatMap(([what, key, from]) => {
    const wishes = (i: number) =>
      new Map([[key, { ...from, x: from.x + 0.02 * (i % STEPS), y: from.y + 0.01 * (i % STEPS) }]]);
    const laid = (i: number) => {
      const answer = solveLayout(layout, course.arena, wishes(i));
      if (answer.kind !== 'settled') throw new Error(answer.says);
      return replaceLayout(course, () => answer.layout);
    };
    const alone = timed(7 * STEPS, wishes, (each) => void solveLayout(layout, course.arena, each)).slice(STEPS);
    const whole = timed(
      4 * STEPS,
      (i) => i,
      (i) => void survey(laid(i)).line,
    ).slice(STEPS);
    return [
      ...[0.5, 0.95].map((share) =>
        row(`pointer move to settled, ${what}`, `ms p${share * 100}`, { ours: percentile(alone, share), ...FRAME }),
      ),
      ...[0.5, 0.95].map((share) =>
        row(`pointer move to survey, ${what}`, `ms p${share * 100}`, { ours: percentile(whole, share), ...FRAME }),
      ),
    ];
  });
}

export async function rows(): Promise<Row[]> {
  const bent: readonly (readonly [string, Problem, { x: number; y: number }])[] = [
    ['fan of 3, free', fan(3), { x: 0.012, y: 0.016 }],
    ['run of 6, free', run(6), { x: 0.012, y: 0.016 }],
    ['taped chain of 6, to where it is taut and beyond', chain(6), { x: 0.012, y: 0.016 }],
    ['taped chain of 60', chain(60), { x: 0.012, y: 0.016 }],
    ['run of 60, free, off its axis', run(60), { x: 0.02, y: -0.02 }],
  ];
  return [
    ...(await besideOracle()),
    ...bent.flatMap(([name, scene, by]) => {
      const times = dragged(scene, by, 5);
      return [0.5, 0.95].map((share) =>
        row(`drag step, ${name}`, `ms p${share * 100}`, { ours: percentile(times, share), ...FRAME }),
      );
    }),
    ...pointerRows(),
  ];
}
