import type { Finding } from '../../core/checks/check.ts';
import type { Desk, DeskState } from '../../desk/desk.ts';
import { findingsWords } from '../../words/findings.ts';
import type { View } from '../view.ts';
import { type Grouping, groupsOf, listedIds } from './groups.ts';
import { visibleFindings } from './visible-findings.ts';

/** The desk and the view, which a way to a finding changes together. */
export interface DoorPlaces {
  readonly desk: Desk;
  readonly view: View;
}

/** The findings in the order of the list. */
function listed(state: DeskState, grouping: Grouping): readonly Finding[] {
  const findings = visibleFindings(state);
  const byId = new Map(findings.map((finding) => [finding.id, finding]));
  return listedIds(groupsOf(findings, state.survey, grouping)).flatMap((id) => byId.get(id) ?? []);
}

/** Goes to Check, opens the card of a finding, and brings its place to the middle of the arena. */
export function enterFinding({ desk, view }: DoorPlaces, id: string): void {
  const { stage, findings } = desk.state();
  const finding =
    findings.find((each) => each.id === id) ?? visibleFindings(desk.state()).find((each) => each.id === id);
  if (stage !== 'check') {
    view.comeFrom(stage);
    desk.switchStage('check');
  }
  view.group('obstacle');
  view.openFinding(id, 'seek');
  view.point({ kind: 'finding', id });
  if (finding !== undefined) view.reveal(finding.at);
}

/** Opens the finding that is pointed at, else the first of what is chosen; false when there is none. */
function enterNearest(places: DoorPlaces): boolean {
  const { desk, view } = places;
  const state = desk.state();
  const findings = listed(state, 'obstacle');
  const { pointed } = view.state();
  const pointedAt = pointed?.kind === 'finding' ? findings.find(({ id }) => id === pointed.id) : undefined;
  const found =
    pointedAt ??
    findings.find(({ keys }) => keys.some((key) => state.chosen.includes(key))) ??
    (state.chosen.length === 0 ? findings[0] : undefined);
  if (found === undefined) return false;
  enterFinding(places, found.id);
  return true;
}

/**
 * Goes on to the next finding of the list, or back to the one before, round and round. In the list its card opens; in the
 * arena it is pointed at and said, and the focus stays.
 */
function stepFinding({ desk, view }: DoorPlaces, by: 1 | -1, from: 'arena' | 'list'): void {
  const state = desk.state();
  const { grouping, pointed, openFinding } = view.state();
  const findings = listed(state, state.stage === 'check' ? grouping : 'obstacle');
  const current = from === 'arena' && pointed?.kind === 'finding' ? pointed.id : openFinding;
  const here = findings.findIndex(({ id }) => id === current);
  const next = here < 0 ? (by === 1 ? 0 : findings.length - 1) : (here + by + findings.length) % findings.length;
  const finding = findings[next];
  if (finding === undefined) {
    view.tell(findingsWords.noFindings);
    return;
  }
  view.openFinding(finding.id, from === 'list' ? 'seek' : undefined);
  view.point({ kind: 'finding', id: finding.id });
  view.reveal(finding.at);
  if (from === 'arena') view.tell(findingsWords.stepped(next + 1, findings.length, finding.says));
}

/** What the keys for findings are; a key is one only without Control, Alt and the like. */
export function findingKey(
  places: DoorPlaces,
  { key, mod, alt }: { readonly key: string; readonly mod: boolean; readonly alt: boolean },
  from: 'arena' | 'list',
): boolean {
  if (mod || alt) return false;
  if (key === '.' || key === ',') {
    stepFinding(places, key === '.' ? 1 : -1, from);
    return true;
  }
  return from === 'arena' && key.toLowerCase() === 'i' && enterNearest(places);
}
