import type { Grip } from '../constraints/constraint.ts';
import { grippedWall } from '../constraints/grip.ts';
import type { PlacedPiece } from '../course/placed.ts';
import { distance, type Point } from '../plane/point.ts';
import { type Ground, observedOn } from './ground.ts';
import { placeOn } from './observables.ts';
import type { Observable, SetOutCrew } from './setout.ts';
import { type Circumstances, observationError, triangleUnit } from './tape-errors.ts';

/** By how much a grip is moved along its piece to see what the value does, metres. */
const NUDGE = 0.01;

function pointOf(ground: Ground, grip: Grip): Point {
  if ('wall' in grip) return grippedWall(ground.arena, grip.wall).pose;
  return placeOn(ground.pieces.get(grip.piece) as PlacedPiece, grip.at ?? 0.5);
}

/** How much a taped gap changes for each metre by which it is taped too far along both poles. */
function slopeAlong(ground: Ground, of: Observable, value: number): number {
  if (of.kind !== 'gap') return 0;
  const moved = of.grips.map((grip) => {
    if ('wall' in grip) return grip;
    const { length } = (ground.pieces.get(grip.piece) as PlacedPiece).figure;
    return { ...grip, at: (grip.at ?? 0.5) + NUDGE / length };
  }) as unknown as Observable['grips'];
  return (observedOn(ground, { ...of, grips: moved }).value - value) / NUDGE;
}

function circumstances(ground: Ground, of: Observable, value: number, crew: SetOutCrew): Circumstances {
  const [first, second] = of.grips;
  const slope = slopeAlong(ground, of, value);
  if (of.kind === 'along-wall' && 'wall' in second) {
    const off = observedOn(ground, { kind: 'off-wall', grips: of.grips, side: 1 }).value;
    return { length: value, slope, reach: Math.abs(off) };
  }
  if (of.kind === 'square' && 'piece' in first && 'piece' in second) {
    const lengths = [first, second].map(({ piece }) => (ground.pieces.get(piece) as PlacedPiece).figure.length);
    const reach = triangleUnit(Math.min(...lengths), Math.max(...lengths), crew.tape);
    return { length: 0, slope, reach };
  }
  return { length: value, slope, reach: distance(pointOf(ground, first), pointOf(ground, second)) };
}

/** What an observation reads where the pieces are drawn, and its standard error; metres or radians. */
export function predicted(
  ground: Ground,
  of: Observable,
  crew: SetOutCrew,
): { readonly exact: number; readonly sigma: number } {
  const exact = observedOn(ground, of).value;
  return { exact, sigma: observationError(of.kind, circumstances(ground, of, exact, crew), crew) };
}
