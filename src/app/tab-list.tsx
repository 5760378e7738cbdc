import type { KeyboardEvent } from 'react';

export interface Tab {
  readonly id: string;
  readonly title: string;
  readonly controls: string;
  readonly hint?: string;
  readonly badge?: string;
}

/** A row of tabs: one in the tab order, the arrow keys walk along it. */
export function TabList({
  tabs,
  chosen,
  choose,
  label,
  className,
}: {
  readonly tabs: readonly Tab[];
  readonly chosen: string;
  choose(id: string): void;
  readonly label: string;
  readonly className: string;
}) {
  const walk = (event: KeyboardEvent<HTMLDivElement>) => {
    const at = tabs.findIndex((tab) => tab.id === chosen);
    const next = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: tabs.length - 1 }[event.key];
    const tab = next === undefined ? undefined : tabs[(next + tabs.length) % tabs.length];
    if (tab === undefined) return;
    event.preventDefault();
    choose(tab.id);
    event.currentTarget.querySelector<HTMLElement>(`[data-tab="${tab.id}"]`)?.focus();
  };
  return (
    <div role="tablist" aria-label={label} className={className} onKeyDown={walk}>
      {tabs.map((tab) => (
        <button
          key={tab.id}
          type="button"
          role="tab"
          data-tab={tab.id}
          aria-selected={tab.id === chosen}
          aria-controls={tab.id === chosen ? tab.controls : undefined}
          tabIndex={tab.id === chosen ? 0 : -1}
          title={tab.hint}
          onClick={() => choose(tab.id)}
        >
          {tab.title}
          {tab.badge !== undefined && <span className="tab-badge">{tab.badge}</span>}
        </button>
      ))}
    </div>
  );
}
