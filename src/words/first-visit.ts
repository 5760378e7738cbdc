/** What the app says to somebody who begins: the form for a new course, the starters, an empty arena, the hints. */

export const newCourseWords = {
  open: 'New course…',
  title: 'A new course',
  name: 'Title of the course',
  arenaName: 'Arena',
  nameHint: 'may stay empty',
  unit: 'Lengths in',
  units: { ft: 'feet and inches', m: 'metres' },
  arena: 'Arena',
  usualSizes: 'Usual sizes',
  length: 'Length',
  width: 'Width',
  wayIn: 'Way in',
  at: 'Its middle at',
  atHint: 'mid-wall',
  truck: 'Truck',
  load: 'What it carries',
  loads: {
    show: 'A show’s usual load',
    home: 'Poles at home',
    open: 'The same as the open course',
    none: 'No list: nothing is counted',
  },
  poles: (length: string) => `Poles of ${length}`,
  besides: (lines: string) => `With them: ${lines}. Everything can be changed later, line by line.`,
  sameTruck: (lines: number) =>
    lines === 0
      ? 'The open course has no truck list, so this one will have none.'
      : lines === 1
        ? 'The one line of the open course’s list, with its count.'
        : `All ${lines} lines of the open course’s list, with their counts.`,
  noTruck: 'You can write the list at any time from the Truck panel.',
  class: 'Class',
  level: 'Level',
  book: 'Rule book',
  askedBook: 'Choose one…',
  laterBook: 'Decide later: only designers’ practice is asked',
  kept: 'What you have drawn so far stays in this browser, under File.',
  begin: 'Begin',
  cancel: 'Cancel',
  refusals: {
    side: (least: string, most: string, typed: string) =>
      `It must lie between ${least} and ${most}; ${typed} does not.`,
    at: (half: string, most: string, typed: string) =>
      `The way in must lie in its wall, between ${half} and ${most}; ${typed} does not.`,
    wallTooShort: (width: string) => `This wall is shorter than a way in of ${width}.`,
    book: 'Choose a rule book, or “Decide later”.',
  },
} as const;

export const starterWords = {
  open: 'Starters…',
  title: 'Starters',
  lead: 'Courses to begin from. The one you choose opens as a course of your own; what you have drawn so far stays in this browser, under File.',
  obstacles: (count: number) => (count === 1 ? '1 obstacle' : `${count} obstacles`),
  poles: (count: number) => (count === 1 ? '1 pole' : `${count} poles`),
  layouts: (count: number) => (count === 1 ? '1 layout' : `${count} layouts`),
  reading: 'Reading…',
  unreadable: 'This starter cannot be read.',
} as const;

export const emptyWords = {
  title: 'Nothing lies in this arena yet',
  says: 'Press a tile under Add to put an obstacle on free ground, or drag it to its place. Or begin from one of these:',
  all: 'All starters',
  panel: 'Add the first obstacle: it will be listed here.',
} as const;

export const paletteWords = {
  search: 'Find an obstacle',
  searchHint: 'Find: fan, slalom, back…',
  found: (count: number) => (count === 1 ? '1 kind is shown' : `${count} kinds are shown`),
  nothing: (typed: string) => `No obstacle is called “${typed}”. Try a word such as poles, back, side pass or gate.`,
} as const;

export const hintWords = {
  label: 'Hint for a first visit',
  again: 'Show the hints again',
  place: (number: number, of: number) => `Hint ${number} of ${of}: `,
  hints: [
    {
      says: 'this is an example to try things on. Drag an obstacle, or choose it and drag one of its poles: what belongs together stays together, and the numbers follow.',
      verb: 'show',
    },
    {
      says: 'press a tile under Add and the obstacle lies on free ground, in the order in which you add it. For a course of your own, say first how large the arena is and what is on the truck.',
      verb: 'new-course',
    },
    {
      says: 'Ride has the order and the gaits, Check what a rule book asks and how to fix it, Post the pattern on paper. Every step can be undone, and this browser saves as you go.',
      verb: 'none',
    },
  ],
  playing: 'a pole is dragged, and its obstacle comes along, because the gaps are kept. Nothing is changed by this.',
  show: 'Show me',
  next: 'Next hint',
  done: 'Done',
  noMore: 'No more hints',
} as const;
