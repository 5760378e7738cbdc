/** Strides, steps and tracking against measured horses and the closed forms that they keep to. */
import { describe, expect, test } from 'vitest';
import { STOCK_HORSE } from '../../src/core/horses/horses.ts';
import { FOOT } from '../../src/core/measure/quantity.ts';
import { beats, footOffset, lopeSteps, overtrack } from '../../src/core/ride/footfall.ts';

const WHEELBASE = 1.25;
const WALK = 0.25;
const TROT = 0.5;

describe('how far the hind print is in front of the fore print of its side', () => {
  // Clayton 1995 (walk) and 1994 (trot), from memory: within 5 cm of a body that moves evenly.
  test.each([
    ['a collected walk', 1.57, WALK, -0.07],
    ['a medium walk', 1.87, WALK, 0.19],
    ['an extended walk', 1.93, WALK, 0.27],
    ['a collected trot', 2.5, TROT, 0],
    ['an extended trot', 3.55, TROT, 0.5],
  ])('at %s is what was measured', (_, stride, phase, measured) => {
    expect(Math.abs(overtrack(stride, WHEELBASE, phase) - measured)).toBeLessThan(0.075);
  });

  // Worked out by hand from S·(1 − φ) − w.
  test.each([
    [1.57, WALK, -0.0725],
    [1.87, WALK, 0.1525],
    [1.02, WALK, -0.485],
    [1.22, WALK, -0.335],
    [1.83, TROT, -0.335],
    [2.1, TROT, -0.2],
    [2.66, TROT, 0.08],
    [3.55, TROT, 0.525],
  ])('for a stride of %s m and a phase of %s is %s m', (stride, phase, expected) => {
    expect(overtrack(stride, WHEELBASE, phase)).toBeCloseTo(expected, 9);
  });

  // A trot definition on an endurance riders' list: a collected trot or jog does not track up.
  test('at a jog over poles never reaches the fore print', () => {
    for (const stride of [1.83, 2.13]) expect(overtrack(stride, WHEELBASE, TROT)).toBeLessThan(0);
  });
});

describe('the steps of a lope', () => {
  test.each([
    [2.0, [0.6, 1.25, 0.54, -0.39]],
    [3.05, [0.915, 1.25, 0.8235, 0.0615]],
  ])('of a stride of %s m', (stride, expected) => {
    const { hind, mid, fore, airborne } = lopeSteps(stride, WHEELBASE, { diagonal: 0.3, leading: 0.57 });
    for (const [i, step] of [hind, mid, fore, airborne].entries()) expect(step).toBeCloseTo(expected[i] ?? 0, 9);
    expect(hind + mid + fore + airborne).toBeCloseTo(stride, 12);
  });

  test('cross over from behind to in front of the leading fore print at about 2.9 m', () => {
    expect(lopeSteps(2.94, WHEELBASE, { diagonal: 0.3, leading: 0.57 }).airborne).toBeCloseTo(0.01, 2);
  });

  /**
   * Kienapfel, Läbe & Preuschoft 2014: a slow canter puts the hind hooves between the prints of the fore ones. American
   * Mule Association rule 216: lope-overs of 6 to 7 ft, one stride each.
   */
  test.each([6, 6.5, 7])('of a %s ft stride put the next trailing hind between the two fore prints', (feet) => {
    const stride = feet * FOOT;
    const { diagonal, leading } = STOCK_HORSE.footfall.lope;
    const wheelbase = STOCK_HORSE.wheelbase.value;
    const [trailing, leader] = [diagonal, leading].map(({ value }) => overtrack(stride, wheelbase, value));
    expect(trailing).toBeGreaterThan(0);
    expect(trailing).toBeLessThan(0.25);
    expect(leader).toBeLessThan(-0.3);
    // The same from the beats: where the feet come down is what the closed form says.
    const at = (foot: string, strides: number) =>
      beats(STOCK_HORSE, 'lope', 'left')
        .filter((beat) => beat.foot === foot)
        .map(({ foot: each, phase }) => (strides + phase) * stride + footOffset(each, wheelbase))[0] ?? Number.NaN;
    expect(at('RH', 1)).toBeGreaterThan(at('RF', 0));
    expect(at('RH', 1)).toBeLessThan(at('LF', 0));
    expect(at('RH', 1) - at('RF', 0)).toBeCloseTo(trailing ?? 0, 12);
  });
});

describe('a horse of 450 kg', () => {
  // Bullimore & Burn 2006: leg 0.09·M^0.44 m, relative stride 1.43 at Froude number 0.5; v² = Fr·g·L.
  const leg = 0.09 * 450 ** 0.44;
  const stride = 1.43 * leg;

  test('has a stride of 1.89 m at Froude number 0.5, 1.35 times a second', () => {
    expect(stride).toBeCloseTo(1.89, 1);
    expect(Math.sqrt(0.5 * 9.81 * leg) / stride).toBeCloseTo(1.35, 1);
  });

  test('steps inside the jog-overs of the mule association, 3 ft to 3 ft 6 in, and inside the stock horse’s jog', () => {
    expect(stride / 2).toBeGreaterThan(3 * FOOT);
    expect(stride / 2).toBeLessThan(3.5 * FOOT);
    const { least = 0, most = 0 } = STOCK_HORSE.gaits.jog.stride;
    expect(stride).toBeGreaterThan(least);
    expect(stride).toBeLessThan(most);
  });
});
