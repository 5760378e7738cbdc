import { useState } from 'react';
import { rulebookById } from '../../core/checks/rulebooks/rulebooks.ts';
import type { Course } from '../../core/course/course.ts';
import { blankCard, currentCard, hasColumns, withColumns } from '../../core/score/blank-card.ts';
import { survey } from '../../core/survey.ts';
import { manoeuvres } from '../../sheets/manoeuvres.ts';
import { displayTitle } from '../../sheets/title-block.ts';
import { useCourseSaver } from '../autosave-context.tsx';
import { useSettledCourse } from '../desk-context.tsx';
import { createCardStore } from './card-store.ts';
import { ScoreFrame } from './score-frame.tsx';
import { useJudgingLock } from './use-judging-lock.ts';

/** The card of the shown layout, over everything. */
export function Score() {
  const course = useSettledCourse();
  const saver = useCourseSaver();
  const of = `${saver.slot()}/${course.current}`;
  return <ScoreOf key={of} of={of} course={course} />;
}

function ScoreOf({ of, course }: { readonly of: string; readonly course: Course }) {
  const columns = manoeuvres(survey(course));
  const [store] = useState(() =>
    createCardStore(of, {
      blank: () => blankCard(course, columns),
      current: (card) => currentCard(course, columns, card),
    }),
  );
  useJudgingLock(of, store);
  const book = rulebookById(course.rulebook.id)?.title ?? course.rulebook.id;
  return (
    <ScoreFrame
      title={displayTitle(course)}
      file={course.title}
      store={store}
      book={book}
      hasColumns={(card) => hasColumns(card, columns)}
      takeColumns={() => store.replace(withColumns(store.state().card, columns))}
      clear={() => store.replace(blankCard(course, columns))}
    />
  );
}
