/** What the Check stage says of rule books, horses, sweeps and waivers. The words round the findings are in findings.ts. */
export const checkWords = {
  // Assumptions.
  weakSource: 'weak source',
  fromMemory: 'from memory',
  heightWithers: 'Height at the withers',
  bodyLength: 'Body, length',
  bodyWidth: 'Body, width',
  foreHindHoof: 'Fore to hind hoof',
  betweenHoovesPair: 'Between the hooves of a pair',
  hoofWidth: 'Hoof, width',
  walkForeFootAfter: 'Walk, the fore foot after the hind',
  jogForeFootAfter: 'Jog, the fore foot after the hind',
  lopePairAfterFirst: 'Lope, the pair after the first hind foot',
  lopeLeadingForeAfter: 'Lope, the leading fore after the first hind foot',
  howMuchStridesDiffer: 'How much its strides differ',
  straightLineChangeLead: 'Straight line for a change of lead',
  backAStep: 'Back, length of a step',
  backTimeStep: 'Back, time of a step',
  backBeforeFirstStep: 'Back, pause before the first step',
  backTightestTurnRadius: 'Back, tightest turn, radius',
  sidePassStep: 'Side pass, length of a step',
  sidePassTimeStep: 'Side pass, time of a step',
  sidePassBeforeFirst: 'Side pass, pause before the first step',
  fullTurnOnSpot: 'A full turn on the spot',
  stopSettle: 'To stop and settle',
  workGate: 'To work the gate',
  intoFasterGait: 'Into a faster gait',
  intoSlowerGait: 'Into a slower gait',
  timeStride: (name: string) => `${name}, time of a stride`,
  tightestRadius: (name: string) => `${name}, tightest radius`,
  easyRadius: (name: string) => `${name}, easy radius`,
  fromLeanSpeed: (value: string, source: string) => `from a lean of ${value} at its speed; ${source}`,
  ofAStride: (value: number) => `${value} % of a stride`,

  // Book words.
  withThe: (small: string) => `the ${small}`,
  silentOn: (subject: string) => `This book does not say anything about: ${subject}.`,
  silentAbout: (subject: string) => `This book does not say anything about ${subject}.`,
  doesNotSay: 'does not say',
  noLimit: 'no limit',

  // Compare dialog.
  compareTwoRuleBooks: 'Compare two rule books',
  sameCourseUnder: (title: string) => `${title}, and the same course under`,
  houseRulesHoldUnder:
    'House rules hold under both. The rule book in force, the show’s officials and the judge decide.',
  foundByBoth: (both: number, first: number, title: string, second: number, other: string) =>
    `${both} found by both, ${first} only by ${title}, ${second} only by ${other}.`,
  foundBy: 'Found by',
  whatIsFound: 'What is found',
  only: (title: string) => `Only ${title}`,
  bothWithOtherLimits: 'Both, with other limits',
  both: 'Both',
  nothing: 'nothing',
  whereTwoBooksDiffer: (count: number) => `Where the two books differ (${count})`,
  what: 'What',

  // Fix all.
  fixAllSafe: 'Fix all that are safe',
  tryingEveryFix: 'Trying every fix…',
  nothingMendedNoFix: 'Nothing was fixed: every fix that is left needs your eye on it.',
  made: (count: string) => `${count} made`,
  stillOpen: (left: string) => `, ${left} still open. One undo takes it all back.`,
  fixFor: (finding: string) => `for: ${finding}`,

  // Gauge.
  atMost: (most: string) => `at most ${most}`,
  range: (least: string, most: string) => `${least} to ${most}`,
  atLeast: (least: string) => `at least ${least}`,
  measuredAllowed: (measured: string, allowed: string, orMultiple: string) =>
    `Measured ${measured}; allowed ${allowed}${orMultiple}.`,
  orAnotherWholeMultiple: ', or another whole multiple',

  // Groups.
  theWholeCourse: 'The whole course',

  // Horse.
  riddenBy: 'Ridden by',
  changeTheHorse: 'Change the horse',
  allAssumedWithSources: 'All assumptions, with sources',
  whatIsAssumed: (horse: string) => `Assumptions: ${horse}`,
  landingsTurnsTimesWorked:
    'Landings, turns and times are worked out from these numbers. No horse was measured: look at the source.',
  value: 'Value',
  source: 'Source',

  // House rule dialog.
  houseRule: (limit: string) => `House rule: ${limit}`,
  setHouseRule: 'Set a house rule',
  houseRuleTakesPlace:
    'A house rule replaces the whole range, both ends, for this course only. What is left empty has no limit.',
  whatItBounds: 'What it limits',
  least: 'Least',
  most: 'Most',
  reason: 'Reason',
  whoDecidedWhy: 'who decided it, and why',
  setTheHouseRule: 'Set the house rule',

  // House rules.
  sayLeastMostOr: 'Give the least, the most, or both.',
  sayWhyToldWith: 'Give a reason: it is shown with every finding.',
  mostLessThanLeast: (most: string, least: string) => `The most, ${most}, is less than the least, ${least}.`,
  bookDoesNotSay: 'The book does not say.',
  withoutIt: (range: string, source: string) => `Without it: ${range}. Source: ${source}`,

  // Level.
  levelClass: 'Level of the class',
  changeTheLevel: 'Change the level',
  thisLevelChangesNothing: 'This level changes nothing: every limit is that of an open class.',
  whatThisLevelChanges: 'What this level changes',
  noLimitOpenClass: 'no limit in an open class',
  openClass: (range: string) => `${range} in an open class`,

  // Limit behind.
  ruleText: 'rule text',
  associationsOrCollegesAdvice: 'an association’s or college’s advice',
  tradePressOrTrainer: 'trade press or a trainer',
  forumOrBlog: 'a forum or blog',
  estimateOrCommonPractice: 'an estimate or common practice',

  // Rulebook.
  judgedBy: 'Judged by',
  changeRuleBook: 'Change the rule book',
  compareWithAnotherBook: 'Compare with another book',
  ruleBookForceShows:
    'The rule book in force, the show’s officials and the judge decide. These checks only help you to look.',
  houseRules: 'House rules',
  noneEveryLimitBooks: 'None: every limit is the book’s own.',
  houseRuleTag: 'house rule',
  removeHouseRule: (limit: string) => `Delete the house rule: ${limit}`,
  removeThisHouseRule: 'Delete this house rule',

  // Silences.
  whatThisBookDoes: (count: number) => `What this book does not say (${count})`,
  nothingCheckedHereAsk: 'Nothing is checked here. Ask the show, or set a house rule.',
  hereDesignersPracticeAsked: 'Designers’ practice is used here instead; it is no rule of this book.',

  // Sweep player.
  stop: 'Stop',
  showGoingThrough: 'Show it going through',
  whereHorseOnWay: 'Where the horse is on its way through',
  placeOf: (step: number, last: number) => `Place ${step} of ${last}`,

  // Sweep words.
  tooLittleAt: (room: string, piece: string) => `${room} too little at ${piece}`,
  toSpareAt: (room: string, piece: string) => `${room} to spare at ${piece}`,
  turning: 'Turning',
  backing: 'Backing',
  sweepRead: (doing: string, horse: string, clearance: string) => `${doing} there, the ${horse} has ${clearance}.`,

  // Sweeps.
  willHorseGoRound: 'Is there room to turn and back?',
  leastRoomBesideHooves: 'The least room beside the hooves, or beside the body where things stand up.',

  // Waive form.
  sayWhyReasonPrints: 'Give a reason: it prints on the designer’s copy.',
  waiveThisFinding: 'Waive this finding',
  waivedFindingStaysCourse:
    'A waived finding stays in the course and prints, with your reason, on the designer’s copy. The judge may see it differently.',
  waiveIt: 'Waive it',
  leaveItOpen: 'Leave it open',
} as const;
