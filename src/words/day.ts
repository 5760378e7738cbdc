/** What the Day panel says. */
export const dayWords = {
  // Break fields.
  changeTheBreak: (title: string) => `Change the break ${title}`,
  breakNeedsName: 'A break needs a name.',
  break: 'Break',
  from: 'From',
  for: 'For',
  deleteBreak: (title: string) => `Delete the break ${title}`,
  deleteThisBreak: 'Delete the break',

  // Class fields.
  changeOfClass: (change: string, title: string) => `${change} of ${title}`,
  classNeedsName: 'A class needs a name.',
  changeTheName: 'Change the name',
  entriesRefused: (most: number) => `Entries is a whole number from 0 to ${most}.`,
  changeTheEntries: 'Change the entries',
  freeTheStart: 'Leave the start open',
  fixTheStart: 'Set the start',
  changeTheJudge: 'Change the judge',
  changeTheRiders: 'Change the riders',
  class: 'Class',
  rides: 'Rides',
  changeTheLayout: 'Change the layout',
  changeTheLevel: 'Change the level',
  notBefore: 'Not before',
  ridersInOtherClasses: 'Riders who are also in other classes',
  ridersNote: 'Names or numbers, separated by commas.',
  deleteClass: (title: string) => `Take ${title} out of the day`,
  deleteThisClass: 'Take it out of the day',

  // Day advice.
  theWholeDay: (total: string) => `The whole day: ${total}`,
  fromFirstToLast: 'First pole set to last pole away',
  fromTo: (starts: string, finish: string) => `${starts} to ${finish}`,
  whatWouldSaveTime: 'What would save time',
  nothingSavesTime: 'Nothing that was tried makes the day shorter.',
  moreSavings: (count: number) => `Smaller savings (${count})`,
  orderIsBest: 'No other order of the classes is better.',
  noBetterOrderFound: 'No better order of the classes was found.',
  allOrdersTried: 'Every order was compared: none is better.',
  applySaving: (says: string) => `Apply: ${says}`,
  saveTime: (says: string) => `Save time: ${says}`,
  takeThisOrder: 'Take this order',
  apply: 'Apply',

  // Day panel.
  addClassDay: 'Add a class to the day',
  noDay:
    'Several classes in this arena on one day? List them with the layout that each rides: you get the times, the change-overs between them, and the order of classes that needs the least changing over.',
  planTheDay: 'Plan the day',
  changeStart: 'Change when the day begins',
  crewBeginsAt: 'The crew begins to set out at',
  addABreak: 'Add a break',
  workingOut: 'Working out the times…',
  failed: (failure: string) => `The day could not be worked out: ${failure}`,
  printTheDay: 'Print the day',

  // Day print.
  onPaper: 'The day on paper',

  // Day timeline.
  reorderTheClasses: 'Reorder the classes',
  theDay: 'The day',
  rideEarlier: (title: string) => `Ride ${title} earlier`,
  rideLater: (title: string) => `Ride ${title} later`,
  takingDown: (start: string, time: string, finish: string) => `${start} taking down, ${time}; done at ${finish}`,
  judge: (judge: string) => `, judge ${judge}`,
  notBeforeTime: (start: string) => `, not before ${start}`,
  groundDraggedAt: (times: string) => `Ground dragged at ${times}`,
  settingOut: 'setting out',
  changingOver: 'changing over',
  idleFor: (time: string) => `nothing to do for ${time}`,
} as const;
