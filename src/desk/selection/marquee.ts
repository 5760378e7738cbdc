import { point } from '../../core/plane/point.ts';
import { messages } from '../../words/desk.ts';
import type { DeskState } from '../desk.ts';
import type { Gesture } from '../gestures/gesture.ts';
import type { PointerInput } from '../input.ts';
import { namesOf } from '../names.ts';
import type { Keys } from './selection.ts';

/** Draws a rectangle over the ground: what lies wholly inside is chosen. */
export function marqueeGesture(down: PointerInput, state: DeskState): Gesture {
  const { survey } = state;
  const before = down.isAdding ? state.chosen : [];

  const showing = (input: PointerInput, chosen: Keys): Gesture => {
    const [a, b] = [down.at, input.at];
    const corners = [a, point(b.x, a.y), b, point(a.x, b.y), a];
    return {
      course: null,
      chosen,
      guides: [{ says: '', marks: [{ kind: 'line', ink: 'faint', points: corners }] }],
      doing: messages.choosing(),
      moved: (next) => showing(next, [...before, ...inside(next).filter((key) => !before.includes(key))]),
      commit: () => ({
        chosen,
        label: '',
        said: chosen.length === 0 ? messages.choseNothing() : messages.chose(namesOf(survey, chosen)),
      }),
    };
  };
  const inside = ({ at }: PointerInput): Keys => {
    const [minX, maxX] = [Math.min(down.at.x, at.x), Math.max(down.at.x, at.x)];
    const [minY, maxY] = [Math.min(down.at.y, at.y), Math.max(down.at.y, at.y)];
    return survey.obstacles
      .filter(({ bounds }) => bounds.minX >= minX && bounds.maxX <= maxX && bounds.minY >= minY && bounds.maxY <= maxY)
      .map((each) => each.obstacle.id);
  };
  return showing(down, before);
}
