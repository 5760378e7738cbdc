import { expect, test } from 'vitest';
import { labelPlaces } from '../../../../src/app/arena/painters/label-places.ts';

const ROOM = { minX: 0, minY: 0, maxX: 400, maxY: 400 };
const box = (minX: number, minY: number, maxX: number, maxY: number) => ({ minX, minY, maxX, maxY });

function around({ x, y }: { x: number; y: number }, width: number, height: number) {
  return box(x - width / 2, y - height / 2, x + width / 2, y + height / 2);
}

function overlaps(a: ReturnType<typeof box>, b: ReturnType<typeof box>): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

test('a label stands beside its box, not on it', () => {
  const wish = { box: box(100, 100, 160, 140), width: 50, height: 20 };
  const [place] = labelPlaces([wish], [], { room: ROOM });
  if (place === undefined) throw new Error('no place');
  expect(overlaps(around(place, 50, 20), wish.box)).toBe(false);
});

test('labels of neighbours keep off one another and off the neighbours', () => {
  const wishes = [box(100, 100, 140, 140), box(146, 100, 186, 140), box(192, 100, 232, 140)].map((each) => ({
    box: each,
    width: 70,
    height: 20,
  }));
  const labels = labelPlaces(wishes, [], { room: ROOM }).map((place) => around(place, 70, 20));
  labels.forEach((label, index) => {
    for (const other of labels.slice(index + 1)) expect(overlaps(label, other)).toBe(false);
    for (const wish of wishes) expect(overlaps(label, wish.box)).toBe(false);
  });
});

test('a label goes to the side where the line does not run, and off what is kept free', () => {
  const wish = { box: box(180, 180, 220, 220), width: 40, height: 20 };
  const above = Array.from({ length: 20 }, (_, index) => ({ x: 150 + 5 * index, y: 164 }));
  const below = box(100, 222, 300, 300);
  const [place] = labelPlaces([wish], above, { room: ROOM, kept: [below] });
  if (place === undefined) throw new Error('no place');
  const label = around(place, 40, 20);
  expect(overlaps(label, below)).toBe(false);
  expect(above.some(({ x, y }) => overlaps(label, around({ x, y }, 0.1, 0.1)))).toBe(false);
});
