/**
 * A simulated crew sets each starter out 1,000 times from the plan's file alone: how far off the gaps come to be, whether that is
 * what was predicted, and what other orders of laying would give.
 */
import { readdirSync, readFileSync } from 'node:fs';
import type { PlacedPiece } from '../../src/core/course/placed.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { distance } from '../../src/core/plane/point.ts';
import { setOutCrewOf } from '../../src/core/setout/crew.ts';
import { inOrder, type LaidOrder, type OrderQuestion } from '../../src/core/setout/plan/laying-order.ts';
import { planSetOut, setOutBy } from '../../src/core/setout/plan-setout.ts';
import type { SetOut } from '../../src/core/setout/setout.ts';
import { type SetOutDocument, setOutDocument } from '../../src/core/setout/setout-document.ts';
import { USUAL_TAPE } from '../../src/core/setout/tape-errors.ts';
import { type Survey, survey } from '../../src/core/survey.ts';
import { percentile, type Row, row } from './row.ts';
import { blunderTrial, tapedParts } from './setout/blunders.ts';
import { dice, Site } from './setout/crew.ts';

const BUILDS = Number(process.env.SETOUT_BUILDS ?? 1000);
/** Other orders are compared by fewer: a ratio needs no third digit. */
const OTHER_BUILDS = Math.min(BUILDS, 300);
const INCH = 0.0254;
const STARTERS = 'seeds/starters/';

function starters(): readonly (readonly [string, Survey])[] {
  return readdirSync(STARTERS).map((file) => {
    const read = readCourse(readFileSync(`${STARTERS}${file}`, 'utf8'));
    if (read.kind === 'refused') throw new Error(read.why);
    return [file.replace('.course.json', ''), survey(read.course)];
  });
}

function documentOf(of: Survey, plan: SetOut): SetOutDocument {
  // Through text, as a crew gets it.
  return JSON.parse(JSON.stringify(setOutDocument(of, plan, USUAL_TAPE.byEye.value)));
}

/** By gap: how far off it was in each build, metres. */
function built(plan: SetOutDocument, builds: number, seed = 7): readonly (readonly number[])[] {
  const roll = dice(seed);
  const off: number[][] = plan.gaps.map(() => []);
  const site = new Site(plan);
  site.build(undefined);
  for (let build = 0; build < builds; build += 1) {
    site.build(roll);
    for (const [i, gap] of plan.gaps.entries()) off[i]?.push(site.gap(gap) - gap.plan);
  }
  return off;
}

function deviation(samples: readonly number[]): number {
  const mean = samples.reduce((sum, each) => sum + each, 0) / samples.length;
  return Math.sqrt(samples.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (samples.length - 1));
}

/** As the drawing lists them. */
function asDrawn(pieces: readonly PlacedPiece[], question: OrderQuestion): LaidOrder {
  return laid(pieces, question);
}

/** Always the piece that is nearest to the last. */
function nearestNext(pieces: readonly PlacedPiece[], question: OrderQuestion): LaidOrder {
  const left = [...pieces];
  const order = left.splice(0, 1);
  while (left.length > 0) {
    const last = order.at(-1) as PlacedPiece;
    const next = left.reduce((best, each) =>
      distance(each.pose, last.pose) < distance(best.pose, last.pose) ? each : best,
    );
    order.push(next);
    left.splice(left.indexOf(next), 1);
  }
  return laid(order, question);
}

function laid(pieces: readonly PlacedPiece[], question: OrderQuestion): LaidOrder {
  const order = inOrder(pieces, question);
  if (order === undefined) throw new Error('setout: this order cannot be laid');
  return order;
}

/** The largest deviation among the gaps that are ridden, inches. */
function worstRidden(plan: SetOutDocument, off: readonly (readonly number[])[]): number {
  return Math.max(0, ...plan.gaps.map(({ ridden }, i) => (ridden ? deviation(off[i] ?? []) / INCH : 0)));
}

const LEVEL = 0.05;

/** Of so many readings of a part each with one blunder of 6 in, and as many without any. */
function blunders(): readonly Row[] {
  const parts = starters().flatMap(([, of]) => tapedParts(of, { ...setOutCrewOf(of.course), people: 2 }));
  const roll = dice(11);
  const trials = Math.min(BUILDS, 500);
  const any = () => parts[Math.floor(roll() * parts.length)] ?? parts[0];
  const share = (hits: readonly boolean[]): number => (100 * hits.filter(Boolean).length) / hits.length;
  const run = (hasBlunder: boolean) =>
    Array.from({ length: trials }, () => {
      const part = any();
      if (part === undefined) throw new Error('setout: no starter has a part of three pieces');
      return blunderTrial(part, roll, hasBlunder, LEVEL);
    });
  const [wrong, right] = [run(true), run(false)];
  return [
    row(`${trials} planted blunders of 6 in: found`, '%', {
      ours: share(wrong.map(({ isFound }) => isFound)),
      anchor: 95,
      anchorName: 'goal, at least',
    }),
    row(`${trials} planted blunders of 6 in: a good reading blamed`, '%', {
      ours: share(wrong.map(({ blames }) => blames)),
      anchor: 100 * LEVEL,
      anchorName: 'the level, at most',
    }),
    row(`${trials} readings without a blunder: a good one blamed`, '%', {
      ours: share(right.map(({ blames }) => blames)),
      anchor: 100 * LEVEL,
      anchorName: 'the level, at most',
    }),
  ];
}

export async function rows(): Promise<Row[]> {
  const found: Row[] = [];
  const within: number[] = [];
  const agreement: number[] = [];
  const worst = { ours: 0, drawn: 0, nearest: 0 };
  const took: number[] = [];
  for (const [name, of] of starters()) {
    const crew = setOutCrewOf(of.course);
    planSetOut(of, crew);
    const begun = performance.now();
    const plan = planSetOut(of, crew);
    took.push(performance.now() - begun);
    const ours = documentOf(of, plan);
    const off = built(ours, BUILDS);
    const all = off.flat();
    const inside = (100 * all.filter((each) => Math.abs(each) <= INCH).length) / Math.max(1, all.length);
    within.push(...all.map((each) => (Math.abs(each) <= INCH ? 1 : 0)));
    agreement.push(...ours.gaps.map(({ sigma }, i) => deviation(off[i] ?? []) / sigma));
    found.push(row(`${name}: gaps within 1 in`, '%', { ours: inside, anchor: 95, anchorName: 'goal, at least' }));
    const other = (choose: typeof asDrawn): number => {
      const compared = documentOf(of, setOutBy(of, crew, choose));
      return worstRidden(compared, built(compared, OTHER_BUILDS));
    };
    const [drawn, nearest] = [other(asDrawn), other(nearestNext)];
    const chosen = worstRidden(ours, off);
    worst.ours += chosen;
    worst.drawn += drawn;
    worst.nearest += nearest;
    found.push(row(`${name}: worst ridden gap`, 'in', { ours: chosen, anchor: drawn, anchorName: 'order of drawing' }));
    found.push(row(`${name}: worst ridden gap`, 'in', { ours: chosen, anchor: nearest, anchorName: 'nearest next' }));
  }
  const share = (100 * within.reduce((sum, each) => sum + each, 0)) / within.length;
  return [
    ...found,
    row('all gaps within 1 in', '%', { ours: share, anchor: 95, anchorName: 'goal, at least' }),
    row('worst ridden gaps together', 'in', { ours: worst.ours, anchor: worst.drawn, anchorName: 'order of drawing' }),
    row('worst ridden gaps together', 'in', { ours: worst.ours, anchor: worst.nearest, anchorName: 'nearest next' }),
    row('simulated error over predicted, least', 'times', {
      ours: percentile(agreement, 0),
      anchor: 0.9,
      anchorName: 'goal, at least',
    }),
    row('simulated error over predicted, most', 'times', {
      ours: percentile(agreement, 1),
      anchor: 1.1,
      anchorName: 'goal, at most',
    }),
    ...blunders(),
    row('time of a plan, p50', 'ms', { ours: percentile(took, 0.5), anchor: 1000, anchorName: 'goal' }),
  ];
}
