import { Refusal } from '../contract/refusal.ts';
import { formName } from '../contract/terms.ts';
import { hyphenate } from '../rules/isbn/index.ts';
import { ordinal } from '../rules/labels.ts';
import {
  fillTemplate,
  type RequestFacts,
  replacementIsbn,
  requestSubject,
  UNKNOWN,
} from '../rules/request-text.ts';
import type { ReadDb } from '../store/connection.ts';
import { type RequestRow, replacingFormats, requestRow } from '../store/requests.ts';
import { readSettings } from '../store/settings.ts';
import type { Queries } from './context.ts';

const written = (isbn13: string | null) => (isbn13 === null ? UNKNOWN : (hyphenate(isbn13) ?? isbn13));
const flagged = <T extends { largePrint: number }>(row: T) => ({ ...row, largePrint: row.largePrint === 1 });

function factsOf(db: ReadDb, row: RequestRow, publisher: string, today: string): RequestFacts {
  const old = flagged(row);
  const replacing = replacingFormats(db, row.editionId).map(flagged);
  return {
    title: row.title,
    edition: row.statement || (row.number === null ? UNKNOWN : `${ordinal(row.number)} edition`),
    form: formName(old),
    isbn: written(row.isbn13),
    replacement: written(replacementIsbn(old, replacing)),
    channel: row.channelName,
    publisher: publisher || UNKNOWN,
    date: today,
  };
}

export const requestQueries = {
  'listings.requestText': ({ db, today }, { id }) => {
    const row = requestRow(db, id);
    if (!row) throw new Refusal('NOT_FOUND', `There is no listing ${id}.`, 'id');
    const settings = readSettings(db);
    const facts = factsOf(db, row, settings.publisher || settings.imprint, today);
    const template = row.requestTemplate.trim() === '' ? settings.requestTemplate : row.requestTemplate;
    return { to: row.contact, subject: requestSubject(facts), text: fillTemplate(template, facts) };
  },
} satisfies Queries<'listings.requestText'>;
