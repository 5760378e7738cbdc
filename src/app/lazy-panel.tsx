import { type ComponentType, createElement, type ReactNode, useEffect, useSyncExternalStore } from 'react';
import { appWords } from '../words/app.ts';
import { type LaterPart, laterPart, want } from './later-part.ts';
import { useLaterPart } from './use-later-part.ts';

/** The looks of all that is not in the first load. */
const STYLES_PART = laterPart(() => import('./styles/later-styles.ts'));

/**
 * A part of the page that is not in the first load. `waiting` stands in its place until it has come with its looks; where that
 * fails it is told there, but for a `quiet` part, which lies over something that is of use without it and is tried again.
 */
export function lazyComponent<Props extends object = object>(
  load: () => Promise<ComponentType<Props>>,
  waiting: ReactNode = null,
  failed: 'told' | 'quiet' = 'told',
): ComponentType<Props> {
  const part = laterPart(async () => (await Promise.all([load(), STYLES_PART.load()]))[0]);
  // biome-ignore lint/correctness/noComponentHookFactories: called once for each part, at the top of a file.
  return function Later(props: Props) {
    const shown = useLaterPart(part);
    const hasFailed = useSyncExternalStore(part.subscribe, part.hasFailed);
    useEffect(() => {
      if (part.now() === undefined) want(part);
    }, []);
    if (shown !== undefined) return createElement(shown, props);
    return hasFailed && failed === 'told' ? <NotLoaded part={part} /> : waiting;
  };
}

/** Instead of a part that could not be fetched. */
function NotLoaded({ part }: { readonly part: LaterPart<unknown> }) {
  return (
    <div className="empty" role="alert">
      <p>{appWords.partNotLoaded}</p>
      <p>
        <button type="button" className="button" onClick={() => want(part)}>
          {appWords.tryAgain}
        </button>{' '}
        <button type="button" className="button" onClick={() => location.reload()}>
          {appWords.loadPageAgain}
        </button>
      </p>
    </div>
  );
}
