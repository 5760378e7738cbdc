import { Fragment, useEffect, useId, useRef, useState } from 'react';
import { changeLeg } from '../../core/course/edit-ride.ts';
import { wordChanges } from '../../core/text/word-changes.ts';
import { type Instruction, instructions, madeInstructions } from '../../sheets/instructions.ts';
import { type StaleWords, staleWords } from '../../sheets/stale-words.ts';
import { postWords } from '../../words/post.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';

/** The numbered instructions: made from the course, or the designer's own words. */
export function WordsPanel() {
  const survey = useDeskState((state) => state.survey);
  const made = madeInstructions(survey);
  const stale = staleWords(survey);
  if (made.length === 0) return <p className="empty">{postWords.noInstructions}</p>;
  return (
    <>
      <p className="lead">{postWords.madeFromCourse}</p>
      <ol className="words">
        {instructions(survey).map((each, index) => (
          <InstructionField
            key={each.leg}
            instruction={each}
            made={made[index]?.text ?? each.text}
            stale={stale.find(({ leg }) => leg === each.leg)}
          />
        ))}
      </ol>
    </>
  );
}

function InstructionField({
  instruction: { leg, number, text },
  made,
  stale,
}: {
  readonly instruction: Instruction;
  /** What the course says now. */
  readonly made: string;
  readonly stale: StaleWords | undefined;
}) {
  const desk = useDesk();
  const id = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  const [draft, setDraft] = useState(text);
  useEffect(() => setDraft(text), [text]);
  const write = (words: string | undefined) => {
    const change = words === undefined ? { words } : { words, wordsFor: made };
    desk.edit(postWords.wordNumber(number), (course) => changeLeg(course, leg, change));
  };
  const commit = () => {
    const words = draft.trim();
    if (words === text) return;
    write(words === '' || words === made ? undefined : words);
    setDraft(text);
  };
  return (
    <li>
      <label htmlFor={id} className="number">
        <span className="visually-hidden">{postWords.instruction} </span>
        {number}
      </label>
      <textarea
        ref={field}
        id={id}
        rows={Math.max(2, Math.ceil(draft.length / 26))}
        value={draft}
        aria-describedby={stale === undefined ? undefined : `${id}-stale`}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
      />
      {stale !== undefined && (
        <div className="stale" id={`${id}-stale`}>
          <p>{postWords.stale}</p>
          <Changes stale={stale} />
          <div className="button-row">
            <button type="button" className="button" onClick={() => write(text)}>
              {postWords.keepMine}
            </button>
            <button type="button" className="button" onClick={() => write(undefined)}>
              {postWords.takeNew}
            </button>
            <button type="button" className="button" onClick={() => field.current?.focus()}>
              {postWords.editMine}
            </button>
          </div>
        </div>
      )}
      {stale === undefined && text !== made && (
        <button type="button" className="link" onClick={() => write(undefined)}>
          {postWords.backToMade}
        </button>
      )}
    </li>
  );
}

/** What the course said, and what it says now, in one sentence: what has gone is struck out. */
function Changes({ stale: { said, says } }: { readonly stale: StaleWords }) {
  const tags = { same: 'span', gone: 'del', new: 'ins' } as const;
  return (
    <p className="word-changes">
      {wordChanges(said, says).map(({ kind, text }, index) => {
        const Tag = tags[kind];
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: words are known by their place.
          <Fragment key={index}>
            <Tag>
              {kind !== 'same' && (
                <span className="visually-hidden">{kind === 'gone' ? postWords.wasSaid : postWords.isSaid} </span>
              )}
              {text}
            </Tag>{' '}
          </Fragment>
        );
      })}
    </p>
  );
}
