/** What belongs to no room: the frame of the app, its dialogs and its failures. */
export const appWords = {
  // Autosave context.
  workOnCopyHere: 'Work on a copy here',

  // Boundary.
  broke: 'Polewright has stopped',
  courseIsSafe: 'Your course is safe. Save it as a file first, then reload the page.',
  saveAsFile: 'Save the course as a file',
  loadPageAgain: 'Reload the page',
  whatWasSaid: (failure: string) => `The error: ${failure}`,

  // Dialog.
  close: 'Close',
} as const;
