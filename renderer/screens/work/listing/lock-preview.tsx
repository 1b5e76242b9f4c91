import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import { madeOf } from '../../../../src/contract/terms.ts';
import { KeyValue, Notice } from '../../../ui/index.ts';
import { HelpFold } from '../../help/help-link.tsx';
import { peopleOf } from '../parts/edition-names.ts';
import { fieldName, languageName } from '../parts/names.ts';
import { locksOf } from './reach.ts';

function fieldText(edition: Edition, format: Format, field: string): string {
  const values: Record<string, string | number | null> = {
    title: edition.title,
    subtitle: edition.subtitle,
    number: edition.number,
    statement: edition.statement,
    contributors: peopleOf(edition.contributors),
    language: languageName(edition.language),
    imprint: edition.imprint,
    series: edition.series,
    seriesNumber: edition.seriesNumber,
    isbn: format.hyphenated,
    form: format.name,
    formDetail: format.formDetail,
    caseKind: format.caseKind,
    largePrint: format.largePrint ? 'yes' : 'no',
  };
  return String(values[field] ?? '');
}

/** Whether a field says anything for the way this format is made. */
function hasMeaning(format: Format, field: string): boolean {
  if (field === 'caseKind') return format.form === 'BB';
  if (field === 'largePrint') return madeOf(format.form) === 'print';
  return field !== 'formDetail' || format.formDetail !== null;
}

/** What the first submission locks for ever, each field as it would stay. Nothing where all is locked already. */
export function LockPreview({ edition, format }: { edition: Edition; format: Format }) {
  const fields = locksOf(edition, format).filter((field) => hasMeaning(format, field));
  if (fields.length === 0) return null;
  const all = fields.includes('title');
  return (
    <>
      <Notice tone="care" title="From now on these are locked for ever.">
        {all
          ? 'This is the first time anything of this edition is sent to a channel. Check each of them once more:'
          : 'This is the first time this format is sent to a channel. Check each of them once more:'}
      </Notice>
      <KeyValue
        items={fields.map((field) => ({ label: fieldName(field), value: fieldText(edition, format, field) }))}
      />
      <HelpFold topic="locks" />
    </>
  );
}
