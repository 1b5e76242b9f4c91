import { useState } from 'react';
import type { Contributor } from '../../../../src/contract/editions.ts';
import { announce } from '../../../status.ts';
import { type PastedRows, pasteNames, withPasted } from './paste-names.ts';

/** Reads lists of people that are pasted into a name, and keeps how the last one was read. */
export function usePastedNames(value: readonly Contributor[], onChange: (value: Contributor[]) => void) {
  const [pasted, setPasted] = useState<PastedRows>();
  const take = (found: PastedRows, way: number) => {
    const rows = found.ways[way];
    if (!rows) return;
    setPasted({ ...found, taken: way });
    onChange(withPasted(found, rows));
    announce(`Read as ${rows.map(({ name }) => name).join('; ')}.`);
  };
  return {
    pasted,
    take,
    forget: () => setPasted(undefined),
    /** Answers whether the text was taken as a list. */
    paste: (index: number, text: string): boolean => {
      const found = pasteNames(value, index, text);
      if (!found) return false;
      if (found.ways.length === 1) take(found, 0);
      else {
        setPasted(found);
        announce('This list can be read in two ways. Choose one below the name.');
      }
      return true;
    },
    leave: (found: PastedRows) => {
      setPasted(undefined);
      onChange(withPasted(found, [{ role: found.before[found.index]?.role ?? '', name: found.text }]));
    },
  };
}
