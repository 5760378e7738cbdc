/**
 * The gap bands of two published sets, each edge just inside and just outside, in the unit in which it is printed. The
 * values stand here as they were read from the sources, not as the data files have them.
 */
import { describe, expect, test } from 'vitest';
import { BAND_TOLERANCE } from '../../src/core/checks/rulebooks/band.ts';
import type { Course } from '../../src/core/course/course.ts';
import type { Gait } from '../../src/core/horses/horse.ts';
import { judged, saidBy, scene } from '../core/checks/scene.ts';

const UNIT = { in: 0.0254, ft: 0.3048, cm: 0.01, m: 1 } as const;
type Unit = keyof typeof UNIT;

/** American Mule Association, rule 216: amarulebook.org/rules/216-mandatory-dimensions-of-trail-obstacles */
const MULE = { book: 'mule-association', source: 'American Mule Association, rule 216' } as const;
/** Horse Illustrated, August 2005, Trail Obstacle Dimensions: horsechannel.com/western-horse-training/trail-obstacle-dimensions.aspx */
const MAGAZINE = { book: 'trade-press', source: 'Horse Illustrated, Trail Obstacle Dimensions, August 2005' } as const;
/** Horse & Rider, C. Cole, Measure Stride Length for Trail Class Lope-Overs: horseandrider.com/training/stridelength_112206 */
const STRIDES = { book: 'trade-press', source: 'Horse & Rider, C. Cole' } as const;

/** An edge of a band: the last value that is right, and the way in which it goes wrong. */
interface Edge {
  readonly book: string;
  readonly source: string;
  readonly gait: Gait;
  readonly edge: number;
  readonly unit: Unit;
  readonly wrong: 'below' | 'above';
  readonly weight: 'must' | 'should';
}

const EDGES: readonly Edge[] = [
  // Walk-over: 20 in or more, 20 to 24 in recommended.
  { ...MULE, gait: 'walk', edge: 20, unit: 'in', wrong: 'below', weight: 'must' },
  { ...MULE, gait: 'walk', edge: 24, unit: 'in', wrong: 'above', weight: 'should' },
  // Trot-over: 3 ft to 3 ft 6 in.
  { ...MULE, gait: 'jog', edge: 3, unit: 'ft', wrong: 'below', weight: 'must' },
  { ...MULE, gait: 'jog', edge: 3.5, unit: 'ft', wrong: 'above', weight: 'must' },
  // Lope-over: 6 to 7 ft.
  { ...MULE, gait: 'lope', edge: 6, unit: 'ft', wrong: 'below', weight: 'must' },
  { ...MULE, gait: 'lope', edge: 7, unit: 'ft', wrong: 'above', weight: 'must' },
  // Walk-over: 15 to 24 in.
  { ...MAGAZINE, gait: 'walk', edge: 15, unit: 'in', wrong: 'below', weight: 'must' },
  { ...MAGAZINE, gait: 'walk', edge: 24, unit: 'in', wrong: 'above', weight: 'must' },
  // Trot-over: 3 ft to 3 ft 6 in.
  { ...MAGAZINE, gait: 'jog', edge: 3, unit: 'ft', wrong: 'below', weight: 'must' },
  { ...MAGAZINE, gait: 'jog', edge: 3.5, unit: 'ft', wrong: 'above', weight: 'must' },
  // Lope-over: 6 to 7 ft or multiples.
  { ...STRIDES, gait: 'lope', edge: 6, unit: 'ft', wrong: 'below', weight: 'must' },
  { ...STRIDES, gait: 'lope', edge: 7, unit: 'ft', wrong: 'above', weight: 'must' },
];

const poles = (gait: Gait, gap: number, book: string): Course =>
  judged(scene([{ kind: 'run', at: [90, 50], values: { gap, gait } }]), book);

/** A sixteenth of an inch, in metres: finer than a crew tapes. */
const SIXTEENTH = 0.0254 / 16;

describe('published gap bands', () => {
  test.each(EDGES)(
    '$book: a $gait over poles at $edge $unit is right, and a sixteenth of an inch $wrong is not',
    (row) => {
      const { book, source, gait, edge, unit, wrong, weight } = row;
      const taped = edge * UNIT[unit];
      expect(saidBy(poles(gait, taped, book), 'gap-band')).toEqual([]);
      const off = wrong === 'below' ? -SIXTEENTH : SIXTEENTH;
      // Ten in a row would be multiples; with two poles there is one gap.
      const [finding] = saidBy(poles(gait, taped + off, book), 'gap-band');
      expect(finding?.weight).toBe(weight);
      expect(finding?.source).toContain(source);
      expect(finding?.measured).toBeCloseTo(taped + off, 9);
      const end = wrong === 'below' ? finding?.allowed?.least : finding?.allowed?.most;
      expect(end).toBeCloseTo(taped, 12);
      // Inside by as little is right as well.
      expect(saidBy(poles(gait, taped - off, book), 'gap-band')).toEqual([]);
    },
  );

  test.each([
    // Whole multiples of 6 to 7 ft (Horse & Rider) and of 3 to 3 ft 6 in (a trainer: 3, 6 and 12 ft as 1, 2 and 4 steps).
    ['lope', 12, 14],
    ['lope', 18, 21],
    ['jog', 6, 7],
    ['jog', 12, 14],
  ] as const)('a %s takes twice the band and more: %d to %d ft', (gait, least, most) => {
    for (const { book } of [MULE, STRIDES]) {
      for (const right of [least, most]) expect(saidBy(poles(gait, right * 0.3048, book), 'gap-band')).toEqual([]);
    }
  });

  test.each([
    ['lope', 10],
    ['lope', 16],
    ['jog', 5],
    ['walk', 26],
  ] as const)('a %s does not take what lies between two multiples: %d', (gait, between) => {
    const unit = gait === 'walk' ? UNIT.in : UNIT.ft;
    for (const { book } of [MULE, STRIDES]) {
      expect(saidBy(poles(gait, between * unit, book), 'gap-band').length).toBeGreaterThan(0);
    }
  });
});

/** Metric rule books round: these lengths are theirs, and each is a little less than what looks like the same in feet. */
const TRAPS = [
  { metric: 70, cm: 'cm', printed: 28, unit: 'in', short: 0.44 },
  { metric: 75, cm: 'cm', printed: 30, unit: 'in', short: 0.47 },
  { metric: 1.8, cm: 'm', printed: 6, unit: 'ft', short: 1.13 },
  { metric: 2.1, cm: 'm', printed: 7, unit: 'ft', short: 1.32 },
] as const;

describe('the unit trap', () => {
  test.each(TRAPS)('$metric $cm is short of $printed $unit by $short in', ({ metric, cm, printed, unit, short }) => {
    const missing = printed * UNIT[unit] - metric * UNIT[cm];
    expect(missing / UNIT.in).toBeCloseTo(short, 1);
    expect(missing).toBeGreaterThan(BAND_TOLERANCE);
  });

  test('a lane of 70 cm fails a book that says 28 in, and the sentence shows the difference', () => {
    const lane = judged(scene([{ kind: 'back-lane', at: [60, 50], values: { width: 0.7 } }]), 'trade-press');
    const [finding] = saidBy(lane, 'back-width');
    expect(finding?.says).toBe(
      'The lane of the back-through lane (obstacle 1) is 2\' 3½"; the book asks for at least 2\' 4".',
    );
    const [metric] = saidBy({ ...lane, unit: 'm' }, 'back-width');
    expect(metric?.says).toBe(
      'The lane of the back-through lane (obstacle 1) is 0.70 m; the book asks for at least 0.71 m (28 in in the book).',
    );
  });

  test('poles at 1.8 m are no lope-overs of 6 ft', () => {
    const [finding] = saidBy(poles('lope', 1.8, 'trade-press'), 'gap-band');
    expect(finding?.says).toContain("5' 10¾\"; a lope asks for 6' to 7' or a whole multiple.");
  });
});
