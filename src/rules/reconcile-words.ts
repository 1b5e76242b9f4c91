import type { ReportFindingKind } from '../contract/reports.ts';
import { shownIsbn } from './isbn/index.ts';

interface Told {
  kind: ReportFindingKind;
  isbn13: string | null;
  reference: string;
  name: string;
  there: string;
  here: string;
}

/** 'The Salt Almanac, 1st edition · Paperback', else the number or the channel's reference. */
function thing({ name, isbn13, reference }: Told): string {
  if (name !== '') return name;
  return isbn13 === null ? `the listing ${reference}` : shownIsbn(isbn13);
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** A difference in one sentence. */
export function differenceSentence(told: Told, channel: string): string {
  const { there, here } = told;
  const what = capital(thing(told));
  switch (told.kind) {
    case 'still selling':
      return `${what} is still ${there} at ${channel}; here it is ${here}.`;
    case 'only there':
      return `${what} is ${there} at ${channel}; here it is ${here}.`;
    case 'only here':
      return `By the record ${thing(told)} is ${here} at ${channel}; the report has it as ${there}.`;
    case 'price':
      return `${what} costs ${there} at ${channel}; here: ${here}.`;
    case 'on-sale date':
      return `${what} is on sale from ${there} at ${channel}; here: ${here}.`;
    case 'title':
      return `${what} is called ‘${there}’ at ${channel}; here: ‘${here}’.`;
  }
}

/** What there is to do about a difference, as the title of a task. */
export function differenceTask(told: Told, channel: string): string {
  const what = thing(told);
  switch (told.kind) {
    case 'still selling':
      return `Ask ${channel} again to stop selling ${what}`;
    case 'only there':
      return `Find out why ${channel} lists ${what}`;
    case 'only here':
      return `Ask ${channel} why ${what} is not on sale there`;
    case 'price':
      return `Settle the price of ${what} with ${channel}`;
    case 'on-sale date':
      return `Settle the on-sale date of ${what} with ${channel}`;
    case 'title':
      return `Settle the title of ${what} with ${channel}`;
  }
}
