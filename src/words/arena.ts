/** What is written on the arena and over it. */
export const arenaWords = {
  // Arena view.
  arenaSeenFromAbove: 'Arena, seen from above',
  layoutsArena: 'Layouts in the arena',

  // Carry legend.
  carried: 'Carried',
  laterPass: 'In a later pass',
  fromTheTruck: '+ from the truck',
  toTheTruck: '− to the truck',
  liesThereNow: 'Lies there now',

  // Conflict dialog.
  cannotAllHold: 'These cannot all be kept',
  nothingMovedDropOne: 'Nothing has moved. Drop one of these and the rest goes on, or leave everything as it was.',

  // Dimension labels.
  whatKeptWhatChosen: 'Measures of what is chosen',
  typeAnother: (name: string, length: string, measured: string) => `${name}: ${length}${measured}. Type another`,
  onlyMeasured: ', only measured',

  // Hint line.

  // Legend.
  foldTheLegend: 'Hide the legend',
  showLegendLine: 'Show the legend of the line',
  legend: 'Legend',
  howCarriesDrawn: 'How the carries are drawn',
  howLineDrawn: 'How the line is drawn',

  // Print legend.

  // Question dialog.
  somethingWouldLost: 'Something would be lost',

  // Suggestion bar.
  keepFromNowOn: 'Keep it from now on (K)',
  keepIt: 'Keep it',
  k: 'K',
  doNotKeep: 'Do not keep it',

  // View buttons.
  viewArena: 'View of the arena',
  measureBetweenTwoThings: 'Measure between two things (T)',
  zoomOut: 'Zoom out',
  zoomOutKey: 'Zoom out (−)',
  zoomIn: 'Zoom in',
  zoomInKey: 'Zoom in (+)',
  wholeArena: 'Whole arena',
  showWholeArena0: 'Show the whole arena (0)',

  // Rail.
  in: 'In',

  // Sweep mark.
  tooLittle: (room: string) => `${room} too little`,
  toSpare: (room: string) => `${room} to spare`,

  // Travel styles.
  back: 'Back',
  sidePass: 'Side pass',
  turn: 'Turn',
  gate: 'Gate',
} as const;
