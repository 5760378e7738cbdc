import { fan } from './fan.ts';
import type { ObstacleKind } from './obstacle.ts';
import { run } from './run.ts';
import { spoke } from './spoke.ts';

/** Every kind of obstacle, in the order in which a designer is offered them. A new kind is one file and one line here. */
export const OBSTACLE_KINDS: readonly ObstacleKind[] = [run, fan, spoke];

const byId = new Map(OBSTACLE_KINDS.map((kind) => [kind.id, kind]));

export function obstacleKind(id: string): ObstacleKind | undefined {
  return byId.get(id);
}
