import { laterPart } from '../later-part.ts';

/** What became of things since another layout: needed at Change only. */
export const ORIGINS_PART = laterPart(() => import('./origins.ts'));
