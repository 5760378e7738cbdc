import { backL } from './back-l.ts';
import { backLane } from './back-lane.ts';
import { backMarkers } from './back-markers.ts';
import { backT } from './back-t.ts';
import { backU } from './back-u.ts';
import { backV } from './back-v.ts';
import { backZigzag } from './back-zigzag.ts';
import { box } from './box.ts';
import { boxFanBox } from './box-fan-box.ts';
import { bridge } from './bridge.ts';
import { chevron } from './chevron.ts';
import { curvedRun } from './curved-run.ts';
import { fan } from './fan.ts';
import { free } from './free.ts';
import { gate } from './gate.ts';
import { mailbox } from './mailbox.ts';
import type { ObstacleKind } from './obstacle.ts';
import { raisedRun } from './raised-run.ts';
import { run } from './run.ts';
import { scenery } from './scenery.ts';
import { serpentine } from './serpentine.ts';
import { sidePass } from './side-pass.ts';
import { sidePassBetween } from './side-pass-between.ts';
import { sidePassL } from './side-pass-l.ts';
import { sidePassT } from './side-pass-t.ts';
import { sidePassV } from './side-pass-v.ts';
import { spoke } from './spoke.ts';
import { squareMarker } from './square-marker.ts';
import { waterBox } from './water-box.ts';
import { zigzag } from './zigzag.ts';

/** Every kind of obstacle, in the order in which a designer is offered them. A new kind is one file and one line here. */
export const OBSTACLE_KINDS: readonly ObstacleKind[] = [
  run,
  fan,
  spoke,
  box,
  curvedRun,
  zigzag,
  chevron,
  raisedRun,
  boxFanBox,
  squareMarker,
  backLane,
  backL,
  backU,
  backV,
  backT,
  backZigzag,
  backMarkers,
  sidePass,
  sidePassBetween,
  sidePassL,
  sidePassT,
  sidePassV,
  gate,
  bridge,
  serpentine,
  waterBox,
  mailbox,
  scenery,
  free,
];

const byId = new Map(OBSTACLE_KINDS.map((kind) => [kind.id, kind]));

export function obstacleKind(id: string): ObstacleKind | undefined {
  return byId.get(id);
}
