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

  // App words.
  layOutTheObstacles: 'Lay out the obstacles',
  orderGaitsTime: 'Order, gaits and time',
  whatNeedsALook: 'What needs a look',
  patternOnPaper: 'The pattern on paper',
  compareAndChangeOver: 'Compare, and change over',
  open: 'Open',
  amateur: 'Amateur',
  youth: 'Youth',
  novice: 'Novice',
  walkAndJog: 'Walk and jog',
  ledInHand: 'Led in hand',
  mustBeFixed: 'Must be fixed',
  shouldBeLookedAt: 'Should be looked at',
  worthKnowing: 'Worth knowing',
  position: (west: string, south: string) => `${west} from the west wall, ${south} from the south wall`,

  // Boundary.
  notLoaded: 'Polewright could not be loaded',
  isThereConnection: 'Is there a connection? What you have drawn here before is still in this browser.',

  // Lazy panel.
  partNotLoaded: 'This part of Polewright could not be loaded. Is there a connection? Your course is safe.',
  tryAgain: 'Try again',

  // Panels.
  leftPanels: 'Left panels',
  rightPanels: 'Right panels',
  panels: 'Panels',

  // Shell.
  file: 'File',
  fromLink: 'From a link',
  drawingThePage: 'Drawing the page…',
  stages: 'Stages',
  undoStep: (step: string) => `Undo: ${step}`,
  nothingToUndo: 'Nothing to undo',
  redoStep: (step: string) => `Redo: ${step}`,
  nothingToRedo: 'Nothing to redo',

  // Stages.
  add: 'Add',
  truck: 'Truck',
  tape: 'Tape',
  obstacles: 'Obstacles',
  order: 'Order',
  howItIsRidden: 'How it is ridden',
  how: 'How',
  time: 'Time',
  gaitsShown: 'Gaits shown',
  gaits: 'Gaits',
  ruleBook: 'Rule book',
  horse: 'Horse',
  findings: 'Findings',
  class: 'Class',
  paper: 'Paper',
  instructions: 'Instructions',
  words: 'Words',
  setOut: 'Set-out',
  score: 'Score',
  layouts: 'Layouts',
  day: 'Day',
  compare: 'Compare',
  crew: 'Crew',
  line: 'Line',
} as const;
