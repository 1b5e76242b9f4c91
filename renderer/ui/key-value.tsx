import type { ReactNode } from 'react';

export interface KeyValueItem {
  label: string;
  value: ReactNode;
}

/** Names and values in two columns; empty values are shown as a dash. */
export function KeyValue({ items }: { items: readonly KeyValueItem[] }) {
  return (
    <dl className="key-value">
      {items.map((item) => (
        <div key={item.label}>
          <dt>{item.label}</dt>
          <dd>{item.value === '' || item.value === null || item.value === undefined ? '—' : item.value}</dd>
        </div>
      ))}
    </dl>
  );
}
