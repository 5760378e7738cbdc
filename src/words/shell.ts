/** What the frame of the app says: the header, the panels that fold and the strip that folds. */
export const shellWords = {
  foldStrip: 'Fold the strip',
  showStrip: 'Show the strip',
  hidePanel: 'Hide the panel',
  showPanel: 'Show the panel',
} as const;
