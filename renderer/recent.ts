import { recall, remember } from './lib/memory.ts';

/** A place that was visited: its address and what it is called. */
export interface Visit {
  to: string;
  label: string;
  /** 'Work', 'Person': what kind of thing it is. */
  kind: string;
}

const MOST = 8;
let catalogue = '';

const memory = () => `recent ${catalogue}`;

function isVisit(value: unknown): value is Visit {
  const visit = value as Partial<Visit> | null;
  return [visit?.to, visit?.label, visit?.kind].every((part) => typeof part === 'string');
}

/** Says which catalogue file is open; each has visits of its own. */
export function noteCatalogue(file: string): void {
  catalogue = file;
}

/** The last places visited, newest first; whatever cannot be read is forgotten. */
export function recentVisits(): Visit[] {
  try {
    const kept: unknown = JSON.parse(recall(memory()) ?? '[]');
    return Array.isArray(kept) ? kept.filter(isVisit).slice(0, MOST) : [];
  } catch {
    return [];
  }
}

/** Puts a place first among the recent ones. */
export function noteRecent(visit: Visit): void {
  const others = recentVisits().filter((one) => one.to !== visit.to);
  remember(memory(), JSON.stringify([visit, ...others].slice(0, MOST)));
}
