/** What the File menu and its dialogs say. */
export const fileWords = {
  // Earlier states.
  goBackTo: (savedAt: string) => `Go back to ${savedAt}`,
  earlierStatesOf: 'Earlier states of this course',
  whileYouWorkThis:
    'While you work, the course is saved in this browser about every two minutes; the last twenty are listed. Going back can be undone.',
  noEarlierStateYet: 'There is no earlier state yet.',
  goBack: 'Go back to it',

  // File menu.
  notOpened: 'This file was not opened',
  stillHere: 'The course that was open is still here, unchanged.',
  openedWithSomethingMended: 'Opened, with repairs',
  notSaved: 'Not saved',
  changeTheUnit: 'Change the unit',
  file: 'File',
  openAFile: 'Open a file…',
  ctrlO: 'Ctrl O',
  saveFile: 'Save as a file…',
  ctrlS: 'Ctrl S',
  earlierStates: 'Earlier states…',
  lengthsShown: 'Lengths are shown in',
  feetAndInches: 'feet and inches',
  metres: 'metres',

  // Files.
  course: 'Course',
  fileCouldNotRead: (reason: string) => `The file could not be read: ${reason}`,
  savedAs: (name: string) => `Saved as ${name}.`,
  fileCouldNotSaved: (reason: string) => `The file could not be saved: ${reason} Try another folder.`,

  // Kept courses.
  inThisBrowser: 'Courses in this browser',

  // Starter list.
} as const;
