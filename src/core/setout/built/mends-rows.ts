import { bandOf, limitsOf } from '../../checks/rulebooks/rulebooks.ts';
import { parallel } from '../../constraints/parallel.ts';
import type { Course } from '../../course/course.ts';
import { obstacleOf } from '../../course/ids.ts';
import { replaceLayout } from '../../course/layouts.ts';
import { resolvedConstraints } from '../../course/resolved-constraints.ts';
import { INCH, type Metres } from '../../measure/quantity.ts';
import type { Pose } from '../../plane/pose.ts';
import { type Survey, survey } from '../../survey.ts';
import { observedOn } from '../ground.ts';
import { measuredGaps } from '../plan/measured-gaps.ts';
import { groundOf, pieceNamed } from './adjust-equations.ts';
import { courseWithPiecesAt } from './as-built-course.ts';
import type { AsBuiltGap, GapBand } from './as-built-gaps.ts';

/** Something between two poles that has to lie in a band: a gap, or how much it differs between the poles' two ends. */
export interface MendRow {
  readonly keys: readonly [string, string];
  readonly what: 'gap' | 'evenness';
  readonly band: GapBand;
  /** Its value in a survey of the same pieces; undefined where it cannot be measured there. */
  measured(of: Survey): Metres | undefined;
}

/** Poles that belong beside each other may differ by this between their two ends, where no book says more. Estimate. */
const EVEN: Metres = INCH;

/** The band of a gap; of one to a pole that nobody taped as wide as it lies now: moves are not to make it worse. */
function bandToKeep({ band, built, sigma }: AsBuiltGap): GapBand {
  if (sigma !== undefined) return band;
  return { ...band, least: Math.min(band.least, built), most: Math.max(band.most, built) };
}

function gapRow(planned: Survey, gap: AsBuiltGap): MendRow {
  const { keys, at, gait } = gap;
  const like = measuredGaps(planned).find(
    (each) => !each.isRidden && each.keys[0] === keys[0] && each.keys[1] === keys[1] && each.at[0] === at[0],
  );
  return {
    keys,
    what: 'gap',
    band: bandToKeep(gap),
    measured(of) {
      if (gait === undefined) return like === undefined ? undefined : observedOn(groundOf(of), like.of).value;
      return of.line.gaps.find((each) => each.gait === gait && keys.every((key) => each.keys.includes(key)))?.ridden;
    },
  };
}

/** By how much the gap between two parallel poles is wider at the second's −x end than at its +x end. */
function unevenness(of: Survey, [first, second]: readonly [string, string]): Metres {
  const [a, b] = [pieceNamed(of, first), pieceNamed(of, second)];
  const long = Math.min(a.figure.length, b.figure.length);
  const turned = b.pose.angle - a.pose.angle;
  return long * Math.sin(turned) * (Math.cos(turned) < 0 ? -1 : 1);
}

/** What has to be in its band as built: each gap, and the evenness of the poles that were planned to be parallel. */
export function mendRows(planned: Survey, gaps: readonly AsBuiltGap[]): readonly MendRow[] {
  const limit = limitsOf(planned.course)['gap.uneven'];
  const most = (limit === undefined ? undefined : bandOf(limit).most) ?? EVEN;
  const touched = new Set(gaps.flatMap(({ keys }) => keys));
  const even = resolvedConstraints(planned.layout).flatMap(({ kind, grips }): readonly MendRow[] => {
    const [first, second] = grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : []));
    if (kind !== parallel || first === undefined || second === undefined) return [];
    if (!touched.has(first) || !touched.has(second)) return [];
    const keys = [first, second] as const;
    const band = { least: -most, most, ...(limit === undefined ? {} : { limit }) };
    return [{ keys, what: 'evenness', band, measured: (of) => unevenness(of, keys) }];
  });
  return [...gaps.map((gap) => gapRow(planned, gap)), ...even];
}

/** The course with nothing in it but these obstacles and their legs: what the line does inside of them is the same. */
function courseOfObstacles(course: Course, ids: ReadonlySet<string>): Course {
  return replaceLayout(course, (layout) => ({
    ...layout,
    obstacles: layout.obstacles.filter(({ id }) => ids.has(id)),
    constraints: [],
    ride: { ...layout.ride, legs: layout.ride.legs.filter(({ obstacle }) => ids.has(obstacle)) },
  }));
}

/** Rows that share no pole, so that each set of them is mended by itself. */
export function separateRows(rows: readonly MendRow[]): readonly (readonly MendRow[])[] {
  const sets: { keys: Set<string>; rows: MendRow[] }[] = [];
  for (const row of rows) {
    const met = sets.filter(({ keys }) => row.keys.some((key) => keys.has(key)));
    const [first = { keys: new Set<string>(), rows: [] }, ...others] = met;
    if (met.length === 0) sets.push(first);
    for (const other of others) {
      for (const key of other.keys) first.keys.add(key);
      first.rows.push(...other.rows);
      sets.splice(sets.indexOf(other), 1);
    }
    for (const key of row.keys) first.keys.add(key);
    first.rows.push(row);
  }
  return sets.map((set) => set.rows);
}

/** By how much a pole is moved to see what each row does, metres. */
const NUDGE: Metres = INCH / 4;

/**
 * How fast each row changes with each of some moves, by differences of the real survey: `poses` is where a move by so many
 * metres puts its piece. 0 where it cannot be measured.
 */
export function rowSlopes(
  course: Course,
  rows: readonly MendRow[],
  moves: readonly ((by: Metres) => ReadonlyMap<string, Pose>)[],
): readonly (readonly number[])[] {
  const alone = courseOfObstacles(course, new Set(rows.flatMap(({ keys }) => keys.map(obstacleOf))));
  const values = (poses: ReadonlyMap<string, Pose>): readonly number[] => {
    const there = survey(courseWithPiecesAt(alone, poses));
    return rows.map((row) => row.measured(there) ?? Number.NaN);
  };
  const before = values(new Map());
  const byMove = moves.map((poses) => {
    const after = values(poses(NUDGE));
    return rows.map((_, i) => {
      const slope = ((after[i] as number) - (before[i] as number)) / NUDGE;
      return Number.isFinite(slope) ? slope : 0;
    });
  });
  return rows.map((_, row) => byMove.map((slopes) => slopes[row] as number));
}
