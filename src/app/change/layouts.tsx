import { Copy, Trash2 } from 'lucide-react';
import { branchLayout, chooseLayout, eraseLayout, renameLayout } from '../../core/course/layouts.ts';
import { counted } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { TypedField } from '../set/typed-field.tsx';

/** The alternatives of the course: one is shown and worked on. */
export function LayoutsPanel() {
  const desk = useDesk();
  const course = useDeskState((state) => state.course);
  return (
    <div className="layouts">
      <p className="lead">A course can hold several layouts, one for each class of the day.</p>
      <ul className="rows">
        {course.layouts.map((layout) => {
          const isShown = layout.id === course.current;
          return (
            <li key={layout.id} className="layout">
              <button
                type="button"
                className="row"
                aria-pressed={isShown}
                onClick={() => desk.edit(`Show ${layout.title}`, (now) => chooseLayout(now, layout.id))}
              >
                <span className="row-title">
                  {layout.title}
                  <small>{counted(layout.obstacles.length, 'obstacle')}</small>
                </span>
                {isShown && <span className="shown-tag">shown</span>}
              </button>
            </li>
          );
        })}
      </ul>
      <ShownLayout key={course.current} />
      <div className="button-row">
        <button
          type="button"
          className="button primary"
          onClick={() => desk.edit('Copy the layout', (now) => branchLayout(now))}
        >
          <Copy aria-hidden="true" />
          Copy this layout
        </button>
        <button
          type="button"
          className="button danger"
          disabled={course.layouts.length < 2}
          onClick={() => desk.edit('Delete the layout', (now) => eraseLayout(now, now.current))}
        >
          <Trash2 aria-hidden="true" />
          Delete it
        </button>
      </div>
    </div>
  );
}

function ShownLayout() {
  const desk = useDesk();
  const layout = useDeskState((state) => state.survey.layout);
  const rename = (text: string) => {
    const title = text.trim();
    if (title === '') return 'A layout needs a name.';
    desk.edit('Rename the layout', (course) => renameLayout(course, layout.id, title));
    return undefined;
  };
  return <TypedField wide label="Name of the layout that is shown" value={layout.title} send={rename} />;
}
