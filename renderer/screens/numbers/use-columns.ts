import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Rows hold a round count of cells, so that the figures before them can be read like a table of logarithms. */
const ROUND = [40, 20, 10];

/** Width of a cell and of the figures before a row, in rem; they are set in numbers.css. */
const CELL_REM = 1.45;
const NAMES_REM = 3.75;

/** How many cells a row of a picture takes in the width there is; up to a hundred cells stand in tens. */
export function useColumns(count: number): { box: RefObject<HTMLDivElement | null>; columns: number } {
  const box = useRef<HTMLDivElement>(null);
  const [fit, setFit] = useState(10);
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = () => {
      const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
      setFit(Math.floor((element.clientWidth / rem - NAMES_REM) / CELL_REM));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const columns = count <= 100 ? 10 : (ROUND.find((round) => round <= fit) ?? 10);
  return { box, columns: Math.min(columns, Math.max(count, 1)) };
}
