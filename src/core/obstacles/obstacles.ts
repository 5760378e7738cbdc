import { free } from './custom/free.ts';
import { backL } from './lanes/back-l.ts';
import { backLane } from './lanes/back-lane.ts';
import { backT } from './lanes/back-t.ts';
import { backU } from './lanes/back-u.ts';
import { backV } from './lanes/back-v.ts';
import { backZigzag } from './lanes/back-zigzag.ts';
import { backMarkers } from './markers/back-markers.ts';
import { serpentine } from './markers/serpentine.ts';
import { squareMarker } from './markers/square-marker.ts';
import type { ObstacleKind } from './obstacle.ts';
import { box } from './poles/box.ts';
import { boxFanBox } from './poles/box-fan-box.ts';
import { chevron } from './poles/chevron.ts';
import { curvedRun } from './poles/curved-run.ts';
import { fan } from './poles/fan.ts';
import { raisedRun } from './poles/raised-run.ts';
import { run } from './poles/run.ts';
import { spoke } from './poles/spoke.ts';
import { zigzag } from './poles/zigzag.ts';
import { sidePass } from './side-pass/side-pass.ts';
import { sidePassBetween } from './side-pass/side-pass-between.ts';
import { sidePassL } from './side-pass/side-pass-l.ts';
import { sidePassT } from './side-pass/side-pass-t.ts';
import { sidePassV } from './side-pass/side-pass-v.ts';
import { bridge } from './single/bridge.ts';
import { gate } from './single/gate.ts';
import { mailbox } from './single/mailbox.ts';
import { scenery } from './single/scenery.ts';
import { waterBox } from './single/water-box.ts';

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
