import type { Grip, ObservationKind, Wall } from '../../constraints/constraint.ts';
import type { Metres } from '../../measure/quantity.ts';
import type { Survey } from '../../survey.ts';
import { observedOn } from '../ground.ts';
import { isSmall, placeOn, sideOf } from '../observables.ts';
import { predicted } from '../observation-error.ts';
import type { Observable, SetOutCrew } from '../setout.ts';
import { USUAL_TAPE } from '../tape-errors.ts';
import { groundOf, pieceNamed } from './adjust-equations.ts';

/** What a kind of observation is made between. `wall from` is a wall with the place on it where the tape begins. */
export type ObservedThing = 'long' | 'small' | 'piece' | 'wall' | 'wall from';

/** What each kind of observation is made between, in the order of its grips. */
export const OBSERVED_THINGS: Readonly<Record<ObservationKind, readonly [ObservedThing, ObservedThing]>> = {
  gap: ['long', 'long'],
  between: ['piece', 'piece'],
  beside: ['small', 'long'],
  clear: ['small', 'long'],
  ahead: ['long', 'piece'],
  level: ['long', 'long'],
  'in-line': ['long', 'piece'],
  square: ['long', 'long'],
  against: ['long', 'long'],
  'off-wall': ['piece', 'wall'],
  'along-wall': ['piece', 'wall from'],
  'from-rail': ['piece', 'wall from'],
};

/** Whether a grip is such a thing. */
export function isSuchThing(survey: Survey, grip: Grip, thing: ObservedThing): boolean {
  if ('wall' in grip) return thing === 'wall' || thing === 'wall from';
  if (thing === 'piece') return true;
  return thing === (isSmall(pieceNamed(survey, grip.piece)) ? 'small' : 'long');
}

/** A place on a wall, counted as the entrance is, from the wall's west or south end; as metres from the wall's own start. */
export function fromWallStart(wall: Wall, at: Metres, length: Metres): Metres {
  return wall === 'south' || wall === 'east' ? at : length - at;
}

/** An observable on the side on which its pieces are drawn; `from` is where on a wall the tape begins, from its start. */
export function observableAsDrawn(
  survey: Survey,
  kind: ObservationKind,
  grips: readonly [Grip, Grip],
  from?: Metres,
): Observable {
  const [first, second] = grips;
  if ('wall' in first || 'wall' in second) {
    const of: Observable = { kind, grips, side: 1, ...(from === undefined ? {} : { from }) };
    const isBehind = kind === 'along-wall' && observedOn(groundOf(survey), of).value < 0;
    return isBehind ? { ...of, runs: -1 } : of;
  }
  const [a, b] = [pieceNamed(survey, first.piece), pieceNamed(survey, second.piece)];
  const isAboutSecond = kind === 'beside' || kind === 'against';
  const side = isAboutSecond ? sideOf(b, placeOn(a, first.at ?? 0.5)) : sideOf(a, placeOn(b, second.at ?? 0.5));
  return { kind, grips, side };
}

/** The standard error of what a crew's tape reads of things that lie: as for laying one, less what bedding it adds. */
export function readingError(survey: Survey, of: Observable, crew: SetOutCrew): number {
  const { sigma } = predicted(groundOf(survey), of, crew);
  return Math.sqrt(Math.max(sigma ** 2 - USUAL_TAPE.bed.value ** 2, USUAL_TAPE.read.value ** 2));
}
