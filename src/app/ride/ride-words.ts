import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit, Radians } from '../../core/measure/quantity.ts';
import type { LeadNote, LeadStretch, Transition } from '../../core/ride/line.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { rideWords } from '../../words/ride.ts';
import { changeWords } from '../strip/rows.ts';

/** "Left lead, from the bend"; null where nothing is loped on a lead. */
export function leadWords(stretches: readonly LeadStretch[]): string | null {
  const leads = [...new Set(stretches.flatMap(({ lead }) => (lead === null ? [] : [lead])))];
  const [first] = leads;
  if (first === undefined) return stretches.length > 0 ? rideWords.eitherLead : null;
  const words = stretches.some(({ chosen }) => chosen) ? rideWords.leadAsChosen : rideWords.leadFromBend;
  return words(leads.join(rideWords.thenLead));
}

/** What there is to say about a lead. */
export function leadSentence(note: LeadNote, unit: LengthUnit): string {
  if (note.kind === 'change') {
    const [room, needs] = [printLength(note.room, unit), printLength(note.wants, unit)];
    return note.how === undefined
      ? rideWords.leadChanges(note.before, note.after, room, needs)
      : rideWords.leadChangesHow(note.how, note.before, note.after, room, needs);
  }
  if (note.kind === 'open') return rideWords.leadOpen;
  const words = note.kind === 'wrong-lead' ? rideWords.wrongLead : rideWords.counterLope;
  return words(note.bend, printLength(note.radius, unit), note.lead);
}

/** "Up to lope: takes 6' 3", has 40'." */
export function changeSentence(change: Transition, unit: LengthUnit): string {
  const sentence = change.fits ? rideWords.changeFits : rideWords.changeHasNoRoom;
  return sentence(capitalized(changeWords(change)), printLength(change.length, unit), printLength(change.room, unit));
}

/** Which end of a pole its fraction counts from, by the wall that it lies towards. */
export function firstEnd(angle: Radians): 'west' | 'east' | 'south' | 'north' {
  const [x, y] = [-Math.cos(angle), -Math.sin(angle)];
  if (Math.abs(x) > Math.abs(y)) return x < 0 ? 'west' : 'east';
  return y < 0 ? 'south' : 'north';
}
