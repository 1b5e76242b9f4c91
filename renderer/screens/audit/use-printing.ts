import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** True while the page is being printed: what is folded away on the screen is then shown in full. */
export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The browser lays the page out as soon as these return, so it must be drawn by then.
    const before = () => flushSync(() => setPrinting(true));
    const after = () => setPrinting(false);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
  return printing;
}
