import { useEffect } from 'react';
import { useQueryParam } from '../../../location.ts';

/** The id of the heading that an edition or a format is reached by. */
export function headingId(of: 'edition' | 'format', id: number): string {
  return `${of}-${id}`;
}

/** The address of an edition or format on its work's screen. */
export function placeOf(workId: number, of: 'edition' | 'format', id: number): string {
  return `/work/${workId}?${of}=${id}`;
}

/** Brings a heading into view and puts the focus there, so that reading goes on from it. */
export function goTo(of: 'edition' | 'format', id: number): void {
  const heading = document.getElementById(headingId(of, id));
  heading?.scrollIntoView({ block: 'start' });
  heading?.focus({ preventScroll: true });
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
