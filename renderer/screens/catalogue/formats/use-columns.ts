import { useState } from 'react';
import { recall, remember } from '../../../lib/memory.ts';
import { COLUMNS, FIRST_COLUMNS } from './columns.tsx';

interface Kept {
  shown: string[];
  widths: Record<string, number>;
}

const MEMORY = 'format columns';

function recalled(): Kept {
  try {
    const kept = JSON.parse(recall(MEMORY) ?? '{}') as Partial<Kept>;
    const shown = (kept.shown ?? []).filter((key) => COLUMNS.some((column) => column.key === key));
    const widths = Object.entries(kept.widths ?? {}).filter(([, width]) => Number.isFinite(width));
    return { shown: shown.length > 0 ? shown : FIRST_COLUMNS, widths: Object.fromEntries(widths) };
  } catch {
    return { shown: FIRST_COLUMNS, widths: {} };
  }
}

/** Which columns are shown and how wide, remembered by this window. */
export function useColumns() {
  const [kept, setKept] = useState(recalled);
  const keep = (next: Kept) => {
    setKept(next);
    remember(MEMORY, JSON.stringify(next));
  };
  return {
    ...kept,
    columns: COLUMNS.filter((column) => kept.shown.includes(column.key)),
    show: (key: string, on: boolean) =>
      keep({ ...kept, shown: on ? [...kept.shown, key] : kept.shown.filter((one) => one !== key) }),
    setWidth: (key: string, width: number) => keep({ ...kept, widths: { ...kept.widths, [key]: width } }),
    reset: () => keep({ shown: FIRST_COLUMNS, widths: {} }),
  };
}

export type Columns = ReturnType<typeof useColumns>;
