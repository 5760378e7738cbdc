import type { ReactNode } from 'react';

/** A table with a column for each layout; wider than its panel it scrolls. */
export function LayoutTable({
  label,
  first,
  layouts,
  children,
}: {
  readonly label: string;
  /** Heads the column of what is told of the layouts. */
  readonly first: string;
  readonly layouts: readonly { readonly id: string; readonly title: string }[];
  readonly children: ReactNode;
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keys.
    <section className="measures" tabIndex={0} aria-label={label}>
      <table>
        <thead>
          <tr>
            <th scope="col">{first}</th>
            {layouts.map(({ id, title }) => (
              <th key={id} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </section>
  );
}
