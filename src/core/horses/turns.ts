/** How tight a horse turns: v²/(g·tan φ), from the lean φ at its speed, or a radius that has a source of its own. */
import type { Metres, Radians } from '../measure/quantity.ts';
import { type Gait, type Horse, speed, type TurnData } from './horse.ts';

/** Standard gravity, m/s². */
const GRAVITY = 9.80665;

/** The radius at which a horse leans by so much, metres. */
export function radiusAtLean(metresPerSecond: number, lean: Radians): Metres {
  return metresPerSecond ** 2 / (GRAVITY * Math.tan(lean));
}

/** How far a horse leans on a radius, radians; 0 on a straight. */
export function leanAtRadius(metresPerSecond: number, radius: Metres): Radians {
  return Math.atan(metresPerSecond ** 2 / (GRAVITY * radius));
}

function radiusOf(turn: TurnData, horse: Horse, gait: Gait): Metres {
  return 'radius' in turn ? turn.radius.value : radiusAtLean(speed(horse, gait), turn.lean.value);
}

/** The smallest radius the line may turn on in a gait, metres. */
export function minTurnRadius(horse: Horse, gait: Gait): Metres {
  return radiusOf(horse.gaits[gait].leastTurn, horse, gait);
}

/** The smallest radius on which any such horse turns in a gait, metres: the near end of what is known. */
export function tightestTurnRadius(horse: Horse, gait: Gait): Metres {
  const { leastTurn: turn } = horse.gaits[gait];
  if ('radius' in turn) return turn.radius.least ?? turn.radius.value;
  return radiusAtLean(speed(horse, gait), turn.lean.most ?? turn.lean.value);
}

/** The radius the line turns on between obstacles where there is room, metres. */
export function preferredTurnRadius(horse: Horse, gait: Gait): Metres {
  return radiusOf(horse.gaits[gait].easyTurn, horse, gait);
}

/** How fast a horse goes on a radius when it leans no further than with ease, at most as fast as on a straight, m/s. */
export function speedOnEasyTurn(horse: Horse, gait: Gait, radius: Metres): number {
  // At one lean the radius grows with the square of the speed.
  return speed(horse, gait) * Math.min(1, Math.sqrt(radius / preferredTurnRadius(horse, gait)));
}

/** Where the smallest radius comes from. */
export function minTurnRadiusSource(horse: Horse, gait: Gait): string {
  const { leastTurn: turn } = horse.gaits[gait];
  return 'radius' in turn ? turn.radius.source : turn.lean.source;
}
