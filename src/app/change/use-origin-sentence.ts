import type { Layout } from '../../core/course/course.ts';
import { obstacleOf } from '../../core/course/ids.ts';
import { obstacleTitle } from '../app-words.ts';
import { useDeskState } from '../desk-context.tsx';
import { useLaterPart } from '../use-later-part.ts';
import { comparedLayouts, useComparedState } from './compared.ts';
import { ORIGINS_PART } from './later-origins.ts';
import { useFocusedKey } from './use-focused-key.ts';

/** `Fan: moved 12' 3" from Novice`: where the thing in focus comes from, at Change; otherwise empty. */
export function useOriginSentence(): string {
  const state = useComparedState((compared) => compared);
  const course = useDeskState((desk) => desk.course);
  const shown = useDeskState((desk) => desk.survey.layout);
  const isChange = useDeskState((desk) => desk.stage === 'change');
  const key = useFocusedKey();
  const origins = useLaterPart(ORIGINS_PART);
  const others = comparedLayouts(course, state);
  if (!isChange || origins === undefined || key === null || others.length === 0) return '';
  const words = origins.originsWords(key, { shown, others, unit: course.unit });
  return words === '' ? '' : `${titleIn([shown, ...others], obstacleOf(key))}: ${words}`;
}

/** What the first layout that has the obstacle calls it. */
function titleIn(layouts: readonly Layout[], id: string): string {
  for (const layout of layouts) {
    const obstacle = layout.obstacles.find((each) => each.id === id);
    if (obstacle !== undefined) return obstacleTitle(obstacle, layout);
  }
  return id;
}
