import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit, Radians } from '../../core/measure/quantity.ts';
import type { LeadNote, LeadStretch, Transition } from '../../core/ride/line.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { changeWords } from '../strip/rows.ts';

/** "Left lead, from the bend"; null where nothing is loped on a lead. */
export function leadWords(stretches: readonly LeadStretch[]): string | null {
  const leads = [...new Set(stretches.flatMap(({ lead }) => (lead === null ? [] : [lead])))];
  const [first] = leads;
  if (first === undefined) return stretches.length > 0 ? 'either lead: the line does not bend' : null;
  const whence = stretches.some(({ chosen }) => chosen) ? 'chosen' : 'from the bend';
  return `${leads.join(', then ')} lead, ${whence}`;
}

/** What there is to say about a lead. */
export function leadSentence(note: LeadNote, unit: LengthUnit): string {
  if (note.kind === 'change') {
    const has = `${printLength(note.room, unit)} for it, and it wants ${printLength(note.wants, unit)}`;
    const how = note.how === undefined ? 'The lead changes' : `A ${note.how} change of lead`;
    return `${how} from ${note.before} to ${note.after}; there are ${has}.`;
  }
  if (note.kind === 'open') return 'The lead is open: the line does not bend, and none is chosen.';
  const bend = `the bend to the ${note.bend} of ${printLength(note.radius, unit)}`;
  return note.kind === 'wrong-lead'
    ? `Wrong lead: ${bend} is loped on the ${note.lead} lead.`
    : `Counter-lope: ${bend} is loped on the ${note.lead} lead.`;
}

/** "Up to lope: takes 6' 3", has 40'." */
export function changeSentence(change: Transition, unit: LengthUnit): string {
  const words = changeWords(change);
  const has = `${printLength(change.length, unit)} of the ${printLength(change.room, unit)} that there are`;
  return `${capitalized(words)}: ${change.fits ? `takes ${has}` : `has no room, it wants ${has}`}.`;
}

/** Which end of a pole its fraction counts from, by the wall that it lies towards. */
export function firstEnd(angle: Radians): 'west' | 'east' | 'south' | 'north' {
  const [x, y] = [-Math.cos(angle), -Math.sin(angle)];
  if (Math.abs(x) > Math.abs(y)) return x < 0 ? 'west' : 'east';
  return y < 0 ? 'south' : 'north';
}
