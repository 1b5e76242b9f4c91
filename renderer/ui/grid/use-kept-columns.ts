import { useMemo, useState } from 'react';
import { recall, remember } from '../../lib/memory.ts';
import type { GridColumn } from './types.ts';

interface Kept {
  shown: readonly string[];
  widths: Record<string, number>;
}

/** Every column that there is, and those shown until somebody chooses otherwise. */
export interface ColumnSet<Row> {
  all: readonly GridColumn<Row>[];
  first: readonly string[];
}

function recalled<Row>(memory: string, { all, first }: ColumnSet<Row>): Kept {
  try {
    const kept = JSON.parse(recall(memory) ?? '{}') as Partial<Kept>;
    const shown = (kept.shown ?? []).filter((key) => all.some((column) => column.key === key));
    const widths = Object.entries(kept.widths ?? {}).filter(([, width]) => Number.isFinite(width));
    return { shown: shown.length > 0 ? shown : first, widths: Object.fromEntries(widths) };
  } catch {
    return { shown: first, widths: {} };
  }
}

/** Which columns of a list are shown and how wide, remembered by this window under the name `memory`. */
export function useKeptColumns<Row>(memory: string, set: ColumnSet<Row>) {
  const [kept, setKept] = useState(() => recalled(memory, set));
  const keep = (next: Kept) => {
    setKept(next);
    remember(memory, JSON.stringify(next));
  };
  const columns = useMemo(
    () => set.all.filter((column) => kept.shown.includes(column.key)),
    [set.all, kept.shown],
  );
  return {
    ...kept,
    all: set.all,
    columns,
    show: (key: string, on: boolean) =>
      keep({ ...kept, shown: on ? [...kept.shown, key] : kept.shown.filter((one) => one !== key) }),
    setWidth: (key: string, width: number) => keep({ ...kept, widths: { ...kept.widths, [key]: width } }),
    reset: () => keep({ shown: set.first, widths: {} }),
  };
}

export type KeptColumns<Row> = ReturnType<typeof useKeptColumns<Row>>;
