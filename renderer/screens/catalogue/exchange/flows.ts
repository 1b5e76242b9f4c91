import type { ComponentType } from 'react';
import { SheetFlow } from './sheet/sheet-flow.tsx';

/** One kind of file that can be taken over: how it is recognised, and what happens to it. */
export interface ImportFlow {
  /** 'Table (CSV or XLSX)' */
  name: string;
  /** What it brings. */
  of: string;
  /** Endings in small letters, such as '.csv'. */
  endings: readonly string[];
  Flow: ComponentType<{ file: File }>;
}

/** The kinds of file that can be taken over, asked in this order. */
export const FLOWS: readonly ImportFlow[] = [
  {
    name: 'Table (CSV or XLSX)',
    of: 'one row a format: titles, people, numbers, prices, dates, channels',
    endings: ['.csv', '.tsv', '.txt', '.xlsx'],
    Flow: SheetFlow,
  },
];

/** The flow a file's name asks for. */
export function flowOf(file: File): ImportFlow | undefined {
  const name = file.name.toLowerCase();
  return FLOWS.find(({ endings }) => endings.some((ending) => name.endsWith(ending)));
}
