/** words/ is the catalogue of what the app says: one file a room, each a plain object of texts and of functions that make one. */
import { counted } from '../core/text/sentence.ts';

/** Words that several rooms use, so that a thing has one name everywhere. */
export const terms = {
  // The file and what can be done to a thing.
  saved: 'Saved',
  saving: 'Saving…',
  untitledCourse: 'Untitled course',
  duplicate: 'Duplicate',
  delete: 'Delete',
  undo: 'Undo',
  redo: 'Redo',
  nothingHasChanged: 'Nothing has changed yet.',
  leaveAsItWas: 'Leave it as it was',
  measure: 'Measure',
  help: 'Help',
  obstacle: 'Obstacle',
  pinned: 'Pinned',

  // Things and places.
  wayIn: 'Way in',
  hoofPrints: 'Hoof prints',
  orderOfObstacles: 'Order of obstacles',
  start: 'Start',
  end: 'End',
  name: 'Name',
  length: 'Length',
  width: 'Width',
  fromWest: 'From west',
  fromSouth: 'From south',
  heading: 'Heading',

  // The class.
  entries: 'Entries',
  level: 'Level',
  judge: 'Judge',

  // The ride.
  walk: 'Walk',
  jog: 'Jog',
  lope: 'Lope',
  leftFore: 'left fore',
  rightFore: 'right fore',
  leftHind: 'left hind',
  rightHind: 'right hind',

  // Numbers of things.
  pieces: (count: number) => counted(count, 'piece'),
  obstacles: (count: number) => counted(count, 'obstacle'),
  layouts: (count: number) => counted(count, 'layout'),
  findings: (count: number) => counted(count, 'finding'),
  fixes: (count: number) => counted(count, 'fix', 'fixes'),
  gaps: (count: number) => counted(count, 'gap'),
  landings: (count: number) => counted(count, 'landing'),
  goes: (count: number) => counted(count, 'go', 'goes'),
  drags: (count: number) => counted(count, 'drag'),
  countedEntries: (count: number) => counted(count, 'entry', 'entries'),
  carries: (count: number) => counted(count, 'carry', 'carries'),
  pages: (count: number) => counted(count, 'page'),
} as const;
