import { useEffect, useState } from 'react';
import { DEFAULT_SETTINGS, type Settings, settings } from '../../../src/contract/settings.ts';
import { recall, remember } from '../../lib/memory.ts';
import { checkInput } from './parts/input-check.ts';

/** The settings as typed but not yet saved: only those that differ. */
export type Changes = Partial<Settings>;

/** One memory for each catalogue, so that changes never land in another file. */
const memoryOf = (file: string) => `settings ${file}`;

/** Leaves out what is as it was saved, so that undoing by hand leaves nothing to save. */
export function changesFrom(saved: Settings, wanted: Changes): Changes {
  return Object.fromEntries(
    Object.entries(wanted).filter(
      ([name, value]) => JSON.stringify(value) !== JSON.stringify(saved[name as keyof Settings]),
    ),
  );
}

/** Whether a kept value can stand in its field; a half-typed text can, to be mended there. */
function fits(name: string, value: unknown): boolean {
  const shape = settings.shape[name as keyof Settings];
  if (shape === undefined) return false;
  if (typeof DEFAULT_SETTINGS[name as keyof Settings] === 'string') return typeof value === 'string';
  return Object.keys(checkInput(shape, value)).length === 0;
}

/** Changes as kept by the window; whatever cannot be read as settings is forgotten. */
export function readKept(text: string | undefined): Changes {
  try {
    const kept: unknown = JSON.parse(text ?? '{}');
    if (typeof kept !== 'object' || kept === null) return {};
    return Object.fromEntries(Object.entries(kept).filter(([name, value]) => fits(name, value)));
  } catch {
    return {};
  }
}

/** What is typed on the Settings screen, kept over moves to other screens until it is saved or dropped. */
export function useKeptChanges(
  file: string,
  saved: Settings,
): {
  changes: Changes;
  change: (more: Changes) => void;
  drop: () => void;
  /** The changes were typed before this visit to the screen. */
  fromBefore: boolean;
} {
  const [before] = useState(() => changesFrom(saved, readKept(recall(memoryOf(file)))));
  const [typed, setTyped] = useState(before);
  const changes = changesFrom(saved, typed);
  const text = JSON.stringify(changes);
  useEffect(() => remember(memoryOf(file), text), [file, text]);
  const dirty = text !== '{}';
  useEffect(() => {
    // A browser can ask before it closes the page; the desktop window keeps the changes instead.
    if (!dirty || window.editionLedger !== undefined) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [dirty]);
  return {
    changes,
    change: (more) => setTyped((now) => ({ ...now, ...more })),
    drop: () => setTyped({}),
    fromBefore: dirty && typed === before,
  };
}
