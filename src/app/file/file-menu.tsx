import { ChevronDown, FolderOpen } from 'lucide-react';
import { useEffect, useId, useRef, useState } from 'react';
import type { CourseReading } from '../../core/files/read.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { fileWords } from '../../words/file.ts';
import { hintWords, newCourseWords, starterWords } from '../../words/first-visit.ts';
import { linkWords } from '../../words/link.ts';
import { useCourseSaver } from '../autosave-context.tsx';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { Dialog } from '../dialog.tsx';
import { openDoor } from '../first/doors.ts';
import { showHintsAgain } from '../first/visit.ts';
import { keyPressOf } from '../key-press.ts';
import { lazyComponent } from '../lazy-panel.tsx';
import { openFile, saveFile } from './files.ts';
import { SavedCourses } from './kept-courses.tsx';

const LinkDialog = lazyComponent(() => import('../link/link-dialog.tsx').then((module) => module.LinkDialog));
const EarlierStates = lazyComponent(() => import('./earlier-states.tsx').then((module) => module.EarlierStates));

interface Notice {
  readonly title: string;
  readonly says: readonly string[];
}

/** New, open, save, starters, units. */
export function FileMenu() {
  const desk = useDesk();
  const keeper = useCourseSaver();
  const id = useId();
  const menu = useRef<HTMLDivElement>(null);
  const unit = useDeskState((state) => state.course.unit);
  const [notice, setNotice] = useState<Notice | null>(null);
  const [isLookingBack, setLookingBack] = useState(false);
  const [isLinking, setLinking] = useState(false);
  const shut = () => menu.current?.hidePopover();

  const take = (reading: CourseReading | null) => {
    if (reading === null) return;
    if (reading.kind === 'refused') {
      setNotice({
        title: fileWords.notOpened,
        says: [reading.why, fileWords.stillHere],
      });
      return;
    }
    keeper.openNew(reading.course);
    if (reading.repairs.length > 0) setNotice({ title: fileWords.openedWithSomethingMended, says: reading.repairs });
  };
  const save = async () => {
    shut();
    const says = await saveFile(desk.state().course);
    if (says !== null && !says.startsWith('Saved')) setNotice({ title: fileWords.notSaved, says: [says] });
  };
  const open = async () => {
    shut();
    take(await openFile());
  };
  useFileKeys({ save, open });
  const begin = (door: 'new-course' | 'starters') => {
    shut();
    openDoor(door);
  };
  const measure = (next: LengthUnit) => {
    shut();
    if (next !== unit) desk.edit(fileWords.changeTheUnit, (course) => ({ ...course, unit: next }));
  };
  return (
    <>
      <button type="button" className="quiet worded" popoverTarget={id}>
        <FolderOpen aria-hidden="true" />
        <span>{fileWords.file}</span>
        <ChevronDown aria-hidden="true" className="tiny" />
      </button>
      <div id={id} ref={menu} popover="auto" className="menu">
        <button type="button" aria-haspopup="dialog" onClick={() => begin('new-course')}>
          {newCourseWords.open}
        </button>
        <button type="button" aria-haspopup="dialog" onClick={() => begin('starters')}>
          {starterWords.open}
        </button>
        <hr />
        <button type="button" onClick={() => void open()}>
          {fileWords.openAFile} <kbd>{fileWords.ctrlO}</kbd>
        </button>
        <button type="button" onClick={() => void save()}>
          {fileWords.saveFile} <kbd>{fileWords.ctrlS}</kbd>
        </button>
        <button
          type="button"
          aria-haspopup="dialog"
          onClick={() => {
            shut();
            setLinking(true);
          }}
        >
          {linkWords.copyLink}
        </button>
        <button
          type="button"
          aria-haspopup="dialog"
          onClick={() => {
            shut();
            setLookingBack(true);
          }}
        >
          {fileWords.earlierStates}
        </button>
        <hr />
        <fieldset>
          <legend>{fileWords.lengthsShown}</legend>
          <label className="tick">
            <input type="radio" name={id} checked={unit === 'ft'} onChange={() => measure('ft')} />{' '}
            {fileWords.feetAndInches}
          </label>
          <label className="tick">
            <input type="radio" name={id} checked={unit === 'm'} onChange={() => measure('m')} /> {fileWords.metres}
          </label>
        </fieldset>
        <hr />
        <button
          type="button"
          onClick={() => {
            shut();
            showHintsAgain();
          }}
        >
          {hintWords.again}
        </button>
        <SavedCourses menu={menu} refused={(why) => take({ kind: 'refused', why })} />
      </div>
      {isLookingBack && <EarlierStates close={() => setLookingBack(false)} />}
      {isLinking && <LinkDialog close={() => setLinking(false)} />}
      {notice !== null && (
        <Dialog title={notice.title} close={() => setNotice(null)}>
          {notice.says.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Dialog>
      )}
    </>
  );
}

/** The keys that people try before they look for a menu. */
function useFileKeys(verbs: { save(): Promise<void>; open(): Promise<void> }): void {
  const now = useRef(verbs);
  useEffect(() => {
    now.current = verbs;
  });
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      const { key, mod } = keyPressOf(event);
      const verb = mod ? { s: now.current.save, o: now.current.open }[key] : undefined;
      if (verb === undefined) return;
      event.preventDefault();
      void verb();
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, []);
}
