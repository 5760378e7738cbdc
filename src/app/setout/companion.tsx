import { useEffect, useMemo, useState } from 'react';
import type { Course } from '../../core/course/course.ts';
import { survey as surveyOf } from '../../core/survey.ts';
import { setoutWords } from '../../words/setout.ts';
import { useCourseSaver } from '../autosave-context.tsx';
import { useAnswer } from '../change/use-answer.ts';
import { useDeskState } from '../desk-context.tsx';
import { Dialog } from '../dialog.tsx';
import { partActs } from './acts.ts';
import { type CompanionLink, changeCompanion, closeCompanion } from './companion-door.ts';
import { CompanionFrame } from './companion-frame.tsx';
import { type FoundDrawing, findDrawing } from './find-drawing.ts';
import { createCrewNotes } from './notes.ts';
import { setOutQuestion } from './setout-question.ts';

/** The set-out in the arena: over everything, one thing to do at a time. */
export function Companion({ link }: { readonly link: CompanionLink }) {
  const found = useFoundDrawing(link);
  if (found?.kind === 'open') return <PlannedCompanion course={found.course} link={link} />;
  return (
    <Dialog title={setoutWords.companion} close={closeCompanion}>
      <NotOpen found={found} />
    </Dialog>
  );
}

/** The drawing of the link; null while it is looked for. Once it is found, what is edited does not change it. */
function useFoundDrawing({ drawing }: CompanionLink): FoundDrawing | null {
  const course = useDeskState((state) => state.course);
  const saver = useCourseSaver();
  const [found, setFound] = useState<{ readonly drawing: string; readonly is: FoundDrawing } | null>(null);
  const isFound = found?.drawing === drawing && found.is.kind === 'open';
  useEffect(() => {
    if (isFound) return;
    let isWanted = true;
    void findDrawing({ drawing }, course, saver).then((is) => {
      if (isWanted) setFound({ drawing, is });
    });
    return () => {
      isWanted = false;
    };
  }, [drawing, course, saver, isFound]);
  return found?.drawing === drawing ? found.is : null;
}

function NotOpen({ found }: { readonly found: FoundDrawing | null }) {
  const saver = useCourseSaver();
  const [why, setWhy] = useState<string | null>(null);
  if (found?.kind === 'missing') return <p role="alert">{setoutWords.notOnDevice}</p>;
  if (found?.kind !== 'kept') return <p role="status">{setoutWords.lookingForCourse}</p>;
  const open = async () => {
    const reading = await saver.load(found.slot);
    if (reading.kind === 'refused') setWhy(reading.why);
  };
  return (
    <>
      <p>{setoutWords.onDevice(found.title)}</p>
      <p>
        <button type="button" className="button primary" onClick={() => void open()}>
          {setoutWords.openIt}
        </button>
      </p>
      {why !== null && (
        <p className="refusal" role="alert">
          {why}
        </p>
      )}
    </>
  );
}

/** The companion of a course that stays as it was when it was opened. */
function PlannedCompanion({ course, link }: { readonly course: Course; readonly link: CompanionLink }) {
  const saver = useCourseSaver();
  const { answer, failure } = useAnswer(setOutQuestion(course));
  const [notes] = useState(() => createCrewNotes(saver.slot(), course.current));
  const { obstacles } = link;
  const plan = answer?.told;
  const parts = useMemo(
    () => (plan === undefined ? [] : partActs(surveyOf(course), plan, obstacles)),
    [course, plan, obstacles],
  );
  if (answer === null || answer.told.parts.length === 0) {
    return (
      <Dialog title={setoutWords.companion} close={closeCompanion}>
        {failure !== null ? (
          <p className="refusal" role="alert">
            {setoutWords.planFailed(failure)}
          </p>
        ) : (
          <p role="status">{answer === null ? setoutWords.workingOut : setoutWords.nothingToSetOut}</p>
        )}
      </Dialog>
    );
  }
  return (
    <CompanionFrame
      survey={surveyOf(course)}
      plan={answer.told}
      notes={notes}
      parts={parts}
      link={link}
      show={(shown) => changeCompanion({ ...link, obstacles: shown })}
    />
  );
}
