import { checkWords } from '../../words/check.ts';
import { useDeskState } from '../desk-context.tsx';
import { practiceSentences, silences } from './book-words.ts';

/** What the book in force leaves open, folded away until somebody wants to know. */
export function Silences() {
  const survey = useDeskState((state) => state.survey);
  const course = useDeskState((state) => state.course);
  const nobody = silences(survey);
  const practice = practiceSentences(course);
  if (nobody.length + practice.length === 0) return null;
  return (
    <details className="fold">
      <summary>{checkWords.whatThisBookDoes(nobody.length + practice.length)}</summary>
      {nobody.length > 0 && (
        <>
          <p className="small">{checkWords.nothingCheckedHereAsk}</p>
          <ul className="said-list">
            {nobody.map((says) => (
              <li key={says}>{says}</li>
            ))}
          </ul>
        </>
      )}
      {practice.length > 0 && (
        <>
          <p className="small">{checkWords.hereDesignersPracticeAsked}</p>
          <ul className="said-list">
            {practice.map((says) => (
              <li key={says}>{says}</li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}
