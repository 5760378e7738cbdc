import { type Course, currentLayout } from '../../core/course/course.ts';
import { clampToPole, crossingsOf, moveCrossings } from '../../core/course/edit-crossings.ts';
import { obstacleOf } from '../../core/course/ids.ts';
import { type PlacedPiece, pieceKey } from '../../core/course/placed.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit, Metres } from '../../core/measure/quantity.ts';
import { obstacleKind } from '../../core/obstacles/obstacles.ts';
import { distance, type Point } from '../../core/plane/point.ts';
import { toWorld } from '../../core/plane/pose.ts';
import type { Survey } from '../../core/survey.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { labels, messages } from '../../words/desk.ts';
import { deskNames } from '../../words/desk-names.ts';
import type { DeskState } from '../desk.ts';
import type { PointerInput } from '../input.ts';
import { nameOf } from '../names.ts';
import { type CrossKey, crossIn, crossKey, type Keys } from '../selection/selection.ts';
import type { Guide } from '../snapping/guide.ts';
import type { Gesture } from './gesture.ts';

/** A handle: where the line of a leg crosses a pole. */
export interface CrossingHandle {
  readonly leg: string;
  /** Its place in the passage, 0 first. */
  readonly index: number;
  readonly key: string;
  readonly at: Point;
  readonly pole: PlacedPiece;
  readonly fraction: number;
}

/** In pick radii: with a mouse 12 pixels round the handle, with a finger 26. */
const HANDLE_RADIUS = 4 / 3;
/** Fractions of a pole that people name; a dragged crossing snaps to them. */
const NAMED_SHARES = [
  { share: 1 / 4, says: 'a quarter' },
  { share: 1 / 3, says: 'a third' },
  { share: 1 / 2, says: deskNames.theMiddle },
  { share: 2 / 3, says: 'two-thirds' },
  { share: 3 / 4, says: 'three-quarters' },
] as const;

/** The obstacle that is meant by what is chosen: itself, a piece of it, or the line over it. */
export function obstacleOfChoice({ layout }: Pick<Survey, 'layout'>, chosen: Keys): string | undefined {
  const [first] = chosen;
  if (first === undefined) return undefined;
  const leg = crossIn(first)?.leg;
  if (leg !== undefined) return layout.ride.legs.find(({ id }) => id === leg)?.obstacle;
  return first.includes(':') ? undefined : obstacleOf(first);
}

/** The crossings of one leg where they lie on the ground. */
export function crossingsOn({ layout, pieces }: Survey, legId: string): readonly CrossingHandle[] {
  const leg = layout.ride.legs.find(({ id }) => id === legId);
  return crossingsOf(layout, legId).flatMap(({ piece, fraction }, index): CrossingHandle[] => {
    const pole = pieces.find(({ key }) => key === pieceKey(leg?.obstacle ?? '', piece));
    if (pole === undefined) return [];
    const at = toWorld(pole.pose, { x: (fraction - 0.5) * pole.figure.length, y: 0 });
    return [{ leg: legId, index, key: crossKey(legId, index), at, pole, fraction }];
  });
}

/** The handles that can be dragged: at the Ride stage, of every way that the chosen obstacle is ridden. */
export function crossingHandles({ survey, chosen, stage }: Pick<DeskState, 'survey' | 'chosen' | 'stage'>) {
  const meant = stage === 'ride' ? obstacleOfChoice(survey, chosen) : undefined;
  if (meant === undefined) return [];
  const named = chosen.map(crossIn).find((each) => each !== null)?.leg;
  return survey.layout.ride.legs
    .filter(({ id, obstacle }) => obstacle === meant && (named === undefined || named === id))
    .flatMap(({ id }) => crossingsOn(survey, id));
}

/** The handle under the pointer; null for none. */
export function crossingAt(state: DeskState, at: Point, pickRadius: Metres): CrossingHandle | null {
  const near = crossingHandles(state)
    .map((handle) => ({ handle, off: distance(handle.at, at) }))
    .filter(({ off }) => off <= HANDLE_RADIUS * pickRadius)
    .sort((a, b) => a.off - b.off);
  return near[0]?.handle ?? null;
}

/** Whether the crossings of a leg go together when nobody says otherwise. */
export function isRiddenOnOneLine({ layout }: Pick<Survey, 'layout'>, legId: string): boolean {
  const leg = layout.ride.legs.find(({ id }) => id === legId);
  const kind = layout.obstacles.find(({ id }) => id === leg?.obstacle)?.kind ?? '';
  return obstacleKind(kind)?.crossedTogether === true && crossingsOf(layout, legId).length > 1;
}

/** The whole line over an obstacle, or one of its crossings, moved along the poles by metres towards their +x ends. */
function moveCrossing(survey: Survey, { leg, index }: CrossKey, by: Metres): Course {
  const moved = crossingsOn(survey, leg).filter((each) => index === 'all' || each.index === index);
  return moveCrossings(
    survey.course,
    leg,
    new Map(moved.map((each) => [each.index, clampToPole(each.fraction + by / each.pole.figure.length)])),
  );
}

/** Where the line now crosses, measured from the nearer end of the pole. */
function crossingPlace(course: Course, pole: PlacedPiece, fraction: number): string {
  return placeOnPole(pole.figure.length, fraction, course.unit);
}

/** "3' from the nearer end". */
export function placeOnPole(length: Metres, fraction: number, unit: LengthUnit): string {
  if (Math.abs(fraction - 0.5) < 1e-6) return deskNames.overTheMiddle;
  return deskNames.fromNearerEnd(printLength(Math.min(fraction, 1 - fraction) * length, unit));
}

/** What is said when the line has been moved: of the first crossing that went along. */
function crossingSentence(course: Course, survey: Survey, asked: CrossKey): string {
  const place = asked.index === 'all' ? 0 : asked.index;
  const handle = crossingsOn(survey, asked.leg).find((each) => each.index === place);
  const fraction = crossingsOf(currentLayout(course), asked.leg)[place]?.fraction;
  const name = nameOf(survey, crossKey(asked.leg, asked.index));
  if (handle === undefined || fraction === undefined) return capitalized(name);
  return messages.crossed(name, crossingPlace(course, handle.pole, fraction));
}

/** Moves the chosen crossings by an arrow key; a sentence when the arrow points across the pole. */
export function nudgeCrossing(
  survey: Survey,
  asked: CrossKey,
  { dx, dy }: { readonly dx: Metres; readonly dy: Metres },
): { readonly course: Course; readonly said: string } | { readonly refusal: string } {
  const all = crossingsOn(survey, asked.leg);
  const handle = all.find((each) => asked.index === 'all' || each.index === asked.index);
  const step = Math.hypot(dx, dy);
  const angle = handle?.pole.pose.angle ?? 0;
  const along = dx * Math.cos(angle) + dy * Math.sin(angle);
  // A key that points across the pole names neither of its ends.
  if (handle === undefined || Math.abs(along) < 0.2 * step) return { refusal: messages.crossesOnly() };
  const course = moveCrossing(survey, asked, Math.sign(along) * step);
  return { course, said: crossingSentence(course, survey, asked) };
}

/** The named fraction within the snap distance. */
function snappedShare(fraction: number, length: Metres, reach: Metres): (typeof NAMED_SHARES)[number] | undefined {
  return NAMED_SHARES.find(({ share }) => Math.abs(share - fraction) * length <= reach / 2);
}

/** Drags a crossing along its pole; the others of the leg go along unless it is chosen by itself. */
export function crossingGesture(down: PointerInput, state: DeskState, handle: CrossingHandle): Gesture {
  const { survey, chosen } = state;
  const isWhole = chosen.includes(crossKey(handle.leg, 'all'));
  const isAlone = !isWhole && (chosen.includes(handle.key) || !isRiddenOnOneLine(survey, handle.leg));
  const asked: CrossKey = { leg: handle.leg, index: isAlone ? handle.index : 'all' };
  const name = nameOf(survey, crossKey(asked.leg, asked.index));
  const { length } = handle.pole.figure;
  const { angle } = handle.pole.pose;

  const showing = (preview: Course | null, guides: readonly Guide[]): Gesture => ({
    course: preview,
    chosen,
    guides,
    doing: messages.moving(name),
    moved: (input) => {
      const off = (input.at.x - down.at.x) * Math.cos(angle) + (input.at.y - down.at.y) * Math.sin(angle);
      const target = clampToPole(handle.fraction + off / length);
      const drawn = input.isSnapOff ? undefined : snappedShare(target, length, input.pickRadius);
      const fraction = drawn?.share ?? target;
      const says = `${placeOnPole(length, fraction, survey.course.unit)}${drawn === undefined ? '' : deskNames.ofThePole(drawn.says)}`;
      return showing(moveCrossing(survey, asked, (fraction - handle.fraction) * length), [{ says, marks: [] }]);
    },
    commit: () => ({
      ...(preview === null ? {} : { course: preview }),
      chosen,
      label: labels.move(name),
      said: preview === null ? messages.chose(name) : crossingSentence(preview, survey, asked),
    }),
  });
  return showing(null, []);
}
