import { point } from '../../core/plane/point.ts';
import type { DeskState, Touch } from '../desk.ts';
import { words } from '../desk-words.ts';
import type { Gesture } from '../gestures/gesture.ts';
import { namesOf } from '../names.ts';
import type { Keys } from './selection.ts';

/** Pulls a rectangle over the ground: what lies wholly inside is chosen. */
export function marqueeGesture(down: Touch, state: DeskState): Gesture {
  const { survey } = state;
  const before = down.adding ? state.chosen : [];

  const showing = (touch: Touch, chosen: Keys): Gesture => {
    const [a, b] = [down.at, touch.at];
    const corners = [a, point(b.x, a.y), b, point(a.x, b.y), a];
    return {
      course: null,
      chosen,
      guides: [{ says: '', marks: [{ kind: 'line', ink: 'faint', points: corners }] }],
      doing: words.choosing(),
      moved: (next) => showing(next, [...before, ...inside(next).filter((key) => !before.includes(key))]),
      done: () => ({
        chosen,
        label: '',
        said: chosen.length === 0 ? words.choseNothing() : words.chose(namesOf(survey, chosen)),
      }),
    };
  };
  const inside = ({ at }: Touch): Keys => {
    const [minX, maxX] = [Math.min(down.at.x, at.x), Math.max(down.at.x, at.x)];
    const [minY, maxY] = [Math.min(down.at.y, at.y), Math.max(down.at.y, at.y)];
    return survey.obstacles
      .filter(({ bounds }) => bounds.minX >= minX && bounds.maxX <= maxX && bounds.minY >= minY && bounds.maxY <= maxY)
      .map((each) => each.obstacle.id);
  };
  return showing(down, before);
}
