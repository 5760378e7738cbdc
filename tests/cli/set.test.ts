import { describe, expect, test } from 'vitest';
import { hyphenated } from '../../src/cli/set.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { runCli } from './run-cli.ts';

const FT = 0.3048;

describe('set', () => {
  test('builds a fan and prints its facts as one JSON document in SI units', async () => {
    const { code, out, err } = await runCli(
      'set',
      'fan',
      '--poles',
      '3',
      '--length',
      '12ft',
      '--thickness',
      '4 in',
      '--inner-gap',
      "1'",
      '--gap',
      '6 ft',
      '--line',
      '2/3',
      '--json',
    );
    const told = JSON.parse(out);
    expect([code, err]).toEqual([0, '']);
    expect(Object.keys(told)).toEqual(['kind', 'params', 'pieces', 'facts', 'rulebook', 'findings']);
    expect(told.kind).toBe('fan');
    expect(told.params).toMatchObject({ poles: 3, length: 3.6576, thickness: 0.1016, innerGap: 0.3048, gap: 1.8288 });
    expect(told.pieces).toHaveLength(3);
    expect(told.facts.lineRadius / FT).toBeCloseTo(10.161452, 5);
    expect((told.facts.angle * 180) / Math.PI).toBeCloseTo(36.419914, 5);
  });

  test('builds a spoke and prints its facts', async () => {
    const { out } = await runCli(
      'set',
      'spoke',
      '--arms',
      '5',
      '--length=12ft',
      '--marker-base',
      '1ft',
      '--clear',
      '24"',
      '--line',
      '75%',
      '--json',
    );
    const { facts } = JSON.parse(out);
    expect(facts.arc / FT).toBeCloseTo(14.451326, 5);
    expect(facts.chord / FT).toBeCloseTo(13.519061, 5);
  });

  test.each(OBSTACLE_KINDS.map((kind) => kind.id))(
    'builds a %s from its usual values, in JSON and in words',
    async (id) => {
      const json = await runCli('set', id, '--json');
      expect(json.code).toBe(0);
      expect(JSON.parse(json.out).kind).toBe(id);
      const plain = await runCli('set', id);
      expect(plain.code).toBe(0);
      for (const key of Object.keys(JSON.parse(json.out).params)) expect(plain.out).toContain(`--${hyphenated(key)}`);
    },
  );

  test('refuses what cannot be ridden: a document with the nearest that works, the reason on stderr, exit 2', async () => {
    const { code, out, err } = await runCli('set', 'fan', '--length', '8ft', '--gait', 'lope', '--json');
    const told = JSON.parse(out);
    expect(code).toBe(2);
    expect(Object.keys(told)).toEqual(['kind', 'params', 'refused', 'facts']);
    expect(told.refused.why).toContain('turns on a radius of 6.8 ft (2.07 m): too tight to lope');
    expect(told.refused.nearest).toEqual({ innerGap: 0.8128 });
    expect(told.facts.lineRadius / FT).toBeCloseTo(6.802517, 5);
    expect(err).toBe(`${told.refused.why}\n`);
    const mended = await runCli('set', 'fan', '--length', '8ft', '--gait', 'lope', '--inner-gap', '2ft 8in', '--json');
    expect(mended.code).toBe(0);
  });

  test('without --json a refusal prints nothing on stdout', async () => {
    const { code, out, err } = await runCli('set', 'fan', '--length', '8ft', '--gait', 'lope');
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('An inner gap of 2 ft 8 in (0.81 m) makes it right.');
  });

  test('takes a bare number in feet and says so, or in metres when told', async () => {
    const feet = await runCli('set', 'run', '--gap', '3', '--json');
    expect(JSON.parse(feet.out).params.gap).toBe(0.9144);
    expect(feet.err).toBe('--gap: 3 was read as 3 feet.\n');
    const metres = await runCli('set', 'run', '--gap', '1.1', '--unit', 'm', '--json');
    expect(JSON.parse(metres.out).params.gap).toBe(1.1);
  });

  test('shows the parameters of a kind with their usual values and bounds', async () => {
    const { code, out } = await runCli('set', 'fan', '--help');
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain(
      '--inner-gap <length> Inner gap. Usual: 1 ft (0.30 m); 2 in (0.05 m) to 14 ft (4.27 m).',
    );
  });
});

describe('set says what it thinks of what it built', () => {
  test('in words and in JSON, and fails on a must', async () => {
    const plain = await runCli('set', 'run', '--gait', 'lope', '--gap', '3 ft');
    expect(plain.code).toBe(1);
    expect(plain.out).toContain('By itself, by American Mule Association: 1 must, ');
    expect(plain.out).toContain("Gaps 1 to 3 of the set of lope-overs (obstacle 1) are 3'; a lope asks for 6' to 7'");
    expect(plain.out).toContain('Fix: Set the gaps of the set of lope-overs (obstacle 1) to 6\' 6"');
    const json = await runCli('set', 'run', '--gait', 'lope', '--gap', '3 ft', '--json');
    expect(json.code).toBe(1);
    const [first] = JSON.parse(json.out).findings;
    expect(first).toMatchObject({ check: 'gap-band', weight: 'must' });
    expect(first.measured).toBeCloseTo(3 * FT, 9);
  });

  test('by the book and the weight that are asked for', async () => {
    const narrow = ['set', 'back-l', '--width', '29 in'];
    expect((await runCli(...narrow)).code).toBe(1);
    expect((await runCli(...narrow, '--rulebook', 'trade-press')).code).toBe(0);
    const box = ['set', 'box', '--side', '5 ft', '--length', '8 ft'];
    expect((await runCli(...box)).code).toBe(0);
    expect((await runCli(...box, '--fail-on', 'should')).code).toBe(1);
  });

  test('and nothing of what only a whole course can have or lack', async () => {
    for (const book of ['mule-association', 'trade-press', 'stock-horse', 'ewu']) {
      const { out } = await runCli('set', 'bridge', '--rulebook', book, '--json');
      expect(JSON.parse(out).findings).toEqual([]);
    }
  });
});

/** What was typed after `set`, and what the person is told. */
const BAD: readonly (readonly [readonly string[], string])[] = [
  [['fann'], 'There is no obstacle "fann". Did you mean fan? There are: run, fan, spoke,'],
  [[], 'Which obstacle? There are: run, fan, spoke,'],
  [['fan', '--inner-gapp', '1ft'], 'fan has no --inner-gapp. Did you mean --inner-gap? It takes: --poles, --length,'],
  [['fan', '--gap'], '--gap <length> wants a value after it.'],
  [['fan', '--gap', 'six feet'], '--gap: "six feet" is not part of a length.'],
  [['fan', '--gap', '6 cubits'], '--gap: "cubits" is not a unit that is read here. Write ft, in, m, cm or mm.'],
  [['fan', '--gap', '6\' 14"'], '--gap: 14 inches make a foot or more.'],
  [['fan', '--poles', '2.5'], '--poles: 2.5 is not a whole number.'],
  [['fan', '--line', '3'], '--line: 3 is more than the whole.'],
  [['fan', '--gait', 'gallop'], '--gait: There is no choice "gallop". There are: walk, jog, lope.'],
  [['fan', '--length', '40ft'], 'Pole length: 40 ft (12.19 m) is outside 4 ft (1.22 m) to 16 ft (4.88 m).'],
  [['fan', '--gap', '-6ft'], 'Gap: −6 ft (−1.83 m) is outside 1 ft 3 in (0.38 m) to 14 ft (4.27 m).'],
  [['fan', '--poles', '99'], 'Poles: 99 is outside 2 to 8.'],
  [['fan', '6ft'], 'fan does not know what to do with "6ft".'],
  [['run', '--rulebook', 'mule'], 'There is no rule book "mule".'],
  [['run', '--fail-on', 'mast'], '--fail-on: There is no weight "mast".'],
  [['run', '--unit', 'furlong'], '--unit: There is no unit "furlong". There are: ft, m.'],
];

test.each(BAD)('set %j is refused with its reason', async (argv, why) => {
  const { code, out, err } = await runCli('set', ...argv);
  expect([code, out]).toEqual([2, '']);
  expect(err).toContain(why);
  expect(err.trimEnd().split('\n').length).toBeLessThanOrEqual(2);
});
