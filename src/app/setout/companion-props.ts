import type { SetOut } from '../../core/setout/setout.ts';
import type { Survey } from '../../core/survey.ts';
import type { PartActs } from './acts.ts';
import type { CompanionLink } from './companion-door.ts';
import type { CrewNotes } from './notes.ts';

/** What all views of the companion work with. */
export interface CompanionProps {
  readonly survey: Survey;
  readonly plan: SetOut;
  readonly parts: readonly PartActs[];
  readonly notes: CrewNotes;
  readonly link: CompanionLink;
  /** Shows the parts of these obstacles only; all where there are none. */
  show(obstacles: readonly string[]): void;
}
