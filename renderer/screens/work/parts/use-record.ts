import { useState } from 'react';

/** What is being typed over a record, beside the record as it was when the form opened. */
export interface RecordForm<T extends object> {
  draft: T;
  set: <K extends keyof T>(field: K, value: T[K]) => void;
  /** Several fields at once. */
  merge: (fields: Partial<T>) => void;
  /** The fields that differ from where the form began, so that nothing else is written over. */
  changes: (of?: T) => Partial<T>;
  dirty: boolean;
}

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

/** Keeps the draft of a form; later changes of the record do not disturb what is being typed. */
export function useRecord<T extends object>(initial: T): RecordForm<T> {
  const [first] = useState(initial);
  const [draft, setDraft] = useState(initial);
  const merge = (fields: Partial<T>) => setDraft((now) => ({ ...now, ...fields }));
  const changes = (of: T = draft): Partial<T> => {
    const changed: Partial<T> = {};
    for (const key of Object.keys(of) as (keyof T)[]) if (!same(of[key], first[key])) changed[key] = of[key];
    return changed;
  };
  return {
    draft,
    set: (field, value) => setDraft((now) => ({ ...now, [field]: value })),
    merge,
    changes,
    dirty: !same(draft, first),
  };
}
