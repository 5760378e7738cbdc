import { useSyncExternalStore } from 'react';
import type { LaterPart } from './later-part.ts';

/** A part of the program; undefined for as long as it has not come. */
export function useLaterPart<Part>(part: LaterPart<Part>): Part | undefined {
  return useSyncExternalStore(part.subscribe, part.now);
}
