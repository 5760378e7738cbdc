/** The places on the line where the rider does something else: the one list for the drawing, the words and the screen. */
import type { Metres } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Pose } from '../plane/pose.ts';
import type { LeadNote, Line, Transition } from './line.ts';

/** What happens at a place. */
export type LineEvent =
  | { readonly kind: 'transition'; readonly transition: Transition }
  | { readonly kind: 'lead'; readonly change: Extract<LeadNote, { kind: 'change' }> };

export interface LinePlace {
  readonly at: Metres;
  /** The line there. */
  readonly pose: Pose;
  /** In the order in which they are ridden; more than one where the horse halts and goes on. */
  readonly events: readonly LineEvent[];
  /** One or two words for each: "jog", "lope, left lead", "halt", "flying change, right lead". */
  readonly words: readonly string[];
}

/** Places nearer than this are one, metres: the horse has not moved. */
const SAME_PLACE: Metres = 1e-6;

function transitionWords({ leads }: Line, { at, after }: Transition): string {
  if (after === 'standing') return 'halt';
  if (after !== 'lope') return after;
  const lead = leads.find((each) => each.to > at + SAME_PLACE)?.lead ?? null;
  return lead === null ? 'lope' : `lope, ${lead} lead`;
}

function leadWords({ how, after }: Extract<LeadNote, { kind: 'change' }>): string {
  return `${how === undefined ? 'change' : `${how} change`}, ${after} lead`;
}

/** Every transition and change of lead on the line, from the start to the end. */
export const linePlaces = memoizeByIdentity((line: Line): readonly LinePlace[] => {
  const changed = line.transitions.map((transition): LinePlace => {
    const { at, pose } = transition;
    return { at, pose, events: [{ kind: 'transition', transition }], words: [transitionWords(line, transition)] };
  });
  const led = line.leadNotes.flatMap((change): LinePlace[] => {
    if (change.kind !== 'change') return [];
    return [{ at: change.place, pose: change.pose, events: [{ kind: 'lead', change }], words: [leadWords(change)] }];
  });
  const places: LinePlace[] = [];
  // The sort keeps the order of what happens at one place.
  for (const each of [...changed, ...led].sort((a, b) => a.at - b.at)) {
    const last = places.at(-1);
    if (last === undefined || each.at - last.at > SAME_PLACE) places.push(each);
    else {
      const words = [...last.words, ...each.words];
      places[places.length - 1] = { ...last, events: [...last.events, ...each.events], words };
    }
  }
  return places;
});
