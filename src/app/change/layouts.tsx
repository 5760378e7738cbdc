import { FileInput, GitBranch, Library } from 'lucide-react';
import { type DragEvent, useRef, useState } from 'react';
import { branchLayout, chooseLayout, eraseLayout, moveLayout } from '../../core/course/layouts.ts';
import { changeWords } from '../../words/change.ts';
import { terms } from '../../words/terms.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceDialog } from '../dialog.tsx';
import { useCompared } from './compared.ts';
import { LayoutRow } from './layout-row.tsx';
import { TakeLayout, type TakeSource } from './take-layout.tsx';
import { classesOf, classesWords } from './titles.ts';

/** The alternatives of the course: one is shown and worked on. */
export function LayoutsPanel() {
  const desk = useDesk();
  const compared = useCompared();
  const course = useDeskState((state) => state.course);
  const list = useRef<HTMLUListElement>(null);
  const [unfolded, setUnfolded] = useState<string | null>(null);
  const [named, setNamed] = useState<string | null>(null);
  const [dragged, setDragged] = useState<string | null>(null);
  const [doomed, setDoomed] = useState<string | null>(null);
  const [source, setSource] = useState<TakeSource | null>(null);
  const { layouts, current } = course;
  const doomedLayout = layouts.find(({ id }) => id === doomed);

  const show = (id: string, title: string) => {
    compared.swap(current, id);
    desk.edit(changeWords.show(title), (now) => chooseLayout(now, id));
  };
  const branch = (of: string) => {
    const title = layouts.find(({ id }) => id === of)?.title ?? '';
    desk.edit(changeWords.branch(title), (now) => branchLayout(now, { of }));
    // What is changed from here on shows against what it came from.
    compared.compare([of]);
  };
  const move = (id: string, title: string, to: number) => {
    const focused = document.activeElement;
    desk.edit(changeWords.moveInList(title), (now) => moveLayout(now, id, to));
    // The browser takes the focus from a row that is put elsewhere in the page.
    requestAnimationFrame(() => {
      if (focused instanceof HTMLElement && list.current?.contains(focused)) focused.focus();
    });
  };
  const erase = (id: string, title: string) => {
    setDoomed(null);
    desk.edit(changeWords.delete(title), (now) => eraseLayout(now, id));
  };
  const drop = (event: DragEvent, to: number) => {
    event.preventDefault();
    const layout = layouts.find(({ id }) => id === dragged);
    if (layout !== undefined) move(layout.id, layout.title, to);
    setDragged(null);
  };
  return (
    <div className="layouts">
      <p className="lead">{changeWords.severalLayouts}</p>
      <ul className="rows" ref={list}>
        {layouts.map((layout, index) => (
          <li
            key={layout.id}
            // In the field of a name a drag selects letters.
            draggable={layout.id !== named}
            className={dragged === layout.id ? 'layout is-dragged' : 'layout'}
            onDragStart={() => setDragged(layout.id)}
            onDragEnd={() => setDragged(null)}
            onDragOver={(event) => event.preventDefault()}
            onDrop={(event) => drop(event, index)}
          >
            <LayoutRow
              layout={layout}
              place={{ index, count: layouts.length }}
              isShown={layout.id === current}
              isUnfolded={layout.id === unfolded}
              isNamed={layout.id === named}
              name={(isOpen) => setNamed(isOpen ? layout.id : null)}
              unfold={(isOpen) => setUnfolded(isOpen ? layout.id : null)}
              show={() => show(layout.id, layout.title)}
              move={(to) => move(layout.id, layout.title, to)}
              branch={() => branch(layout.id)}
              erase={() =>
                classesOf(course, layout.id).length > 0 ? setDoomed(layout.id) : erase(layout.id, layout.title)
              }
            />
          </li>
        ))}
      </ul>
      <div className="button-column">
        <button type="button" className="button primary" onClick={() => branch(current)}>
          <GitBranch aria-hidden="true" />
          {changeWords.branchThisLayout}
        </button>
        <button type="button" className="button" onClick={() => setSource('file')}>
          <FileInput aria-hidden="true" />
          {changeWords.takeOneFromFile}
        </button>
        <button type="button" className="button" aria-haspopup="dialog" onClick={() => setSource('kept')}>
          <Library aria-hidden="true" />
          {changeWords.takeOneFromKept}
        </button>
      </div>
      {source !== null && <TakeLayout from={source} close={() => setSource(null)} />}
      {doomedLayout !== undefined && (
        <ChoiceDialog
          title={changeWords.deleteQuestion(doomedLayout.title)}
          leave={() => setDoomed(null)}
          actions={
            <button type="button" className="button danger" onClick={() => erase(doomedLayout.id, doomedLayout.title)}>
              {changeWords.deleteIt}
            </button>
          }
        >
          <p>
            {classesWords(classesOf(course, doomedLayout.id))} {terms.nothingHasChanged}
          </p>
        </ChoiceDialog>
      )}
    </div>
  );
}
