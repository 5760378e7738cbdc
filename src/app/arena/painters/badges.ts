import type { Finding, Weight } from '../../../core/checks/check.ts';
import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import type { Point } from '../../../core/plane/point.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import { subjectOf } from '../../check/finding-subject.ts';
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

/** All findings of one obstacle, with their number; the heaviest gives the badge its shape and its place. */
interface Badge {
  readonly at: Point<'screen'>;
  /** Where its stem points to. */
  readonly foot: Point<'screen'>;
  readonly weight: Weight;
  /** The heaviest first. */
  readonly ids: readonly string[];
  /** All of them are waived. */
  readonly isHollow: boolean;
}

/** Two badges this near would cover one another, pixels. */
const NEAR = 2 * SIZE + 4;

function gap(a: Point<'screen'>, b: Point<'screen'>): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** The place that covers no other badge: beside those that stand here already. */
function freePlace(at: Point<'screen'>, badges: readonly Badge[]): Point<'screen'> {
  const inTheWay = badges.find((badge) => gap(badge.at, at) < NEAR);
  return inTheWay === undefined ? at : freePlace({ x: inTheWay.at.x + NEAR, y: at.y }, badges);
}

/** One badge an obstacle. What belongs to no single obstacle has its own, and shares it only with its like. */
const badgesOf = memoizeByIdentity((findings: readonly Finding[], camera: Camera): readonly Badge[] => {
  const badges: (Badge & { readonly subject: string | undefined })[] = [];
  for (const [weight, isWaived] of ORDER) {
    for (const finding of findings.filter((each) => each.weight === weight && isWaived === 'waived' in each)) {
      const foot = screenOf(camera, finding.at);
      const above: Point<'screen'> = { x: foot.x, y: foot.y - STEM };
      const subject = subjectOf(finding);
      const known = badges.findIndex(
        (badge) => badge.subject === subject && (subject !== undefined || gap(badge.foot, foot) < NEAR),
      );
      const badge = badges[known];
      if (badge !== undefined) badges[known] = { ...badge, ids: [...badge.ids, finding.id] };
      else {
        const at = freePlace(above, badges);
        badges.push({ subject, at, foot, weight, ids: [finding.id], isHollow: isWaived });
      }
    }
  }
  return badges;
});

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
export const badgeBoxes = memoizeByIdentity((findings: readonly Finding[], camera: Camera): readonly Bounds[] =>
  badgesOf(findings, camera).map(({ at, foot }) => ({
    minX: at.x - SIZE - 3,
    maxX: at.x + SIZE + 3,
    minY: at.y - SIZE - 3,
    maxY: foot.y + 4,
  })),
);

/** How far from the middle of a badge a pointer still is on it, pixels: a finger has a target of 44. */
const REACH = { mouse: SIZE + 4, finger: 22 } as const;

/** The findings under a place on the screen, the heaviest first; none: an empty list. */
export function badgeAt(
  findings: readonly Finding[],
  camera: Camera,
  at: Point<'screen'>,
  pointer: keyof typeof REACH = 'mouse',
): readonly string[] {
  const near = badgesOf(findings, camera)
    .filter((badge) => gap(badge.at, at) <= REACH[pointer])
    .toSorted((a, b) => gap(a.at, at) - gap(b.at, at));
  return near[0]?.ids ?? [];
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
