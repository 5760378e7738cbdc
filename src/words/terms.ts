/** words/ is the catalogue of what the app says: one file a room, each a plain object of texts and of functions that make one. */

/** Words that several rooms use, so that a thing has one name everywhere. */
export const terms = {
  saved: 'Saved',
  saving: 'Saving…',
  duplicate: 'Duplicate',
  delete: 'Delete',
  wayIn: 'Way in',
  pinned: 'Pinned',
  hoofPrints: 'Hoof prints',
  orderOfObstacles: 'Order of obstacles',
} as const;
