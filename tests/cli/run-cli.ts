/** Runs a command line in process and keeps what it says; and a small course in a file of its own. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runCommandLine } from '../../src/cli/run.ts';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { writeCourse } from '../../src/core/files/write.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import type { Values } from '../../src/core/pieces/params.ts';
import { pose } from '../../src/core/plane/pose.ts';

export interface CliRun {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export async function runCli(...argv: string[]): Promise<CliRun> {
  const said = { out: '', err: '' };
  const code = await runCommandLine(argv, {
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
  });
  return { code, ...said };
}

export function scratchFolder(): string {
  return mkdtempSync(join(tmpdir(), 'polewright-'));
}

/** Jog-overs, then a bridge, in the usual arena; `run` changes the jog-overs. */
export function smallCourse(run: Values = {}): Course {
  const overs = buildObstacle('run-1', 'run', run, pose(18, 15));
  const bridge = buildObstacle('bridge-1', 'bridge', {}, pose(42, 15));
  if ('why' in overs || 'why' in bridge) throw new Error('the small course must build');
  return addObstacle(addObstacle(blankCourse({ title: 'Larkhollow Fairground: practice' }), overs), bridge);
}

export function courseFile(course: Course): string {
  const path = join(scratchFolder(), 'practice.course.json');
  writeFileSync(path, writeCourse(course));
  return path;
}
