import { describe, expect, test } from 'vitest';
import { partActs } from '../../../src/app/setout/acts.ts';
import { LETTER_RADIUS, pictureOf } from '../../../src/app/setout/picture.ts';
import { groundOf } from '../../../src/core/setout/built/adjust-equations.ts';
import { setOutOf } from '../../../src/core/setout/plan-setout.ts';
import { survey as surveyOf } from '../../../src/core/survey.ts';
import { STARTERS } from '../../core/ride/courses.ts';

const PHONE = { width: 390, height: 260 };
const NORTH = Math.PI / 2;

const survey = surveyOf((STARTERS.find(([name]) => name.startsWith('larkhollow-open')) as (typeof STARTERS)[0])[1]);
const ground = groundOf(survey);
const parts = partActs(survey, setOutOf(survey));

function pictures(facing = NORTH) {
  return parts.flatMap((part) =>
    part.acts.map((act) => ({ act, part, picture: pictureOf(ground, part, { act, facing, size: PHONE }) })),
  );
}

describe('the picture of an act', () => {
  test('has one piece that is laid, and holds what the act is taped to', () => {
    for (const { act, picture } of pictures()) {
      expect(picture.pieces.filter(({ role }) => role === 'laid').map(({ key }) => key)).toEqual([act.step.piece]);
      const held = picture.pieces.filter(({ role }) => role === 'held').map(({ key }) => key);
      const gripped = (act.of?.grips ?? []).flatMap((grip) => ('piece' in grip ? [grip.piece] : []));
      expect([...held, act.step.piece]).toEqual(expect.arrayContaining(gripped));
    }
  });

  test('shows no piece before it is laid', () => {
    for (const { act, part, picture } of pictures()) {
      const later = part.part.steps.filter(({ number }) => number > act.step.number).map(({ piece }) => piece);
      expect(picture.pieces.filter(({ key }) => later.includes(key))).toEqual([]);
    }
  });

  test('shows all of what is held and laid, and of the tape, however the person faces', () => {
    for (const facing of [NORTH, 0, -2.1]) {
      for (const { picture } of pictures(facing)) {
        const near = picture.pieces.filter(({ role }) => role !== 'lies');
        const seen = [...near.flatMap(({ ring }) => ring), ...(picture.tape ?? []), ...(picture.guide ?? [])];
        for (const { x, y } of seen) {
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(PHONE.width);
          expect(y).toBeGreaterThan(0);
          // Below are the buttons that turn it.
          expect(y).toBeLessThan(PHONE.height - 48);
        }
      }
    }
  });

  test('has no letter over another, and none out of the picture', () => {
    for (const facing of [NORTH, 0, 0.8]) {
      for (const { act, picture } of pictures(facing)) {
        const letters = picture.pieces.flatMap((piece) => piece.letters);
        for (const [i, a] of letters.entries()) {
          for (const b of letters.slice(i + 1)) {
            const far = Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y);
            expect(far, `${act.id}: ${a.text} and ${b.text}`).toBeGreaterThan(2 * LETTER_RADIUS - 1);
          }
          expect(a.at.x, act.id).toBeGreaterThan(LETTER_RADIUS);
          expect(a.at.x, act.id).toBeLessThan(PHONE.width - LETTER_RADIUS);
          expect(a.at.y, act.id).toBeGreaterThan(LETTER_RADIUS);
        }
      }
    }
  });

  test('has the wall that a person faces on top', () => {
    const [{ act, part }] = pictures() as [ReturnType<typeof pictures>[0]];
    const top = (facing: number) => {
      const { walls } = pictureOf(ground, part, { act, facing, size: PHONE });
      // From the south-west corner on: south, east, north and west walls.
      const middles = walls.map(({ y }, i) => (y + (walls[(i + 1) % 4]?.y ?? 0)) / 2);
      return ['south', 'east', 'north', 'west'][middles.indexOf(Math.min(...middles))];
    };
    expect([NORTH, 0, -NORTH, Math.PI].map(top)).toEqual(['north', 'east', 'south', 'west']);
  });

  test('has the zero end of the tape at what is held', () => {
    const taped = pictures().filter(({ act, picture }) => act.of?.kind === 'gap' && picture.tape !== undefined);
    expect(taped.length).toBeGreaterThan(10);
    for (const { picture } of taped) {
      const [zero, read] = picture.tape as NonNullable<typeof picture.tape>;
      const laid = picture.pieces.find(({ role }) => role === 'laid');
      const near = ({ x, y }: typeof zero) =>
        Math.min(
          ...(laid?.ring ?? []).map((corner, i, ring) =>
            segmentDistance({ x, y }, corner, ring[(i + 1) % ring.length] ?? corner),
          ),
        );
      expect(near(zero)).toBeGreaterThan(near(read));
    }
  });
});

type At = { readonly x: number; readonly y: number };

function segmentDistance(at: At, a: At, b: At): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.min(1, Math.max(0, ((at.x - a.x) * dx + (at.y - a.y) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(at.x - a.x - t * dx, at.y - a.y - t * dy);
}
