import '../../../property-seed.ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../src/core/change/seeded-random.ts';
import { addObstacle } from '../../../../src/core/course/edit-obstacles.ts';
import { INCH, inches } from '../../../../src/core/measure/quantity.ts';
import { freeObstacle } from '../../../../src/core/obstacles/custom/grouped.ts';
import { pose } from '../../../../src/core/plane/pose.ts';
import {
  type Adjustment,
  adjustReadings,
  type GroundReading,
  observedAsBuilt,
} from '../../../../src/core/setout/built/adjust.ts';
import { survey } from '../../../../src/core/survey.ts';
import { BLANK } from '../../checks/scene.ts';
import { between, moved, overs, piece, runObservables, taped } from '../laid.ts';
import { normalDeviates } from '../normal-deviates.ts';

const drawn = survey(overs);
const OBSERVABLES = runObservables(overs, 4);
const QUARTER = INCH / 4;

function readOff(moves: Parameters<typeof moved>[1], sigma = QUARTER): readonly GroundReading[] {
  const there = moved(drawn, moves);
  return OBSERVABLES.map((each) => taped(drawn, each, there, { sigma }));
}

const poseOf = (adjustment: Adjustment, key: string) => adjustment.pieces.get(key)?.pose;

describe('where the poles lie', () => {
  test('readings as drawn leave everything as drawn', () => {
    const found = adjustReadings(drawn, readOff({}));
    for (const { pose: there, plan } of found.pieces.values()) {
      expect(Math.hypot(there.x - plan.x, there.y - plan.y)).toBeLessThan(1e-9);
    }
    expect(found.wrong).toEqual([]);
    expect(found.undecided).toEqual([]);
    expect(found.readings.every(({ standing }) => standing === 'agrees')).toBe(true);
  });

  test('exact readings of poles that lie elsewhere give their places back', () => {
    const shift = fc.double({ min: -0.3, max: 0.3, noNaN: true });
    const turn = fc.double({ min: -0.08, max: 0.08, noNaN: true });
    const move = fc.tuple(shift, shift, turn);
    fc.assert(
      fc.property(move, move, move, (two, three, four) => {
        const moves = { 'run-1/pole-2': two, 'run-1/pole-3': three, 'run-1/pole-4': four };
        const there = moved(drawn, moves);
        const found = adjustReadings(drawn, readOff(moves, 1e-5));
        for (const [key, at] of there) {
          const own = poseOf(found, key);
          expect(Math.hypot((own?.x ?? 9) - at.x, (own?.y ?? 9) - at.y)).toBeLessThan(1e-6);
          expect(Math.abs((own?.angle ?? 9) - at.angle)).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('a readings set of one gap moves one pole, and says that it is not controlled', () => {
    const gap = between(drawn, 'gap', [piece('run-1/pole-1'), piece('run-1/pole-2')]);
    const found = adjustReadings(drawn, [taped(drawn, gap, moved(drawn, { 'run-1/pole-2': [0, -0.1, 0] }))]);
    const [only] = found.readings;
    expect(only?.standing).toBe('not-controlled');
    expect(only?.adjusted).toBeCloseTo(only?.reading.read ?? 0, 3);
    expect(found.pieces.get('run-1/pole-1')?.error).toEqual({ along: 0, across: 0, turn: 0, end: 0 });
    // Nothing tells how far along it lies: as unsure as the drawing is.
    expect(found.pieces.get('run-1/pole-2')?.error.along).toBeCloseTo(inches(6), 3);
  });

  test('walls say where the held piece lies', () => {
    const off = between(drawn, 'off-wall', [piece('run-1/pole-1', 0), { wall: 'south' }]);
    const along = between(drawn, 'along-wall', [piece('run-1/pole-1', 0), { wall: 'south' }]);
    const further = between(drawn, 'along-wall', [piece('run-1/pole-1', 1), { wall: 'south' }]);
    const there = new Map([['run-1/pole-1', { x: 29, y: 15.4, angle: Math.PI / 2 + 0.01 }]]);
    const found = adjustReadings(
      drawn,
      [off, { ...along, from: 0 }, { ...further, from: 0 }].map((each) => taped(drawn, each, there, { sigma: 1e-4 })),
    );
    expect(found.groups[0]?.isTiedToWalls).toBe(true);
    // Off the wall at one end, and along it at both ends of a pole that stands out from it.
    const error = found.pieces.get('run-1/pole-1')?.error;
    expect(error?.along).toBeCloseTo(1e-4, 5);
    expect(error?.across).toBeCloseTo(1e-4 / Math.SQRT2, 5);
    expect(error?.turn).toBeCloseTo((1e-4 * Math.SQRT2) / 3.6576, 5);
    expect(poseOf(found, 'run-1/pole-1')?.x).toBeCloseTo(29, 3);
    expect(poseOf(found, 'run-1/pole-1')?.y).toBeCloseTo(15.4, 3);
    expect(poseOf(found, 'run-1/pole-1')?.angle).toBeCloseTo(Math.PI / 2 + 0.01, 3);
  });

  test('another piece can be held', () => {
    const found = adjustReadings(drawn, readOff({ 'run-1/pole-2': [0, 0.05, 0] }), { held: ['run-1/pole-2'] });
    expect(found.groups[0]?.pieces[0]).toBe('run-1/pole-2');
    const two = found.pieces.get('run-1/pole-2');
    expect(two?.pose.x).toBeCloseTo(two?.plan.x ?? 0, 6);
    const one = found.pieces.get('run-1/pole-1');
    expect(Math.abs((one?.pose.x ?? 0) - (one?.plan.x ?? 0))).toBeCloseTo(0.05, 3);
  });

  test('what no reading connects is worked out apart', () => {
    const gap = (a: number, b: number) =>
      taped(drawn, between(drawn, 'gap', [piece(`run-1/pole-${a}`), piece(`run-1/pole-${b}`)]), new Map());
    const found = adjustReadings(drawn, [gap(1, 2), gap(3, 4)]);
    expect(found.groups.map(({ pieces }) => pieces)).toEqual([
      ['run-1/pole-1', 'run-1/pole-2'],
      ['run-1/pole-3', 'run-1/pole-4'],
    ]);
    const across = between(drawn, 'gap', [piece('run-1/pole-2'), piece('run-1/pole-3')]);
    expect(observedAsBuilt(drawn, found, across)).toBeUndefined();
    const joined = adjustReadings(drawn, [gap(1, 2), gap(3, 4), gap(2, 3)]);
    expect(joined.groups.map(({ readings }) => readings)).toEqual([[0, 1, 2]]);
  });

  test('refuses what it cannot weigh, and what lies in no layout', () => {
    const gap = between(drawn, 'gap', [piece('run-1/pole-1'), piece('run-1/pole-2')]);
    expect(() => adjustReadings(drawn, [taped(drawn, gap, new Map(), { sigma: 0 })])).toThrow('above 0, got 0');
    const nowhere = { ...gap, grips: [piece('run-1/pole-1'), piece('run-9/pole-1')] as const, read: 1, sigma: 1 };
    expect(() => adjustReadings(drawn, [nowhere])).toThrow('no piece run-9/pole-1');
  });
});

describe('how sure it is', () => {
  test('readings half as sure leave errors twice as large', () => {
    const errors = (sigma: number) =>
      [...adjustReadings(drawn, readOff({}, sigma)).pieces.values()].slice(1).map(({ error }) => error);
    const fine = errors(1e-4);
    for (const [i, rough] of errors(2e-4).entries()) {
      expect(rough.across / (fine[i]?.across ?? 0)).toBeCloseTo(2, 3);
      expect(rough.turn / (fine[i]?.turn ?? 0)).toBeCloseTo(2, 3);
      expect(rough.end / (fine[i]?.end ?? 0)).toBeCloseTo(2, 3);
    }
  });

  test('a gap taped twice is surer by the root of two, and one between both is the mean weighted by both', () => {
    const gap = between(drawn, 'gap', [piece('run-1/pole-1'), piece('run-1/pole-2')]);
    const read = (error: number, sigma: number) => taped(drawn, gap, new Map(), { sigma, error });
    const twice = adjustReadings(drawn, [read(0.001, 0.002), read(-0.001, 0.002)]);
    const { value = 0, sigma = 0 } = observedAsBuilt(drawn, twice, gap) ?? {};
    expect(sigma).toBeCloseTo(0.002 / Math.SQRT2, 5);
    expect(value).toBeCloseTo(read(0, 1).read, 5);
    const uneven = adjustReadings(drawn, [read(0.001, 0.002), read(-0.001, 0.001)]);
    // (0.001 / 4 − 0.001 / 1) / (1/4 + 1) by the weights.
    expect((observedAsBuilt(drawn, uneven, gap)?.value ?? 0) - read(0, 1).read).toBeCloseTo(-0.0006, 5);
    expect(twice.readings[0]?.redundancy).toBeCloseTo(0.5, 2);
    expect(uneven.readings.map(({ redundancy }) => redundancy.toFixed(2))).toEqual(['0.80', '0.20']);
  });

  test('what the errors say is what many readings show', () => {
    const deviate = normalDeviates(7);
    const trials = 400;
    const across: number[] = [];
    let said = 0;
    for (let trial = 0; trial < trials; trial += 1) {
      const readings = OBSERVABLES.map((each) => taped(drawn, each, new Map(), { error: QUARTER * deviate() }));
      // At this level no good reading is left out.
      const three = adjustReadings(drawn, readings, { level: 1e-9 }).pieces.get('run-1/pole-3');
      said = three?.error.across ?? 0;
      across.push((three?.pose.x ?? 0) - (three?.plan.x ?? 0));
    }
    const seen = Math.sqrt(across.reduce((sum, each) => sum + each * each, 0) / trials);
    expect(seen / said).toBeGreaterThan(0.9);
    expect(seen / said).toBeLessThan(1.1);
  });
});

/** Four markers at the corners of a square of 3 m, all six distances taped from base to base. */
describe('a braced square', () => {
  const marker = (x: number, y: number) => ({
    piece: { id: '', kind: 'marker', values: { base: inches(12), height: inches(28) }, pose: pose(0, 0) },
    pose: pose(30 + x, 15 + y),
  });
  const corners = freeObstacle('square-1', [marker(0, 0), marker(3, 0), marker(3, 3), marker(0, 3)], 'square');
  const square = survey(addObstacle(BLANK, corners));
  const PAIRS = [
    [1, 2],
    [2, 3],
    [3, 4],
    [4, 1],
    [1, 3],
    [2, 4],
  ] as const;
  const readings = (errors: readonly number[]) =>
    PAIRS.map(([a, b], i) => {
      const grips = [piece(`square-1/marker-${a}`), piece(`square-1/marker-${b}`)] as const;
      return taped(square, between(square, 'between', grips), new Map(), { sigma: 1e-3, error: errors[i] ?? 0 });
    });

  test('controls a side by an eighth and a diagonal by a quarter', () => {
    // Closed form: the one condition is the square's state of self-stress, 1 in the sides and −√2 in the diagonals, so
    // that r is 1/8 and 2/8.
    const { readings: found } = adjustReadings(square, readings([]));
    expect(found.map(({ redundancy }) => redundancy.toFixed(3))).toEqual([
      '0.125',
      '0.125',
      '0.125',
      '0.125',
      '0.250',
      '0.250',
    ]);
  });

  test('spreads a misclosure by the same state', () => {
    const off = 1e-3;
    const { readings: found } = adjustReadings(square, readings([0, 0, 0, 0, off, 0]), { level: 1e-6 });
    const side = (Math.SQRT2 * off) / 8;
    const expected = [side, side, side, side, -off / 4, -off / 4];
    for (const [i, { residual }] of found.entries()) expect(residual).toBeCloseTo(expected[i] ?? 9, 5);
  });

  test('knows that a reading is wrong, and that only the drawing tells which', () => {
    const found = adjustReadings(square, readings([0, 0, 0, 0, 0.15, 0]));
    expect(found.wrong).toEqual([]);
    expect(found.undecided.map((set) => [...set].sort())).toEqual([[0, 1, 2, 3, 4, 5]]);
    expect(found.undecided[0]?.[0]).toBe(4);
    expect(found.readings.every(({ standing }) => standing === 'undecided')).toBe(true);
    const { pose: there, plan } = found.pieces.get('square-1/marker-3') ?? { pose: pose(9, 9), plan: pose(0, 0) };
    expect(Math.hypot(there.x - plan.x, there.y - plan.y)).toBeLessThan(1e-4);
  });
});

describe('readings that are wrong', () => {
  const SIX_INCHES = inches(6);

  /** Good readings with their errors, and a blunder in one of them where it is given. */
  function read(deviate: () => number, blunder?: number) {
    return OBSERVABLES.map((each, i) =>
      taped(drawn, each, new Map(), { error: QUARTER * deviate() + (i === blunder ? SIX_INCHES : 0) }),
    );
  }

  test('a blunder of 6 in is found, told by its size, and left out', () => {
    const found = adjustReadings(
      drawn,
      read(() => 0, 7),
    );
    expect(found.wrong).toEqual([7]);
    const { standing, residual, expected, reading } = found.readings[7] ?? {};
    expect(standing).toBe('wrong');
    expect(residual).toBeCloseTo(-SIX_INCHES, 4);
    expect((reading?.read ?? 0) - (expected ?? 0)).toBeCloseTo(SIX_INCHES, 4);
    for (const { pose: there, plan } of found.pieces.values()) expect(there.x).toBeCloseTo(plan.x, 5);
  });

  test('two blunders are found one after the other', () => {
    const found = adjustReadings(
      drawn,
      read(() => 0).map((each, i) => (i === 3 || i === 11 ? { ...each, read: each.read - SIX_INCHES } : each)),
    );
    expect([...found.wrong].sort((a, b) => a - b)).toEqual([3, 11]);
  });

  test('of 200 planted blunders at least 190 are found, and no good reading is left out more often than the level says', () => {
    const level = 0.05;
    const deviate = normalDeviates(11);
    const random = seededRandom(12);
    let found = 0;
    let blamed = 0;
    for (let trial = 0; trial < 200; trial += 1) {
      const blunder = Math.floor(random() * OBSERVABLES.length);
      const { wrong } = adjustReadings(drawn, read(deviate, blunder), { level });
      if (wrong.includes(blunder)) found += 1;
      if (wrong.some((each) => each !== blunder)) blamed += 1;
    }
    expect(found).toBeGreaterThanOrEqual(190);
    expect(blamed).toBeLessThanOrEqual(200 * level);
  });

  test('where all readings are good, some is suspected no more often than the level says', () => {
    const level = 0.2;
    const deviate = normalDeviates(21);
    let suspected = 0;
    for (let trial = 0; trial < 300; trial += 1) {
      const { wrong, undecided } = adjustReadings(drawn, read(deviate), { level });
      if (wrong.length + undecided.length > 0) suspected += 1;
    }
    // Three standard errors of a count with this chance.
    expect(suspected).toBeLessThanOrEqual(300 * level + 3 * Math.sqrt(300 * level * (1 - level)));
    expect(suspected).toBeGreaterThan(20);
  });
});
