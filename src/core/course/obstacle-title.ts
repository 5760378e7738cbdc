import type { Obstacle } from '../obstacles/obstacle.ts';
import { obstacleKind } from '../obstacles/obstacles.ts';
import { capitalized, uncapitalized } from '../text/sentence.ts';
import type { Layout } from './course.ts';

/** What its gait makes of it: "jog-over" for one pole of a run that is jogged; undefined where the kind has one title. */
function gaitNoun({ id, kind }: Obstacle, { ride }: Pick<Layout, 'ride'>): string | undefined {
  const leg = ride.legs.find((each) => each.obstacle === id);
  const nouns = obstacleKind(kind)?.nounByGait;
  return leg === undefined ? nouns?.none : nouns?.[leg.gait];
}

/** What the trade calls an obstacle where it is listed, the designer's own name aside: "Jog-overs", "Poles". */
export function tradeTitle(obstacle: Obstacle, layout: Pick<Layout, 'ride'>): string {
  const noun = gaitNoun(obstacle, layout);
  if (noun === undefined) return obstacleKind(obstacle.kind)?.title ?? obstacle.kind;
  return capitalized(obstacle.pieces.length === 1 ? noun : `${noun}s`);
}

/** The same as one thing in a sentence, without article: "set of jog-overs". */
export function tradeNoun(obstacle: Obstacle, layout: Pick<Layout, 'ride'>): string {
  const noun = gaitNoun(obstacle, layout);
  if (noun === undefined) return uncapitalized(obstacleKind(obstacle.kind)?.title ?? obstacle.kind);
  return obstacle.pieces.length === 1 ? noun : `set of ${noun}s`;
}
