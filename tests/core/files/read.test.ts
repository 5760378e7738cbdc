import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { RULEBOOKS } from '../../../src/core/checks/rulebooks/rulebooks.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { sampleCourse } from '../course/sample.ts';

const OLD = readFileSync('seeds/old/version-1.course.json', 'utf8');

// A file is changed here as a person with a text editor would change it: without types.
// biome-ignore lint/suspicious/noExplicitAny: see above
type Loose = any;

function changed(change: (file: Loose) => void): string {
  const file = JSON.parse(OLD) as Loose;
  change(file);
  return JSON.stringify(file);
}

function whyNot(text: string): string {
  const reading = readCourse(text);
  return reading.kind === 'refused' ? reading.why : 'it was read';
}

describe('a course file', () => {
  test('of version 1 is read without mends, and written again byte for byte', () => {
    const reading = readCourse(OLD);
    expect(reading).toMatchObject({ kind: 'read', repairs: [], course: { title: 'Yard practice' } });
    if (reading.kind === 'read') expect(writeCourse(reading.course)).toBe(OLD);
  });

  test('is read as the course that was written', () => {
    const course = sampleCourse();
    expect(readCourse(writeCourse(course))).toEqual({ kind: 'read', course, repairs: [] });
  });

  test('may begin with a byte order mark', () => {
    expect(readCourse(`\uFEFF${OLD}`).kind).toBe('read');
  });
});

describe('a text that is no course file is refused', () => {
  test.each<[string, string, string]>([
    ['an empty file', ' \n', 'The file is empty.'],
    [
      'prose',
      'Dear judge,\nthe pattern is on the door.',
      'The file is not JSON: at line 1, column 1 stands ‘Dear judge,’, where a value would be right.',
    ],
    [
      'a missing comma',
      OLD.replace('"unit": "ft",', '"unit": "ft"'),
      'The file is not JSON: at line 6, column 3 stands ‘"arena": {’, where a comma or } would be right.',
    ],
    [
      'NaN for a number',
      OLD.replace('"length": 60.96', '"length": NaN'),
      'The file is not JSON: at line 8, column 15 stands ‘NaN,’, where a value would be right.',
    ],
    [
      'half a file',
      OLD.slice(0, OLD.indexOf('"Markers"')),
      'The file is cut off: it ends at line 34, column 33, where a value would be right. Take a complete copy of it.',
    ],
    ['a list', '[1, 2]', 'The file is JSON, but no course: it holds a list of 2.'],
    ['a number', '42', 'The file is JSON, but no course: it holds 42.'],
    [
      'foreign JSON',
      '{"type": "FeatureCollection", "features": []}',
      'The file is JSON, but no course: it has no "format"; a course says "polewright-course" there.',
    ],
    [
      'another format',
      '{"format": "dressage-test", "version": 1}',
      'The file is of the format the text "dressage-test"; a course says "polewright-course".',
    ],
    [
      'a newer version',
      changed((file) => {
        file.version = 7;
        file.novelty = true;
      }),
      'The file has version 7, and this program reads up to version 1. Open it with a newer Polewright.',
    ],
    [
      'an older version that never was',
      changed((file) => {
        file.version = 0;
      }),
      'The file has version 0, which this program does not know; it reads 1.',
    ],
    [
      'a version in words',
      changed((file) => {
        file.version = 'one';
      }),
      'The version of the file is the text "one"; a whole number such as 1 would be right.',
    ],
  ])('%s', (_, text, why) => {
    expect(whyNot(text)).toBe(why);
  });

  test('nested without end', () => {
    const deep =
      'The file is not JSON: at line 1, column 101 stands ‘[[[[[[[[[[[[’, where nothing nested deeper than 100 would be right.';
    expect(whyNot('['.repeat(100_000))).toBe(deep);
  });

  test('too long', () => {
    expect(whyNot(`"${'x'.repeat(20_000_000)}"`)).toBe(
      'The file is 20000002 signs long; 20000000 is the most that a course file may be.',
    );
  });
});

describe('a field that is wrong is told with its place, what was found, and what would be right', () => {
  test.each<[string, (file: Loose) => void, string]>([
    [
      'a text for a number',
      (file) => {
        file.layouts[0].obstacles[0].pose.x = 'far';
      },
      'Layout "layout-1", obstacle "fan-1", pose, x is the text "far"; a number would be right.',
    ],
    [
      'a missing field',
      (file) => {
        delete file.layouts[0].ride.legs[1].gait;
      },
      'Layout "layout-1", ride, leg "leg-2", gait is missing; one of walk, jog, lope belongs there.',
    ],
    [
      'an unknown choice',
      (file) => {
        file.layouts[0].ride.legs[1].gait = 'gallop';
      },
      'Layout "layout-1", ride, leg "leg-2", gait is the text "gallop"; one of walk, jog, lope would be right.',
    ],
    [
      'a list for a group',
      (file) => {
        file.arena = [];
      },
      'Arena is a list of 0; a group of fields would be right.',
    ],
    [
      'a field that is not known',
      (file) => {
        file.arena.colour = 'green';
      },
      'Arena has "colour", which this version does not know and would lose.',
    ],
    [
      'an arena out of all sense',
      (file) => {
        file.arena.length = 1e9;
      },
      'Arena, length is 1000000000; 500 or less would be right.',
    ],
    [
      'an arena without room',
      (file) => {
        file.arena.width = -30;
      },
      'Arena, width is -30; 3 or more would be right.',
    ],
    [
      'part of a count',
      (file) => {
        file.truck[3].count = 2.5;
      },
      'Truck line "markers", count is 2.5; a whole number would be right.',
    ],
    [
      'a date in words',
      (file) => {
        file.class.date = 'May Day';
      },
      'Class, date is the text "May Day"; a date such as 2027-05-01, or an empty text, would be right.',
    ],
    [
      'an id with a slash',
      (file) => {
        file.layouts[0].obstacles[0].id = 'fan/1';
      },
      'Layout "layout-1", obstacle "fan/1", id is the text "fan/1"; an id of lower-case letters, digits and hyphens would be right.',
    ],
    [
      'a fraction beyond the end',
      (file) => {
        file.layouts[0].obstacles[1].passages[0].stations[0].fraction = 1.5;
      },
      'Layout "layout-1", obstacle "run-1", passage "forward", station 1, fraction is 1.5; 1 or less would be right.',
    ],
    [
      'a station of no kind',
      (file) => {
        file.layouts[0].obstacles[1].passages[0].stations[0].kind = 'jump';
      },
      'Layout "layout-1", obstacle "run-1", passage "forward", station 1, kind is the text "jump"; one of cross, reach, turn would be right.',
    ],
    [
      'a grip on a direction that is no wall',
      (file) => {
        file.layouts[0].constraints[2].grips[1].wall = 'up';
      },
      'Layout "layout-1", constraint "off-wall-1", grip 2, wall is the text "up"; one of south, east, north, west would be right.',
    ],
    [
      'a grip on nothing',
      (file) => {
        file.layouts[0].constraints[2].grips[1] = 'north';
      },
      'Layout "layout-1", constraint "off-wall-1", grip 2 is the text "north"; a piece (and where along it) or a wall would be right.',
    ],
    [
      'no layout',
      (file) => {
        file.layouts = [];
      },
      'Layout 1 is missing; a group of fields belongs there.',
    ],
    [
      'a value that is a list',
      (file) => {
        file.truck[0].values.length = [12];
      },
      'Truck line "poles-12", values, length is a list of 1; a number or a text would be right.',
    ],
  ])('%s', (_, change, why) => {
    expect(whyNot(changed(change))).toBe(why);
  });

  test('a number that overflows', () => {
    expect(whyNot(OLD.replace('"length": 60.96', '"length": 1e999'))).toBe(
      'Arena, length is a number without end; a number would be right.',
    );
  });

  test('three faults at the most', () => {
    const why = whyNot(
      changed((file) => {
        for (const leg of file.layouts[0].ride.legs) leg.bends = 'none';
        file.unit = 'yd';
        file.notes = 1;
      }),
    );
    expect(why).toBe(
      'Unit is the text "yd"; one of ft, m would be right. ' +
        'Layout "layout-1", ride, leg "leg-1", bends is the text "none"; a list would be right. ' +
        'Layout "layout-1", ride, leg "leg-2", bends is the text "none"; a list would be right. And 2 more of the kind.',
    );
  });
});

// What the desk never makes and a text editor can: each was once read without a word.
describe('a file is as strict as the desk', () => {
  test.each<[string, (file: Loose) => void, RegExp]>([
    [
      'a thickness below nothing',
      (file) => {
        file.layouts[0].obstacles[0].values.thickness = -0.1;
      },
      /obstacle "fan-1" has -0\.1 m for thickness; 0\.0508 to 0\.2032 m would be right/,
    ],
    [
      'a pole as thick as a house',
      (file) => {
        file.layouts[0].obstacles[0].pieces[0].values.thickness = 3;
      },
      /piece "pole-1" has 3 m for thickness/,
    ],
    [
      'a truck line of a size that no pole has',
      (file) => {
        file.truck[0].values.length = 400;
      },
      /Truck line "poles-12" has 400 m for length/,
    ],
    [
      'more poles than a kind may have',
      (file) => {
        file.layouts[0].obstacles[1].values.poles = 99;
      },
      /obstacle "run-1" has 99 for poles; \d+ to 12 would be right/,
    ],
    [
      'a held length of half a kilometre',
      (file) => {
        const gap = file.layouts[0].obstacles[1].constraints.find((each: Loose) => each.kind === 'gap');
        gap.hold = 500;
      },
      /constraint "gap-1" holds 500 m; at most .* m, the arena from corner to corner, would be right/,
    ],
    [
      'a held angle of many turns',
      (file) => {
        const one = file.layouts[0].obstacles[1].constraints.find((each: Loose) => each.kind === 'gap');
        one.kind = 'angle-between';
        one.hold = 40;
      },
      /holds 40 radians; at most a whole turn/,
    ],
    [
      'a number for what has none',
      (file) => {
        const one = file.layouts[0].obstacles[1].constraints.find((each: Loose) => each.kind === 'parallel');
        one.hold = 1;
      },
      /constraint "parallel-1" holds 1; parallel has no number to hold/,
    ],
    [
      'a month that no year has',
      (file) => {
        file.class.date = '2026-99-01';
      },
      /Class, date is "2026-99-01", which is no day of the calendar/,
    ],
    [
      'the thirtieth of February',
      (file) => {
        file.class.date = '2026-02-30';
      },
      /no day of the calendar/,
    ],
    [
      'a name that fits on no page',
      (file) => {
        file.title = 'x'.repeat(121);
      },
      /^Title is the text .*; at most 120 signs would be right/,
    ],
    [
      'an obstacle with a name without end',
      (file) => {
        file.layouts[0].obstacles[0].name = 'fan '.repeat(40);
      },
      /obstacle "fan-1", name is the text/,
    ],
  ])('%s', (_, change, why) => {
    expect(whyNot(changed(change))).toMatch(why);
  });

  test('a name twice in one group, or one that reading would lose', () => {
    expect(whyNot(OLD.replace('"unit": "ft",', '"unit": "ft", "unit": "m",'))).toMatch(
      /stands ‘"unit": "m",’, where a field name that does not stand there already would be right/,
    );
    expect(whyNot(OLD.replace('"unit": "ft",', '"unit": "ft", "un\\u0069t": "m",'))).toMatch(
      /does not stand there already/,
    );
    expect(whyNot(OLD.replace('"unit": "ft",', '"unit": "ft", "__proto__": {},'))).toMatch(
      /another field name would be right/,
    );
    expect(readCourse(OLD).kind).toBe('read');
  });

  const mended = (change: (file: Loose) => void) => {
    const reading = readCourse(changed(change));
    if (reading.kind === 'refused') throw new Error(reading.why);
    return reading;
  };

  test('a count that is not what lies there is set to what lies there, and told', () => {
    const { course, repairs } = mended((file) => {
      file.layouts[0].obstacles[1].values.poles = 7;
    });
    const there = course.layouts[0].obstacles[1];
    expect(there?.values.poles).toBe(there?.pieces.length);
    expect(repairs).toEqual([
      `Obstacle "run-1" said 7 for poles and holds ${there?.pieces.length}; it says ${there?.pieces.length} now.`,
    ]);
  });

  test('a gait that the passage does not have becomes its usual one, and is told', () => {
    const { course, repairs } = mended((file) => {
      file.layouts[0].obstacles[1].passages.forEach((passage: Loose) => {
        passage.gaits = ['walk'];
      });
      file.layouts[0].ride.legs.find((leg: Loose) => leg.obstacle === 'run-1').gait = 'lope';
    });
    expect(course.layouts[0].ride.legs.find((leg) => leg.obstacle === 'run-1')?.gait).toBe('walk');
    expect(repairs.join()).toMatch(/rode "run-1" at a lope, which its passage ".*" does not have; it is a walk now/);
  });

  test('an entrance wider than its wall takes the wall, and is told', () => {
    const { course, repairs } = mended((file) => {
      file.arena.entrance.width = 400;
    });
    const { entrance, length, width } = course.arena;
    const wall = entrance.wall === 'north' || entrance.wall === 'south' ? length : width;
    expect([entrance.width, entrance.at]).toEqual([wall, wall / 2]);
    expect(repairs).toHaveLength(1);
  });
});

describe('a file that makes no sense is refused', () => {
  test.each<[string, (file: Loose) => void, RegExp | string]>([
    [
      'an id twice',
      (file) => {
        file.layouts[0].obstacles[1].id = 'fan-1';
      },
      /^An obstacle of layout "layout-1" has the id "fan-1" twice; each must have its own\./,
    ],
    [
      'a leg to an obstacle that is gone',
      (file) => {
        file.layouts[0].ride.legs[0].obstacle = 'fan-7';
      },
      'Layout "layout-1", leg "leg-1" rides the obstacle "fan-7", which is not in the layout.',
    ],
    [
      'a leg on a passage that is not',
      (file) => {
        file.layouts[0].ride.legs[1].passage = 'across';
      },
      'Layout "layout-1", leg "leg-2" takes the passage "across"; "run-1" has forward, return.',
    ],
    [
      'a piece of no kind',
      (file) => {
        file.layouts[0].obstacles[0].pieces[1].kind = 'sofa';
      },
      'Layout "layout-1", obstacle "fan-1", piece "pole-2" is of the kind "sofa"; known are pole, marker, gate, bridge, barrel, post, plant, water-box, mailbox.',
    ],
    [
      'an obstacle of no kind',
      (file) => {
        file.layouts[0].obstacles[0].kind = 'maze';
      },
      /^Layout "layout-1", obstacle "fan-1" is of the kind "maze"; known are run, fan, spoke/,
    ],
    [
      'a constraint of no kind',
      (file) => {
        file.layouts[0].constraints[0].kind = 'magnet';
      },
      /^Layout "layout-1", constraint "gap-1" is of the kind "magnet"; known are gap, gap-ends/,
    ],
    [
      'a constraint on a piece that is gone',
      (file) => {
        file.layouts[0].constraints[0].grips[0].piece = 'fan-1/pole-9';
      },
      'Layout "layout-1", constraint "gap-1" grips the piece "fan-1/pole-9", which is not there.',
    ],
    [
      'a gap to a wall',
      (file) => {
        file.layouts[0].constraints[0].grips[1] = { wall: 'north' };
      },
      'Layout "layout-1", constraint "gap-1" grips piece, wall; gap takes piece, piece.',
    ],
    [
      'a station on a piece that is gone',
      (file) => {
        file.layouts[0].obstacles[1].passages[0].stations[0].piece = 'pole-9';
      },
      'Layout "layout-1", obstacle "run-1", passage "forward", station 1 is at the piece "pole-9", which is not there.',
    ],
    [
      'a passage that begins with a turn',
      (file) => {
        file.layouts[0].obstacles[1].passages[0].stations.unshift({ kind: 'turn', by: 1 });
      },
      'Layout "layout-1", obstacle "run-1", passage "forward" must begin with a pole to cross or a place to ride to.',
    ],
    [
      'a value that the kind does not have',
      (file) => {
        file.layouts[0].obstacles[2].values.feathers = 3;
      },
      /^Layout "layout-1", obstacle "spoke-1" has a value "feathers"; it may have arms, /,
    ],
    [
      'a value named as if it were built in',
      (file) => {
        file.truck[3].values.constructor = 3;
      },
      /^Truck line "markers" has a value "constructor"; it may have /,
    ],
    [
      'a text for the number of poles',
      (file) => {
        file.layouts[0].obstacles[1].values.poles = 'four';
      },
      'Layout "layout-1", obstacle "run-1" has the text "four" for poles; a number would be right.',
    ],
    [
      'half a pole',
      (file) => {
        file.layouts[0].obstacles[1].values.poles = 3.5;
      },
      'Layout "layout-1", obstacle "run-1" has 3.5 for poles; a whole number would be right.',
    ],
    [
      'an option that is not',
      (file) => {
        file.layouts[0].obstacles[1].values.gait = 'gallop';
      },
      'Layout "layout-1", obstacle "run-1" has "gallop" for gait; it is one of walk, jog, lope.',
    ],
    [
      'an unknown horse',
      (file) => {
        file.horse = 'unicorn';
      },
      'The horse is "unicorn"; known are stock-horse, pony, large-horse, mule.',
    ],
    [
      'an unknown rule book',
      (file) => {
        file.rulebook.id = 'own';
      },
      `The rule book is "own"; known are ${RULEBOOKS.map(({ id }) => id).join(', ')}.`,
    ],
    [
      'a house rule of no limit',
      (file) => {
        file.rulebook.house = { 'gap.gallop': { most: 3, reason: '' } };
      },
      /^The house rule "gap.gallop" is of no limit that is known; known are gap.walk, /,
    ],
    [
      'a house rule that nothing meets',
      (file) => {
        file.rulebook.house['gap.jog'] = { least: 2, most: 1, reason: '' };
      },
      'The house rule "gap.jog" allows from 2 to 1, which is nothing; the least comes first.',
    ],
  ])('%s', (_, change, why) => {
    expect(whyNot(changed(change))).toEqual(typeof why === 'string' ? why : expect.stringMatching(why));
  });
});

describe('a small gap is mended, and told', () => {
  test('a layout to show that is not there', () => {
    const reading = readCourse(
      changed((file) => {
        file.current = 'layout-9';
      }),
    );
    expect(reading).toMatchObject({
      kind: 'read',
      course: { current: 'layout-1' },
      repairs: ['The file shows the layout "layout-9", which it does not hold; "layout-1" is shown.'],
    });
  });

  test('an entrance beyond the end of its wall', () => {
    const reading = readCourse(
      changed((file) => {
        file.arena.entrance.at = 31;
      }),
    );
    expect(reading).toMatchObject({
      kind: 'read',
      course: { arena: { entrance: { at: 30.48 } } },
      repairs: ['The entrance was 31 m along the west wall, which is 30.48 m long; it is at its end now.'],
    });
  });

  test('values that are missing', () => {
    const reading = readCourse(
      changed((file) => {
        delete file.layouts[0].obstacles[1].values.gait;
        delete file.layouts[0].obstacles[1].pieces[0].values.shape;
      }),
    );
    expect(reading).toMatchObject({
      kind: 'read',
      repairs: [
        'Obstacle "run-1" had no gait; the usual was taken.',
        'Piece "pole-1" of "run-1" had no shape; the usual was taken.',
      ],
    });
  });
});

test('a file cut off anywhere, or with any sign changed, is read or refused in a sentence', () => {
  const place = fc.nat({ max: OLD.length - 2 });
  fc.assert(
    fc.property(place, fc.constantFrom('', '"', '{', '}', ',', '0', '-', '\\', '\n', 'x', '\uD800'), (at, sign) => {
      const cut = readCourse(OLD.slice(0, at));
      expect(cut.kind).toBe('refused');
      const reading = readCourse(OLD.slice(0, at) + sign + OLD.slice(at + 1));
      if (reading.kind === 'refused') expect(reading.why).toMatch(/^[A-Z].*\.$/s);
      else expect(readCourse(writeCourse(reading.course)).kind).toBe('read');
    }),
    { numRuns: 300 },
  );
});
