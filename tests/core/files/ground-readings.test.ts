import '../../property-seed.ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readGroundReadings } from '../../../src/core/files/ground-readings.ts';
import { writtenReadings } from '../../../src/core/files/reading-lines.ts';
import { readPlace } from '../../../src/core/files/reading-place.ts';
import { FOOT, feet, INCH } from '../../../src/core/measure/quantity.ts';
import { setOutCrewOf } from '../../../src/core/setout/crew.ts';
import { setOutOf } from '../../../src/core/setout/plan-setout.ts';
import { survey } from '../../../src/core/survey.ts';
import { scene } from '../checks/scene.ts';

const course = scene([
  { kind: 'fan', at: [100, 50] },
  { kind: 'serpentine', at: [40, 30] },
]);
const surveyed = survey(course);
const letters = new Map(setOutOf(surveyed).parts.flatMap((part) => [...part.letters]));
const context = { survey: surveyed, letters, crew: setOutCrewOf(course) };

function read(text: string) {
  const found = readGroundReadings(text, context);
  if (found.kind === 'refused') throw new Error(found.faults.map(({ line, why }) => `${line}: ${why}`).join('\n'));
  return found.readings;
}

function faults(text: string): readonly string[] {
  const found = readGroundReadings(text, context);
  return found.kind === 'read' ? [] : found.faults.map(({ line, why }) => `${line}: ${why}`);
}

const table = (...rows: readonly string[]) => ['kind,from,to,reads,sure', ...rows].join('\n');

describe('places', () => {
  const place = (text: string) => readPlace(text, context);
  const [first, second] = letters.get('fan-1/pole-2') ?? ['', ''];

  test.each([
    ['fan-1/pole-2', { piece: 'fan-1/pole-2' }],
    ['fan-1/pole-2 middle', { piece: 'fan-1/pole-2', at: 0.5 }],
    ['fan-1/pole-2 at 2/3', { piece: 'fan-1/pole-2', at: 2 / 3 }],
    ['  fan-1/pole-2   at  67 % ', { piece: 'fan-1/pole-2', at: 0.67 }],
    [`fan-1/pole-2 ${first}`, { piece: 'fan-1/pole-2', at: 0 }],
    [`fan-1/pole-2 end ${second.toLowerCase()}`, { piece: 'fan-1/pole-2', at: 1 }],
    ['serpentine-1/marker-1', { piece: 'serpentine-1/marker-1' }],
    ['wall south', { wall: 'south' }],
    ['Wall North', { wall: 'north' }],
  ])('%s', (text, grip) => {
    expect(place(text)).toMatchObject({ kind: 'place', grip });
  });

  test.each([
    ['wall south from west', 0],
    ['wall south from east', feet(200)],
    ["wall south at 25'", feet(25)],
    // The north wall begins in the east, and is counted from the west.
    ["wall north at 25'", feet(175)],
    ['wall west from south', feet(100)],
    ['wall east from south', 0],
  ])('%s begins %f m from the start of the wall', (text, from) => {
    const found = place(text);
    expect(found).toMatchObject({ kind: 'place' });
    if (found.kind === 'place') expect(found.from).toBeCloseTo(from, 6);
  });

  test.each([
    ['fan-1/pole-2 Z', `The ends of fan-1/pole-2 are ${first} and ${second}; or write middle, or at 2/3.`],
    ['serpentine-1/marker-1 A', 'serpentine-1/marker-1, a marker, has no ends'],
    ['fan-1/pole-2 at 4/3', '4/3 is one or more'],
    ['fan-1', 'The layout has no piece "fan-1". It has fan-1/pole-1, fan-1/pole-2 and fan-1/pole-3.'],
    ['', 'Write a place such as fan-1/pole-2'],
    ['wall up', 'There is no wall "up". There are: south, east, north, west.'],
    ['wall east from west', 'The east wall has no west end. Write from south or from north.'],
    ["wall east at 101'", 'inside of the arena'],
  ])('refuses %s', (text, why) => {
    expect(place(text)).toMatchObject({ kind: 'refused', why: expect.stringContaining(why) });
  });
});

describe('readings', () => {
  test('a gap of whole poles is taped on the line of travel', () => {
    const [only] = read(table(`gap,fan-1/pole-1,fan-1/pole-2,6' 1 1/2"`));
    expect(only).toMatchObject({ line: 2, reading: { kind: 'gap', side: 1 } });
    expect(only?.reading.read).toBeCloseTo(73.5 * INCH, 9);
    for (const grip of only?.reading.grips ?? []) expect('at' in grip && grip.at).toBeCloseTo(2 / 3, 2);
    // A tape between poles that lie, read by two people or one: a few millimetres.
    expect(only?.reading.sigma).toBeGreaterThan(0.003);
    expect(only?.reading.sigma).toBeLessThan(0.01);
  });

  test('the side is that on which the pieces are drawn', () => {
    const [there, back] = read(table('gap,fan-1/pole-1,fan-1/pole-2,6ft', 'gap,fan-1/pole-2,fan-1/pole-1,6ft'));
    expect([there?.reading.side, back?.reading.side]).toEqual([1, -1]);
  });

  test('how sure it is may be said', () => {
    const [only] = read(table('gap,fan-1/pole-1,fan-1/pole-2,6ft,1/2 in'));
    expect(only?.reading.sigma).toBeCloseTo(INCH / 2, 9);
    expect(faults(table('gap,fan-1/pole-1,fan-1/pole-2,6ft,0 in'))).toEqual([
      '2: How sure it is: 0 in is not above 0.',
    ]);
  });

  test('along a wall the tape runs towards the piece', () => {
    const [west, east] = read(
      table('along-wall,fan-1/pole-1,wall south from west,100ft', 'along-wall,fan-1/pole-1,wall south from east,100ft'),
    );
    expect(west?.reading).toMatchObject({ from: 0 });
    expect(west?.reading.runs).toBeUndefined();
    expect(east?.reading).toMatchObject({ runs: -1 });
  });

  test('JSON may have metres as numbers', () => {
    const [only] = read('{"readings": [{"kind": "gap", "from": "fan-1/pole-1", "to": "fan-1/pole-2", "reads": 1.9}]}');
    expect(only?.reading.read).toBe(1.9);
  });

  test('a table may be separated by semicolons or tabs, have remarks, and quote what it likes', () => {
    const rows = read('# taped at noon\nkind;from;to;reads\n\ngap;fan-1/pole-1;fan-1/pole-2;1,86 m\n');
    expect(rows).toMatchObject([{ line: 4, reading: { read: 1.86 } }]);
    const quoted = read('kind,from,to,reads\r\n"gap","fan-1/pole-1","fan-1/pole-2","6\' 1"""\r\n');
    expect(quoted[0]?.reading.read).toBeCloseTo(73 * INCH, 9);
  });

  test.each([
    ['gap,fan-1/pole-1,wall south,6ft', '"to" of gap is the south wall; a pole or another long thing belongs there.'],
    ['gap,fan-1/pole-1,serpentine-1/marker-1,6ft', '"to" of gap is serpentine-1/marker-1; a pole'],
    ['gap,fan-1/pole-1,fan-1/pole-1,6ft', 'The tape goes from fan-1/pole-1 to itself'],
    ['beside,fan-1/pole-1,fan-1/pole-2,6ft', '"from" of beside is fan-1/pole-1; a marker or another small thing'],
    ['off-wall,fan-1/pole-1,wall south from west,6ft', 'is square to the wall: write the south wall alone.'],
    ['along-wall,fan-1/pole-1,wall south,6ft', 'a wall with the place where the tape begins'],
    ['gap,fan-1/pole-1,fan-1/pole-2,-6ft', '"reads" is -6ft; gap is 0 or more.'],
    ['gap,fan-1/pole-1,fan-1/pole-2,six feet', 'is not part of a length'],
    ['square,fan-1/pole-1,fan-1/pole-2,6ft', 'is not a unit of angle'],
    ['gap,fan-1/pole-1,fan-1/pole-2', 'Reads is missing; a number or a text belongs there.'],
    ['gap,fan-1/pole-1,fan-1/pole-2,6ft,1in,more', '"column 6", which this version does not know'],
  ])('refuses %s', (row, why) => {
    expect(faults(table(row))).toEqual([expect.stringContaining(why)]);
  });

  test('tells every line that is wrong', () => {
    expect(
      faults(table('gap,a,b,6ft', 'gap,fan-1/pole-1,fan-1/pole-2,6ft', 'gapp,a,b,6ft')).map((each) => each[0]),
    ).toEqual(['2', '4']);
  });

  test('of JSON the line on which a reading begins', () => {
    const text =
      '{\n "note": {"readings": [1]},\n "readings": [\n  7,\n\n  {"kind": "gap",\n   "from": "a"}, [],\n  "x"]\n}';
    const found = writtenReadings(text);
    expect(found.kind === 'read' && found.readings.map(({ line }) => line)).toEqual([4, 6, 7, 8]);
    expect(faults(text)[0]).toBe('4: The reading is 7; kind, from, to and reads belong there.');
  });

  test.each([
    ['', 'The file is empty'],
    ['# nothing', 'The file is empty'],
    ['kind,from,to,reads', 'There is no reading in it.'],
    ['{"readings": []}', 'There is no reading in it.'],
    ['{"reading": []}', 'A list under "readings" belongs there; found was nothing.'],
    ['[1]', 'A list under "readings" belongs there; found was a list of 1.'],
    ['{"readings": [', 'The file is cut off'],
    ['from,to,reads', 'the names of the columns belong there: kind,from,to,reads,sure.'],
  ])('refuses a file that is %j', (text, why) => {
    expect(faults(text)).toEqual([expect.stringContaining(why)]);
  });

  test('never throws, whatever stands in the file', () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.constantFrom('', 'kind,from,to,reads\n', '{"readings": [', '{"readings": [{'),
        (text, head) => {
          expect(['read', 'refused']).toContain(readGroundReadings(head + text, context).kind);
        },
      ),
      { numRuns: 200 },
    );
  });
});

test('a foot is a foot', () => {
  expect(read(table('gap,fan-1/pole-1,fan-1/pole-2,1ft'))[0]?.reading.read).toBe(FOOT);
});
