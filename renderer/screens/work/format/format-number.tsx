import { useState } from 'react';
import type { Format } from '../../../../src/contract/formats.ts';
import { formatDay } from '../../../lib/dates.ts';
import { useAsOf } from '../../../location.ts';
import { Button, Isbn, Sign } from '../../../ui/index.ts';
import { BarcodeDialog } from '../barcode/barcode-dialog.tsx';

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
      <FormatBarcode format={format} />
    </div>
  );
}

/** A bar code is drawn of what the catalogue holds today; a spent number must not be printed. */
function FormatBarcode({ format }: { format: Format }) {
  const { asOf } = useAsOf();
  const [open, setOpen] = useState(false);
  if (asOf !== undefined || format.standing === 'cancelled') return null;
  return (
    <>
      <Button kind="quiet" label={`Bar code: ${format.name}`} onClick={() => setOpen(true)}>
        Bar code
      </Button>
      {open ? <BarcodeDialog format={format} onClose={() => setOpen(false)} /> : null}
    </>
  );
}

function NumberRemark({ format }: { format: Format }) {
  if (format.standing === 'cancelled')
    return <p className="soft">Spent by the cancellation: never to be used again.</p>;
  if (format.lock)
    return (
      <p className="locked-inline soft">
        <Sign name="padlock" />
        Locked with the product form since {formatDay(format.lock.since)}, sent to {format.lock.channelName}.
      </p>
    );
  const taken = format.numberSince === null ? 'Taken.' : `Taken on ${format.numberSince}.`;
  return <p className="soft">{taken} It stays with this format for ever.</p>;
}
