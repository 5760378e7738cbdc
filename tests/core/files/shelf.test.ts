import { describe, expect, test } from 'vitest';
import type { ShelfItem } from '../../../src/core/course/shelf-item.ts';
import { readShelfItem, writeShelfItem } from '../../../src/core/files/shelf.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import { pose } from '../../../src/core/plane/pose.ts';

function item(kind: string): ShelfItem {
  const obstacle = buildObstacle(`${kind}-1`, kind, {}, pose(1, 2, 0.5), -1);
  if ('why' in obstacle) throw new Error(obstacle.why);
  return { id: 'mine', title: `My ${kind}`, obstacle };
}

test.each(OBSTACLE_KINDS.map(({ id }) => id))('a kept %s is read as it was written', (kind) => {
  const reading = readShelfItem(writeShelfItem(item(kind)));
  expect(reading).toEqual({ kind: 'read', item: item(kind) });
});

describe('what is no kept obstacle is refused with what is wrong', () => {
  const text = writeShelfItem(item('fan'));
  test.each([
    ['', /./],
    ['[1]', 'This is no kept obstacle: it holds'],
    ['{"format": "polewright-course"}', 'a kept obstacle says "polewright-obstacle"'],
    [text.replace('"version": 1', '"version": 9'), 'this program reads version 1'],
    [text.replace('"title": "My fan"', '"title": ""'), /[Tt]itle/],
    [text.replace('"kind": "fan"', '"kind": "trampoline"'), 'is of the kind "trampoline"'],
    [text.replaceAll('"piece": "pole-2"', '"piece": "gone"'), 'grips the piece "gone", which is not there'],
  ])('%#', (wrong, why) => {
    const reading = readShelfItem(wrong);
    expect(reading.kind).toBe('refused');
    if (reading.kind !== 'refused') return;
    if (typeof why === 'string') expect(reading.why).toContain(why);
    else expect(reading.why).toMatch(why);
  });
});
