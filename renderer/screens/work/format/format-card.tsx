import { Link } from 'wouter';
import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Isbn, Standing } from '../../../ui/index.ts';
import { ListingList } from '../listing/listing-list.tsx';
import { headingId, placeOf } from '../parts/go-to.ts';
import { useWork } from '../parts/work-context.tsx';
import { FileList } from '../ready/file-list.tsx';
import { ReadinessList } from '../ready/readiness-list.tsx';
import { FormatActions } from './format-actions.tsx';
import { FormatFacts } from './format-facts.tsx';
import { FormatNumber } from './format-number.tsx';

/** One format: its number, how it is made, and its listings. */
export function FormatCard({ edition, format }: { edition: Edition; format: Format }) {
  const { editable } = useWork();
  const id = headingId('format', format.id);
  const ended = format.cancelledOn === null ? undefined : `since ${formatDay(format.cancelledOn)}`;
  return (
    <article className="format" aria-labelledby={id}>
      <header className="format-head">
        <h3 id={id} tabIndex={-1}>
          {format.name}
        </h3>
        <Standing of="format" value={format.standing} detail={ended} />
        {editable ? <FormatActions format={format} /> : null}
      </header>
      {format.cancelReason ? <p>Cancelled: {format.cancelReason}</p> : null}
      <div className="format-body">
        <div>
          <FormatNumber format={format} />
          {format.replacedBy ? (
            <p className="format-replaced">
              Replaced by{' '}
              <Link href={placeOf(format.replacedBy.workId, 'format', format.replacedBy.formatId)}>
                {format.replacedBy.label}
              </Link>
              , ISBN <Isbn value={format.replacedBy.hyphenated} />
            </p>
          ) : null}
          <FormatFacts format={format} />
          <FileList format={format} />
        </div>
        <ListingList edition={edition} format={format} />
      </div>
      <ReadinessList edition={edition} format={format} />
    </article>
  );
}
