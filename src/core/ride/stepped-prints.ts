/** The prints of what is ridden step by step, and of a halt: the body is rigid, and its feet follow in diagonal pairs. */
import type { Horse } from '../horses/horse.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import { type Path, pathEnd, poseAt } from '../plane/path.ts';
import { distance, type Point } from '../plane/point.ts';
import { type Pose, toWorld } from '../plane/pose.ts';
import { type Foot, footOffset, sideOf } from './footfall.ts';
import type { HoofPrint, LocalPrint } from './hoof-print.ts';
import type { LineElement } from './line.ts';

const FEET: readonly Foot[] = ['LH', 'LF', 'RH', 'RF'];
/** The feet that step together, the left fore and the right one first. From memory: lateral steps keep the walk's diagonals. */
const PAIRS: Readonly<Record<'left' | 'right', readonly (readonly Foot[])[]>> = {
  left: [
    ['LF', 'RH'],
    ['RF', 'LH'],
  ],
  right: [
    ['RF', 'LH'],
    ['LF', 'RH'],
  ],
};

/** Where a foot stands under a horse that stands square. */
function underBody(body: Pose, foot: Foot, horse: Horse): Point {
  return toWorld(body, { x: footOffset(foot, horse.wheelbase.value), y: (sideOf(foot) * horse.stance.value) / 2 });
}

/** A side pass or a turn as the motion of a rigid body. */
interface Motion {
  readonly gait: 'side-pass' | 'turn';
  /** Where the horse stands after a share of it, 0 … 1. */
  body(share: number): Pose;
  readonly length: Metres;
  /** The way of the feet that go furthest. */
  readonly far: Metres;
  /** The side to which the leading fore foot steps. */
  readonly hand: 'left' | 'right';
}

function motionOf({ move, path, length, facing, turn }: LineElement, horse: Horse): Motion {
  const body = (share: number): Pose => {
    const at = poseAt(path, share * length);
    return { ...at, angle: at.angle + facing + share * turn };
  };
  const reach = horse.wheelbase.value / 2;
  if (move === 'side-pass') {
    // Going to its left the horse faces to the right of its path.
    return { gait: 'side-pass', body, length, far: length, hand: Math.sin(facing) < 0 ? 'left' : 'right' };
  }
  const bent = path.reduce((sum, stretch) => sum + stretch.curvature * stretch.length, 0);
  const by: Radians = turn + bent;
  // About its front or hind feet the others are a whole base away from them; about its middle half of one.
  const far = Math.abs(by) * (length > 0 ? 2 * reach : reach);
  return { gait: 'turn', body, length, far, hand: by > 0 ? 'left' : 'right' };
}

/**
 * The prints of a side pass or a turn: each step a diagonal pair is set down where the body then is, the outer feet
 * crossing the inner, and a last step closes. As many steps as bring the feet that go furthest no further than a step.
 */
export function steppedPrints(element: LineElement, horse: Horse): LocalPrint[] {
  const motion = motionOf(element, horse);
  const count = Math.max(1, Math.round(motion.far / horse.sidePass.step.value));
  const pairs = PAIRS[motion.hand];
  const stands = new Map<Foot, Point>(FEET.map((foot) => [foot, underBody(motion.body(0), foot, horse)]));
  return Array.from({ length: count + 1 }, (_, i) => i).flatMap((i) => {
    const share = Math.min(1, (i + 1) / count);
    const body = motion.body(share);
    return (pairs[i % 2] ?? []).map((foot): LocalPrint => {
      const before = stands.get(foot) ?? body;
      const point = underBody(body, foot, horse);
      stands.set(foot, point);
      const stride = distance(before, point);
      return {
        gait: motion.gait,
        lead: null,
        foot,
        point,
        heading: body.angle,
        carried: stride > 0 ? Math.atan2(point.y - before.y, point.x - before.x) : body.angle,
        at: share * motion.length,
        share,
        stride,
        spread: horse.spread.value * stride,
      };
    });
  });
}

/** The path's pose, straight on before its beginning and after its end. */
export function poseBeyond(path: Path, along: Metres, length: Metres): Pose {
  const over = along < 0 ? along : Math.max(0, along - length);
  const at = along < 0 ? (path[0]?.start ?? pathEnd(path)) : along > length ? pathEnd(path) : poseAt(path, along);
  return over === 0 ? at : { ...toWorld(at, { x: over, y: 0 }), angle: at.angle };
}

/** Backing: diagonal pairs in turn, the hind feet leading; each step as long as makes them even. */
export function backedPrints(path: Path, length: Metres, horse: Horse): LocalPrint[] {
  const count = Math.max(1, Math.round(length / horse.back.step.value));
  const pairs: readonly (readonly Foot[])[] = [
    ['LH', 'RF'],
    ['RH', 'LF'],
  ];
  return Array.from({ length: count }, (_, i) => i).flatMap((i) =>
    (pairs[i % 2] ?? []).map((foot): LocalPrint => {
      const at = ((i + 1) * length) / count;
      // The path runs backwards: the hind end is in front on it, and left is right.
      const under = poseBeyond(path, at - footOffset(foot, horse.wheelbase.value), length);
      const stride = (2 * length) / count;
      return {
        gait: 'back',
        lead: null,
        foot,
        point: toWorld(under, { x: 0, y: (-sideOf(foot) * horse.stance.value) / 2 }),
        heading: under.angle + Math.PI,
        carried: under.angle,
        at,
        stride,
        spread: horse.spread.value * stride,
      };
    }),
  );
}

/** The horse standing square at the end of a path that it was ridden along: all four feet. Cached by path. */
export const haltPrints = memoizeByIdentity((path: Path, horse: Horse): readonly LocalPrint[] => {
  const body = pathEnd(path);
  // A foot that is set square goes about as far as in a step backwards: estimate.
  const spread = horse.spread.value * horse.back.step.value;
  return FEET.map((foot): LocalPrint => {
    const at = path.reduce((sum, { length }) => sum + length, 0);
    const point = underBody(body, foot, horse);
    const way: Pick<HoofPrint, 'heading' | 'carried'> = { heading: body.angle, carried: body.angle };
    return { gait: 'halt', lead: null, foot, point, ...way, at, share: 1, stride: 0, spread };
  });
});
