import type { Finding } from '../core/checks/check.ts';
import { printAngle } from '../core/measure/angle.ts';
import { printLength } from '../core/measure/length.ts';
import type { Survey } from '../core/survey.ts';
import { capitalized } from '../core/text/sentence.ts';
import { byEarWords } from '../words/by-ear.ts';
import { messages } from '../words/desk.ts';
import { terms } from '../words/terms.ts';
import { nameOf, namesOf } from './names.ts';
import { placeSentences } from './placing/wall-distances.ts';
import type { Keys } from './selection/selection.ts';

/** The desk in words for a screen reader: what is chosen and where it lies, or how much the arena holds. One sentence. */
export function description(state: {
  readonly survey: Survey;
  readonly chosen: Keys;
  /** Null while they are still being worked out. */
  readonly findings: readonly Finding[] | null;
}): string {
  const { survey, chosen, findings } = state;
  if (chosen.length === 0) {
    return byEarWords.nothingChosen(
      terms.obstacles(survey.obstacles.length),
      findings === null ? null : terms.findings(findings.length),
    );
  }
  return byEarWords.chosen(namesOf(survey, chosen), placeSentences(survey.course, chosen));
}

/** What was chosen, for who does not see it: one thing is read out whole, several are only named. */
export function choiceWords(state: Readable, keys: Keys): string {
  const [key, more] = keys;
  if (key === undefined) return messages.choseNothing();
  return messages.chose(more === undefined ? readingParts(state, key).join(', ') : namesOf(state.survey, keys));
}

/** What a key names, read out whole: of an obstacle gait and lead, place, heading, gaps, the way from the last one, findings. */
export function reading(state: Readable, key: string): string {
  const says = capitalized(readingParts(state, key).join(', '));
  return says.endsWith('.') ? says : `${says}.`;
}

type Readable = { readonly survey: Survey; readonly findings: readonly Finding[] };

function readingParts(state: Readable, key: string): readonly string[] {
  const { survey } = state;
  const obstacle = survey.obstacles.find((each) => each.obstacle.id === key);
  if (obstacle !== undefined) return [nameOf(survey, key), ...obstacleParts(state, key)];
  const piece = survey.pieces.find((each) => each.key === key);
  return [
    nameOf(survey, key),
    ...(piece?.piece.fixed ? [byEarWords.pinned] : []),
    ...placeSentences(survey.course, [key]),
    ...(piece === undefined ? [] : [byEarWords.heading(printAngle(piece.pose.angle))]),
  ];
}

function obstacleParts({ survey, findings }: Readable, id: string): readonly string[] {
  const { course, layout, line, numbers } = survey;
  const places = (numbers.get(id) ?? []).map((number) => number - 1);
  const pose = layout.obstacles.find((each) => each.id === id)?.pose;
  const own = findings.filter(({ keys }) => keys[0] === id || keys[0]?.startsWith(`${id}/`));
  const letters = survey.pieces
    .filter(({ obstacle }) => obstacle === id)
    .flatMap(({ key }) => survey.letters.get(key) ?? []);
  const gaps = line.gaps.filter(({ leg }) => leg === places[0]).map(({ taped }) => printLength(taped, course.unit));
  return [
    ...(places.length === 0 ? [byEarWords.notRidden] : []),
    ...new Set(places.map((place) => gaitWords(survey, place))),
    ...placeSentences(course, [id]),
    ...(pose === undefined ? [] : [byEarWords.heading(printAngle(pose.angle))]),
    ...(letters.length === 0 ? [] : [byEarWords.markers(letters)]),
    ...(gaps.length === 0 ? [] : [byEarWords.gaps(gaps)]),
    ...places.map((place) => wayWords(survey, place)),
    ...(own.length === 0
      ? []
      : [
          byEarWords.findings(
            terms.findings(own.length),
            own.map(({ says }) => says),
          ),
        ]),
  ];
}

function gaitWords({ layout, line }: Survey, place: number): string {
  const gait = layout.ride.legs[place]?.gait ?? '';
  const lead = line.leads.find(({ leg, part, lead: is }) => leg === place && part === 'obstacle' && is !== null)?.lead;
  return byEarWords.gait(gait, gait === 'lope' ? (lead ?? null) : null);
}

/** How far the horse goes to it from the obstacle before, or from the start. */
function wayWords(survey: Survey, place: number): string {
  const { course, layout, line } = survey;
  const length = line.elements
    .filter(({ leg, part }) => leg === place && part === 'approach')
    .reduce((sum, each) => sum + each.length, 0);
  const before = layout.ride.legs[place - 1]?.obstacle;
  return byEarWords.way(
    printLength(length, course.unit),
    before === undefined ? byEarWords.start : nameOf(survey, before),
  );
}
