/** What the Change stage says of layouts, comparisons and change-overs. */
export const changeWords = {
  // Carry list.
  comesFromTruck: 'Comes from the truck',
  goesToTruck: 'Goes to the truck',
  passNumber: (pass: number) => `Pass ${pass}`,
  inThisOrder: 'In this order',
  teamNumber: (number: number, people: string) => `team ${number}, ${people}`,
  from: (place: string) => `From ${place}`,
  to: (place: string) => `To ${place}`,
  doneAfter: (time: string) => `Done after ${time}`,

  // Change over panel.
  emptyArena: 'The empty arena',
  toGetStartingFrom: (title: string) => `To get ${title}, starting from`,
  planFailed: (failure: string) => `The plan could not be worked out: ${failure}`,
  workingOut: 'Working out the carries…',
  showCarriesArena: 'Show the carries in the arena',
  printCrewsSheet: 'Print the crew’s sheet',

  // Change over print.
  onPaper: 'The change-over on paper',

  // Change over summary.
  nothingToCarry: (pieces: string) => `Nothing has to be carried: ${pieces} already in place.`,
  timeAnEstimate: 'Time (estimate)',
  carried: 'Carried',
  staysWhereLies: 'Stays in place',
  passes: 'Passes',

  // Change stage.

  // Compare panel.
  oneOverOther: 'One over the other',
  sideBySide: 'Side by side',
  oneLayout:
    'There is only one layout. Branch it and change the branch; the differences and their cost are shown here.',
  drawn: 'Drawn',
  printTheComparison: 'Print the comparison',
  compareWith: 'Compare with',
  atMostTwo: 'At most two at a time.',

  // Comparison print.
  comparisonOnPaper: 'The comparison on paper',

  // Crew fields.
  onePerson: 'One person',
  two: 'Two',
  three: 'Three',
  four: 'Four',
  chooseTheCrew: 'Choose the crew',
  truckRefused: (most: string) => `The truck must stand within ${most} of the arena.`,
  moveTheTruck: 'Move the truck',
  crew: 'Crew',
  truckFromWestWall: 'Truck from the west wall',
  truckFromSouthWall: 'Truck from the south wall',
  truckToEntrance: 'Truck to the entrance',

  // Differences.
  whatDiffersFrom: (title: string) => `What differs from ${title}`,
  noDifference: 'There is no difference: the same obstacles, ridden the same way.',

  // Difficulty parts.
  whatMakesDifficulty: 'What makes up the difficulty',
  partsOfDifficulty: 'Parts of the difficulty',
  part: 'Part',
  pointsAreEstimates: 'Points are estimates: one is about as much as a plain obstacle asks.',

  // Layout row.
  shown: 'shown',
  actionsOn: (title: string) => `Actions on ${title}`,
  branchRenameMoveDelete: 'Branch, rename, move, delete',
  branch: (title: string) => `Branch ${title}`,
  rename: (title: string) => `Rename ${title}`,
  moveUp: (title: string) => `Move ${title} up`,
  moveDown: (title: string) => `Move ${title} down`,
  delete: (title: string) => `Delete ${title}`,
  nameOf: (title: string) => `Name of ${title}`,

  // Layouts.
  show: (title: string) => `Show ${title}`,
  moveInList: (title: string) => `Move ${title} in the list`,
  severalLayouts: 'A course can hold several layouts: alternatives, or one for each class of the day.',
  branchThisLayout: 'Branch this layout',
  takeOneFromFile: 'Take one from a file…',
  takeOneFromKept: 'Take one from a course in this browser…',
  deleteQuestion: (title: string) => `Delete ${title}?`,
  deleteIt: 'Delete it',

  // Measure table.
  measuresOfLayouts: 'Measures of the layouts',
  marksTheBetter: 'marks the better value, where one is better.',
  better: ', better',
  chooseMeasures: (chosen: number, all: number) => `Choose what is compared (${chosen} of ${all})`,

  // Origins.
  turned: (angle: string) => `turned ${angle}`,
  movedFrom: (way: string, title: string) => `moved ${way} from ${title}`,
  otherwiseFrom: (way: string, title: string) => `${way} from ${title}`,
  asIn: (title: string) => `as in ${title}`,
  builtOtherwiseIn: (title: string) => `built differently in ${title}`,
  notIn: (title: string) => `not in ${title}`,
  onlyIn: (title: string) => `only in ${title}`,

  // Other drawing.
  forComparison: (title: string, obstacles: string) => `${title}, for comparison: ${obstacles}`,

  // Take layout.
  takeFromCourse: (title: string) => `Take ${title} from another course`,
  taken: (title: string) => `Taken: ${title}`,
  nothingWasTaken: 'Nothing was taken',
  openCourseUnchanged: 'The course that is open is unchanged.',
  noOtherCourse:
    'There is no other course in this browser. Open or start one from the File menu first, or take a file.',
  fromWhichCourse: 'From which course?',
  whichLayout: 'Which of its layouts?',

  // Titles.
  nameMissing: 'A layout needs a name.',
  nameTooLong: (count: number, most: number) => `This name has ${count} characters; the most is ${most}.`,
  classGoesWithIt: (name: string) => `The class ${name} of the day rides it and is deleted with it.`,
  classesGoWithIt: (names: string) => `The classes ${names} of the day ride it and are deleted with it.`,
} as const;
