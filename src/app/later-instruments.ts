import { laterPart } from './later-part.ts';

/** What snaps and measures at the desk: until it has come, things are moved freely. */
export const INSTRUMENTS_PART = laterPart(() => import('../desk/measuring/all-instruments.ts'));
