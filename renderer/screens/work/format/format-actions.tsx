import { useState } from 'react';
import type { Format } from '../../../../src/contract/formats.ts';
import { madeOf } from '../../../../src/contract/terms.ts';
import { useCommand } from '../../../api.ts';
import { Button, ConfirmDialog } from '../../../ui/index.ts';
import { CoverDialog } from '../cover/cover-dialog.tsx';
import { closeAt } from '../parts/go-to.ts';
import { CopyFormatDialog, EditFormatDialog } from './format-dialogs.tsx';
import { NumberDialog } from './number-dialog.tsx';

type Doing = 'cover' | 'edit' | 'number' | 'copy' | 'cancel' | 'remove';

const CANCELLABLE: readonly string[] = ['planned', 'committed', 'proofing'];

/** What can be done with a format where it stands. */
export function FormatActions({ format }: { format: Format }) {
  const [doing, setDoing] = useState<Doing>();
  const ended = format.standing === 'retired' || format.standing === 'cancelled';
  const sent = format.listings.some((listing) => listing.firstSentOn !== null);
  const removable = format.isbn13 === null && !sent && !ended;
  const close = () => setDoing(undefined);
  const act = (what: Doing, text: string, kind: 'plain' | 'quiet' | 'primary' = 'quiet') => (
    <Button key={what} kind={kind} label={`${text}: ${format.name}`} onClick={() => setDoing(what)}>
      {text}
    </Button>
  );
  return (
    <div className="row format-actions">
      {format.isbn13 === null && !ended ? act('number', 'Take a number', 'plain') : null}
      {ended ? null : act('edit', 'Edit format')}
      {act('copy', 'Make another format')}
      {madeOf(format.form) === 'print' && !ended ? act('cover', 'Cover size') : null}
      {CANCELLABLE.includes(format.standing) && !removable ? act('cancel', 'Cancel format') : null}
      {removable ? act('remove', 'Remove') : null}
      {doing === 'cover' ? <CoverDialog format={format} onClose={close} /> : null}
      {doing === 'edit' ? <EditFormatDialog format={format} onClose={close} /> : null}
      {doing === 'number' ? <NumberDialog format={format} onClose={close} /> : null}
      {doing === 'copy' ? <CopyFormatDialog format={format} onClose={close} /> : null}
      {doing === 'cancel' ? <CancelDialog format={format} onClose={close} /> : null}
      {doing === 'remove' ? <RemoveDialog format={format} onClose={close} /> : null}
    </div>
  );
}

function CancelDialog({ format, onClose }: { format: Format; onClose: () => void }) {
  const cancel = useCommand('formats.cancel');
  const out = format.listings.filter((listing) => listing.standing !== 'unsent');
  const send = async (reason: string) => {
    const answer = await cancel.run({ id: format.id, reason }, `${format.name} is cancelled.`);
    if (answer.ok) closeAt(onClose, 'format', format.id);
  };
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Cancel ${format.name}?`}
      confirm="Cancel the format"
      danger
      reason="required"
      pending={cancel.pending}
      refusal={cancel.refusal}
      onConfirm={(reason) => void send(reason)}
    >
      <div className="stack">
        {format.hyphenated === null ? (
          <p>It has no number, so no number is lost.</p>
        ) : (
          <p>
            Its number <strong className="mono nowrap">{format.hyphenated}</strong> is spent by this: it can
            never be used again, neither here nor for any other book.
          </p>
        )}
        {out.length === 0 ? null : (
          <p>Taken back from {out.map((listing) => listing.channelName).join(', ')}: tell them so.</p>
        )}
        <p>This cannot be undone; the format stays on record as cancelled.</p>
      </div>
    </ConfirmDialog>
  );
}

function RemoveDialog({ format, onClose }: { format: Format; onClose: () => void }) {
  const remove = useCommand('formats.remove');
  const send = async () => {
    const answer = await remove.run({ id: format.id }, `${format.name} is removed.`);
    if (answer.ok) closeAt(onClose, 'edition', format.editionId);
  };
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Remove ${format.name}?`}
      confirm="Remove the format"
      danger
      pending={remove.pending}
      refusal={remove.refusal}
      onConfirm={() => void send()}
    >
      It never had a number and was never sent anywhere, so nothing but the journal will tell of it.
    </ConfirmDialog>
  );
}
