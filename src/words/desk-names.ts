/** What the desk calls things and places in its sentences. */
export const deskNames = {
  // Commands.
  theStart: 'the start',
  theEnd: 'the end',
  distanceFromWestWall: 'Distance from the west wall',
  distanceFromSouthWall: 'Distance from the south wall',

  // Parameters.
  gaitOverIt: 'Gait over it',

  // Constraint suggestions.
  theseTwo: 'these two',
  theTwoPoles: 'the two poles',
  neighbour: 'it and its neighbour',

  // Kept words.
  atTheEnds: 'at the ends',
  inTheMiddle: 'in the middle',
  atOneThird: 'at one third',
  atTwoThirds: 'at two thirds',
  atOneQuarter: 'at one quarter',
  atThreeQuarters: 'at three quarters',
  at: (at: number) => `at ${at}%`,
  theWall: (wall: string) => `the ${wall} wall`,
  onlyMeasured: (title: string, length: string) => `${title}: ${length}, only measured.`,
  alike: (title: string, place: string, count: number) => `${title}${place}, ${count} alike`,

  // Crossing.
  theMiddle: 'the middle',
  overTheMiddle: 'over the middle',
  fromNearerEnd: (fraction: string) => `${fraction} from the nearer end`,
  ofThePole: (place: string) => `: ${place} of the pole`,

  // Measuring.
  placeOnGround: 'a place on the ground',

  // Names.
  bendLine: 'the bend of the line',
  theLineOver: (thing: string) => `the line over ${thing}`,
} as const;
