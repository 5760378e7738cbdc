import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { feet, INCH } from '../../../src/core/measure/quantity.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { setOutCrewOf } from '../../../src/core/setout/crew.ts';
import { inOrder } from '../../../src/core/setout/plan/laying-order.ts';
import { planSetOut, setOutBy, setOutOf } from '../../../src/core/setout/plan-setout.ts';
import type { Observation, SetOut, SetOutCrew } from '../../../src/core/setout/setout.ts';
import { isStraight, USUAL_TAPE } from '../../../src/core/setout/tape-errors.ts';
import { partNames, stepSentences } from '../../../src/core/setout/words/setout-words.ts';
import { type Survey, survey } from '../../../src/core/survey.ts';
import { build } from '../course/sample.ts';
import { randomCourse } from './random-courses.ts';

const CREW: SetOutCrew = { people: 2, tapes: 1, tape: feet(100), marked: 'ft', rightAngle: 'three-four-five' };
const CREWS = fc.record({
  people: fc.constantFrom(1 as const, 2 as const, 4 as const),
  tapes: fc.constantFrom(1 as const, 3 as const),
  tape: fc.constantFrom(feet(25), feet(100), 30),
  marked: fc.constantFrom('ft' as const, 'm' as const),
  rightAngle: fc.constantFrom('board' as const, 'three-four-five' as const),
});

function of(kind: string, angle = 0): Survey {
  return survey(addObstacle(blankCourse(), build('it', kind, { x: 30, y: 15, angle })));
}

function gripped({ grips }: Observation): readonly string[] {
  return grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : []));
}

/** Nothing is measured to what is not laid yet. */
function inTurn(plan: SetOut): readonly string[] {
  const laid = new Set<string>();
  const faults: string[] = [];
  for (const { steps } of plan.parts) {
    for (const { piece, held, observations, checks } of steps) {
      for (const each of [...observations, ...checks]) {
        for (const key of gripped(each)) if (key !== piece && !laid.has(key)) faults.push(`${piece} from ${key}`);
        if (!gripped(each).includes(piece)) faults.push(`${piece} by an observation of others`);
      }
      if (held.some((name) => !name.startsWith('wall ') && !laid.has(name)))
        faults.push(`${piece} holds what is not there`);
      laid.add(piece);
    }
  }
  return faults;
}

describe('over random courses and crews', () => {
  test('nothing is measured to what still moves, and each piece is laid once and determined when it is', () => {
    fc.assert(
      fc.property(randomCourse, CREWS, (course, crew) => {
        const seen = survey(course);
        const plan = planSetOut(seen, crew);
        expect(inTurn(plan)).toEqual([]);
        const laid = plan.parts.flatMap(({ steps }) => steps.map(({ piece }) => piece));
        expect(laid.toSorted()).toEqual(seen.pieces.map(({ key }) => key).toSorted());
        for (const { steps } of plan.parts) {
          for (const { observations, turnedByEye } of steps) expect(observations.length).toBe(turnedByEye ? 2 : 3);
        }
        // Laid by the rounded readings it lies where it is drawn, but for the rounding and what that leads to.
        for (const { key, pose } of seen.pieces) {
          const lies = plan.built.get(key);
          expect(lies === undefined ? 1 : distance(lies, pose), key).toBeLessThan(0.15);
        }
      }),
      { numRuns: 25 },
    );
  });

  test('a person alone is asked for no tape that needs a second one at its other end', () => {
    fc.assert(
      fc.property(randomCourse, (course) => {
        const plan = planSetOut(survey(course), { ...CREW, people: 1 });
        const all = plan.parts.flatMap(({ steps }) =>
          steps.flatMap(({ observations, checks }) => [...observations, ...checks]),
        );
        for (const { kind, constraint } of all) {
          if (constraint === undefined) expect(['between', 'from-rail']).not.toContain(kind);
        }
      }),
      { numRuns: 15 },
    );
  });
});

describe('a plan', () => {
  test('is the same object for the same survey, and the same plan for the same course', () => {
    const seen = of('fan');
    expect(setOutOf(seen)).toBe(setOutOf(seen));
    expect(planSetOut(of('fan'), CREW)).toEqual(planSetOut(of('fan'), CREW));
  });

  test('of a run begins at the wall and tapes each gap from the pole that lies', () => {
    const plan = planSetOut(of('run'), CREW);
    const [part] = plan.parts;
    expect(plan.parts).toHaveLength(1);
    const [first, ...others] = part?.steps ?? [];
    expect(first?.held.every((name) => name.startsWith('wall '))).toBe(true);
    for (const { observations } of others) {
      expect(observations.filter(({ kind }) => kind === 'gap').length).toBeGreaterThanOrEqual(1);
    }
    // Each neighbouring gap is taped by itself: no error is handed on from gap to gap.
    for (const { sigma } of plan.gaps) expect(sigma).toBeLessThan(0.3 * INCH);
  });

  test('of a fan keeps the gap at the line and the inner gap, as it is held', () => {
    const plan = planSetOut(of('fan', 0.3), CREW);
    const kinds = plan.parts.flatMap(({ steps }) =>
      steps.slice(1).map(({ observations }) => observations.map(({ constraint }) => constraint !== undefined)),
    );
    expect(kinds.every((own) => own.filter(Boolean).length >= 2)).toBe(true);
  });

  test('lays obstacles that are far apart each from the walls, and those with a gap between them together', () => {
    const apart = survey(
      [build('a', 'run', { x: 15, y: 12, angle: 0 }), build('b', 'run', { x: 50, y: 20, angle: 0 })].reduce(
        addObstacle,
        blankCourse(),
      ),
    );
    expect(planSetOut(apart, CREW).parts.map(({ obstacles }) => obstacles)).toEqual([['a'], ['b']]);
  });

  test('begins with the pole that is fixed', () => {
    const fan = build('it', 'fan', { x: 30, y: 15, angle: 0 });
    const pieces = fan.pieces.map((each) => (each.id === 'pole-2' ? { ...each, fixed: true as const } : each));
    const plan = planSetOut(survey(addObstacle(blankCourse(), { ...fan, pieces })), CREW);
    expect(plan.parts[0]?.steps[0]?.piece).toBe('it/pole-2');
  });

  test('is no worse than the order of drawing', () => {
    for (const kind of ['run', 'fan', 'spoke', 'box', 'back-l', 'box-fan-box', 'chevron']) {
      const drawn = setOutBy(of(kind), CREW, (pieces, question) => {
        const order = inOrder(pieces, question);
        if (order === undefined) throw new Error('the order of drawing can be laid');
        return order;
      });
      expect(planSetOut(of(kind), CREW).worstGap, kind).toBeLessThanOrEqual(drawn.worstGap + 0.0005);
    }
  });

  test('has a check for nearly every step, which a blunder of half a foot would not pass', () => {
    const plan = planSetOut(of('back-l'), CREW);
    const steps = plan.parts.flatMap((part) => part.steps);
    expect(steps.filter(({ checks }) => checks.length > 0).length).toBe(steps.length);
    for (const { checks } of steps) for (const { tolerance } of checks) expect(tolerance).toBeLessThan(6 * INCH);
  });

  test('rounds to the tape that there is', () => {
    const metric = planSetOut(of('fan'), { ...CREW, marked: 'm' });
    const readings = metric.parts.flatMap(({ steps }) => steps.flatMap(({ observations }) => observations));
    for (const { reading } of readings)
      expect(Math.abs(reading / 0.005 - Math.round(reading / 0.005))).toBeLessThan(1e-6);
    const imperial = planSetOut(of('fan'), CREW).parts.flatMap(({ steps }) =>
      steps.flatMap(({ observations }) => observations),
    );
    for (const { reading } of imperial)
      expect(Math.abs((reading / INCH) * 4 - Math.round((reading / INCH) * 4))).toBeLessThan(1e-6);
  });

  test('two straight tapes that meet are less sure with one tape, which scratches an arc', () => {
    const straights = (tapes: 1 | 2): readonly number[] =>
      planSetOut(of('spoke'), { ...CREW, tapes }).parts.flatMap(({ steps }) =>
        steps.flatMap(({ observations }) => {
          const own = observations.filter(({ kind }) => isStraight(kind));
          return own.length > 1 ? own.map(({ sigma }) => sigma) : [];
        }),
      );
    for (const sigma of straights(1)) expect(sigma).toBeGreaterThan(USUAL_TAPE.scratch.value);
    for (const sigma of straights(2)) expect(sigma).toBeLessThan(USUAL_TAPE.scratch.value);
    expect(straights(1).length + straights(2).length).toBeGreaterThan(0);
  });

  test('with a short tape is less sure far from the walls', () => {
    const far = (tape: number): number => planSetOut(of('run'), { ...CREW, tape }).parts[0]?.place.end ?? 0;
    expect(far(feet(25))).toBeGreaterThan(far(feet(100)));
  });

  test('of a course that names no crew is for two people with one tape in its unit', () => {
    expect(setOutCrewOf({ unit: 'ft' })).toEqual({
      people: 2,
      tapes: 1,
      tape: feet(100),
      marked: 'ft',
      rightAngle: 'three-four-five',
    });
    expect(setOutCrewOf({ unit: 'm', crew: { people: 1, tapes: 2, marked: 'ft' } })).toMatchObject({
      people: 1,
      tapes: 2,
      tape: feet(100),
    });
  });
});

describe('every kind of obstacle', () => {
  const FIXTURES = 'seeds/fixtures/obstacles/';

  test.each(readdirSync(FIXTURES))('%s is set out by one person with a short tape and by four in metres', (file) => {
    const read = readCourse(readFileSync(`${FIXTURES}${file}`, 'utf8'));
    if (read.kind === 'refused') throw new Error(read.why);
    const seen = survey(read.course);
    const crews: readonly SetOutCrew[] = [
      { people: 1, tapes: 1, tape: feet(25), marked: 'ft', rightAngle: 'board' },
      { people: 4, tapes: 3, tape: 30, marked: 'm', rightAngle: 'three-four-five' },
    ];
    for (const crew of crews) {
      const plan = planSetOut(seen, crew);
      expect(inTurn(plan)).toEqual([]);
      const told = plan.parts.flatMap((part) =>
        part.steps.flatMap((step) => stepSentences(partNames(seen, plan, part), step)),
      );
      expect(told.length).toBeGreaterThan(seen.pieces.length);
      expect(told.filter((sentence) => /undefined|NaN|Infinity/.test(sentence))).toEqual([]);
      // A quarter inch of tape, as a turn of the piece leads it on to its gaps.
      for (const { plan: drawn, rounded } of plan.gaps) expect(Math.abs(rounded - drawn)).toBeLessThan(INCH / 2);
    }
  });
});
