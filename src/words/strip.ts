/** What the strip says: the line of travel unrolled, and its table. */
export const stripWords = {
  // Line table.
  goTable: 'The go as a table',
  no: 'No.',
  wayToIt: 'Way to it',
  overIt: 'Over it',
  time: 'Time',
  onTheClock: 'On the clock',
  lead: 'Lead',
  changes: 'Changes',
  tightestTurn: 'Tightest turn',
  gapsInsideInside: 'Gaps, inside to inside',
  landings: 'Landings',
  seconds: (seconds: number) => `${seconds} s`,
  range: (least: string, most: string) => `${least} to ${most}`,
  upTo: (gait: string) => `up to ${gait}`,
  downTo: (gait: string) => `down to ${gait}`,
  halt: 'halt',
  noRoom: ' (no room)',
  asked: (range: string) => `asked: ${range}`,
  landingsOf: (count: number, length: string) => `${count} of ${length}`,
  landingsUneven: (count: number, length: string) => `${count} of ${length} (uneven)`,
  radiusLeast: (radius: string, least: string) => `radius ${radius}, least ${least}`,

  // Ride rows.
  stride: 'Stride',
  bend: 'Bend',
  clock: 'Clock',

  // Strip.
  rideStrip: 'Ride strip: the line of travel, unrolled',
  noLine: 'The line of travel is unrolled here, with every pole, landing and gap. Add an obstacle to begin it.',
  theGo: 'The go',
  about: (length: string, time: string) => `${length}, about ${time}`,
  showMoreLine: 'Show more of the line',
  showLineLarger: 'Show the line larger',
  table: 'Table',
  legRead: (number: number, title: string, way: string, own: string, seconds: number) =>
    `${number} ${title}: ${way} to it, ${own} over it, about ${seconds} s.`,
  gapsOutOfRange: (gaps: string) => `${gaps} out of range.`,
  gapsAllowed: (gaps: string) => `${gaps} allowed, but not at best.`,
  allGapsInRange: 'All gaps are in range.',
  gait: 'Gait',
  gap: 'Gap',

  // Track items.
  goFromStartEnd: 'The go from start to end',

  // Track labels.
  gapsOf: (count: number, size: string) => `${count} gaps of ${size}`,

  // Track.
  gapOf: (number: number, title: string) => `Gap ${number} of ${title}`,
  byTape: (ridden: string) => ` by the tape, ${ridden} along the line`,
  gaitAsks: (gait: string, range: string) => ` The ${gait} asks for ${range}.`,
  outsideItsBand: ', out of range',
  landingsEach: (landings: string, each: string) => ` ${landings}, ${each} each.`,
  noEvenLandingFits: ' No even landing fits.',
  atLeast: (least: string) => `at least ${least}`,
  atMost: (most: string) => `at most ${most}`,
} as const;
