import { blankCourse } from '../../src/core/course/blank.ts';
import { point } from '../../src/core/plane/point.ts';
import { createDesk } from '../../src/desk/editor.ts';
import { percentile, type Row, row } from './row.ts';

const KINDS = ['run', 'fan', 'spoke', 'box', 'back-l', 'side-pass', 'gate', 'bridge', 'serpentine', 'run'];
const MOVES = 200;

function desk() {
  const made = createDesk(blankCourse());
  KINDS.forEach((kind, index) => {
    const why = made.place(kind, {}, point(7 + 11 * (index % 5), 7 + 15 * Math.floor(index / 5)));
    if (why !== undefined) throw new Error(why);
  });
  return made;
}

/** Drags what lies under `from` in circles and times each move until line, landings and findings are there. */
function drag(chosen: readonly string[], key: string): number[] {
  const table = desk();
  table.choose(chosen);
  const from = table.state().survey.pieces.find((piece) => piece.key === key)?.pose;
  if (from === undefined) throw new Error(`no ${key}`);
  const touch = (phase: 'down' | 'move' | 'up', x: number, y: number): number => {
    const start = performance.now();
    table.pointer({ phase, pointerId: 1, at: point(x, y), pickRadius: 0.3, isAdding: false, isSnapOff: false });
    const { survey, findings } = table.state();
    if (survey.line.elements.length === 0 || findings === undefined) throw new Error('nothing was surveyed');
    return performance.now() - start;
  };
  touch('down', from.x, from.y);
  const times: number[] = [];
  for (let step = 0; step < MOVES; step += 1) {
    const angle = step / 9;
    times.push(touch('move', from.x + 1.5 * Math.sin(angle), from.y + 1.5 * (1 - Math.cos(angle))));
  }
  touch('up', from.x + 1, from.y + 1);
  // The first moves are not counted: they warm the machine up.
  return times.slice(20);
}

const FRAME = { anchor: 1000 / 60, anchorName: 'one frame of a 60 Hz screen' };

/** A pointer move on a course of ten obstacles, from the pointer event to the findings. */
export async function rows(): Promise<Row[]> {
  const cases = [
    ['drag an obstacle: snap, line, landings, checks', ['fan-1'], 'fan-1/pole-1'],
    ['drag a piece: solve, line, landings, checks', ['run-1/pole-1'], 'run-1/pole-1'],
  ] as const;
  return cases.flatMap(([what, chosen, key]) => {
    const times = drag(chosen, key);
    return ([0.5, 0.95] as const).map((share) =>
      row(`${what}, p${share * 100}`, 'ms', { ours: percentile(times, share), ...FRAME }),
    );
  });
}
