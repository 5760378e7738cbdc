import { ArrowDown, ArrowUp, Ellipsis, GitBranch, PencilLine, Trash2 } from 'lucide-react';
import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { type Layout, LONGEST_NAME } from '../../core/course/course.ts';
import { renameLayout } from '../../core/course/layouts.ts';
import { changeWords } from '../../words/change.ts';
import { terms } from '../../words/terms.ts';
import { useDesk } from '../desk-context.tsx';
import { titleRefusal } from './titles.ts';

interface LayoutRowProps {
  readonly layout: Layout;
  readonly place: { readonly index: number; readonly count: number };
  readonly isShown: boolean;
  readonly isUnfolded: boolean;
  readonly isNamed: boolean;
  /** The name is a field as long as somebody types into it. */
  name(isOpen: boolean): void;
  unfold(isOpen: boolean): void;
  show(): void;
  move(to: number): void;
  branch(): void;
  erase(): void;
}

/** One layout in the list; unfolded, with what can be done to it. Alt and an arrow key move it. */
export function LayoutRow({ layout, place, isShown, isUnfolded, isNamed, ...verbs }: LayoutRowProps) {
  const tools = useId();
  const more = useRef<HTMLButtonElement>(null);
  const { title } = layout;
  const { index, count } = place;
  const key = (event: KeyboardEvent) => {
    const by = event.altKey ? { ArrowUp: -1, ArrowDown: 1 }[event.key] : undefined;
    if (by === undefined) return;
    event.preventDefault();
    verbs.move(index + by);
  };
  const named = () => {
    verbs.name(false);
    more.current?.focus();
  };
  return (
    <>
      <div className="layout-head">
        {isNamed ? (
          <NameField layout={layout} leave={named} />
        ) : (
          <button type="button" className="row" aria-pressed={isShown} onClick={verbs.show} onKeyDown={key}>
            <span className="row-title">
              {title}
              <small>{terms.obstacles(layout.obstacles.length)}</small>
            </span>
            {isShown && <span className="shown-tag">{changeWords.shown}</span>}
          </button>
        )}
        <button
          ref={more}
          type="button"
          className="quiet"
          aria-expanded={isUnfolded}
          aria-controls={tools}
          aria-label={changeWords.actionsOn(title)}
          title={changeWords.branchRenameMoveDelete}
          onClick={() => verbs.unfold(!isUnfolded)}
        >
          <Ellipsis aria-hidden="true" />
        </button>
      </div>
      {isUnfolded && (
        <fieldset id={tools} className="layout-tools">
          <legend className="visually-hidden">{title}</legend>
          <Tool says={changeWords.branch(title)} run={verbs.branch} icon={GitBranch} />
          <Tool says={changeWords.rename(title)} run={() => verbs.name(true)} icon={PencilLine} />
          <Tool says={changeWords.moveUp(title)} run={() => verbs.move(index - 1)} icon={ArrowUp} isOff={index === 0} />
          <Tool
            says={changeWords.moveDown(title)}
            run={() => verbs.move(index + 1)}
            icon={ArrowDown}
            isOff={index === count - 1}
          />
          <Tool says={changeWords.delete(title)} run={verbs.erase} icon={Trash2} isOff={count === 1} isDanger />
        </fieldset>
      )}
    </>
  );
}

interface ToolProps {
  readonly says: string;
  readonly icon: typeof GitBranch;
  readonly isOff?: boolean;
  readonly isDanger?: true;
  run(): void;
}

function Tool({ says, icon: Icon, isOff = false, isDanger, run }: ToolProps) {
  return (
    <button
      type="button"
      className={isDanger ? 'quiet danger' : 'quiet'}
      aria-label={says}
      title={says}
      disabled={isOff}
      onClick={run}
    >
      <Icon aria-hidden="true" />
    </button>
  );
}

/** The name of a layout in the place of its row: Enter or another field takes it, Escape leaves it as it was. */
function NameField({ layout, leave }: { readonly layout: Layout; leave(): void }) {
  const desk = useDesk();
  const id = useId();
  const [text, setText] = useState(layout.title);
  const [refusal, setRefusal] = useState<string | undefined>();
  const isDone = useRef(false);
  const end = () => {
    // The focus leaves the field when it is done, which is no second commit.
    isDone.current = true;
    leave();
  };
  const commit = () => {
    if (isDone.current) return;
    const why = titleRefusal(text);
    setRefusal(why);
    if (why !== undefined) return;
    const title = text.trim();
    if (title !== layout.title) {
      desk.edit(changeWords.rename(layout.title), (course) => renameLayout(course, layout.id, title));
    }
    end();
  };
  const key = (event: KeyboardEvent) => {
    if (event.key === 'Enter') {
      // The button that gets the focus must not take the same key press.
      event.preventDefault();
      commit();
    }
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    end();
  };
  return (
    <div className="field layout-name">
      <label htmlFor={id} className="visually-hidden">
        {changeWords.nameOf(layout.title)}
      </label>
      <input
        id={id}
        // biome-ignore lint/a11y/noAutofocus: the field takes the place of the button that was pressed.
        autoFocus
        type="text"
        value={text}
        autoComplete="off"
        maxLength={LONGEST_NAME}
        spellCheck={false}
        aria-invalid={refusal !== undefined}
        aria-describedby={refusal === undefined ? undefined : `${id}-why`}
        onChange={(event) => setText(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={commit}
        onKeyDown={key}
      />
      {refusal !== undefined && (
        <p id={`${id}-why`} className="refusal" role="alert">
          {refusal}
        </p>
      )}
    </div>
  );
}
