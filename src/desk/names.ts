import { obstacleWords, pieceWords } from '../core/checks/findings/thing-words.ts';
import { crossingsOf } from '../core/course/edit-crossings.ts';
import { obstacleOf, pieceOf } from '../core/course/ids.ts';
import type { Survey } from '../core/survey.ts';
import { deskNames } from '../words/desk-names.ts';
import { bendIn, type CrossKey, crossIn, type Keys, RIDE_END, RIDE_START } from './selection/selection.ts';

/**
 * What people call the thing that a key names, as the findings do: "the fan (obstacle 3)", "pole 2 of the fan
 * (obstacle 3)". Things of one kind that are not ridden are told apart by the number in their id.
 */
export function nameOf(survey: Survey, key: string): string {
  if (key === RIDE_START) return deskNames.theStart;
  if (key === RIDE_END) return deskNames.theEnd;
  if (bendIn(key) !== null) return deskNames.bendLine;
  const cross = crossIn(key);
  if (cross !== null) return crossingName(survey, cross);
  return pieceOf(key) === undefined ? obstacleNameOf(survey, key) : pieceWords(survey, key);
}

/** "the line over pole 2 of the fan (obstacle 3)", or over the whole of it. */
function crossingName(survey: Survey, { leg, index }: CrossKey): string {
  const obstacle = survey.layout.ride.legs.find(({ id }) => id === leg)?.obstacle ?? '';
  const piece = index === 'all' ? undefined : crossingsOf(survey.layout, leg)[index]?.piece;
  return deskNames.theLineOver(
    piece === undefined ? obstacleNameOf(survey, obstacle) : pieceWords(survey, `${obstacle}/${piece}`),
  );
}

function obstacleNameOf(survey: Survey, id: string): string {
  const words = obstacleWords(survey, id);
  const obstacle = survey.layout.obstacles.find((each) => each.id === obstacleOf(id));
  const numbered = (survey.numbers.get(id) ?? []).length > 0 || obstacle?.name !== undefined;
  const alike = survey.layout.obstacles.filter((each) => each.kind === obstacle?.kind).length;
  const count = /-(\d+)$/.exec(id)?.[1];
  return numbered || alike < 2 || count === undefined ? words : `${words.replace(/^the /, '')} ${count}`;
}

/** "the fan and the box" for two, "5 obstacles" for many. */
export function namesOf(survey: Survey, keys: Keys): string {
  if (keys.length === 0) return 'nothing';
  if (keys.length > 2) return `${keys.length} ${keys.every((key) => !/[/:]/.test(key)) ? 'obstacles' : 'things'}`;
  return keys.map((key) => nameOf(survey, key)).join(' and ');
}
