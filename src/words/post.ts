/** What the Post stage says, and every dialog that prints. */
export const postWords = {
  // Class form.
  course: 'Course',
  nameTheCourse: 'Name the course',
  show: 'Show',
  nameTheShow: 'Name the show',
  class: 'Class',
  nameTheClass: 'Name the class',
  changeTheLevel: 'Change the level',
  date: 'Date',
  changeTheDate: 'Change the date',
  notesOnPage: 'Notes on the page',
  writeNotes: 'Write notes',

  // Export button.
  drawingThePdf: 'Drawing the PDF…',
  pdfFailed: (why: string) => `The PDF could not be written: ${why} The course is not affected.`,
  exportPdf: 'Export PDF',

  // Export.
  exported: (name: string, pages: string, scale: number) => `${name}: ${pages} at 1:${scale}. Print at 100 %.`,

  // Instruction words.
  noInstructions: 'The instructions are made from the order of obstacles. Add an obstacle at Set.',
  madeFromCourse: 'Written from the course. Change the words of any of them.',
  wordNumber: (number: number) => `Change instruction ${number}`,
  instruction: 'Instruction',
  backToMade: 'Back to the words from the course',

  // Page preview.
  drawAtScale: (scale: number) => `Draw it at 1:${scale}`,
  previewOf: (sheet: string) => `Preview of the ${sheet}`,

  // Paper.
  bestFit: 'Best fit',
  portrait: 'Portrait',
  landscape: 'Landscape',
  largest: 'Largest',
  sheet: 'Sheet',
  paper: 'Paper',
  page: 'Orientation',
  scale: 'Scale',
  nothingRidden: 'Nothing is ridden yet: the page will show an empty arena.',

  // Print dialog.
  preview: (title: string) => `Preview: ${title}`,
} as const;
