import { Link } from 'wouter';
import { useQueryOf } from '../../api.ts';
import { Button, CopyButton, Dialog, KeyValue, Refused, TextArea } from '../../ui/index.ts';
import type { Task } from './words.ts';

const MAIL = /^[^\s@]+@[^\s@]+$/;

/** A `mailto:` address with subject and text filled in (RFC 6068: percent-encoded, lines end with CRLF). */
function mailAddress(to: string, subject: string, text: string): string {
  const body = text.replaceAll(/\r?\n/g, '\r\n');
  const address = to.split('@').map(encodeURIComponent).join('@');
  return `mailto:${address}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(body)}`;
}

interface RequestDialogProps {
  task: Task;
  /** Why the task cannot be marked done just now. */
  unsendable: string | undefined;
  onClose: () => void;
  /** The request went out: on to marking the task done. */
  onSent: () => void;
}

function NoContact() {
  return (
    <>
      No contact is recorded for this channel; add it under <Link href="/channels">Channels</Link>.
    </>
  );
}

/** The text that asks a channel to stop selling a format, to copy or to send by mail. */
export function RequestDialog({ task, unsendable, onClose, onSent }: RequestDialogProps) {
  const id = task.listingId ?? 1;
  const again = task.kind === 'chase';
  const kind = again ? 'chase' : 'removal request';
  const request = useQueryOf('listings.requestText', { id, kind }, { enabled: task.listingId !== null });
  const { to, subject, text } = request.data ?? { to: '', subject: '', text: '' };
  const mail = MAIL.test(to) ? mailAddress(to, subject, text) : undefined;
  return (
    <Dialog
      open
      onClose={onClose}
      title={again ? 'Ask again to stop selling' : 'Request to stop selling'}
      footer={
        <>
          <CopyButton text={text} what="The request text" label="Copy the text" kind="primary" />
          {mail ? (
            <a className="button task-mail" href={mail}>
              Write a mail
            </a>
          ) : null}
          {task.kind === 'ask-removal' ? (
            <Button onClick={onSent} disabled={unsendable !== undefined} reason={unsendable}>
              Sent: mark done
            </Button>
          ) : null}
          <Button onClick={onClose}>Not now</Button>
        </>
      }
    >
      <div className="stack">
        <Refused refusal={request.error} />
        <KeyValue
          items={[
            { label: 'To', value: to === '' ? <NoContact /> : to },
            { label: 'Subject', value: subject },
          ]}
        />
        <TextArea
          label="Text"
          value={text}
          onChange={() => undefined}
          readOnly
          rows={12}
          help={
            again
              ? 'Filled in from the reminder in Settings. Nothing is sent by Edition Ledger.'
              : 'Filled in from the text in Settings, or the channel’s own. Nothing is sent by Edition Ledger.'
          }
        />
      </div>
    </Dialog>
  );
}
