import type { Finding, Weight } from '../../../core/checks/check.ts';
import type { Point } from '../../../core/plane/point.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import type { Pointed } from '../../view.ts';
import { type Camera, screenOf } from '../camera.ts';
import type { Theme } from './inks.ts';
import { font } from './typeface.ts';

const SIZE = 10;
/** A badge stands this far above the place it is about, on a stem, and so does not cover it. Pixels. */
const STEM = 24;
const HEAVIEST: readonly Weight[] = ['must', 'should', 'note'];
/** An open finding decides a badge's shape before a waived one. */
const ORDER = [false, true].flatMap((isWaived) => HEAVIEST.map((weight) => [weight, isWaived] as const));

/** Findings that would cover one another, drawn as one badge with their number; the heaviest gives it its shape. */
interface Badge {
  readonly at: Point<'screen'>;
  /** Where its stem points to. */
  readonly foot: Point<'screen'>;
  readonly weight: Weight;
  readonly ids: readonly string[];
  /** All of them are waived. */
  readonly isHollow: boolean;
}

function badgesOf(findings: readonly Finding[], camera: Camera): readonly Badge[] {
  const badges: Badge[] = [];
  for (const [weight, isWaived] of ORDER) {
    for (const finding of findings.filter((each) => each.weight === weight && isWaived === 'waived' in each)) {
      const foot = screenOf(camera, finding.at);
      const at: Point<'screen'> = { x: foot.x, y: foot.y - STEM };
      const near = badges.findIndex((badge) => Math.hypot(badge.at.x - at.x, badge.at.y - at.y) < 2 * SIZE);
      const badge = badges[near];
      if (badge === undefined) badges.push({ at, foot, weight, ids: [finding.id], isHollow: isWaived });
      else badges[near] = { ...badge, ids: [...badge.ids, finding.id] };
    }
  }
  return badges;
}

/**
 * Paints a badge at the place of each finding: octagon, triangle or disc, so that colour is not needed; hollow if
 * waived.
 */
export function paintBadges(
  context: CanvasRenderingContext2D,
  findings: readonly Finding[],
  { camera, theme, pointed }: { readonly camera: Camera; readonly theme: Theme; readonly pointed: Pointed },
): void {
  for (const badge of [...badgesOf(findings, camera)].reverse()) {
    const { x, y } = badge.at;
    const isPointed = pointed?.kind === 'finding' && badge.ids.includes(pointed.id);
    if (isPointed) {
      context.fillStyle = theme.pointed;
      context.beginPath();
      context.arc(x, y, SIZE + 9, 0, 2 * Math.PI);
      context.fill();
    }
    const { foot } = badge;
    context.strokeStyle = theme[badge.weight];
    context.lineWidth = 2;
    context.beginPath();
    context.moveTo(x, y);
    context.lineTo(foot.x, foot.y);
    context.stroke();
    context.fillStyle = theme[badge.weight];
    context.beginPath();
    context.arc(foot.x, foot.y, 3, 0, 2 * Math.PI);
    context.fill();
    shape(context, badge);
    context.fillStyle = badge.isHollow ? theme.ground : theme[badge.weight];
    context.strokeStyle = badge.isHollow ? theme[badge.weight] : theme.ground;
    context.lineJoin = 'round';
    context.fill();
    context.stroke();
    context.fillStyle = badge.isHollow ? theme[badge.weight] : theme.ground;
    context.font = font('bold');
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    const sign = badge.ids.length > 1 ? String(badge.ids.length) : badge.weight === 'note' ? 'i' : '!';
    context.fillText(sign, x, y + (badge.weight === 'should' ? 2.5 : 0.5));
  }
}

/** The room that the badges take on the screen. */
export function badgeBoxes(findings: readonly Finding[], camera: Camera): readonly Bounds[] {
  return badgesOf(findings, camera).map(({ at, foot }) => ({
    minX: at.x - SIZE - 3,
    maxX: at.x + SIZE + 3,
    minY: at.y - SIZE - 3,
    maxY: foot.y + 4,
  }));
}

/** The findings under a place on the screen; none: an empty list. */
export function badgeAt(findings: readonly Finding[], camera: Camera, at: Point<'screen'>): readonly string[] {
  const near = badgesOf(findings, camera).find((badge) => Math.hypot(badge.at.x - at.x, badge.at.y - at.y) <= SIZE + 4);
  return near?.ids ?? [];
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
