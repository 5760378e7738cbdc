import type { Finding, Weight } from '../../core/checks/check.ts';
import type { Point } from '../../core/plane/point.ts';
import type { Pointed } from '../view.ts';
import { type Camera, screenOf } from './camera.ts';
import type { Looks } from './inks.ts';
import { LETTERS } from './marks.ts';

const SIZE = 10;
const HEAVIEST: readonly Weight[] = ['must', 'should', 'note'];

/** Findings that would cover one another, drawn as one badge with their number; the heaviest gives it its shape. */
interface Badge {
  readonly at: Point<'screen'>;
  readonly weight: Weight;
  readonly ids: readonly string[];
}

export function badgesOf(findings: readonly Finding[], camera: Camera): readonly Badge[] {
  const badges: Badge[] = [];
  for (const weight of HEAVIEST) {
    for (const finding of findings.filter((each) => each.weight === weight)) {
      const at = screenOf(camera, finding.at);
      const near = badges.findIndex((badge) => Math.hypot(badge.at.x - at.x, badge.at.y - at.y) < 2 * SIZE);
      const badge = badges[near];
      if (badge === undefined) badges.push({ at, weight, ids: [finding.id] });
      else badges[near] = { ...badge, ids: [...badge.ids, finding.id] };
    }
  }
  return badges;
}

/** Inks a badge at the place of each finding: octagon, triangle or disc, so that colour is not needed. */
export function inkBadges(
  context: CanvasRenderingContext2D,
  findings: readonly Finding[],
  { camera, looks, pointed }: { readonly camera: Camera; readonly looks: Looks; readonly pointed: Pointed },
): void {
  for (const badge of [...badgesOf(findings, camera)].reverse()) {
    const { x, y } = badge.at;
    const isPointed = pointed?.kind === 'finding' && badge.ids.includes(pointed.id);
    if (isPointed) {
      context.fillStyle = looks.pointed;
      context.beginPath();
      context.arc(x, y, SIZE + 9, 0, 2 * Math.PI);
      context.fill();
    }
    shape(context, badge);
    context.fillStyle = looks[badge.weight];
    context.strokeStyle = looks.ground;
    context.lineWidth = 2;
    context.lineJoin = 'round';
    context.fill();
    context.stroke();
    context.fillStyle = looks.ground;
    context.font = `750 12px ${LETTERS}`;
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    const sign = badge.ids.length > 1 ? String(badge.ids.length) : badge.weight === 'note' ? 'i' : '!';
    context.fillText(sign, x, y + (badge.weight === 'should' ? 2.5 : 0.5));
  }
}

function shape(context: CanvasRenderingContext2D, { at, weight }: Badge): void {
  context.beginPath();
  if (weight === 'note') {
    context.arc(at.x, at.y, SIZE, 0, 2 * Math.PI);
    return;
  }
  const corners = weight === 'must' ? 8 : 3;
  const radius = weight === 'must' ? SIZE + 1 : SIZE + 3;
  const first = weight === 'must' ? Math.PI / 8 : -Math.PI / 2;
  for (let i = 0; i < corners; i++) {
    const angle = first + (i * 2 * Math.PI) / corners;
    context.lineTo(at.x + radius * Math.cos(angle), at.y + radius * Math.sin(angle));
  }
  context.closePath();
}
