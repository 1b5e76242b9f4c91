import { type FormatStanding, madeOf } from '../../contract/terms.ts';
import { dayPlus } from '../working-days.ts';

/** What of a format decides how ONIX speaks of its life. */
export interface Life {
  form: string;
  standing: FormatStanding;
  publicationDate: string | null;
  onSaleDate: string | null;
  /** Whether a live or coming format replaces it (its edition's successor), or sells the same content. */
  successor: boolean;
  otherFormat: boolean;
}

/** About six months: where an early notification becomes a confirmed one (List 1, notes on 01 and 02). */
export const CONFIRMED_DAYS = 183;

/** Whether it is still to come: not live yet, or live for orders in advance of its publication date. */
function isComing(life: Life, today: string): boolean {
  if (life.standing === 'live') return life.publicationDate !== null && life.publicationDate > today;
  return life.standing === 'planned' || life.standing === 'committed' || life.standing === 'proofing';
}

/**
 * Publishing status, List 64. 01 and 02 follow the list's notes: a cancelled product has no publication date, a
 * forthcoming one must have it, so that without a date the status stays unspecified (00). Out of print is 07, for
 * what is only downloaded 17.
 */
export function publishingStatus(life: Life, today: string): string {
  if (life.standing === 'cancelled') return '01';
  if (life.standing === 'retired') return madeOf(life.form) === 'print' || life.form === 'AC' ? '07' : '17';
  if (isComing(life, today)) return life.publicationDate === null ? '00' : '02';
  return '04';
}

/** Product availability, List 65: 41 and 42 only where the product they point to is named beside. */
export function availability(life: Life, today: string): string {
  if (life.standing === 'cancelled') return '01';
  if (life.standing === 'retired') {
    if (life.successor) return '41';
    if (life.otherFormat) return '42';
    return publishingStatus(life, today) === '07' ? '51' : '46';
  }
  return isComing(life, today) ? '10' : '20';
}

/** The day it is expected (List 166 role 08): the on-sale date, else the publication date; null where 08 must not stand. */
export function expectedOn(life: Life, today: string): string | null {
  return isComing(life, today) ? (life.onSaleDate ?? life.publicationDate) : null;
}

/** Notification type, List 1: 01 early, 02 from about six months before publication, 03 at publication and after. */
export function notificationType(life: Life, today: string): string {
  if (life.standing === 'live' || life.standing === 'retiring' || life.standing === 'retired')
    return isComing(life, today) ? '02' : '03';
  const day = life.publicationDate;
  return day !== null && day <= dayPlus(today, CONFIRMED_DAYS) ? '02' : '01';
}
