import type { Seconds } from '../../core/measure/quantity.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import type { Line } from '../../core/ride/line.ts';
import { secondsAt } from '../../core/ride/playing.ts';
import type { Timeline } from './player.ts';

/** Stops nearer than this are one: two poles cannot be landed between so fast. */
const APART: Seconds = 0.05;

/** The line as something to play. One stops at every landing, and where another part of the line begins. */
export const timelineOf = memoizeByIdentity((line: Line): Timeline => {
  const landings = line.gaps.flatMap(({ landings: { places } }) => places.map(({ at }) => secondsAt(line, at)));
  const parts = line.elements.map((element) => secondsAt(line, element.from, element));
  const stops: Seconds[] = [];
  for (const moment of [...landings, ...parts, line.clock.go].sort((a, b) => a - b)) {
    if (moment - (stops.at(-1) ?? -1) > APART) stops.push(moment);
  }
  const timeline = { duration: line.clock.go, cuePoints: stops };
  return timeline;
});
