import { type KeyboardEvent, type ReactNode, useId, useRef } from 'react';

export interface TabItem<Id extends string> {
  id: Id;
  label: string;
  /** A small figure behind the label, such as how many there are. */
  count?: number | undefined;
}

export interface TabsProps<Id extends string> {
  /** What the tabs choose between, for screen readers. */
  label: string;
  tabs: readonly TabItem<Id>[];
  value: Id;
  onChange: (id: Id) => void;
  /** The panel of the chosen tab. */
  children: ReactNode;
}

/** Where an arrow key leads from one tab among `count`. */
function target(key: string, index: number, count: number): number | undefined {
  if (key === 'ArrowRight') return (index + 1) % count;
  if (key === 'ArrowLeft') return (index - 1 + count) % count;
  if (key === 'Home') return 0;
  return key === 'End' ? count - 1 : undefined;
}

/** Tabs with arrow keys, Home and End; the chosen one is the single stop of the Tab key. */
export function Tabs<Id extends string>({ label, tabs, value, onChange, children }: TabsProps<Id>) {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const onKeyDown = (event: KeyboardEvent) => {
    const index = tabs.findIndex((tab) => tab.id === value);
    const next = target(event.key, index, tabs.length);
    const tab = next === undefined ? undefined : tabs[next];
    if (!tab || next === undefined) return;
    event.preventDefault();
    onChange(tab.id);
    list.current?.querySelectorAll('button')[next]?.focus();
  };
  return (
    <div className="tabs">
      <div className="tab-list" role="tablist" aria-label={label} ref={list}>
        {tabs.map((tab) => (
          <button
            key={tab.id}
            type="button"
            role="tab"
            id={`${id}-${tab.id}`}
            aria-selected={tab.id === value}
            aria-controls={tab.id === value ? `${id}-panel` : undefined}
            tabIndex={tab.id === value ? 0 : -1}
            className="tab"
            onClick={() => onChange(tab.id)}
            onKeyDown={onKeyDown}
          >
            {tab.label}
            {tab.count === undefined ? null : (
              <span className="tab-count"> {tab.count.toLocaleString()}</span>
            )}
          </button>
        ))}
      </div>
      <div className="tab-panel" role="tabpanel" id={`${id}-panel`} aria-labelledby={`${id}-${value}`}>
        {children}
      </div>
    </div>
  );
}
