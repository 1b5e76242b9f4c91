import { useState } from 'react';
import { Link } from 'wouter';
import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import { Button } from '../../../ui/index.ts';
import { NoticeShape } from '../../../ui/standing-shapes.tsx';
import { EditionDialog } from '../edition/edition-dialog.tsx';
import { EditFormatDialog } from '../format/format-dialogs.tsx';
import { NumberDialog } from '../format/number-dialog.tsx';
import { AddListingDialog } from '../listing/add-listing-dialog.tsx';
import { TermsDialog } from '../listing/terms-dialog.tsx';
import { counted } from '../parts/names.ts';
import { useWork } from '../parts/work-context.tsx';
import { RecordFileDialog } from './record-file-dialog.tsx';
import { type Need, useReadiness } from './use-readiness.ts';
import './ready.css';

interface OfFormat {
  edition: Edition;
  format: Format;
}

const STATES = {
  ready: { word: 'there', tone: 'done' },
  missing: { word: 'missing', tone: 'stop' },
  care: { word: 'look at it', tone: 'care' },
} as const;

const VERBS: Record<Need['mend']['at'], string> = {
  number: 'Take a number',
  edition: 'Edit edition',
  format: 'Edit format',
  file: 'Record the file',
  check: 'Proof check',
  listing: 'Edit terms',
  'add-listing': 'Add a listing',
};

/** Opens where a need is mended. */
function MendDialog({
  edition,
  format,
  mend,
  onClose,
}: OfFormat & { mend: Need['mend']; onClose: () => void }) {
  const listing = format.listings.find((one) => one.id === mend.listingId);
  if (mend.at === 'number') return <NumberDialog format={format} onClose={onClose} />;
  if (mend.at === 'edition') return <EditionDialog edition={edition} onClose={onClose} />;
  if (mend.at === 'format') return <EditFormatDialog format={format} onClose={onClose} />;
  if (mend.at === 'add-listing') return <AddListingDialog format={format} onClose={onClose} />;
  if (mend.at === 'file')
    return <RecordFileDialog format={format} kind={mend.fileKind ?? undefined} onClose={onClose} />;
  return listing ? <TermsDialog format={format} listing={listing} onClose={onClose} /> : null;
}

function NeedItem({
  need,
  format,
  onMend,
}: {
  need: Need;
  format: Format;
  onMend: (() => void) | undefined;
}) {
  const { work } = useWork();
  const { word, tone } = STATES[need.state];
  const on = need.channels.length === 0 ? '' : ` on ${need.channels.join(', ')}`;
  return (
    <li className={`need need-${need.state}`}>
      <span className="need-state">
        <NoticeShape tone={tone} />
        {word}
      </span>
      <span className="need-what">
        <strong>{need.label}</strong>: {need.detail}
        {on === '' ? null : <span className="soft">{on}</span>}
      </span>
      {need.mend.at === 'check' ? (
        <Link
          href={`/work/${work.id}/check/${format.id}`}
          aria-label={`${VERBS.check}: ${need.label} of ${format.name}`}
        >
          {VERBS.check}
        </Link>
      ) : onMend && need.state !== 'ready' ? (
        <Button
          kind="quiet"
          label={`${VERBS[need.mend.at]}: ${need.label} of ${format.name}${on}`}
          onClick={onMend}
        >
          {VERBS[need.mend.at]}
        </Button>
      ) : null}
    </li>
  );
}

/** Before it is sent: what every channel will ask for, what is there and what is missing, each mended from here. */
export function ReadinessList({ edition, format }: OfFormat) {
  const { editable } = useWork();
  const readiness = useReadiness(format);
  const [mend, setMend] = useState<Need['mend']>();
  if (!readiness || format.listings.some((listing) => listing.standing === 'selling')) return null;
  const { needs, ready } = readiness;
  const missing = needs.filter((need) => need.state === 'missing').length;
  const care = needs.filter((need) => need.state === 'care').length;
  const rank = (need: Need) => ['missing', 'care', 'ready'].indexOf(need.state);
  const sorted = needs.toSorted((a, b) => rank(a) - rank(b));
  const rest = care === 0 ? '' : `, ${care} to look at`;
  return (
    <>
      <details className="compare readiness">
        <summary>
          {ready ? `Ready to be sent${rest}` : `Not ready: ${counted(missing, 'thing')} missing${rest}`}
        </summary>
        <ul className="needs" aria-label={`What channels ask for: ${format.name}`}>
          {sorted.map((need) => (
            <NeedItem
              key={`${need.need} ${need.channels.join()}`}
              need={need}
              format={format}
              onMend={editable ? () => setMend(need.mend) : undefined}
            />
          ))}
        </ul>
      </details>
      {mend ? (
        <MendDialog edition={edition} format={format} mend={mend} onClose={() => setMend(undefined)} />
      ) : null}
    </>
  );
}
