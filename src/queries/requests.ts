import { Refusal } from '../contract/refusal.ts';
import { formName } from '../contract/terms.ts';
import type { TextFacts } from '../contract/text-kinds.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { ordinal } from '../rules/labels.ts';
import { replacementIsbn } from '../rules/request-text.ts';
import { fillSubject, fillText, UNKNOWN } from '../rules/text-templates.ts';
import { dayPlus } from '../rules/working-days.ts';
import type { ReadDb } from '../store/connection.ts';
import { type RequestRow, replacingFormats, requestRow } from '../store/requests.ts';
import { readSettings } from '../store/settings.ts';
import { currentText } from '../store/templates.ts';
import type { Queries } from './context.ts';

const written = (isbn13: string | null) => (isbn13 === null ? UNKNOWN : shownIsbn(isbn13));
const flagged = <T extends { largePrint: number }>(row: T) => ({ ...row, largePrint: row.largePrint === 1 });

function factsOf(db: ReadDb, row: RequestRow, publisher: string, today: string): TextFacts<'chase'> {
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
    asked: row.askedOn ?? '',
    promised: row.askedOn === null ? '' : (row.promisedBy ?? dayPlus(row.askedOn, row.removalDays)),
  };
}

export const requestQueries = {
  'listings.requestText': ({ db, today }, { id, kind }) => {
    const row = requestRow(db, id);
    if (!row) throw new Refusal('NOT_FOUND', `There is no listing ${id}.`, 'id');
    const settings = readSettings(db);
    const facts = factsOf(db, row, settings.publisher || settings.imprint, today);
    const { subject, body } = currentText(db, kind);
    // A channel's own text is one that asks, not one that asks again.
    const own = kind === 'removal request' ? row.requestTemplate.trim() : '';
    return {
      to: row.contact,
      subject: fillSubject<typeof kind>(kind, subject, facts),
      text: fillText<typeof kind>(kind, own === '' ? body : own, facts),
    };
  },
} satisfies Queries<'listings.requestText'>;
