import type { Edition, Lock } from '../../../../src/contract/editions.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Notice } from '../../../ui/index.ts';
import { peopleOf } from '../parts/edition-names.ts';
import { LockedField } from '../parts/locked-field.tsx';
import { FIELD_NAMES, languageName } from '../parts/names.ts';

/** What may no longer change, with the reason once above it. */
export function LockedIdentity({ edition, lock }: { edition: Edition; lock: Lock }) {
  const values = {
    title: edition.title,
    subtitle: edition.subtitle,
    number: edition.number,
    statement: edition.statement,
    contributors: peopleOf(edition.contributors),
    language: languageName(edition.language),
    imprint: edition.imprint,
    series: edition.series,
    seriesNumber: edition.seriesNumber,
  };
  return (
    <>
      <Notice title={`Locked since ${formatDay(lock.since)}, sent to ${lock.channelName}.`}>
        {lock.reason} What must change belongs in the next edition. The fields below stay open.
      </Notice>
      <div className="columns">
        {(Object.keys(values) as (keyof typeof values)[]).map((field) => (
          <LockedField key={field} label={FIELD_NAMES[field]} value={values[field]} />
        ))}
      </div>
    </>
  );
}
