import { byEarWords } from '../words/by-ear.ts';
import type { Breakpoint } from './breakpoint.ts';
import { focusPane, type PaneName } from './panes.ts';

/** The first things that Tab reaches: past the stages and tools, straight to where the work is. They show while they have the focus. */
export function SkipLinks({ arrangement }: { readonly arrangement: Breakpoint }) {
  const names = arrangement === 'wide' ? (['arena', 'left', 'right'] as const) : (['arena', 'panel'] as const);
  return (
    <nav className="skip-links" aria-label={byEarWords.ways}>
      {names.map((name: PaneName & keyof typeof byEarWords.skipTo) => (
        <a
          key={name}
          href={`#${name}`}
          onClick={(event) => {
            event.preventDefault();
            focusPane(name);
          }}
        >
          {byEarWords.skipTo[name]}
        </a>
      ))}
    </nav>
  );
}
