import { sweepsOf } from '../checks/geometry/sweep.ts';
import { minTurnRadius, preferredTurnRadius } from '../horses/turns.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import type { LineElement, Transition } from '../ride/line.ts';
import type { Survey } from '../survey.ts';

export const QUARTER: Radians = Math.PI / 2;
/** Clearance beside a backing horse above which width is no difficulty: about a foot. Estimate. */
const ROOMY: Metres = 0.3;
/** How near to the end of what a horse does a gap begins to be hard: half of the way there. Estimate. */
const EASY_SHARE = 0.5;
/** What is beyond doing is not counted harder than this: it is a fault, and a finding says so. */
const MOST_HARD = 2;

export function sum<T>(of: readonly T[], amount: (each: T) => number): number {
  return of.reduce((total, each) => total + amount(each), 0);
}

/** The line up to the last obstacle: what follows is the way out. */
function riddenElements({ line }: Survey): readonly LineElement[] {
  return line.elements.filter(({ part }) => part !== 'finish');
}

function riddenLength(survey: Survey): Metres {
  return sum(riddenElements(survey), ({ length }) => length);
}

export function ofMove(survey: Survey, move: LineElement['move']): readonly LineElement[] {
  return riddenElements(survey).filter((element) => element.move === move);
}

/** Stretches of one move, one after the other in one obstacle: each is a thing that the rider has to begin. */
export function stepCount(survey: Survey): number {
  const elements = riddenElements(survey).filter(({ part }) => part === 'obstacle');
  return elements.filter(({ leg, move, turn }, i) => {
    const before = elements[i - 1];
    return before?.leg !== leg || before.move !== move || (turn !== 0 && before.turn === 0);
  }).length;
}

export function arcTurn({ path }: LineElement): Radians {
  return sum(path, ({ curvature, length }) => Math.abs(curvature) * length);
}

/**
 * Turns on the spot, about the middle of the horse or about its feet, radians: those between two stretches backwards belong
 * to the backing.
 */
export function spotTurns(survey: Survey): { readonly between: Radians; readonly others: Radians } {
  const elements = riddenElements(survey);
  let [between, others] = [0, 0];
  for (const [i, element] of elements.entries()) {
    const { turn, leg, move } = element;
    const [before, after] = [elements[i - 1], elements[i + 1]];
    const backs = before?.move === 'back' && after?.move === 'back' && before.leg === leg && after.leg === leg;
    const turned = Math.abs(turn) + (move === 'turn' ? arcTurn(element) : 0);
    if (backs) between += turned;
    else others += turned;
  }
  return { between, others };
}

/** Side passes that follow another in the same obstacle: an L, T or V. */
export function sidePassCorners(survey: Survey): number {
  const all = ofMove(survey, 'side-pass');
  return all.filter(({ leg, path, facing }, i) => {
    const before = all[i - 1];
    if (before?.leg !== leg) return false;
    const [one, other] = [before.path[0]?.start.angle ?? 0, path[0]?.start.angle ?? 0];
    return Math.cos(one - other) < 0.9 || Math.cos(before.facing - facing) < 0.9;
  }).length;
}

/** How much more tightly than with ease the line turns, in quarter turns at the tightest. */
export function tightTurns(survey: Survey): number {
  return sum(ofMove(survey, 'ride'), ({ gait, path }) => {
    const [easy, least] = [preferredTurnRadius(survey.horse, gait), minTurnRadius(survey.horse, gait)];
    return sum(path, ({ curvature, length }) => {
      const radius = 1 / Math.abs(curvature);
      if (curvature === 0 || radius >= easy) return 0;
      const share = easy > least ? (easy - radius) / (easy - least) : 1;
      return (Math.min(share, MOST_HARD) * Math.abs(curvature) * length) / QUARTER;
    });
  });
}

export function riddenTransitions(survey: Survey): readonly Transition[] {
  const end = riddenLength(survey);
  return survey.line.transitions.filter(({ at }) => at < end - 1e-9);
}

/** What a transition lacks of the room it takes, as a share. */
export function missingRoom({ room, length, fits }: Transition): number {
  return fits || length <= 0 ? 0 : Math.max(0, 1 - room / length);
}

export function leadChanges(survey: Survey) {
  const end = riddenLength(survey);
  return survey.line.leadNotes.flatMap((note) => (note.kind === 'change' && note.place < end - 1e-9 ? [note] : []));
}

/** 0 in the middle half of what the horse does over poles, 1 at its end. */
export function hardGaps({ line, horse }: Survey): number {
  return sum(line.gaps, ({ gait, landings: { each } }) => {
    const { value, least = value, most = value } = horse.gaits[gait].landing;
    const room = each < value ? value - least : most - value;
    const share = room > 0 ? Math.abs(each - value) / room : Number(each !== value);
    return Math.min(MOST_HARD, Math.max(0, (share - EASY_SHARE) / (1 - EASY_SHARE)));
  });
}

export function raisedCrossings(survey: Survey): number {
  const byKey = new Map(survey.pieces.map(({ key, piece }) => [key, piece.values]));
  return survey.line.crossings.filter(({ key }) => {
    const { raisedStart = 0, raisedEnd = 0 } = byKey.get(key) ?? {};
    return Number(raisedStart) + Number(raisedEnd) > 0;
  }).length;
}

export function lopedCrossings({ line, layout }: Survey): number {
  return line.crossings.filter(({ leg }) => layout.ride.legs[leg]?.gait === 'lope').length;
}

/** Obstacles that a horse walks on or over and that are no poles. */
export function decksRidden({ layout, obstacles }: Survey): number {
  const decks = new Set(
    obstacles
      .filter(({ pieces }) => pieces.some(({ figure }) => figure.stands === 'deck'))
      .map((each) => each.obstacle.id),
  );
  return layout.ride.legs.filter(({ obstacle }) => decks.has(obstacle)).length;
}

/** How narrow the backing is: 0 with a foot of room beside each hoof, 1 with none. */
export function narrowBacks(survey: Survey): number {
  return sum(sweepsOf(survey), ({ clear }) => Math.min(MOST_HARD, Math.max(0, 1 - clear / ROOMY)));
}

export function lopedLength(survey: Survey): Metres {
  return sum(
    ofMove(survey, 'ride').filter(({ gait }) => gait === 'lope'),
    ({ length }) => length,
  );
}
