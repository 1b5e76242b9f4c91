const PREFIX = 'edition-ledger.';

/** What this window remembers between launches: conveniences only, since a browser may drop them at any time. */
export function recall(name: string): string | undefined {
  try {
    return window.localStorage.getItem(PREFIX + name) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Remembers a convenience; a window that withholds storage merely forgets. */
export function remember(name: string, value: string): void {
  try {
    window.localStorage.setItem(PREFIX + name, value);
  } catch {
    // Nothing depends on it.
  }
}
