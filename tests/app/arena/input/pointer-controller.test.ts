import { describe, expect, test, vi } from 'vitest';
import type { Camera } from '../../../../src/app/arena/camera.ts';
import { createPointerController, type PointerSample } from '../../../../src/app/arena/input/pointer-controller.ts';
import type { PointerInput } from '../../../../src/desk/input.ts';

const CAMERA: Camera = { scale: 10, x: 0, y: 100, turned: false };

/** Records what the pointer controller does, in order. */
function written(grasps = true) {
  const deeds: string[] = [];
  const touches: PointerInput[] = [];
  const hand = createPointerController({
    camera: () => CAMERA,
    pointer: (touch) => {
      touches.push(touch);
      deeds.push(`${touch.phase} ${touch.pointerId}`);
    },
    grasps: () => grasps,
    fingerAt: (at) => deeds.push(at === null ? 'finger away' : 'finger'),
    menu: () => deeds.push('menu'),
    pan: (dx, dy) => deeds.push(`pan ${dx} ${dy}`),
    zoom: (factor) => deeds.push(`zoom ${factor}`),
  });
  return { hand, deeds, touches };
}

function finger(id: number, x: number, y: number, rest: Partial<PointerSample> = {}): PointerSample {
  return { id, kind: 'mouse', at: { x, y }, button: 0, shift: false, alt: false, ...rest };
}

describe('a hand over the arena', () => {
  test('touches the ground in metres, with the reach of its pointer', () => {
    const { hand, touches } = written();
    hand.down(finger(1, 50, 20, { shift: true }));
    expect(touches).toEqual([
      { phase: 'down', pointerId: 1, at: { x: 5, y: 8 }, pickRadius: 0.9, isAdding: true, isSnapOff: false },
    ]);
    hand.up(finger(1, 60, 20));
    hand.down(finger(2, 0, 100, { kind: 'touch', alt: true }));
    expect(touches.at(-1)).toMatchObject({ at: { x: 0, y: 0 }, pickRadius: 2, isSnapOff: true });
  });

  test('drags with one pointer and lets go', () => {
    const { hand, deeds } = written();
    hand.down(finger(1, 0, 0));
    hand.move(finger(1, 5, 0));
    hand.up(finger(1, 5, 0));
    expect(deeds).toEqual(['down 1', 'move 1', 'finger away', 'up 1']);
  });

  test('takes back what it began when a second finger comes, and then pinches', () => {
    const { hand, deeds } = written();
    hand.down(finger(1, 0, 0, { kind: 'touch' }));
    hand.down(finger(2, 100, 0, { kind: 'touch' }));
    hand.move(finger(2, 200, 0, { kind: 'touch' }));
    expect(deeds).toEqual(['down 1', 'finger away', 'cancel 1', 'pan 50 0', 'zoom 2']);
    hand.up(finger(2, 200, 0, { kind: 'touch' }));
    hand.move(finger(1, 30, 0, { kind: 'touch' }));
    hand.up(finger(1, 30, 0, { kind: 'touch' }));
    expect(deeds.filter((deed) => /down|move|up/.test(deed))).toEqual(['down 1']);
  });

  test.each([
    ['the middle button', { button: 1 }, false],
    ['the space bar', {}, true],
  ])('moves the picture with %s and touches nothing', (_, how, holding) => {
    const { hand, deeds } = written();
    hand.setPanMode(holding);
    hand.down(finger(1, 10, 10, how));
    hand.move(finger(1, 14, 7, how));
    hand.up(finger(1, 14, 7, how));
    expect(deeds).toEqual(['pan 4 -3', 'finger away']);
  });

  test('does nothing with the second button', () => {
    const { hand, deeds } = written();
    hand.down(finger(1, 10, 10, { button: 2 }));
    hand.up(finger(1, 10, 10, { button: 2 }));
    expect(deeds).toEqual([]);
  });

  test('passes a cancelled pointer on as cancelled', () => {
    const { hand, deeds } = written();
    hand.down(finger(1, 10, 10));
    hand.cancel(finger(1, 10, 10));
    expect(deeds).toEqual(['down 1', 'finger away', 'cancel 1']);
  });
});

describe('one finger', () => {
  const touch = { kind: 'touch' } as const;

  test('pans where it takes hold of nothing', () => {
    const { hand, deeds } = written(false);
    hand.down(finger(1, 0, 0, touch));
    hand.move(finger(1, 4, 0, touch));
    hand.move(finger(1, 14, 0, touch));
    hand.up(finger(1, 14, 0, touch));
    expect(deeds).toEqual(['pan 10 0', 'finger away']);
  });

  test('taps where it does not stir', () => {
    const { hand, deeds } = written(false);
    hand.down(finger(1, 0, 0, touch));
    hand.move(finger(1, 4, 0, touch));
    hand.up(finger(1, 4, 0, touch));
    expect(deeds).toEqual(['finger away', 'down 1', 'up 1']);
  });

  test('drags what it takes hold of, and says where it is', () => {
    const { hand, deeds } = written(true);
    hand.down(finger(1, 0, 0, touch));
    hand.move(finger(1, 14, 0, touch));
    hand.up(finger(1, 14, 0, touch));
    expect(deeds).toEqual(['down 1', 'move 1', 'finger', 'finger away', 'up 1']);
  });

  test('asks for the menu when it stays, and lets go of what it held', () => {
    vi.useFakeTimers();
    const { hand, deeds } = written(true);
    hand.down(finger(1, 0, 0, touch));
    vi.advanceTimersByTime(499);
    expect(deeds).toEqual(['down 1']);
    vi.advanceTimersByTime(2);
    hand.move(finger(1, 40, 0, touch));
    hand.up(finger(1, 40, 0, touch));
    vi.useRealTimers();
    expect(deeds.filter((deed) => deed !== 'finger away')).toEqual(['down 1', 'cancel 1', 'menu']);
  });

  test('asks for no menu once it has stirred', () => {
    vi.useFakeTimers();
    const { hand, deeds } = written(true);
    hand.down(finger(1, 0, 0, touch));
    hand.move(finger(1, 14, 0, touch));
    vi.advanceTimersByTime(2000);
    vi.useRealTimers();
    expect(deeds).not.toContain('menu');
  });
});
