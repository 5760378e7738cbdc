import { FirstHintsWhereNew } from '../first/first-dialogs.tsx';
import { lazyComponent } from '../lazy-panel.tsx';
import { useLinked } from './linked.ts';

const LinkedNotice = lazyComponent(() => import('./linked-notice.tsx').then((module) => module.LinkedNotice));

/** Above the arena: what came of a course in the address, else the hints for those who are new. */
export function LinkedOrHints() {
  return useLinked().kind === 'none' ? <FirstHintsWhereNew /> : <LinkedNotice />;
}
