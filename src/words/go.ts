import { terms } from './terms.ts';

/** What the panel about who rides, and when, says. */
export const goWords = {
  // Entries field.
  asListed: (count: number) => `${terms.countedEntries(count)}, by the list at Post.`,
  changeTheEntries: 'Change the entries',
  entriesRefused: (most: number) => `Entries is a whole number from 0 to ${most}.`,

  // Entries panel.
  noList:
    'Who rides? Type the entries, or paste them from a spreadsheet: you get the order of go and about when each goes.',
  onlyCount: (entries: string) => `Until then the sheets have ${entries} without names.`,
  classOfDay: 'Class',
  inFolder: 'Its sheets are in the folder of the day.',
  firstGo: 'First go at',
  startOfDay: (time: string) => `As set for the day: ${time}.`,
  noStart: 'Without a time the goes count from the first.',
  changeTheStart: 'Change when the first go begins',
  order: 'Order of go',
  summary: (entries: string, from: string, to: string) => `${entries}, about ${from} to ${to}`,
  summaryFromStart: (entries: string, time: string) => `${entries} in about ${time}`,
  scratchedToo: (count: number) => `, ${count} scratched`,
  numberShared: (number: string, count: number) => `Number ${number} is there ${count} times; each must have its own.`,
  nothingRidden: 'Nothing is ridden yet, so a go takes no time. Put obstacles in order at Ride.',
  saveTable: 'Save as CSV',
  clearTheList: 'Delete the list',

  // Draw tools.
  drawTheOrder: 'Draw the order',
  byNumber: 'By number',
  orderByNumber: 'Order the entries by number',
  between: 'Goes between',
  betweenHint: 'Goes of others between two goes of one rider',
  betweenRefused: (most: number) => `Goes between is a whole number from 0 to ${most}.`,
  drawNumber: 'Draw number',
  drawNumberHint: 'The same number draws the same order again; empty: a new one',
  drawNumberRefused: (most: number) => `A draw number is a whole number from 0 to ${most}.`,

  // Entry row.
  noName: 'No name yet',
  earlier: (name: string) => `Let ${name} go earlier`,
  later: (name: string) => `Let ${name} go later`,
  reorder: 'Reorder the entries',
  scratched: 'Scratched',
  late: (minutes: string) => `, ${minutes} late`,
  dragged: (time: string, minutes: string) => `${time} ground dragged, ${minutes}`,
  pause: (time: string, title: string, minutes: string) => `${time} ${title}, ${minutes}`,

  // Entry fields.
  number: 'Number',
  numberRefused: 'A number as it is worn has digits and at most two letters, such as 104 or 12A.',
  rider: 'Rider',
  horse: 'Horse',
  minutesLate: 'Minutes late',
  lateHint: 'This go and all after it go so much later',
  lateRefused: (most: number) => `Minutes late is a number from 0 to ${most}.`,
  changeEntry: (field: string, name: string) => `${field} of ${name}`,
  scratch: 'Scratch',
  scratchName: (name: string) => `Scratch ${name}`,
  unscratch: 'Rides after all',
  unscratchName: (name: string) => `${name} rides after all`,
  deleteEntry: 'Delete the entry',
  deleteEntryName: (name: string) => `Delete the entry ${name}`,

  // Entry text.
  addEntries: 'Add entries',
  typeOrPaste: 'Type or paste entries',
  typeNote: 'One a line: number, rider, horse. Columns of a spreadsheet come as they are, with their heads or without.',
  addToList: 'Add to the list',
  replaceList: 'Replace the list',
  openTable: 'Open a CSV file',
  addLabel: (count: number) => `Add ${terms.countedEntries(count)}`,
  replaceLabel: (count: number) => `Replace the list by ${terms.countedEntries(count)}`,
  tooMany: (most: number) => `A class has at most ${most} entries; nothing was added.`,
  linesLeft: 'These lines are left in the box, to be put right:',
  line: (line: number, why: string) => `Line ${line}: ${why}`,
  fileFailed: (why: string) => `The file could not be read: ${why}`,
} as const;
