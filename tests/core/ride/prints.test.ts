import { describe, expect, test } from 'vitest';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { pose, toLocal } from '../../../src/core/plane/pose.ts';
import { isFore, overtrack } from '../../../src/core/ride/footfall.ts';
import type { HoofPrint } from '../../../src/core/ride/hoof-print.ts';
import { type Survey, survey } from '../../../src/core/survey.ts';
import { printNotesOf, printsOf } from '../../../src/core/survey-prints.ts';
import { course, fan, leg, obstacle, pole, run } from './hand-laid.ts';

type Gait = 'walk' | 'jog' | 'lope';

/** Five poles on a straight, with a straight before and after. */
function overPoles(gait: Gait, gap: number, lead?: 'left' | 'right'): Survey {
  const ridden = leg('run-1', { gait, approach: gait, ...(lead === undefined ? {} : { lead }) });
  const ride = { start: pose(6, 10, 0), legs: [ridden], end: pose(44, 10, 0) };
  return survey(course([run('run-1', pose(24, 10, 0), { poles: 5, gap })], ride));
}

function open(gait: Gait, lead?: 'left' | 'right'): readonly HoofPrint[] {
  const ridden = leg('run-1', { gait, approach: gait, ...(lead === undefined ? {} : { lead }) });
  const ride = { start: pose(3, 10, 0), legs: [ridden] };
  // One pole far away: what comes before it is open ground.
  const far = survey(course([run('run-1', pose(55, 10, 0), { poles: 1 })], ride));
  return printsOf(far).filter(({ point }) => point.x > 8 && point.x < 45);
}

const OPEN: Readonly<Record<Gait, readonly HoofPrint[]>> = {
  walk: open('walk'),
  jog: open('jog'),
  lope: open('lope', 'left'),
};

function of(prints: readonly HoofPrint[], foot: string): readonly HoofPrint[] {
  return prints.filter((print) => print.foot === foot);
}

function order(prints: readonly HoofPrint[], from: string): string[] {
  const first = prints.findIndex(({ foot }) => foot === from);
  return prints.slice(first, first + 4).map(({ foot }) => foot);
}

describe('the prints on open ground', () => {
  test.each(['walk', 'jog', 'lope'] as const)(
    'of a %s are a stride apart for every foot, at the beat of the gait',
    (gait) => {
      const { stride, period } = STOCK_HORSE.gaits[gait];
      for (const foot of ['LH', 'LF', 'RH', 'RF']) {
        const own = of(OPEN[gait], foot);
        expect(own.length).toBeGreaterThan(15);
        for (const [i, print] of own.slice(1).entries()) {
          const before = own[i];
          if (before === undefined) throw new Error('there is a print before');
          expect(distance(before.point, print.point)).toBeCloseTo(stride.value, 6);
          expect(Math.abs(print.time - before.time - period.value)).toBeLessThan(0.02 * period.value);
        }
      }
    },
  );

  test('come down in the order of the gait', () => {
    expect(order(OPEN.walk, 'LH')).toEqual(['LH', 'LF', 'RH', 'RF']);
    expect(new Set(order(OPEN.jog, 'LH').slice(0, 2))).toEqual(new Set(['LH', 'RF']));
    expect(new Set(order(OPEN.jog, 'LH').slice(2))).toEqual(new Set(['RH', 'LF']));
    const left = order(OPEN.lope, 'RH');
    expect([left[0], new Set(left.slice(1, 3)), left[3]]).toEqual(['RH', new Set(['LH', 'RF']), 'LF']);
    const right = order(open('lope', 'right'), 'LH');
    expect([right[0], new Set(right.slice(1, 3)), right[3]]).toEqual(['LH', new Set(['RH', 'LF']), 'RF']);
  });

  test('lie half the stance to the side of the line, left feet left', () => {
    for (const { foot, point } of OPEN.walk) {
      const aside = (foot.startsWith('L') ? 1 : -1) * (STOCK_HORSE.stance.value / 2);
      expect(point.y - 10).toBeCloseTo(aside, 9);
    }
  });

  test('track as the closed form says', () => {
    const wheelbase = STOCK_HORSE.wheelbase.value;
    for (const gait of ['walk', 'jog'] as const) {
      const fore = of(OPEN[gait], 'LF')[3];
      const hind = of(OPEN[gait], 'LH').find(({ at }) => at > (fore?.at ?? 0));
      const { stride } = STOCK_HORSE.gaits[gait];
      const expected = overtrack(stride.value, wheelbase, STOCK_HORSE.footfall[gait].fore.value);
      expect((hind?.point.x ?? 0) - (fore?.point.x ?? 0)).toBeCloseTo(expected, 6);
    }
  });
});

describe('the prints over poles', () => {
  test.each([
    ['walk', 24 * INCH],
    ['jog', 3 * FOOT],
    ['jog', 3.5 * FOOT],
    ['jog', 6 * FOOT],
    ['lope', 6 * FOOT],
    ['lope', 7 * FOOT],
  ] as const)('of a %s keep clear of poles %s m apart, as the rule book sets them', (gait, gap) => {
    const surveyed = overPoles(gait, gap);
    expect(surveyed.line.gaps.every(({ landings }) => landings.fits)).toBe(true);
    expect(printNotesOf(surveyed)).toEqual([]);
  });

  test('adapt their stride to the landings', () => {
    for (const feet of [6, 7]) {
      const { line, ...rest } = overPoles('lope', feet * FOOT);
      const inside = of(printsOf({ line, ...rest }), 'LF').filter(
        ({ point }) => Math.abs(point.x - 24) < feet * FOOT * 1.2,
      );
      const apart = distance(inside[0]?.point ?? { x: 0, y: 0 }, inside[1]?.point ?? { x: 0, y: 0 });
      expect(apart).toBeCloseTo(feet * FOOT + 4 * INCH, 6);
    }
  });

  test('of two jogged landings are two a gap for each end of the horse', () => {
    const surveyed = overPoles('jog', 6 * FOOT);
    for (const { ends } of surveyed.line.gaps) {
      const fores = printsOf(surveyed).filter(
        ({ foot, point }) => isFore(foot) && point.x > ends[0].x && point.x < ends[1].x,
      );
      expect(fores.map(({ foot }) => foot).sort()).toEqual(['LF', 'RF']);
    }
  });

  test.each([
    ['jog', 4.5 * FOOT],
    ['lope', 5 * FOOT],
  ] as const)('of a %s meet poles %s m apart, which fit no landing, and say how likely', (gait, gap) => {
    const notes = printNotesOf(overPoles(gait, gap));
    const met = notes.filter(({ kind }) => kind === 'meets');
    expect(met.length).toBeGreaterThan(0);
    for (const { likelihood, clear } of met) {
      expect(clear).toBeLessThanOrEqual(0);
      expect(likelihood).toBeGreaterThan(0.4);
      expect(likelihood).toBeLessThanOrEqual(1);
    }
    for (const { kind, clear } of notes) {
      expect(clear).toBeLessThan(STOCK_HORSE.hoof.value);
      expect(kind === 'meets').toBe(clear <= 0);
    }
  });

  test('are the same every time, on a copy too, and turn with the course', () => {
    const one = overPoles('lope', 5 * FOOT);
    const copy = survey(structuredClone(one.course));
    expect(printNotesOf(copy)).toEqual(printNotesOf(one));
    expect(printsOf(copy)).toEqual(printsOf(one));
  });

  test('a horse whose strides differ more is surer to touch what it now misses', () => {
    const likelihood = (spread: number) => {
      const { course: on } = overPoles('lope', 5 * FOOT);
      const surveyed = survey(on);
      const horse = { ...STOCK_HORSE, spread: { ...STOCK_HORSE.spread, value: spread } };
      return printNotesOf({ ...surveyed, horse }).find(({ kind }) => kind === 'near')?.likelihood ?? Number.NaN;
    };
    expect(likelihood(0.04)).toBeGreaterThan(likelihood(0.02));
    expect(likelihood(0.005)).toBeLessThan(0.01);
  });

  test('on a bend lie on the horse’s own track: fore and hind on one arc', () => {
    const surveyed = survey(
      course([fan('fan-1', pose(30, 15, 0), { radius: 4, poles: 4, angle: 0.48 })], {
        start: pose(34, 6, Math.PI / 2),
        legs: [leg('fan-1', { gait: 'lope', approach: 'lope', lead: 'left' })],
      }),
    );
    const inside = surveyed.line.crossings;
    const [first, last] = [inside[0]?.at ?? 0, inside.at(-1)?.at ?? 0];
    const fores = printsOf(surveyed).filter(({ foot, at }) => isFore(foot) && at > first && at < last - 1);
    expect(fores.length).toBeGreaterThan(2);
    for (const { foot, point } of fores) {
      const off = (foot === 'LF' ? -1 : 1) * (STOCK_HORSE.stance.value / 2);
      expect(distance(point, { x: 30, y: 15 })).toBeCloseTo(4 + off, 6);
    }
  });
});

describe('the prints of a back', () => {
  const lane = buildObstacle('lane', 'back-lane', {}, pose(25, 12, 0));
  if (lane.kind === 'infeasible' || !('passages' in lane)) throw new Error('the lane is feasible as usual');
  const [passage] = lane.passages;
  const surveyed = survey(
    course([lane], {
      start: pose(10, 12, 0),
      legs: [leg('lane', { passage: passage?.id ?? '', gait: 'walk', approach: 'walk' })],
    }),
  );
  const backed = printsOf(surveyed).filter(({ gait }) => gait === 'back');

  test('are diagonal pairs in turn, about a step apart', () => {
    expect(backed.length).toBeGreaterThan(8);
    const pairs = backed
      .filter((_, i) => i % 2 === 0)
      .map((print, i) => [print.foot, backed[2 * i + 1]?.foot].sort().join());
    expect(new Set(pairs)).toEqual(new Set(['LH,RF', 'LF,RH']));
    for (const [i, pair] of pairs.slice(1).entries()) expect(pair).not.toBe(pairs[i]);
    const [a, b] = of(backed, 'LH');
    const step = distance(a?.point ?? { x: 0, y: 0 }, b?.point ?? { x: 0, y: 0 }) / 2;
    expect(Math.abs(step - STOCK_HORSE.back.step.value)).toBeLessThan(0.05);
  });

  test('are left and right as the horse faces, its fore feet in front', () => {
    const element = surveyed.line.elements.find(({ move }) => move === 'back');
    const start = element?.path[0]?.start ?? pose(0, 0, 0);
    const facing = { ...start, angle: start.angle + Math.PI };
    for (const { foot, point, at } of backed) {
      const local = toLocal(facing, { ...point, angle: 0 });
      const middle = -(at - (element?.from ?? 0));
      expect(Math.sign(local.y)).toBe(foot.startsWith('L') ? 1 : -1);
      expect(Math.sign(local.x - middle)).toBe(isFore(foot) ? 1 : -1);
    }
  });
});

test('prints of a part of the ride that an edit does not touch keep their points', () => {
  const legs = [leg('run-1'), leg('run-2', { approach: 'walk', gait: 'walk' }), leg('run-3')];
  const obstacles = [run('run-1', pose(12, 5, 0)), run('run-2', pose(28, 5, 0)), run('run-3', pose(46, 5, 0))];
  const before = survey(course(obstacles, { start: pose(3, 5, 0), legs }));
  const points = (of: Survey, leg: number) =>
    printsOf(of)
      .filter((print) => print.leg === leg)
      .map(({ point }) => point);
  const [first, second, third] = [0, 1, 2].map((each) => points(before, each));
  const [layout] = before.course.layouts;
  const moved = layout.obstacles.map((each) =>
    each.id === 'run-3' ? { ...each, pose: { ...each.pose, x: each.pose.x + 0.1 } } : each,
  );
  const after = survey({ ...before.course, layouts: [{ ...layout, obstacles: moved }] });
  expect(points(after, 0).every((point, i) => point === first?.[i])).toBe(true);
  expect(points(after, 1).every((point, i) => point === second?.[i])).toBe(true);
  // What is walked on beyond the second obstacle is on the way to the third and has not changed.
  const walked = printsOf(before).filter((print) => print.leg === 2 && print.gait === 'walk');
  expect(points(after, 2).filter((point) => third?.includes(point))).toEqual(walked.map(({ point }) => point));
});

test('a hoof that lands on a pole laid across open ground is found on it, surely', () => {
  const print = OPEN.walk[20];
  if (print === undefined) throw new Error('there are twenty prints');
  const at = { x: print.point.x, y: print.point.y };
  const across = obstacle('pole-1', pose(at.x, at.y, 0), [pole('only', pose(0, 0, Math.PI / 2))], []);
  const ride = {
    start: pose(3, 10, 0),
    legs: [leg('run-1', { gait: 'walk', approach: 'walk', bends: [{ x: 40, y: 10 }] })],
  };
  const surveyed = survey(course([run('run-1', pose(55, 10, 0), { poles: 1 }), across], ride));
  const note = printNotesOf(surveyed).find(({ key, kind }) => key === 'pole-1/only' && kind === 'meets');
  expect(note?.likelihood).toBeGreaterThan(0.99);
  expect(note?.clear).toBeCloseTo(-STOCK_HORSE.hoof.value / 2, 6);
});
