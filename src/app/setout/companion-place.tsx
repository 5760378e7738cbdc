import { startPlanner } from '../change/use-answer.ts';
import { lazyComponent } from '../lazy-panel.tsx';
import { type CompanionLink, useCompanionLink } from './companion-door.ts';

// Fetched with the other later parts, together with the worker that plans: in the arena there may be no connection.
const Companion = lazyComponent<{ readonly link: CompanionLink }>(async () => {
  const { Companion: Shown } = await import('./companion.tsx');
  startPlanner();
  return Shown;
});

/** The companion, where the address says that it is open. */
export function CompanionWhereOpen() {
  const link = useCompanionLink();
  return link === null ? null : <Companion link={link} />;
}
