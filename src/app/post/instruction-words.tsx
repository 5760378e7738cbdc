import { useEffect, useId, useState } from 'react';
import { changeLeg } from '../../core/course/edit-ride.ts';
import { instructions } from '../../sheets/instructions.ts';
import { postWords } from '../../words/post.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';

/** The numbered instructions: made from the course, or the designer's own words. */
export function WordsPanel() {
  const survey = useDeskState((state) => state.survey);
  const list = instructions(survey);
  if (list.length === 0) return <p className="empty">{postWords.noInstructions}</p>;
  return (
    <>
      <p className="lead">{postWords.madeFromCourse}</p>
      <ol className="words">
        {list.map((each) => {
          const leg = survey.layout.ride.legs.find((one) => one.id === each.leg);
          return (
            <Instruction
              key={each.leg}
              leg={each.leg}
              number={each.number}
              text={each.text}
              isOwn={leg?.words !== undefined}
            />
          );
        })}
      </ol>
    </>
  );
}

function Instruction({
  leg,
  number,
  text,
  isOwn,
}: {
  readonly leg: string;
  readonly number: number;
  readonly text: string;
  readonly isOwn: boolean;
}) {
  const desk = useDesk();
  const id = useId();
  const [draft, setDraft] = useState(text);
  useEffect(() => setDraft(text), [text]);
  const write = (words: string | undefined) =>
    desk.edit(postWords.wordNumber(number), (course) => changeLeg(course, leg, { words }));
  const commit = () => {
    const words = draft.trim();
    if (words === text) return;
    write(words === '' ? undefined : words);
    setDraft(text);
  };
  return (
    <li>
      <label htmlFor={id} className="number">
        <span className="visually-hidden">{postWords.instruction} </span>
        {number}
      </label>
      <textarea
        id={id}
        rows={Math.max(2, Math.ceil(draft.length / 26))}
        value={draft}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
      />
      {isOwn && (
        <button type="button" className="link" onClick={() => write(undefined)}>
          {postWords.backToMade}
        </button>
      )}
    </li>
  );
}
