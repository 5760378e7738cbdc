import { describe, expect, test } from 'vitest';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import type { Passage, Station } from '../../../src/core/obstacles/passage.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { pose, toLocal, toWorld } from '../../../src/core/plane/pose.ts';
import { isFore, sideOf } from '../../../src/core/ride/footfall.ts';
import type { HoofPrint } from '../../../src/core/ride/hoof-print.ts';
import { ridePositionAt } from '../../../src/core/ride/playing.ts';
import { type Survey, survey } from '../../../src/core/survey.ts';
import { printNotesOf, printsOf } from '../../../src/core/survey-prints.ts';
import { course, leg, obstacle, pole } from './hand-laid.ts';

const BASE = STOCK_HORSE.wheelbase.value;
const STANCE = STOCK_HORSE.stance.value;

function ridden(built: Obstacle, passage: string): Survey {
  return survey(
    course([built], {
      start: pose(8, 12, 0),
      legs: [leg(built.id, { passage, gait: 'walk', approach: 'walk' })],
    }),
  );
}

/** A pole at (30, 12) along x, and stations at it given in its frame. */
function onPole(stations: readonly Station[], more: Parameters<typeof pole>[] = []): Survey {
  const pieces = [pole('pole-1', pose(0, 0, 0)), ...more.map((each) => pole(...each))];
  return ridden(obstacle('by-hand', pose(30, 12, 0), pieces, stations), 'on');
}

const reach = (x: number, y: number, angle: number, move: 'ride' | 'side-pass'): Station => ({
  kind: 'reach',
  piece: 'pole-1',
  pose: pose(x, y, angle),
  move,
});

function printsOfKind(of: Survey, gait: HoofPrint['gait']): readonly HoofPrint[] {
  return printsOf(of).filter((print) => print.gait === gait);
}

/** The last print of each foot. */
function lastPrints(prints: readonly HoofPrint[]): readonly HoofPrint[] {
  return (['LH', 'LF', 'RH', 'RF'] as const).flatMap((foot) => prints.findLast((print) => print.foot === foot) ?? []);
}

function expectSquare(prints: readonly HoofPrint[], body: { x: number; y: number; angle: number }): void {
  expect(prints.length).toBe(4);
  for (const { foot, point } of prints) {
    const local = { x: (isFore(foot) ? 1 : -1) * (BASE / 2), y: (sideOf(foot) * STANCE) / 2 };
    expect(distance(point, toWorld(body, local))).toBeLessThan(1e-9);
  }
}

describe('the prints of a side pass', () => {
  // Facing +y, from the east end of the pole to the west end: to the left.
  const surveyed = onPole([reach(1.8, 0, Math.PI / 2, 'ride'), reach(-1.8, 0, Math.PI / 2, 'side-pass')]);
  const prints = printsOfKind(surveyed, 'side-pass');

  test('are of all four feet in diagonal pairs, the leading fore foot first', () => {
    const pairs = prints.filter((_, i) => i % 2 === 0).map((print, i) => [print.foot, prints[2 * i + 1]?.foot].join());
    expect(pairs[0]).toBe('LF,RH');
    expect(new Set(pairs)).toEqual(new Set(['LF,RH', 'RF,LH']));
    for (const [i, pair] of pairs.slice(1).entries()) expect(pair).not.toBe(pairs[i]);
    expect(pairs.length).toBe(Math.round(3.6 / STOCK_HORSE.sidePass.step.value) + 1);
  });

  test('cross: the following feet come down beyond the leading ones', () => {
    const [lead, follow] = [prints.filter(({ foot }) => foot === 'LF'), prints.filter(({ foot }) => foot === 'RF')];
    const step = 3.6 / Math.round(3.6 / STOCK_HORSE.sidePass.step.value);
    for (const [i, { point }] of follow.slice(0, -1).entries()) {
      // To the west: a step beyond, less the stance between left and right.
      expect((lead[i]?.point.x ?? 0) - point.x).toBeCloseTo(step - STANCE, 9);
    }
    expect(step).toBeGreaterThan(STANCE);
  });

  test('stand on either side of the pole, half the base from it, and end square where the side pass ends', () => {
    for (const { foot, point } of prints) expect(point.y - 12).toBeCloseTo((isFore(foot) ? BASE : -BASE) / 2, 9);
    expectSquare(lastPrints(prints), pose(28.2, 12, Math.PI / 2));
  });

  test('are carried sideways, and come down in the time of the side pass', () => {
    const element = surveyed.line.elements.find(({ move }) => move === 'side-pass');
    for (const { carried } of prints) expect(Math.abs(Math.cos(carried))).toBeCloseTo(1, 9);
    const times = prints.map(({ time }) => time);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(surveyed.line.clock.go - (times.at(-1) ?? 0)).toBeCloseTo(0, 6);
    expect((times[0] ?? 0) > surveyed.line.clock.go - (element?.seconds ?? 0)).toBe(true);
  });

  test('meet a pole that lies where a pair comes down', () => {
    const stations = [reach(1.8, 0, Math.PI / 2, 'ride'), reach(-1.8, 0, Math.PI / 2, 'side-pass')];
    // Along the track of the fore feet.
    const with_ = onPole(stations, [['pole-2', pose(0, BASE / 2, 0), 3]]);
    const notes = printNotesOf(with_).filter(({ key }) => key === 'by-hand/pole-2');
    expect(notes.some(({ kind, print }) => kind === 'meets' && print.gait === 'side-pass')).toBe(true);
    expect(notes.filter(({ print }) => print.gait === 'side-pass').every(({ print }) => isFore(print.foot))).toBe(true);
  });
});

describe.each(['forehand', 'haunches'] as const)('the prints of a turn on the %s', (about) => {
  const inside = (foot: HoofPrint['foot']): boolean => isFore(foot) === (about === 'forehand');
  const ahead = about === 'forehand' ? BASE / 2 : -BASE / 2;
  const station = (by: number): readonly Station[] => [reach(0, 0, 0, 'ride'), { kind: 'turn', by, about }];

  test.each([
    ['left', Math.PI / 2],
    ['right', -Math.PI],
  ] as const)('to the %s: those feet tread in place, the others go round them', (_, by) => {
    const surveyed = onPole(station(by));
    const prints = printsOfKind(surveyed, 'turn');
    const pivot = { x: 30 + ahead, y: 12 };
    for (const { foot, point } of prints) {
      const far = inside(foot) ? STANCE / 2 : Math.hypot(BASE, STANCE / 2);
      expect(distance(point, pivot)).toBeCloseTo(far, 9);
    }
    expect(new Set(prints.map(({ foot }) => foot)).size).toBe(4);
    const end = ridePositionAt(surveyed.line, surveyed.line.clock.go)?.pose ?? pose(0, 0, 0);
    expect(Math.cos(end.angle - by)).toBeCloseTo(1, 9);
    expect(distance(toWorld(end, { x: ahead, y: 0 }), pivot)).toBeLessThan(1e-9);
    expectSquare(lastPrints(prints), end);
    // No step of the feet that go round is longer than two steps of the body.
    for (const { stride } of prints) expect(stride).toBeLessThan(2.6 * STOCK_HORSE.sidePass.step.value);
  });

  test('takes its share of a full turn', () => {
    const element = onPole(station(Math.PI / 2)).line.elements.find(({ move }) => move === 'turn');
    expect(element?.moving).toBeCloseTo(STOCK_HORSE.turn.value / 4, 9);
  });
});

test('the prints of a turn about the middle go round it, one after the other in time', () => {
  const surveyed = onPole([reach(0, 0, 0, 'ride'), { kind: 'turn', by: 2 * Math.PI }]);
  const prints = printsOfKind(surveyed, 'turn');
  for (const { point } of prints) {
    expect(distance(point, { x: 30, y: 12 })).toBeCloseTo(Math.hypot(BASE, STANCE) / 2, 9);
  }
  const times = prints.map(({ time }) => time);
  expect(times).toEqual([...times].sort((a, b) => a - b));
  expect((times.at(-1) ?? 0) - (times[0] ?? 0)).toBeGreaterThan(0.8 * STOCK_HORSE.turn.value);
});

test('in a corner from one lane into the next no prints are claimed: the horse goes round as it finds room', () => {
  const surveyed = onPole([reach(0, 0, 0, 'ride'), { kind: 'turn', by: Math.PI / 2 }]);
  expect(printsOf(surveyed).some(({ gait }) => gait === 'turn' || gait === 'halt')).toBe(false);
});

describe('the prints of a halt', () => {
  const lane = buildObstacle('lane', 'back-lane', {}, pose(25, 12, 0));
  if (lane.kind === 'infeasible' || !('passages' in lane)) throw new Error('the lane is feasible as usual');
  const surveyed = ridden(lane, lane.passages[0]?.id ?? '');
  const halts = printsOfKind(surveyed, 'halt');
  const [halt] = surveyed.line.transitions.filter(({ after }) => after === 'standing');

  test('are four and square, where the horse halts', () => {
    if (halt === undefined) throw new Error('the horse halts before it backs');
    expectSquare(halts, halt.pose);
    for (const { at } of halts) expect(at).toBeCloseTo(halt.at, 9);
  });

  test('come after the last of the walk and before the first of the back', () => {
    const [walked, backed] = [printsOfKind(surveyed, 'walk'), printsOfKind(surveyed, 'back')];
    const time = halts[0]?.time ?? Number.NaN;
    expect(Math.max(...walked.map((print) => print.time))).toBeLessThan(time);
    expect(Math.min(...backed.map((print) => print.time))).toBeGreaterThan(time);
  });

  test('meet the pole on which the horse would have to stand', () => {
    const stands = onPole([reach(0, -BASE / 2, Math.PI / 2, 'ride'), { kind: 'turn', by: 0.5, about: 'haunches' }]);
    const local = printsOfKind(stands, 'halt').map(({ point }) => toLocal(pose(30, 12, 0), { ...point, angle: 0 }).y);
    expect(local.filter((y) => Math.abs(y) < 1e-9).length).toBe(2);
    const notes = printNotesOf(stands).filter(({ print, kind }) => print.gait === 'halt' && kind === 'meets');
    expect(notes.map(({ print }) => print.foot).sort()).toEqual(['LF', 'RF']);
  });
});

test('a corner to side pass names the feet about which it turns; nothing else does', () => {
  const titles = (kind: string): readonly Passage[] => {
    const built = buildObstacle(`${kind}-1`, kind, {}, pose(30, 12, 0));
    if (!('passages' in built)) throw new Error(`${kind} is infeasible as usual`);
    return built.passages;
  };
  for (const kind of ['side-pass-l', 'side-pass-v', 'side-pass-t']) {
    for (const { title, stations } of titles(kind)) {
      const about = /turn on the (forehand|haunches)/.exec(title)?.[1];
      const turns = stations.filter((station) => station.kind === 'turn');
      expect(turns.map((turn) => turn.about)).toEqual(turns.map(() => about));
    }
  }
  const [box] = titles('box');
  expect(box?.stations.some((station) => station.kind === 'turn' && station.about !== undefined)).toBe(false);
});
