import { useEffect } from 'react';

const STOPS =
  'a[href], button:not([tabindex="-1"]), input:not([type="hidden"]), select, textarea, summary, h1[tabindex]';

/** The elements around the one that has the focus, the innermost first. */
function around(element: Element): Element[] {
  const found: Element[] = [];
  for (let at = element.parentElement; at && at !== document.body; at = at.parentElement) found.push(at);
  return found;
}

/** What is nearest to where something was: in what is left around it, or else the screen's heading. */
function nearest(ancestors: readonly Element[]): HTMLElement | null {
  for (const one of ancestors) {
    if (!one.isConnected) continue;
    if (one.matches('main') || one.querySelector('h1')) break;
    const stop = [...one.querySelectorAll<HTMLElement>(STOPS)].find((each) => each.checkVisibility());
    if (stop) return stop;
  }
  return document.querySelector<HTMLElement>('main h1');
}

/**
 * Keeps the focus in its place. A step that was done takes its own button away, and the browser would let the focus
 * fall to the top of the page: whoever works by keyboard would have to find the place again.
 */
export function useKeptFocus(): void {
  useEffect(() => {
    let last: Element | undefined;
    let ancestors: Element[] = [];
    const note = ({ target }: FocusEvent) => {
      if (!(target instanceof Element)) return;
      last = target;
      ancestors = around(target);
    };
    const mend = () => {
      if (document.activeElement !== document.body || last === undefined || last.isConnected) return;
      nearest(ancestors)?.focus();
    };
    const observer = new MutationObserver(mend);
    observer.observe(document.body, { childList: true, subtree: true });
    document.addEventListener('focusin', note);
    return () => {
      observer.disconnect();
      document.removeEventListener('focusin', note);
    };
  }, []);
}
