import type { TooBig } from '../../sheets/sheet.ts';
import { staleWords, staleWordsWarning } from '../../sheets/stale-words.ts';
import { postWords } from '../../words/post.ts';
import { useDeskState } from '../desk-context.tsx';
import type { DrawnSheet } from './drawn-sheet.ts';

/** What should be known before the pages go out. */
export function PageNotices({ drawn }: { readonly drawn: DrawnSheet | TooBig | undefined }) {
  const isEmpty = useDeskState((state) => state.survey.layout.ride.legs.length === 0);
  const stale = useDeskState((state) => staleWordsWarning(staleWords(state.survey)));
  const notices = [
    ...(isEmpty ? [postWords.nothingRidden] : []),
    ...(stale === '' ? [] : [stale]),
    ...(drawn?.kind === 'drawn' ? drawn.substitutions : []),
  ];
  if (notices.length === 0) return null;
  return (
    <div className="page-notices">
      {notices.map((notice) => (
        <p key={notice} className="caution">
          {notice}
        </p>
      ))}
    </div>
  );
}
