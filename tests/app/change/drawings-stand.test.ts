import { expect, test } from 'vitest';
import { drawingsStand } from '../../../src/app/change/drawings-stand.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';

const { arena } = blankCourse();

test('drawings stand so that the arena is larger', () => {
  expect(drawingsStand(arena, { width: 500, height: 1000 }, 2)).toBe('below');
  expect(drawingsStand(arena, { width: 1600, height: 420 }, 2)).toBe('beside');
  expect(drawingsStand({ ...arena, length: arena.width, width: arena.length }, { width: 900, height: 600 }, 3)).toBe(
    'beside',
  );
});
