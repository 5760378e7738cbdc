import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { cardText } from '../../src/core/score/read-card.ts';
import { SCORE_CAUTION } from '../../src/core/score/score-card.ts';
import { cardBy, given, tappedAll } from '../core/score/cards.ts';
import { runCli, scratchFolder } from './run-cli.ts';

const CARD = tappedAll(cardBy('ewu', ['11', '12', '13', '14']), [
  ...given('11', [1, 0.5, 0], { 2: ['hit'] }),
  ...given('12', [0, 0.5, 0]),
  ...given('13', [1.5, null, null]),
  { kind: 'rule', entry: 'entry-14', ruling: 'wrong-order' },
  { kind: 'judge', judge: 'Ada Fenn' },
]);

function kept(text: string): string {
  const path = join(scratchFolder(), 'card.json');
  writeFileSync(path, text);
  return path;
}

describe('score', () => {
  test('prints places, totals, ties and what is missing, and that it is no result', async () => {
    const { code, out, err } = await runCli('score', kept(cardText(CARD)));
    expect([code, err]).toEqual([0, '']);
    const lines = out.split('\n');
    expect(lines[0]).toBe('Larkhollow, judge Ada Fenn: by EWU, Germany, from 70');
    expect(lines.slice(3, 7).map((line) => line.trim().split(/ {2,}/))).toEqual([
      ['1', '11', '+1½', '−1', '70½', 'finished, tied'],
      ['1', '12', '+½', '0', '70½', 'finished, tied'],
      ['3', '14', '0', '0', '0', 'zero score'],
      ['13', '+1½', '0', '71½', 'not finished, without 2 and 3'],
    ]);
    expect(out).toContain(SCORE_CAUTION);
  });

  test('is one JSON document with --json', async () => {
    const { out } = await runCli('score', kept(cardText(CARD)), '--json');
    const told = JSON.parse(out);
    expect(told.placings.map(({ number, place, total }: Record<string, unknown>) => [number, place, total])).toEqual([
      ['11', 1, 70.5],
      ['12', 1, 70.5],
      ['14', 3, 0],
      ['13', undefined, 71.5],
    ]);
    expect(told.caution).toBe(SCORE_CAUTION);
  });

  test.each([
    ['what is no card', '{"format":"polewright-course","version":1}', 'polewright-score-card'],
    ['a file that is cut off', cardText(CARD).slice(0, 300), 'cut off'],
  ])('refuses %s', async (_, text, says) => {
    const { code, err } = await runCli('score', kept(text));
    expect(code).toBe(2);
    expect(err).toContain(says);
  });

  test('says that there is no such file', async () => {
    expect(await runCli('score', 'no-such-card.json')).toMatchObject({
      code: 2,
      err: 'There is no file no-such-card.json.\n',
    });
  });
});
