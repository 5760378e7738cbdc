/** A way over an obstacle as a rider is told it. The sentence comes from the stations; the kind gives its nouns. */
import type { PlacedObstacle, PlacedPiece } from '../core/course/placed.ts';
import type { Gait } from '../core/horses/horse.ts';
import type { Metres, Radians } from '../core/measure/quantity.ts';
import { mirroredStation } from '../core/obstacles/build.ts';
import { obstacleKind } from '../core/obstacles/obstacles.ts';
import type { Passage } from '../core/obstacles/passage.ts';
import { swappedHands, type Wording } from '../core/obstacles/wording.ts';
import { hull } from '../core/plane/hull.ts';
import { distance } from '../core/plane/point.ts';
import { normalizeAngle, type Pose } from '../core/plane/pose.ts';
import type { Crossing } from '../core/ride/line.ts';
import { markersOn } from '../core/ride/marker-letters.ts';
import { handWork, type Phrasing, sidePassing, turning } from './handled-words.ts';
import { lettered, markerWords, roundsWords } from './marker-way.ts';
import { type MoveStep, type PlacedStation, type Step, stepsOf, withoutInnerTurns } from './steps.ts';

/** What the words of a way depend on beside itself. */
interface WayContext {
  readonly obstacle: PlacedObstacle;
  readonly gait: Gait;
  /** From the horse's front feet to its hind feet. */
  readonly wheelbase: Metres;
  readonly letters: ReadonlyMap<string, string>;
  /** Where the line goes over its poles on this way. */
  readonly crossings: readonly Crossing[];
  /** The ways in which the obstacle has been ridden before in this go. */
  readonly before: readonly Passage[];
}

/** `{}` in a phrase stands for the thing: with its article at its first mention, then for "it" or "them". */
export interface PassageWords {
  /** What is ridden to: "the fan", "the other end of the L". */
  readonly thing: string;
  readonly pronoun: 'it' | 'them';
  /** How the gait goes on from the approach: "over {}"; absent: the horse is ridden up to it and handled there. */
  readonly where?: string;
  /** Whether the horse stops before what comes then. */
  readonly stops: boolean;
  /** What comes then, one after the other: "turn 180° to the left", "back through {}". */
  readonly deeds: readonly string[];
}

/** A way that turns by less than this is ridden straight, radians: 5°. */
const BEND = Math.PI / 36;
/** Two ways that begin nearer to each other begin at the same place, m. */
const SAME_START = 1;

function isRaised({ figure, kind }: PlacedPiece): boolean {
  return kind.id === 'pole' && figure.height > figure.width + 1e-6;
}

/** The pieces that a passage crosses, else the markers that it passes, else whatever its stations are on. */
function piecesRidden(obstacle: PlacedObstacle, passage: Passage): readonly PlacedPiece[] {
  const on = (kind: 'cross' | 'reach') => {
    const ids = new Set(passage.stations.flatMap((each) => (each.kind === kind ? [each.piece] : [])));
    return obstacle.pieces.filter(({ piece }) => ids.has(piece.id));
  };
  const [crossed, markers] = [on('cross'), markersOn(obstacle, passage)];
  return crossed.length > 0 ? crossed : markers.length > 0 ? markers : on('reach');
}

function nounOf(wording: Wording, obstacle: PlacedObstacle, passage: Passage): string {
  const pieces = piecesRidden(obstacle, passage);
  const [first] = pieces;
  const title = first?.kind.title.toLowerCase() ?? 'obstacle';
  const noun = wording.noun ?? (pieces.length > 1 ? `${title}s` : title);
  return passage.stations.some(({ kind }) => kind === 'cross') && pieces.some(isRaised) ? `raised ${noun}` : noun;
}

/** How far the heading turns over these stations, all the same way; 0 where it turns to and fro, or hardly. Radians. */
function bendOf(stations: readonly PlacedStation[]): Radians {
  const headings = stations.map(({ pose }) => pose.angle);
  const bends = headings.slice(1).map((heading, i) => normalizeAngle(heading - (headings[i] ?? 0)));
  const sum = bends.reduce((all, bend) => all + bend, 0);
  return bends.every((bend) => bend * sum > -1e-9) && Math.abs(sum) > BEND ? sum : 0;
}

/** The way forwards without a stop: over, through, around, among markers. */
function riddenWords(step: MoveStep, phrasing: Phrasing): string {
  const among = amongMarkers(step, phrasing);
  const ridden = phrasing.wording.ridden ?? 'over {}';
  const crossed = step.stations.findIndex(({ station }) => station.kind === 'cross');
  if (among !== undefined) {
    if (crossed === -1) return among;
    return (crossed === 0 ? [ridden, among] : [among, ridden]).join(', and ');
  }
  const bend = bendOf(step.stations);
  if (bend === 0) return ridden;
  const hand = bend > 0 ? 'left' : 'right';
  return ridden.startsWith('around ') ? `${ridden} to the ${hand}` : `${ridden}, turning ${hand}`;
}

/** Among two markers or more with their letters, or around a lone one. */
function amongMarkers({ from, stations }: MoveStep, { markers, letters }: Phrasing): string | undefined {
  const line = [...(from === undefined ? [] : [from]), ...stations].map(({ pose }) => pose);
  if (markers.length > 1) return markerWords(line, lettered(markers, letters));
  const [lone] = markers;
  if (lone === undefined) return undefined;
  // Another way by this obstacle may have given it a letter.
  return roundsWords(line, lone.pose, letters.get(lone.key) ?? `the ${lone.kind.title.toLowerCase()}`);
}

/** Out of what the horse was ridden into. */
function leavingWords(entry: Pose, exit: Pose): string {
  const turned = normalizeAngle(exit.angle - entry.angle);
  if (Math.abs(turned) < Math.PI / 4) return 'straight on out';
  if (Math.abs(turned) > (3 * Math.PI) / 4) return 'out the same way';
  return `out to the ${turned > 0 ? 'left' : 'right'}`;
}

/** One step after the first, as a verb phrase; empty where it goes without saying. */
function deedOf(steps: readonly Step[], index: number, phrasing: Phrasing): string {
  const step = steps[index] as Step;
  const later = steps.slice(index + 1);
  switch (step.kind) {
    case 'turn':
      return turning(steps, index, phrasing);
    case 'side-pass':
      return sidePassing(steps, index, phrasing);
    case 'work':
      return handWork(steps, index, phrasing);
    case 'back':
      // The step back before a gate is a part of its work.
      return later[0]?.kind === 'work' ? '' : backing(steps, index, phrasing);
    case 'ride': {
      const isOver = step.stations.some(({ station }) => station.kind === 'cross');
      const entry = steps[0]?.kind === 'ride' ? steps[0].stations[0].pose : undefined;
      const exit = step.stations.at(-1)?.pose;
      if (entry === undefined || exit === undefined || (!isOver && !phrasing.wording.isEntered)) return '';
      return `${phrasing.gait} ${phrasing.wording.isEntered ? leavingWords(entry, exit) : riddenWords(step, phrasing)}`;
    }
  }
}

function backing(steps: readonly Step[], index: number, phrasing: Phrasing): string {
  const step = steps[index] as MoveStep;
  const { wording } = phrasing;
  const among = phrasing.markers.length > 1 ? amongMarkers(step, phrasing) : undefined;
  if (among !== undefined) return `back ${among}`;
  if (!wording.isEntered) {
    const bend = bendOf(step.from === undefined ? step.stations : [step.from, ...step.stations]);
    // While the head comes round to one hand, the tail goes to the other.
    return bend === 0 ? 'back straight' : `back on a bend with the quarters to the ${bend > 0 ? 'right' : 'left'}`;
  }
  const part = phrasing.partOf(step);
  const along = part === undefined ? '' : ` along ${part}`;
  const backs = steps.flatMap((each, i) => (each.kind === 'back' ? [i] : []));
  const isInside = goesIn(steps, phrasing) || backs[0] !== index;
  if (!isInside && backs.length === 1) return 'back through {}';
  return index === backs.at(-1) ? `back out${along}` : isInside ? `back on${along}` : `back in${along}`;
}

/** Whether the horse is ridden in before it is handled: not only up to it. */
function goesIn(steps: readonly Step[], { wording }: Phrasing): boolean {
  const [first] = steps;
  return wording.isEntered === true && steps.length > 1 && first?.kind === 'ride' && isRiddenOn(first);
}

/** Whether a first step leads on over the obstacle, and not only to its first station. */
function isRiddenOn({ stations: [first, second] }: MoveStep): boolean {
  return second !== undefined || first.station.kind === 'cross';
}

/** Whether a way begins away from where every earlier one over its obstacle began, and whether it begins turned about. */
interface Start {
  readonly isElsewhere: boolean;
  readonly isTurned: boolean;
}

function startOf(passage: Passage, { obstacle, before }: WayContext): Start {
  const poseOf = (each: Passage) => {
    const [first] = stepsOf(obstacle, each);
    return first?.kind === 'ride' ? first.stations[0].pose : undefined;
  };
  const here = poseOf(passage);
  const others = before.flatMap((each) => poseOf(each) ?? []);
  if (here === undefined || others.length === 0) return { isElsewhere: false, isTurned: false };
  return {
    isElsewhere: others.every((other) => distance(other, here) > SAME_START),
    isTurned: others.every(({ angle }) => Math.abs(normalizeAngle(angle - here.angle)) > Math.PI / 2),
  };
}

/** How a ridden way is said: over, around, or into and what comes then. */
function wayForward(steps: readonly Step[], phrasing: Phrasing): { where: string; onwards: readonly string[] } {
  const first = steps[0] as MoveStep;
  if (goesIn(steps, phrasing)) {
    const part = phrasing.partOf(first);
    return { where: part === undefined ? 'into {}' : `into {} along ${part}`, onwards: [] };
  }
  const rounds = phrasing.markers.length === 1 ? amongMarkers(first, phrasing) : undefined;
  const [entry, exit] = [first.stations[0].pose, first.stations.at(-1)?.pose ?? first.stations[0].pose];
  if (!phrasing.wording.isEntered || rounds === undefined) return { where: riddenWords(first, phrasing), onwards: [] };
  return { where: 'into {}', onwards: [rounds, leavingWords(entry, exit)] };
}

/** Whether the horse is told to stop: before it is handled, unless the words for the work say it, or it only turns inside. */
function stopsFirst(steps: readonly Step[], isRidden: boolean, deeds: readonly string[]): boolean {
  if (steps.length < 2 || deeds.length === 0 || /^(halt|stop)\b/.test(deeds[0] ?? '')) return false;
  return !isRidden || steps.some(({ kind }) => kind === 'back' || kind === 'side-pass' || kind === 'work');
}

/** What is said of a way, without its gait and lead; undefined when none of its stations lies on the ground. */
export function passageWords(passage: Passage, context: WayContext): PassageWords | undefined {
  const { obstacle, gait, letters, wheelbase } = context;
  const wording = obstacleKind(obstacle.obstacle.kind)?.words ?? {};
  const all = stepsOf(obstacle, passage, context.crossings);
  const steps = wording.isLane ? withoutInnerTurns(all) : all;
  const [first, ...others] = steps;
  if (first?.kind !== 'ride') return undefined;
  const markers = markersOn(obstacle, passage);
  const partOf = ({ from, stations }: MoveStep) => {
    const on = [...(from === undefined ? [] : [from]), ...stations].map(({ station }) => station);
    if (obstacle.obstacle.side === 1) return wording.part?.(on);
    const part = wording.part?.(on.map(mirroredStation));
    return part === undefined ? undefined : swappedHands(part);
  };
  const inside = wording.isEntered ? hull(obstacle.pieces.flatMap(({ footprint }) => footprint)) : undefined;
  const phrasing: Phrasing = { wording, gait, letters, markers, inside, wheelbase, partOf };
  const isRidden = isRiddenOn(first);
  const forward = isRidden ? wayForward(steps, phrasing) : undefined;
  const deeds = [...(forward?.onwards ?? []), ...others.map((_, i) => deedOf(steps, i + 1, phrasing))].filter(
    (deed) => deed !== '',
  );
  const noun = nounOf(wording, obstacle, passage);
  const isCrossed = first.stations.some(({ station }) => station.kind === 'cross');
  const part = wording.isEntered || !isRidden ? undefined : partOf(first);
  const words = {
    thing: part ?? `the ${noun}`,
    pronoun: noun.endsWith('s') ? ('them' as const) : ('it' as const),
    stops: stopsFirst(steps, isRidden, deeds),
    deeds,
    ...(forward !== undefined && { where: forward.where }),
  };
  // Letters tell it, and so does the hand of a bend that is ridden through.
  const isTold = markers.length > 1 || (deeds.length === 0 && bendOf(first.stations) !== 0);
  return isTold ? words : withStart(words, startOf(passage, context), { steps, wording, isCrossed });
}

/** The words with the end or the side from which the way begins, where an earlier one began elsewhere. */
function withStart(
  words: PassageWords,
  { isElsewhere, isTurned }: Start,
  of: { readonly steps: readonly Step[]; readonly wording: Wording; readonly isCrossed: boolean },
): PassageWords {
  const { thing, where, deeds } = words;
  const { steps, wording, isCrossed } = of;
  const handled = steps.filter(({ kind }) => kind !== 'ride');
  // On one side pass, or at what is worked by hand, the hand tells the place, and the heading alone is left to say.
  if (handled.some(({ kind }) => kind === 'work')) {
    return isTurned ? { ...words, thing: `${thing} from the other direction` } : words;
  }
  if (handled.length === 1 && handled[0]?.kind === 'side-pass') {
    return isTurned ? { ...words, deeds: deeds.map((deed) => `${deed}, facing the other way`) } : words;
  }
  const hasPartsTold = wording.part !== undefined && !isCrossed && handled.length > 0;
  if (hasPartsTold || !(isElsewhere || (where !== undefined && isTurned))) return words;
  if (where === undefined) return { ...words, thing: `the other end of ${thing}` };
  const end = wording.isEntered && !wording.isLane ? 'the far side' : 'the other end';
  return { ...words, where: `${where} from ${end}` };
}
