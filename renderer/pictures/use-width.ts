import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** The width of an element in whole pixels, followed as the window changes; 0 until it is known. */
export function useWidth(): { box: RefObject<HTMLDivElement | null>; width: number } {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    setWidth(Math.floor(element.clientWidth));
    const observer = new ResizeObserver(() => setWidth(Math.floor(element.clientWidth)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { box, width };
}
