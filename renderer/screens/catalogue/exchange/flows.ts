import type { ComponentType } from 'react';
import { OnixFlow } from '../onix/onix-flow.tsx';
import { ChangesFlow } from './changes-flow.tsx';
import { SheetFlow } from './sheet/sheet-flow.tsx';
import { WholeFlow } from './whole-flow.tsx';

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
  {
    name: 'ONIX for Books (XML)',
    of: 'product records of ONIX 3.1, 3.0 or 2.1, in reference names or short tags',
    endings: ['.xml', '.onix', '.onx'],
    Flow: OnixFlow,
  },
  {
    name: 'Changes of a copy (JSON)',
    of: 'what somebody did in a copy of this list, merged with what was done here',
    endings: ['.changes.json'],
    Flow: ChangesFlow,
  },
  {
    name: 'Whole catalogue (JSON)',
    of: 'everything but the journal, into a catalogue that is empty',
    endings: ['.json'],
    Flow: WholeFlow,
  },
];

/** The flow a file's name asks for. */
export function flowOf(file: File): ImportFlow | undefined {
  const name = file.name.toLowerCase();
  return FLOWS.find(({ endings }) => endings.some((ending) => name.endsWith(ending)));
}
