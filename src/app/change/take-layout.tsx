import { useEffect, useRef, useState } from 'react';
import { takeLayout } from '../../core/change/take-layout.ts';
import type { Course } from '../../core/course/course.ts';
import type { CourseReading } from '../../core/files/read.ts';
import { readCourse } from '../../core/files/read.ts';
import { writeCourse } from '../../core/files/write.ts';
import type { SavedCourse } from '../../storage/library.ts';
import { changeWords } from '../../words/change.ts';
import { terms } from '../../words/terms.ts';
import { useCourseSaver } from '../autosave-context.tsx';
import { useDesk } from '../desk-context.tsx';
import { Dialog } from '../dialog.tsx';
import { savedAtWords } from '../file/date-words.ts';
import { openFile } from '../file/files.ts';

/** Where the other course is. */
export type TakeSource = 'file' | 'kept';

type Step =
  | { readonly kind: 'opening' }
  | { readonly kind: 'courses'; readonly courses: readonly SavedCourse[] }
  | { readonly kind: 'layouts'; readonly course: Course; readonly repairs: readonly string[] }
  | { readonly kind: 'done'; readonly title: string; readonly says: readonly string[] };

/** Takes a layout of another course into this one: which course, which of its layouts, and what to know about it. */
export function TakeLayout({ from, close }: { readonly from: TakeSource; close(): void }) {
  const desk = useDesk();
  const saver = useCourseSaver();
  const [step, setStep] = useState<Step>({ kind: 'opening' });
  const hasBegun = useRef(false);

  const take = (other: Course, id: string, repairs: readonly string[]) => {
    const { course } = desk.state();
    const taken = takeLayout(course, other, id);
    // What this course could not be opened with again must not come into it.
    const again = readCourse(writeCourse(taken.course));
    if (again.kind === 'refused') return refuse(again.why);
    const title = taken.course.layouts.at(-1)?.title ?? '';
    desk.edit(changeWords.takeFromCourse(title), () => taken.course);
    const says = [...repairs, ...taken.says];
    if (says.length === 0) close();
    else setStep({ kind: 'done', title: changeWords.taken(title), says });
  };
  const refuse = (why: string) =>
    setStep({ kind: 'done', title: changeWords.nothingWasTaken, says: [why, changeWords.openCourseUnchanged] });
  const read = (reading: CourseReading | null) => {
    if (reading === null) return close();
    if (reading.kind === 'refused') return refuse(reading.why);
    const { course, repairs } = reading;
    if (course.layouts.length === 1) take(course, course.layouts[0].id, repairs);
    else setStep({ kind: 'layouts', course, repairs });
  };
  const begin = async () => {
    if (from === 'file') return read(await openFile());
    const courses = (await saver.courses()).filter(({ slot }) => slot !== saver.slot());
    if (courses.length > 0) setStep({ kind: 'courses', courses });
    else refuse(changeWords.noOtherCourse);
  };
  useEffect(() => {
    if (hasBegun.current) return;
    hasBegun.current = true;
    void begin();
  });

  switch (step.kind) {
    case 'opening':
      return null;
    case 'courses':
      return (
        <Dialog title={changeWords.fromWhichCourse} close={close}>
          <ul className="rows">
            {step.courses.map(({ slot, title, saved }) => (
              <li key={slot}>
                <button type="button" className="row" onClick={() => void saver.read(slot).then(read)}>
                  <span className="row-title">
                    {title === '' ? terms.untitledCourse : title}
                    <small>{savedAtWords(saved)}</small>
                  </span>
                </button>
              </li>
            ))}
          </ul>
        </Dialog>
      );
    case 'layouts':
      return (
        <Dialog title={changeWords.whichLayout} close={close}>
          <ul className="rows">
            {step.course.layouts.map(({ id, title, obstacles }) => (
              <li key={id}>
                <button type="button" className="row" onClick={() => take(step.course, id, step.repairs)}>
                  <span className="row-title">
                    {title}
                    <small>{terms.obstacles(obstacles.length)}</small>
                  </span>
                </button>
              </li>
            ))}
          </ul>
        </Dialog>
      );
    case 'done':
      return (
        <Dialog title={step.title} close={close}>
          {step.says.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Dialog>
      );
  }
}
