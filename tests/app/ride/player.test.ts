import { describe, expect, test } from 'vitest';
import { createPlayer, type Player } from '../../../src/app/ride/player.ts';

/** Frames that come when the test says so. */
function frames() {
  const waiting: ((ms: number) => void)[] = [];
  let now = 1000;
  return {
    next: (frame: (ms: number) => void) => void waiting.push(frame),
    waiting,
    /** So many milliseconds later. */
    pass(ms: number) {
      now += ms;
      for (const frame of waiting.splice(0)) frame(now);
    },
  };
}

function loaded() {
  const clock = frames();
  const player = createPlayer(clock);
  player.load({ duration: 10, cuePoints: [0, 2, 4, 10] });
  return { clock, player };
}

function playFor(player: Player, clock: ReturnType<typeof frames>, ms: number): void {
  player.play();
  clock.pass(0);
  for (let gone = 0; gone < ms; gone += 100) clock.pass(100);
}

describe('the player', () => {
  test('plays at true speed, twice and four times', () => {
    for (const rate of [1, 2, 4] as const) {
      const { clock, player } = loaded();
      player.run(rate);
      playFor(player, clock, 1000);
      expect(player.time()).toBeCloseTo(rate, 9);
    }
  });

  test('tells the time to those who watch, and nothing to those who listen, frame by frame', () => {
    const { clock, player } = loaded();
    let heard = 0;
    const seen: number[] = [];
    player.subscribe(() => {
      heard += 1;
    });
    player.watch((time) => seen.push(time));
    playFor(player, clock, 500);
    expect(heard).toBe(1);
    expect(seen).toHaveLength(5);
    expect(seen.at(-1)).toBeCloseTo(0.5, 9);
  });

  test('asks for no frames while it stands', () => {
    const { clock, player } = loaded();
    playFor(player, clock, 300);
    player.pause();
    clock.pass(100);
    expect(clock.waiting).toEqual([]);
    expect(player.time()).toBeCloseTo(0.3, 9);
  });

  test('stops at the end, and begins anew from there', () => {
    const { clock, player } = loaded();
    player.seek(9.95);
    playFor(player, clock, 200);
    expect(player.time()).toBe(10);
    expect(player.state().isPlaying).toBe(false);
    player.play();
    expect(player.time()).toBe(0);
  });

  test('a page that was away for a minute does not jump', () => {
    const { clock, player } = loaded();
    playFor(player, clock, 100);
    clock.pass(60_000);
    expect(player.time()).toBeCloseTo(0.35, 9);
  });

  test('steps from stop to stop, both ways, and no further than the ends', () => {
    const { player } = loaded();
    const places = [1, 1, 1, 1, -1, -1, -1, -1].map((by) => {
      player.step(by as 1 | -1);
      return player.time();
    });
    expect(places).toEqual([2, 4, 10, 10, 4, 2, 0, 0]);
    expect(player.state().steps).toBe(8);
  });

  test('a course that became shorter is not played beyond its end', () => {
    const { player } = loaded();
    player.seek(8);
    player.load({ duration: 5, cuePoints: [0, 5] });
    expect(player.time()).toBe(5);
  });
});
