/** What the Set stage says: the list to add from, the Tape panel and the truck. */
export const setWords = {
  // Actions.
  whatDoWith: 'Actions',
  turnLeftBy15: 'Turn left by 15°',
  turnLeft: 'Turn left',
  turnRightBy15: 'Turn right by 15°',
  turnRight: 'Turn right',
  makeMirrorImage: 'Mirror it',
  mirror: 'Mirror',
  duplicateBeside: 'Duplicate it beside this one',
  deleteIt: 'Delete it from the arena',

  // Arena inspector.
  westLeft: 'West (left)',
  eastRight: 'East (right)',
  northTop: 'North (top)',
  southBottom: 'South (bottom)',
  outOfRange: (least: string, most: string, value: string) =>
    `It must lie between ${least} and ${most}; ${value} does not.`,
  chooseObstacleArenaType:
    'Choose an obstacle in the arena to type its numbers. A second click chooses one of its poles.',
  theArena: 'The arena',
  judgeFromWest: 'Judge, from the west wall',
  judgeFromSouth: 'Judge, from the south wall',
  placeTheJudge: 'Place the judge',
  nameTheArena: 'Name the arena',
  itsMiddleAt: 'Its middle at',

  // Kept list.
  whatItKeeps: 'What it keeps',
  nothingKeptYet: 'Nothing is kept yet.',
  withoutNumber: (count: number) => `And ${count} without a number`,
  alreadyFollowsFromOthers: 'Follows from the others already.',
  onlyMeasure: (name: string) => `Only measure: ${name}`,
  hold: (name: string) => `Hold: ${name}`,
  onlyMeasureIt: 'Only measure',
  holdIt: 'Hold',
  drop: (name: string) => `Drop: ${name}`,
  dropIt: 'Drop',
  keepMoreNow: 'Keep more, as it lies now',
  otherThingsKeep: (count: number) => `Other things to keep (${count})`,

  // Obstacle inspector.
  severalChosen: (obstacles: string) => `${obstacles} chosen. They move, turn and mirror together.`,
  piecesChosen: (pieces: string) => `${pieces} chosen.`,
  fixedTheyStayWhere: 'Pinned: they stay where they are while others move',
  nameObstacle: (obstacle: string) => `Name ${obstacle}`,
  whereItLies: 'Where it lies',
  gapsInsideInside: 'Gaps, inside to inside',
  noGaitFits: (gait: string) => `no ${gait} fits`,
  workedOut: 'Worked out from these',

  // Obstacle list.

  // Own tools.
  giveNameFirst: 'Give it a name first.',
  onYourShelfLast: (name: string) => `${name} is on your shelf, at the end of the Add list.`,
  yourOwn: 'Your own',
  gatherIntoOneObstacle: 'Make one obstacle',
  nameOnMyShelf: 'Name on my shelf',
  putOnMyShelf: 'Put on my shelf',

  // Piece inspector.
  wholeObstacle: 'whole obstacle',
  fixedStaysWhereWhile: 'Pinned: stays where it is while others move',
  itsSize: 'Its size',

  // Shelf group.
  myShelf: 'My shelf',
  nothingYetChooseObstacle:
    'Nothing yet. Choose an obstacle or pieces in the arena and put them here from the Tape panel.',
  takeOffMyShelf: (title: string) => `Delete ${title} from my shelf`,

  // Truck dialog.
  whatOnTruck: 'What is on the truck',
  courseNoTruckList: 'The course has no truck list yet: nothing is counted.',
  changeCount: (title: string) => `Change the number of ${title}`,
  anySize: 'any size',
  howMany: (title: string) => `How many: ${title}`,
  takeOffTruck: (title: string) => `Delete from the truck: ${title}`,
  takeThisLineOff: 'Delete this line from the truck',
  takeOffTheTruck: (title: string) => `Delete ${title} from the truck`,
  putOnTruck: (title: string) => `Put ${title} on the truck`,
  addALine: 'Add a line',
  fillOnlySizesTell: 'Fill in only the sizes that tell these from others. A piece takes the first line that fits it.',
  what: 'What',
  howManyField: 'How many',
  nameOnList: 'Name on the list',
  madeFromKindSizes: 'made from kind and sizes',
  putItOnTheTruck: 'Put it on the truck',
  any: 'any',
  anyOption: 'Any',

  // Truck lines.
  countRefused: (most: number) => `Write a whole number from 0 to ${most}.`,

  // Truck.
  showWhatLeft: 'Show what is left',
  changeTheCounts: 'Change the counts',
  editTheList: 'Edit the list',
  courseNoTruckListTake: 'The course has no truck list: take what you need.',
  notOnIt: (used: number) => `${used} not on it`,
  tooFew: (count: number) => `${count} too few`,
  ofLeft: (left: number, count: number) => `${left} of ${count} left`,
  changeTheTruck: 'Change the truck',
} as const;
