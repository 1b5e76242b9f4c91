import type { Format } from '../../../../src/contract/formats.ts';
import { Isbn, Sign } from '../../../ui/index.ts';

/** The number of a format in both written forms, each to be copied, and whether it is locked. */
export function FormatNumber({ format }: { format: Format }) {
  if (format.isbn13 === null || format.hyphenated === null)
    return <p className="format-number soft">No number yet</p>;
  return (
    <div className="format-number">
      <p className="format-isbn">
        <span className="soft">ISBN</span> <Isbn value={format.hyphenated} copy />
      </p>
      <p className="format-isbn-plain soft">
        without hyphens <Isbn value={format.isbn13} copy />
      </p>
      <NumberRemark format={format} />
    </div>
  );
}

function NumberRemark({ format }: { format: Format }) {
  if (format.standing === 'cancelled')
    return <p className="soft">Spent by the cancellation: never to be used again.</p>;
  if (format.lock)
    return (
      <p className="locked-inline soft">
        <Sign name="padlock" />
        Locked with the product form since {format.lock.since}, sent to {format.lock.channelName}.
      </p>
    );
  const taken = format.numberSince === null ? 'Taken.' : `Taken on ${format.numberSince}.`;
  return <p className="soft">{taken} It stays with this format for ever.</p>;
}
