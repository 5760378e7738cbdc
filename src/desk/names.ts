import { obstacleOf } from '../core/course/keys.ts';
import type { Survey } from '../core/survey.ts';
import { bendIn, type Keys, RIDE_START } from './chosen.ts';
import { listed, obstacleName, pieceOfName } from './words.ts';

/** What people call the thing that a key names. */
export function nameOf(survey: Survey, key: string): string {
  if (key === RIDE_START) return 'the start';
  if (bendIn(key) !== null) return 'a bend of the line';
  const piece = survey.pieces.find((each) => each.key === key);
  const obstacle = survey.obstacles.find((each) => each.obstacle.id === obstacleOf(key))?.obstacle;
  if (obstacle === undefined) return key;
  return piece === undefined ? obstacleName(obstacle) : pieceOfName(piece, obstacle);
}

/** "Fan 1 and Box 2" for all that is chosen. */
export function namesOf(survey: Survey, keys: Keys): string {
  return listed(keys.map((key) => nameOf(survey, key)));
}
