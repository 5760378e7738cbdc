import type { Finding } from '../../../core/checks/check.ts';
import type { Layout } from '../../../core/course/course.ts';
import type { Point } from '../../../core/plane/point.ts';
import { segmentPointDistance } from '../../../core/plane/segment.ts';
import type { Survey } from '../../../core/survey.ts';
import { newBendAt } from '../../../desk/gestures/bend.ts';
import { pieceUnderPoint } from '../../../desk/selection/hit.ts';
import { ORIGINS_PART } from '../../change/later-origins.ts';
import type { Pointed } from '../../view.ts';
import { type Camera, groundOf } from '../camera.ts';
import { badgeAt } from '../painters/badges.ts';
import { PICK_RADIUS } from './pick-radius.ts';

/** What lies under a pointer that hovers: a badge before a gap before an obstacle of the go. */
export function pointedAt(
  place: Point<'screen'>,
  {
    survey,
    findings,
    camera,
  }: { readonly survey: Survey; readonly findings: readonly Finding[]; readonly camera: Camera },
): Pointed {
  const [id] = badgeAt(findings, camera, place);
  if (id !== undefined) return { kind: 'finding', id };
  const at = groundOf(camera, place);
  const reach = PICK_RADIUS.mouse / camera.scale;
  const piece = pieceUnderPoint(survey, at, reach / 2);
  if (piece === null) {
    const gap = survey.line.gaps.findIndex(({ ends }) => segmentPointDistance(ends, at) <= reach);
    if (gap >= 0) return { kind: 'gap', gap };
  }
  const { legs } = survey.layout.ride;
  const bend = piece === null ? newBendAt(survey, at, reach) : null;
  const leg = legs.findIndex((each) => (bend === null ? each.obstacle === piece?.obstacle : each.id === bend.leg));
  return leg < 0 ? null : { kind: 'leg', leg };
}

/** The obstacle under a pointer that hovers at Change: of the shown layout, otherwise of one that it is compared with. */
export function comparedAt(
  place: Point<'screen'>,
  { survey, others, camera }: { readonly survey: Survey; readonly others: readonly Layout[]; readonly camera: Camera },
): string | null {
  const at = groundOf(camera, place);
  const reach = PICK_RADIUS.mouse / camera.scale / 2;
  const piece = pieceUnderPoint(survey, at, reach);
  if (piece !== null) return piece.obstacle;
  const origins = ORIGINS_PART.now();
  if (origins === undefined) return null;
  for (const layout of others) {
    const ghost = pieceUnderPoint({ pieces: origins.ghostPieces(layout, survey.layout) }, at, reach);
    if (ghost !== null) return origins.becameOf(layout, survey.layout, ghost.obstacle) ?? ghost.obstacle;
  }
  return null;
}
