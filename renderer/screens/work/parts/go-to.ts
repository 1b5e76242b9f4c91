import { useEffect } from 'react';
import { useQueryParam } from '../../../location.ts';

type Place = 'edition' | 'format' | 'listing';

/** The id of the heading that a part of the screen is reached by. */
export function headingId(of: Place, id: number): string {
  return `${of}-${id}`;
}

/** The address of an edition or format on its work's screen. */
export function placeOf(workId: number, of: 'edition' | 'format', id: number): string {
  return `/work/${workId}?${of}=${id}`;
}

/** Brings a heading into view and puts the focus there, so that reading goes on from it. */
function goTo(of: Place, id: number): void {
  const heading = document.getElementById(headingId(of, id));
  heading?.scrollIntoView({ block: 'start' });
  heading?.focus({ preventScroll: true });
}

/** A closing dialog gives the focus back a moment after it is gone; only then can it be led elsewhere. */
const SETTLE_MS = 100;

/** Closes a dialog, then goes to what it made. */
export function closeAndGoTo(close: () => void, of: Place, id: number): void {
  close();
  window.setTimeout(() => goTo(of, id), SETTLE_MS);
}

/** Closes a dialog whose button may be gone by now; the focus then goes to the heading it stood under. */
export function closeAt(close: () => void, of: Place, id: number): void {
  close();
  window.setTimeout(() => {
    const lost = document.activeElement === null || document.activeElement === document.body;
    if (lost) document.getElementById(headingId(of, id))?.focus();
  }, SETTLE_MS);
}

/** Goes to the edition or format that the address names, when the screen opens and when the address changes. */
export function useGoTo(): void {
  const [edition] = useQueryParam('edition');
  const [format] = useQueryParam('format');
  useEffect(() => {
    if (format !== '') goTo('format', Number(format));
    else if (edition !== '') goTo('edition', Number(edition));
  }, [edition, format]);
}
