import type { Point } from '../../../core/plane/point.ts';
import { toWorld } from '../../../core/plane/pose.ts';
import type { DeskState } from '../../../desk/desk.ts';

/** Where the one end of a tape lies whose other end is not laid yet, on the ground; absent: there is none. */
export function looseTapeEnd({
  survey,
  tape,
  tapeReading,
}: Pick<DeskState, 'survey' | 'tape' | 'tapeReading'>): Point | undefined {
  const from = tapeReading === null ? tape?.from : null;
  if (from === null || from === undefined) return undefined;
  if (from.on !== 'piece') return from.at;
  const piece = survey.pieces.find((each) => each.key === from.key);
  return piece === undefined ? undefined : toWorld(piece.pose, { x: (from.at - 0.5) * piece.figure.length, y: 0 });
}
