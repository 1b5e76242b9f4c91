import { type KeyboardEvent, useState } from 'react';

export interface ListBox {
  open: boolean;
  /** The option that Enter takes; -1 for none. */
  at: number;
  show: (at?: number) => void;
  close: () => void;
  onKeyDown: (event: KeyboardEvent) => void;
}

/** Where a key moves the choice in a list of `count`; undefined where it moves nothing. */
export function movedTo(key: string, at: number, count: number): number | undefined {
  if (count === 0) return undefined;
  if (key === 'ArrowDown') return (at + 1) % count;
  if (key === 'ArrowUp') return at <= 0 ? count - 1 : at - 1;
  if (key === 'PageDown') return Math.min(at + 8, count - 1);
  if (key === 'PageUp') return Math.max(at - 8, 0);
  return undefined;
}

/** The keys of a combobox whose list only proposes (WAI-ARIA Authoring Practices, combobox with list autocomplete). */
export function useListBox(count: number, onTake: (at: number) => void): ListBox {
  const [at, setAt] = useState<number>();
  const open = at !== undefined;
  const close = () => setAt(undefined);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
    const to = movedTo(event.key, at ?? -1, count);
    if (to !== undefined) setAt(to);
    else if (open && event.key === 'Enter' && at >= 0) onTake(at);
    // The dialog around would close too.
    else if (open && event.key === 'Escape') close();
    else {
      if (event.key === 'Tab') close();
      return;
    }
    event.preventDefault();
    event.stopPropagation();
  };
  return { open, at: at ?? -1, show: (to = -1) => setAt(to), close, onKeyDown };
}
